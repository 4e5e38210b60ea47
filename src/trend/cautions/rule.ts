/** What a caution rule is: it looks at one visit and says of which feet the visit speaks, and what it says. */
import type { Finding, Horse, Visit } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { CautionCode, CautionLevel, Facts } from '../assessed-care.ts'
import type { Columns } from '../columns.ts'

export interface Rule {
  readonly code: CautionCode
  readonly level: CautionLevel
  readonly look: (at: Moment) => readonly Statement[]
}

/** One visit with what came before it. */
export interface Moment {
  readonly horse: Horse
  readonly columns: Columns
  readonly visits: readonly Visit[]
  readonly place: number
  readonly visit: Visit
  /** By visit: the findings of each foot of which the visit records any. */
  readonly findings: readonly FindingsByFoot[]
}

export type FindingsByFoot = ReadonlyMap<Foot, readonly Finding[]>

/**
 * A visit speaks of a matter: the matter is as `found` says, and fine where nothing was found.
 * It stands until the next visit that speaks of the same matter. A visit that records any finding of a foot speaks of
 * all findings of that foot: one that it does not list is no longer there.
 */
export interface Statement {
  readonly foot: Foot | null
  /** What else parts one matter from another at that foot: the way it was judged, the pair. */
  readonly matter: string
  readonly found: readonly Facts[]
}

export const says = (foot: Foot | null, found: readonly Facts[], matter = ''): Statement => ({
  foot,
  matter,
  found,
})

/** Findings of a foot that are there: grade 1 or more. */
export const present = (findings: readonly Finding[], what: string): readonly Finding[] =>
  findings.filter((finding) => finding.what === what && finding.grade > 0)

/** Findings of each foot of which the visit records any. */
export function findingsByFoot(visit: Visit): FindingsByFoot {
  const byFoot = new Map<Foot, Finding[]>()
  for (const finding of visit.findings) {
    const group = byFoot.get(finding.foot)
    if (group === undefined) byFoot.set(finding.foot, [finding])
    else group.push(finding)
  }
  return byFoot
}

/** The findings of the visit at hand. */
export const findingsNow = ({ findings, place }: Moment): FindingsByFoot => findings[place] ?? new Map()

/** The latest visit before this one that holds what is asked for; null where none does. */
export function lastBefore<T>({ visits, place }: Moment, read: (visit: Visit) => T | null): T | null {
  for (let i = place - 1; i >= 0; i--) {
    const visit = visits[i]
    const value = visit === undefined ? null : read(visit)
    if (value !== null) return value
  }
  return null
}
