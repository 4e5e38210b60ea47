/** Rules on what was found on a foot. */
import type { Finding } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { Facts } from '../assessed-care.ts'
import { findingsNow, type Moment, present, type Rule, type Statement, says } from './rule.ts'

/** Speaks of each foot of which the visit records findings. */
const footRule =
  (found: (findings: readonly Finding[], foot: Foot, at: Moment) => readonly Facts[]) =>
  (at: Moment): readonly Statement[] =>
    [...findingsNow(at)].map(([foot, findings]) => says(foot, found(findings, foot, at)))

const factsOf = ({ place, grade, words }: Finding): Facts => ({ place, grade, words })

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
  { code: 'drainage', level: 'stop', look: footRule((all) => present(all, 'drainage').map(factsOf)) },
  {
    code: 'heat-with-lameness',
    level: 'stop',
    look: (at) =>
      [...new Set([...findingsNow(at).keys(), ...lameFeet(at)])].flatMap((foot) => {
        const findings = findingsNow(at).get(foot)
        const lameness = at.visit.comfort.lameness[foot]
        const hot = present(findings ?? [], 'heat')
        if (hot.length > 0 && (lameness ?? 0) > 0)
          return [
            says(
              foot,
              hot.map((heat) => ({ ...factsOf(heat), lameness: lameness ?? null })),
            ),
          ]
        // Either half of it gone is the all-clear; silence on both is not.
        return lameness === 0 || (findings !== undefined && hot.length === 0) ? [says(foot, [])] : []
      }),
  },
  {
    code: 'puncture',
    level: 'stop',
    look: footRule((all) =>
      present(all, 'puncture')
        .filter(({ place }) => groundSide.has(place))
        .map(factsOf),
    ),
  },
  {
    code: 'nail-in-white-line-tender',
    level: 'vet',
    look: footRule((all) => {
      const tender = present(all, 'tenderness').length > 0
      return present(all, 'nail in white line')
        .filter(({ words }) => tender || wordsSay(words, sore))
        .map(factsOf)
    }),
  },
  {
    code: 'crack-full-thickness',
    level: 'vet',
    look: footRule((all) =>
      present(all, 'crack')
        .filter(({ words }) => wordsSay(words, cracked))
        .map(factsOf),
    ),
  },
  {
    code: 'thrush-severe',
    level: 'vet',
    look: footRule((all) =>
      present(all, 'thrush')
        .filter(({ grade }) => grade === 3)
        .map(factsOf),
    ),
  },
  {
    code: 'sulcus-split-deep',
    level: 'vet',
    look: footRule((all) =>
      present(all, 'sulcus split')
        .filter(
          ({ place, grade, words }) => place === 'heel bulbs' || grade === 3 || wordsSay(words, deepInBulbs),
        )
        .map(factsOf),
    ),
  },
  { code: 'swelling', level: 'vet', look: footRule((all) => present(all, 'swelling').map(factsOf)) },
  { code: 'proud-flesh', level: 'vet', look: footRule((all) => present(all, 'proud tissue').map(factsOf)) },
  { code: 'finding-worsening', level: 'vet', look: footRule(worsening) },
]

const lameFeet = ({ visit }: Moment): readonly Foot[] => Object.keys(visit.comfort.lameness) as Foot[]

/** Findings whose grade has risen twice running, over the last three visits that recorded findings of the foot. */
function worsening(findings: readonly Finding[], foot: Foot, at: Moment): readonly Facts[] {
  const earlier = earlierFindings(at, foot, 2)
  const [before, first] = earlier
  if (before === undefined || first === undefined) return []
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
function earlierFindings(at: Moment, foot: Foot, most: number): readonly (readonly Finding[])[] {
  const found: (readonly Finding[])[] = []
  for (let i = at.place - 1; i >= 0 && found.length < most; i--) {
    const here = at.findings[i]?.get(foot)
    if (here !== undefined) found.push(here)
  }
  return found
}
