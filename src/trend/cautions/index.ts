/** Every caution that a horse's record gives, and which of them stand. */
import type { Horse } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import { type Caution, type CautionCode, cautionCodes } from '../assessed-care.ts'
import type { NextVisit } from '../assessment.ts'
import type { Columns } from '../columns.ts'
import { comfortRules } from './comfort.ts'
import { findingRules } from './findings.ts'
import { bodyRules, readingRules } from './readings.ts'
import { findingsByFoot, type Rule } from './rule.ts'

export const rules: readonly Rule[] = [...comfortRules, ...findingRules, ...readingRules, ...bodyRules]

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

export function cautionsOf(horse: Horse, columns: Columns, next: NextVisit): Cautions {
  const spells: Spell[] = []
  const open = new Map<string, Spell[]>()
  const { visits } = columns
  const findings = visits.map(findingsByFoot)
  for (const [place, visit] of visits.entries()) {
    const moment = { horse, columns, visits, place, visit, findings }
    for (const { code, level, look } of rules)
      for (const { foot, matter, found } of look(moment)) {
        const key = `${code}/${foot}/${matter}`
        const before = open.get(key)
        if (before === undefined && found.length === 0) continue
        for (const spell of before ?? []) spell.until = place
        const begun = found.map((facts): Spell => {
          const caution = { code, level, foot, date: visit.date, visit: visit.id, facts }
          return { caution, from: place, until: null }
        })
        open.set(key, begun)
        spells.push(...begun)
      }
  }
  const all = spells.map(({ caution, until }): Caution => ({ ...caution, standing: until === null }))
  return {
    all: [...all, ...overdue(columns, next)].toSorted(
      (a, b) =>
        levels[a.level] - levels[b.level] ||
        (a.date < b.date ? 1 : a.date > b.date ? -1 : 0) ||
        places[a.code] - places[b.code],
    ),
    stopStood: (foot, place) =>
      spells.some(
        ({ caution, from, until }) =>
          caution.level === 'stop' &&
          (caution.foot === null || caution.foot === foot) &&
          from <= place &&
          (until === null || until > place),
      ),
  }
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
