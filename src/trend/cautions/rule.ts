/** What a caution rule is: it looks at one visit and says of which feet the visit speaks, and what it says. */
import type { Finding, Horse, Visit } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { CautionCode, CautionLevel, Facts } from '../assessed-care.ts'
import type { Columns } from '../columns.ts'

export interface Rule {
  readonly code: CautionCode
  readonly level: CautionLevel
  /** Given the record once, so that the rule can find its columns; null where it holds nothing that could be found. */
  readonly over: (record: CareRecord) => Look | null
}

/** Looks at one visit after another, oldest first. */
export type Look = (at: Moment, say: Say) => void

export interface CareRecord {
  readonly horse: Horse
  readonly columns: Columns
  readonly moments: readonly Moment[]
  /** Names of what was found at any visit, grade 1 or more. */
  readonly names: ReadonlySet<string>
}

export const careRecord = (horse: Horse, columns: Columns): CareRecord => ({
  horse,
  columns,
  moments: columns.visits.map((visit, place) => ({ place, visit, findings: findingsByFoot(visit) })),
  names: namesFound(columns.visits),
})

function namesFound(visits: readonly Visit[]): ReadonlySet<string> {
  const names = new Set<string>()
  for (const { findings } of visits) for (const { what, grade } of findings) if (grade > 0) names.add(what)
  return names
}

/** One visit of the record. */
export interface Moment {
  readonly place: number
  readonly visit: Visit
  /** The findings of each foot of which the visit records any, in the order in which it names the feet. */
  readonly findings: readonly FootFindings[]
}

export interface FootFindings {
  readonly foot: Foot
  readonly findings: readonly Finding[]
}

/**
 * A visit speaks of a matter: the matter is as `found` says, and fine where nothing was found.
 * It stands until the next visit that speaks of the same matter. A visit that records any finding of a foot speaks of
 * all findings of that foot: one that it does not list is no longer there.
 * @param matter what else parts one matter from another at that foot: the way it was judged, the pair
 */
export type Say = (at: Moment, foot: Foot | null, found: readonly Facts[], matter?: string) => void

/** What most visits have found of most matters. */
export const nothing: readonly Facts[] = []

/** Facts of the findings of that name that are there (grade 1 or more) and pass the test. */
export function factsOf(
  findings: readonly Finding[],
  what: string,
  test: (finding: Finding) => boolean,
  facts: (finding: Finding) => Facts,
): readonly Facts[] {
  let found: Facts[] | null = null
  for (const finding of findings) {
    if (finding.what !== what || finding.grade === 0 || !test(finding)) continue
    found ??= []
    found.push(facts(finding))
  }
  return found ?? nothing
}

export const any = (): boolean => true

function findingsByFoot(visit: Visit): readonly FootFindings[] {
  const byFoot: { readonly foot: Foot; readonly findings: Finding[] }[] = []
  for (const finding of visit.findings) {
    const group = byFoot.find(({ foot }) => foot === finding.foot)
    if (group === undefined) byFoot.push({ foot: finding.foot, findings: [finding] })
    else group.findings.push(finding)
  }
  return byFoot
}

/** The findings of a foot at a visit; null where it records none of that foot. */
export function findingsAt(at: Moment | undefined, foot: Foot): readonly Finding[] | null {
  for (const group of at?.findings ?? []) if (group.foot === foot) return group.findings
  return null
}

/** The latest visit before the one at `place` that holds what is asked for; null where none does. */
export function lastBefore<T>(
  moments: readonly Moment[],
  place: number,
  read: (visit: Visit) => T | null,
): T | null {
  for (let i = place - 1; i >= 0; i--) {
    const at = moments[i]
    const value = at === undefined ? null : read(at.visit)
    if (value !== null) return value
  }
  return null
}
