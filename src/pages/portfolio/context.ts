import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import { daysBetween, type PlainDate } from '../../hoof/dates.ts'
import { type Anonymiser, anonymiser, type Stand } from '../../identity/anonymise.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { identifiersOf, identityOf } from '../../identity/identifiers.ts'
import { foldedWords } from '../../identity/words.ts'
import type { Assessment } from '../../trend/assessment.ts'
import { visitsUpTo } from '../shared/findings.ts'
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
  readonly days: number
  readonly format: Formatter
  readonly words: Words['portfolio']
  /** Rewrites any text that a person wrote. */
  readonly anonymous: Anonymiser
  /** Day of the case, 0 at the first visit. */
  readonly dayOf: (date: PlainDate) => number
}

/** All that the parts of a case page work from. */
export interface CaseContext extends CaseSubject {
  readonly assessment: Assessment
}

/** Null where the case may not be shown: no consent, no alias, or no visit yet. */
export function caseContext(input: HorseInput, own: OwnWords): CaseContext | null {
  const subject = caseSubject(input, input.assessment.visits, own)
  return subject && { ...subject, assessment: input.assessment }
}

/** @param shown ids of the visits up to the day of the page */
export function caseSubject(
  { horse, practice, format }: Pick<HorseInput, 'horse' | 'practice' | 'format'>,
  shown: readonly string[],
  own: OwnWords,
): CaseSubject | null {
  const words = format.words.portfolio
  if (!horse.consent.portfolio || horse.alias === null) return null
  const slug = foldedWords(horse.alias).join('-')
  const visits = visitsUpTo(horse, shown)
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
    anonymous: anonymiserFor(horse, practice, first.date, own, words.stand),
    dayOf: (date) => daysBetween(first.date, date),
  }
}

/** Knows this horse and every owner of the practice; names of other horses are left to the search of finished pages. */
export function anonymiserFor(
  horse: Horse,
  practice: Practice,
  firstDate: PlainDate,
  own: OwnWords,
  stand: Omit<Stand, 'alias'>,
): Anonymiser {
  return anonymiser({
    horse: horse.id,
    owner: horse.owner,
    horseName: horse.name,
    ownerName: practice.owners.find(({ id }) => id === horse.owner)?.name ?? null,
    identifiers: identifiersOf([identityOf(horse)], practice, own).identifiers,
    firstDate,
    stand: { ...stand, alias: horse.alias ?? stand.otherHorse },
  })
}
