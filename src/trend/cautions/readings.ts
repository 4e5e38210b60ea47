/** Rules on what one trim changed, on the pair after it, and on the horse's body. */
import type { Visit } from '../../casebook/model.ts'
import { feetOf, pairs } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import { readingAt } from '../column.ts'
import { families } from '../columns.ts'
import { feetRead, trimStep, valueRule } from './measured.ts'
import { type Look, nothing, type Rule } from './rule.ts'

/** Limits for one trim, mm and degrees. Common practice, no source. */
const toeShortenedMuch = 10
const heelsLoweredMuch = 6
const toeAngleChangedMuch = 4
const pairUneven = 5

/** More than a limit, and not by arithmetic alone: a quarter of an inch four times is an inch. */
const over = (amount: number, limit: number): boolean => amount - limit > 1e-9

const stepRule = (measure: MeasureId, much: (step: number) => boolean) =>
  valueRule(measure, trimStep, (step) => (much(step) ? { measure, step } : null))

export const readingRules: readonly Rule[] = [
  {
    code: 'toe-shortened-much',
    level: 'mind',
    over: stepRule('toe-length', (step) => over(-step, toeShortenedMuch)),
  },
  {
    code: 'heels-lowered-much',
    level: 'mind',
    // One word for the foot: of the heel that lost more.
    over: ({ columns }) => {
      const read = feetRead(columns, ['heel-medial', 'heel-lateral'])
      if (read.length === 0) return null
      return (at, say) => {
        for (const { foot, columns } of read) {
          const medial = trimStep(columns[0] ?? [], at.place)
          const lateral = trimStep(columns[1] ?? [], at.place)
          const byMedial = medial <= lateral || Number.isNaN(lateral)
          const measure = byMedial ? 'heel-medial' : 'heel-lateral'
          const step = byMedial ? medial : lateral
          if (Number.isNaN(step)) continue
          say(at, foot, over(-step, heelsLoweredMuch) ? [{ measure, step }] : nothing)
        }
      }
    },
  },
  {
    code: 'toe-angle-changed-much',
    level: 'mind',
    over: stepRule('toe-angle', (step) => over(Math.abs(step), toeAngleChangedMuch)),
  },
  {
    code: 'pair-uneven-after-trim',
    level: 'mind',
    over: ({ columns: { find } }) => {
      const read = pairs.flatMap((pair) => {
        const [left, right] = feetOf(pair).map((foot) =>
          families.map((family) => find(family, 'after', foot, 'toe-angle')),
        )
        return left === undefined || right === undefined ? [] : [{ pair, left, right }]
      })
      return (at, say) => {
        for (const { pair, left, right } of read)
          for (let i = 0; i < families.length; i++) {
            const one = readingAt(left[i] ?? null, at.place)
            const other = readingAt(right[i] ?? null, at.place)
            const difference = one - other
            if (Number.isNaN(difference)) continue
            const uneven = over(Math.abs(difference), pairUneven)
            say(at, null, uneven ? [{ pair, left: one, right: other, difference }] : nothing, pair)
            break
          }
      }
    },
  },
]

/** A score of the body, too high from `limit` on. */
const scoreRule = (scoreOf: (visit: Visit) => number | null, limit: number) => (): Look => (at, say) => {
  const grade = scoreOf(at.visit)
  if (grade !== null) say(at, null, grade >= limit ? [{ grade }] : nothing)
}

export const bodyRules: readonly Rule[] = [
  { code: 'crest-high', level: 'vet', over: scoreRule(({ bodyState }) => bodyState.crest, 3) },
  { code: 'condition-high', level: 'mind', over: scoreRule(({ bodyState }) => bodyState.condition, 7) },
]
