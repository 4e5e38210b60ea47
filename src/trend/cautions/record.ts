/** What the rules look at: a horse's visits in order, and the last word on each matter up to the visit looked at. */
import type { Finding, Horse, Visit } from '../../casebook/model.ts'
import { daysBetween, type PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { Columns } from '../columns.ts'

export interface CareRecord {
  readonly horse: Horse
  readonly columns: Columns
  /** Names of what was found at any visit, grade 1 or more. */
  readonly names: ReadonlySet<string>
  /** Up to the visit being looked at; it moves on with the visits. */
  readonly known: LastWords
}

export interface LastWords {
  readonly of: Readonly<Record<Foot, LastWord>>
  /** Whether a painkiller may still hide lameness on a day. */
  underPainkiller(day: PlainDate): boolean
}

/** What was last said of a foot; null where nothing was. */
export interface LastWord {
  /** The last word on each finding, by name and place. */
  readonly findings: ReadonlyMap<string, SaidFinding>
  readonly pulse: number | null
  /** A lower grade judged under a painkiller, or by someone who may not clear it, does not count. */
  readonly lameness: number | null
  /** Who found it; a vet, where one did. */
  readonly lamenessBy: string | null
  /** Whether lameness was last judged 0 by the same judge or a vet, and under no painkiller. */
  readonly lamenessGone: boolean
  readonly stance: string | null
  /** Grade that the hoof testers met. */
  readonly testers: number | null
}

export interface SaidFinding {
  readonly finding: Finding
  readonly visit: Visit
}

/** A painkiller given within so many days before may hide lameness. Common practice, no source. */
const painkillerDays = 7

type Open<T> = { -readonly [K in keyof T]: T[K] }

interface OpenLastWord extends Open<Omit<LastWord, 'findings'>> {
  readonly findings: Map<string, SaidFinding>
}

/**
 * The last words, and how a visit moves them on.
 * @param doses days on which a painkiller was given, whichever visit tells of it
 */
export function lastWords(doses: readonly PlainDate[] = []): LastWords & {
  hear(visit: Visit, findings?: readonly FootFinding[]): void
} {
  const of = Object.fromEntries(
    feet.map((foot): [Foot, OpenLastWord] => [
      foot,
      {
        findings: new Map(),
        pulse: null,
        lameness: null,
        lamenessBy: null,
        lamenessGone: false,
        stance: null,
        testers: null,
      },
    ]),
  ) as Record<Foot, OpenLastWord>
  const underPainkiller = (day: PlainDate) =>
    doses.some((dose) => dose <= day && daysBetween(dose, day) <= painkillerDays)
  return {
    of,
    underPainkiller,
    hear(visit, findings = gravestAt(visit)) {
      const { comfort, stance } = visit
      for (const { foot, finding } of findings) hearFinding(of[foot].findings, finding, visit)
      for (const foot of feet) {
        const word = of[foot]
        word.pulse = comfort.digitalPulse[foot] ?? word.pulse
        word.stance = stance[foot]?.position ?? word.stance
        word.testers = comfort.hoofTesters[foot]?.grade ?? word.testers
        const grade = comfort.lameness[foot]
        if (grade === undefined) continue
        const hidden = underPainkiller(visit.date)
        const judge = judgeOf(visit)
        const counts = !hidden && mayClear(judge, word.lamenessBy)
        word.lamenessGone = grade === 0 && counts
        if (counts || grade >= (word.lameness ?? 0)) word.lameness = grade
        if (grade > 0) word.lamenessBy = finderOf(word.lamenessBy, judge)
      }
    },
  }
}

/** The practitioner, where the visit does not say who judged. */
export const judgeOf = ({ comfort }: Visit): string => comfort.lamenessBy ?? 'practitioner'

/** Lameness is gone by the word of whoever found it, or of a vet. */
export const mayClear = (judge: string, found: string | null): boolean =>
  found === null || judge === found || isVet(judge)

/** Whose word it takes: a vet's, once a vet has found it. */
export const finderOf = (before: string | null, judge: string): string =>
  before !== null && isVet(before) ? before : judge

export const isVet = (judge: string): boolean => /\bvet/i.test(judge)

const keyOf = ({ what, place }: Finding): string => `${what}|${place}`

function hearFinding(findings: Map<string, SaidFinding>, finding: Finding, visit: Visit): void {
  findings.set(keyOf(finding), { finding, visit })
  if (finding.grade > 0 || finding.place !== 'whole foot') return
  // Gone from the whole foot is gone from every place.
  for (const [key, said] of findings)
    if (said.finding.what === finding.what)
      findings.set(key, { finding: { ...said.finding, grade: 0 }, visit })
}

export interface FootFinding {
  readonly foot: Foot
  readonly finding: Finding
}

/** The findings of a visit, each place of each foot once: where one is written twice, the graver. */
export function gravestAt(visit: Visit): readonly FootFinding[] {
  const gravest = new Map<string, Finding>()
  for (const finding of visit.findings) {
    const key = `${finding.foot}|${keyOf(finding)}`
    const known = gravest.get(key)
    if (known === undefined || finding.grade > known.grade) gravest.set(key, finding)
  }
  return [...gravest.values()].map((finding) => ({ foot: finding.foot, finding }))
}

/** The gravest of that name that is still there at any place of the foot; null where none is. */
export function gravest({ findings }: LastWord, what: string): Finding | null {
  let found: Finding | null = null
  for (const { finding } of findings.values())
    if (finding.what === what && finding.grade > (found?.grade ?? 0)) found = finding
  return found
}

/**
 * Findings not yet said to be gone, by foot, in the order in which they were first seen, each with the visit that
 * last spoke of it. A visit that does not mention a finding leaves it open.
 */
export function openFindings(visits: readonly Visit[]): readonly SaidFinding[] {
  const words = lastWords()
  for (const visit of visits) words.hear(visit)
  return feet.flatMap((foot) =>
    [...words.of[foot].findings.values()].filter(({ finding }) => finding.grade > 0),
  )
}

export const careRecord = (horse: Horse, columns: Columns, known: LastWords): CareRecord => ({
  horse,
  columns,
  known,
  names: namesFound(columns.visits),
})

function namesFound(visits: readonly Visit[]): ReadonlySet<string> {
  const names = new Set<string>()
  for (const { findings } of visits) for (const { what, grade } of findings) if (grade > 0) names.add(what)
  return names
}
