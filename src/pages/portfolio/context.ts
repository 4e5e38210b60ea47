import type { Horse, Practice, Visit } from '../../casebook/model.ts'
import { daysBetween, type PlainDate } from '../../hoof/dates.ts'
import { type Anonymiser, anonymiser } from '../../identity/anonymise.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { identifiersOf, identityOf } from '../../identity/identifiers.ts'
import { foldedWords } from '../../identity/words.ts'
import type { Assessment } from '../../trend/assessment.ts'
import type { HorseInput } from '../practice/index.ts'
import { visitsUpTo } from '../shared/findings.ts'
import { type Formatter, formatter } from '../shared/format.ts'
import { portfolio as words } from '../words/en/portfolio.ts'

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
  readonly days: number
  readonly format: Formatter
  /** Rewrites any text that a person wrote. */
  readonly anonymous: Anonymiser
  /** Day of the case, 0 at the first visit. */
  readonly dayOf: (date: PlainDate) => number
}

/** Null where the case may not be shown: no consent, no alias, or no visit yet. */
export function caseContext(input: HorseInput, own: OwnWords): CaseContext | null {
  const { horse, practice, assessment } = input
  if (!horse.consent.portfolio || horse.alias === null) return null
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
    format: formatter(practice.units),
    anonymous: anonymiserFor(horse, practice, first.date, own),
    dayOf: (date) => daysBetween(first.date, date),
  }
}

/** Knows this horse and every owner of the practice; names of other horses are left to the search of finished pages. */
export function anonymiserFor(
  horse: Horse,
  practice: Practice,
  firstDate: PlainDate,
  own: OwnWords,
): Anonymiser {
  return anonymiser({
    horse: horse.id,
    owner: horse.owner,
    horseName: horse.name,
    ownerName: practice.owners.find(({ id }) => id === horse.owner)?.name ?? null,
    identifiers: identifiersOf([identityOf(horse)], practice, own).identifiers,
    firstDate,
    stand: { ...words.stand, alias: horse.alias ?? words.stand.otherHorse },
  })
}
