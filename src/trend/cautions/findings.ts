/** Rules on what was found on a foot. */
import type { Finding } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { Facts } from '../assessed-care.ts'
import {
  any,
  type CareRecord,
  factsOf,
  findingsAt,
  type Look,
  type Moment,
  nothing,
  type Rule,
} from './rule.ts'

/** Speaks of each foot of which the visit records findings. */
const footRule =
  (
    found: (
      findings: readonly Finding[],
      foot: Foot,
      at: Moment,
      moments: readonly Moment[],
    ) => readonly Facts[],
  ) =>
  ({ moments }: CareRecord): Look =>
  (at, say) => {
    for (const { foot, findings } of at.findings) say(at, foot, found(findings, foot, at, moments))
  }

const facts = ({ place, grade, words }: Finding): Facts => ({ place, grade, words })

/** Speaks of the findings of one name that pass a test. */
const findingRule = (what: string, test: (finding: Finding) => boolean = any) =>
  where(
    what,
    footRule((findings) => factsOf(findings, what, test, facts)),
  )

/** Looks only where something of that name was ever found. */
const where =
  (what: string, over: (record: CareRecord) => Look) =>
  (record: CareRecord): Look | null =>
    record.names.has(what) ? over(record) : null

/** The ground side of the foot, where a nail or puncture may reach what lies above. */
const groundSide: ReadonlySet<string> = new Set([
  'sole',
  'frog',
  'central sulcus',
  'medial groove',
  'lateral groove',
  'medial bar',
  'lateral bar',
  'bars',
  'white line',
  'whole foot',
])

/** Whether the words of a finding say something, clause by clause: `part thickness, does not move` does not say "moves". */
export function wordsSay(words: string | null, what: RegExp): boolean {
  return (words ?? '')
    .split(/[,;.]|\b(?:and|but)\b/)
    .some((clause) => what.test(clause) && !/\b(?:no|not|never|without|none|nothing)\b|n't\b/i.test(clause))
}

const cracked = /full[- ]?thickness|through the wall|\bble(?:e?d)|\bmov(?:e|es|ed|ing|ement)\b/i
const deepInBulbs = /\bdeep|\bbulbs?\b/i
const sore = /\btender|\bsore|\bflinch/i

export const findingRules: readonly Rule[] = [
  { code: 'drainage', level: 'stop', over: findingRule('drainage') },
  {
    code: 'heat-with-lameness',
    level: 'stop',
    over: where('heat', () => (at, say) => {
      const { lameness } = at.visit.comfort
      for (const { foot, findings } of at.findings) {
        const grade = lameness[foot]
        const hot = factsOf(findings, 'heat', any, (heat) => ({ ...facts(heat), lameness: grade ?? null }))
        // Either half of it gone is the all-clear; silence on both is not.
        if (hot.length === 0 || grade === 0) say(at, foot, nothing)
        else if (grade !== undefined) say(at, foot, hot)
      }
      for (const foot of feet)
        if (lameness[foot] === 0 && findingsAt(at, foot) === null) say(at, foot, nothing)
    }),
  },
  { code: 'puncture', level: 'stop', over: findingRule('puncture', ({ place }) => groundSide.has(place)) },
  {
    code: 'nail-in-white-line-tender',
    level: 'vet',
    over: where(
      'nail in white line',
      footRule((findings) => {
        const tender = findings.some(({ what, grade }) => what === 'tenderness' && grade > 0)
        const counts = tender ? any : ({ words }: Finding) => wordsSay(words, sore)
        return factsOf(findings, 'nail in white line', counts, facts)
      }),
    ),
  },
  {
    code: 'crack-full-thickness',
    level: 'vet',
    over: findingRule('crack', ({ words }) => wordsSay(words, cracked)),
  },
  { code: 'thrush-severe', level: 'vet', over: findingRule('thrush', ({ grade }) => grade === 3) },
  {
    code: 'sulcus-split-deep',
    level: 'vet',
    over: findingRule(
      'sulcus split',
      ({ place, grade, words }) => place === 'heel bulbs' || grade === 3 || wordsSay(words, deepInBulbs),
    ),
  },
  { code: 'swelling', level: 'vet', over: findingRule('swelling') },
  { code: 'proud-flesh', level: 'vet', over: findingRule('proud tissue') },
  { code: 'finding-worsening', level: 'vet', over: footRule(worsening) },
]

/** Findings whose grade has risen twice running, over the last three visits that recorded findings of the foot. */
function worsening(
  findings: readonly Finding[],
  foot: Foot,
  { place: visit }: Moment,
  moments: readonly Moment[],
): readonly Facts[] {
  // What has risen twice stands at 2 at the least.
  if (findings.every(({ grade }) => grade < 2)) return nothing
  const [before, first] = earlierFindings(moments, visit, foot, 2)
  if (before === undefined || first === undefined) return nothing
  return findings.flatMap(({ what, place, grade }) => {
    const gradeIn = (all: readonly Finding[]) =>
      all.find((one) => one.what === what && one.place === place)?.grade ?? null
    const [from, middle] = [gradeIn(first), gradeIn(before)]
    return from !== null && middle !== null && from < middle && middle < grade
      ? [{ finding: what, place, first: from, middle, grade }]
      : []
  })
}

/** The findings of a foot at the visits before this one that recorded any, latest first. */
function earlierFindings(
  moments: readonly Moment[],
  visit: number,
  foot: Foot,
  most: number,
): readonly (readonly Finding[])[] {
  const found: (readonly Finding[])[] = []
  for (let i = visit - 1; i >= 0 && found.length < most; i--) {
    const here = findingsAt(moments[i], foot)
    if (here !== null) found.push(here)
  }
  return found
}
