import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import { addDays, daysBetween, type PlainDate } from '../../hoof/dates.ts'
import { type Anonymiser, anonymiser } from '../../identity/anonymise.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { identifiersOf, identityOf } from '../../identity/identifiers.ts'
import { foldedWords } from '../../identity/words.ts'
import { assess } from '../../trend/assess.ts'
import type { Assessment } from '../../trend/assessment.ts'
import { visitsUpTo } from '../shared/findings.ts'
import type { Formatter } from '../shared/format.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import type { Words } from '../words/index.ts'

/** All that the parts of a case page work from. */
export interface CaseContext {
  readonly horse: Horse
  readonly practice: Practice
  readonly assessment: Assessment
  readonly alias: string
  /** Folder of the case. */
  readonly slug: string
  readonly visits: readonly Visit[]
  readonly first: Visit
  /** From the first visit to the last. */
  readonly days: number
  readonly format: Formatter
  readonly words: Words['portfolio']
  /** Rewrites any text that a person wrote. */
  readonly anonymous: Anonymiser
  /** Week or day of the case, 0 at the first visit. */
  readonly timeOf: (date: PlainDate) => number
  /** The words for such a number. */
  readonly time: TimeWords
}

export type TimeWords = Words['portfolio']['times']['weeks']

/** Null where the case may not be shown: no consent, no alias, or no visit yet that may be told. */
export function caseContext(input: HorseInput, own: OwnWords): CaseContext | null {
  const { horse, practice, format } = input
  const words = format.words.portfolio
  if (!horse.consent.portfolio || horse.alias === null) return null
  const assessment = withheldVisits(input)
  const slug = foldedWords(horse.alias).join('-')
  const visits = visitsUpTo(horse, assessment.visits)
  const first = visits[0]
  const last = visits[visits.length - 1]
  if (slug === '' || first === undefined || last === undefined) return null
  return {
    horse,
    practice,
    assessment,
    alias: horse.alias,
    slug,
    visits,
    first,
    days: daysBetween(first.date, last.date),
    format,
    words,
    anonymous: anonymiserFor(horse, practice, first.date, own, words),
    timeOf: (date) => inCaseTime(daysBetween(first.date, date), practice),
    time: words.times[practice.portfolio.time],
  }
}

/** Days as the portfolio counts time: whole weeks, the first being week 0, or days where the practice asks for them. */
export const inCaseTime = (days: number, { portfolio }: Pick<Practice, 'portfolio'>): number =>
  portfolio.time === 'weeks' ? Math.floor(days / 7) : days

/**
 * What can be said on the last day of which the portfolio may tell. Whoever sees a visit and the portfolio change the day
 * after knows which case it was, so all is told as it stood some weeks ago where the practice asks for that.
 */
function withheldVisits({ horse, practice, assessment }: HorseInput): Assessment {
  const { holdBackDays } = practice.portfolio
  return holdBackDays === 0 ? assessment : assess(horse, practice, addDays(assessment.asOf, -holdBackDays))
}

/** Knows this horse and every owner of the practice; names of other horses are left to the search of finished pages. */
export function anonymiserFor(
  horse: Horse,
  practice: Practice,
  firstDate: PlainDate,
  own: OwnWords,
  words: Words['portfolio'],
): Anonymiser {
  const time = words.times[practice.portfolio.time]
  const rewrite = anonymiser({
    horse: horse.id,
    owner: horse.owner,
    horseName: horse.name,
    ownerName: practice.owners.find(({ id }) => id === horse.owner)?.name ?? null,
    identifiers: identifiersOf([identityOf(horse)], practice, own).identifiers,
    firstDate,
    stand: {
      ...words.stand,
      alias: horse.alias ?? words.stand.otherHorse,
      day: (day) => time.at(inCaseTime(day, practice)),
    },
  })
  return (text) => time.mended(rewrite(text))
}
