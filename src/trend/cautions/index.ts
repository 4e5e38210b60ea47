/** Every caution that a horse's record gives, and which of them stand. */
import type { Horse } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import { type Caution, type CautionCode, cautionCodes } from '../assessed-care.ts'
import type { NextVisit } from '../assessment.ts'
import type { Columns } from '../columns.ts'
import { comfortRules } from './comfort.ts'
import { findingRules } from './findings.ts'
import { bodyRules, readingRules } from './readings.ts'
import { type CareRecord, careRecord, type Rule, type Say } from './rule.ts'
import { soleRules } from './sole.ts'

export const rules: readonly Rule[] = [
  ...comfortRules,
  ...findingRules,
  ...soleRules,
  ...readingRules,
  ...bodyRules,
]

/** More than two weeks past the planned visit. */
const overdueBy = 14

export interface Cautions {
  /** Stop first, then vet, then mind; within a level the latest first, then in order of the codes. */
  readonly all: readonly Caution[]
  /** Whether a `stop` stood over the foot, or over the horse, once the visit at that place had been written up. */
  stopStood(foot: Foot, place: number): boolean
}

interface Spell {
  readonly caution: Omit<Caution, 'standing'>
  readonly from: number
  /** Place of the next visit that speaks of the same matter; null while there is none. */
  until: number | null
}

interface Matter {
  readonly foot: Foot | null
  readonly name: string
  last: readonly Spell[]
}

export function cautionsOf(horse: Horse, columns: Columns, next: NextVisit): Cautions {
  const record = careRecord(horse, columns)
  const spells = rules.flatMap((rule) => spellsOf(rule, record))
  const all = spells.map(({ caution, until }): Caution => ({ ...caution, standing: until === null }))
  const stops = spells.filter(({ caution }) => caution.level === 'stop')
  return {
    all: [...all, ...overdue(columns, next)].toSorted(
      (a, b) =>
        levels[a.level] - levels[b.level] ||
        (a.date < b.date ? 1 : a.date > b.date ? -1 : 0) ||
        places[a.code] - places[b.code],
    ),
    stopStood: (foot, place) =>
      stops.some(
        ({ caution, from, until }) =>
          (caution.foot === null || caution.foot === foot) &&
          from <= place &&
          (until === null || until > place),
      ),
  }
}

/** What one rule finds over the whole record, oldest first. */
function spellsOf({ code, level, over }: Rule, record: CareRecord): readonly Spell[] {
  const look = over(record)
  if (look === null) return []
  const spells: Spell[] = []
  /** The matters of which anything was ever found, each with what the last visit that spoke of it found: few. */
  const matters: Matter[] = []
  const say: Say = ({ place, visit }, foot, found, name = '') => {
    let matter = matters.find((one) => one.foot === foot && one.name === name)
    if (matter === undefined) {
      if (found.length === 0) return
      matter = { foot, name, last: [] }
      matters.push(matter)
    }
    for (const spell of matter.last) spell.until = place
    matter.last = found.map((facts): Spell => {
      const caution = { code, level, foot, date: visit.date, visit: visit.id, facts }
      return { caution, from: place, until: null }
    })
    spells.push(...matter.last)
  }
  for (const moment of record.moments) look(moment, say)
  return spells
}

const levels = { stop: 0, vet: 1, mind: 2 }
const places = Object.fromEntries(cautionCodes.map((code, i) => [code, i])) as Record<CautionCode, number>

function overdue({ visits }: Columns, { due, overdueDays }: NextVisit): readonly Caution[] {
  if (due === null || overdueDays === null || overdueDays <= overdueBy) return []
  return [
    {
      code: 'visit-overdue',
      level: 'mind',
      foot: null,
      date: due,
      visit: visits.at(-1)?.id ?? '',
      facts: { due, days: overdueDays },
      standing: true,
    },
  ]
}
