/** Rules on what was measured: the sole, what one trim changed, the pair after it; and the horse's body. */
import { feet, feetOf, pairs } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { Facts } from '../assessed-care.ts'
import { families, stages, valueAt } from '../columns.ts'
import { findingsNow, type Moment, present, type Rule, type Statement, says } from './rule.ts'

/** Below this a vet has the word; published, second hand: usually under 7 mm where the groove at the apex is gone. */
const soleCritical = 7
/** Called thin in light breeds; published, second hand. */
const soleThin = 15
/** Limits for one trim, mm and degrees. Common practice, no source. */
const toeShortenedMuch = 10
const heelsLoweredMuch = 6
const toeAngleChangedMuch = 4
const pairUneven = 5

/** More than a limit, and not by arithmetic alone: a quarter of an inch four times is an inch. */
const over = (amount: number, limit: number): boolean => amount - limit > 1e-9

/** Lowest reading of a measure at the visit, over its stages, gauge first; null where not read. */
function lowest(at: Moment, foot: (typeof feet)[number], measure: MeasureId): number | null {
  for (const family of families) {
    const read = stages
      .map((stage) => valueAt(at.columns.find(family, stage, foot, measure), at.place))
      .filter((value) => value !== null)
    if (read.length > 0) return Math.min(...read)
  }
  return null
}

/** after - before at one visit, both read in the same way; null where they were not. */
function trimStep(at: Moment, foot: (typeof feet)[number], measure: MeasureId): number | null {
  for (const family of families) {
    const before = valueAt(at.columns.find(family, 'before', foot, measure), at.place)
    const after = valueAt(at.columns.find(family, 'after', foot, measure), at.place)
    if (before !== null && after !== null) return after - before
  }
  return null
}

const readingRule =
  (measure: MeasureId, found: (value: number) => Facts | null) =>
  (at: Moment): readonly Statement[] =>
    feet.flatMap((foot) => {
      const value = lowest(at, foot, measure)
      const facts = value === null ? null : found(value)
      return value === null ? [] : [says(foot, facts === null ? [] : [facts], measure)]
    })

const stepRule =
  (measure: MeasureId, found: (step: number) => boolean) =>
  (at: Moment): readonly Statement[] =>
    feet.flatMap((foot) => {
      const step = trimStep(at, foot, measure)
      return step === null ? [] : [says(foot, found(step) ? [{ measure, step }] : [], measure)]
    })

const soleFinding =
  (what: string) =>
  (at: Moment): readonly Statement[] =>
    [...findingsNow(at)].map(([foot, findings]) =>
      says(
        foot,
        present(findings, what).map(({ grade, words }) => ({ by: 'finding', grade, words })),
        'finding',
      ),
    )

export const readingRules: readonly Rule[] = [
  {
    code: 'sole-depth-critical',
    level: 'stop',
    look: readingRule('sole-depth', (depth) => (depth < soleCritical ? { depth } : null)),
  },
  {
    code: 'sole-flat',
    level: 'mind',
    look: (at) => {
      const found = findingsNow(at)
      // horse.md says how the sole is now, so its word counts at the latest visit.
      const said = at.place === at.visits.length - 1 ? at.horse.trimLimits.sole : {}
      return feet.flatMap((foot) => {
        const findings = found.get(foot)
        const flat = present(findings ?? [], 'flat sole').map(({ grade, words }) => ({
          by: 'finding',
          grade,
          words,
        }))
        if (flat.length === 0 && said[foot] === 'flat') return [says(foot, [{ by: 'trim limits' }])]
        return findings === undefined ? [] : [says(foot, flat)]
      })
    },
  },
  {
    code: 'sole-thin',
    level: 'mind',
    look: (at) => [
      ...soleFinding('thin sole')(at),
      ...readingRule('sole-depth', (depth) => (depth < soleThin ? { by: 'sole depth', depth } : null))(at),
      ...readingRule('groove-apex', (depth) => (depth <= 0 ? { by: 'groove apex', depth } : null))(at),
    ],
  },
  {
    code: 'toe-shortened-much',
    level: 'mind',
    look: stepRule('toe-length', (step) => over(-step, toeShortenedMuch)),
  },
  {
    code: 'heels-lowered-much',
    level: 'mind',
    // One word for the foot: of the heel that lost more.
    look: (at) =>
      feet.flatMap((foot) => {
        const steps = (['heel-medial', 'heel-lateral'] as const)
          .map((measure) => ({ measure, step: trimStep(at, foot, measure) }))
          .flatMap(({ measure, step }) => (step === null ? [] : [{ measure, step }]))
          .toSorted((a, b) => a.step - b.step)
        const [most] = steps
        return most === undefined ? [] : [says(foot, over(-most.step, heelsLoweredMuch) ? [most] : [])]
      }),
  },
  {
    code: 'toe-angle-changed-much',
    level: 'mind',
    look: stepRule('toe-angle', (step) => over(Math.abs(step), toeAngleChangedMuch)),
  },
  {
    code: 'pair-uneven-after-trim',
    level: 'mind',
    look: (at) =>
      pairs.flatMap((pair) => {
        const [left, right] = feetOf(pair)
        for (const family of families) {
          const one = valueAt(at.columns.find(family, 'after', left, 'toe-angle'), at.place)
          const other = valueAt(at.columns.find(family, 'after', right, 'toe-angle'), at.place)
          if (one === null || other === null) continue
          const uneven = over(Math.abs(one - other), pairUneven)
          return [
            says(null, uneven ? [{ pair, left: one, right: other, difference: one - other }] : [], pair),
          ]
        }
        return []
      }),
  },
]

export const bodyRules: readonly Rule[] = [
  {
    code: 'crest-high',
    level: 'vet',
    look: ({ visit: { bodyState } }) =>
      bodyState.crest === null ? [] : [says(null, bodyState.crest >= 3 ? [{ grade: bodyState.crest }] : [])],
  },
  {
    code: 'condition-high',
    level: 'mind',
    look: ({ visit: { bodyState } }) =>
      bodyState.condition === null
        ? []
        : [says(null, bodyState.condition >= 7 ? [{ grade: bodyState.condition }] : [])],
  },
]
