import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import { addDays, daysBetween, type PlainDate } from '../../hoof/dates.ts'
import { type Anonymiser, anonymiser } from '../../identity/anonymise.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { identifiersOf, identityOf } from '../../identity/identifiers.ts'
import { foldedWords } from '../../identity/words.ts'
import { assess } from '../../trend/assess.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { Formatter } from '../shared/format.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import type { Words } from '../words/index.ts'

/** What a case is told of, before anything is worked out. */
export interface CaseSubject {
  readonly horse: Horse
  readonly practice: Practice
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

/** All that the parts of a case page work from. */
export interface CaseContext extends CaseSubject {
  readonly assessment: Assessment
}

/** Null where the case may not be shown: no consent, no alias, or no visit yet that may be told. */
export function caseContext(input: HorseInput, own: OwnWords): CaseContext | null {
  const subject = caseSubject(input, input.assessment.asOf, own)
  return subject && { ...subject, assessment: withheldVisits(input) }
}

/** @param asOf day of the page */
export function caseSubject(
  { horse, practice, format }: Pick<HorseInput, 'horse' | 'practice' | 'format'>,
  asOf: PlainDate,
  own: OwnWords,
): CaseSubject | null {
  const words = format.words.portfolio
  if (!horse.consent.portfolio || horse.alias === null) return null
  const slug = foldedWords(horse.alias).join('-')
  const visits = horse.visits.filter(({ date }) => date <= lastDayTold(practice, asOf))
  const first = visits[0]
  const last = visits[visits.length - 1]
  if (slug === '' || first === undefined || last === undefined) return null
  return {
    horse,
    practice,
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
 * The last day of which the portfolio may tell. Whoever sees a visit and the portfolio change the day after knows which
 * case it was, so all is told as it stood some weeks ago where the practice asks for that.
 */
const lastDayTold = ({ portfolio }: Practice, asOf: PlainDate): PlainDate =>
  portfolio.holdBackDays === 0 ? asOf : addDays(asOf, -portfolio.holdBackDays)

/** What can be said on that day. */
function withheldVisits({ horse, practice, assessment }: HorseInput): Assessment {
  const day = lastDayTold(practice, assessment.asOf)
  return day === assessment.asOf ? assessment : assess(horse, practice, day, assessment.learned)
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
