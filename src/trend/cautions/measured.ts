/** Signs that are measured: the depth of the sole, and what one trim changed. */
import { type Foot, feet, feetOf, pairs } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { Facts } from '../assessed-care.ts'
import { type Column, readingAt } from '../column.ts'
import { type Columns, families } from '../columns.ts'
import type { CareRecord } from './record.ts'
import { type Look, sign, type Word } from './sign.ts'

/** The columns of a measure at a foot, from one family. */
interface BothStages {
  readonly before: Column | null
  readonly after: Column | null
}

/** Gauge first; the families that read the measure. */
const readAt = ({ find }: Columns, foot: Foot, measure: MeasureId): readonly BothStages[] =>
  families
    .map((family) => ({
      before: find(family, 'before', foot, measure),
      after: find(family, 'after', foot, measure),
    }))
    .filter(({ before, after }) => before !== null || after !== null)

/** The feet at which any of the measures was ever read, each with its columns in order of the measures. */
const feetRead = (columns: Columns, measures: readonly MeasureId[]) =>
  feet
    .map((foot) => ({ foot, columns: measures.map((measure) => readAt(columns, foot, measure)) }))
    .filter(({ columns: read }) => read.some(({ length }) => length > 0))

/** Lowest reading of a measure at the visit, over its stages, gauge first; NaN where not read. */
function lowest(read: readonly BothStages[], place: number): number {
  for (const { before, after } of read) {
    const arrival = readingAt(before, place)
    const leaving = readingAt(after, place)
    if (Number.isNaN(arrival) && Number.isNaN(leaving)) continue
    return Number.isNaN(arrival) ? leaving : Number.isNaN(leaving) ? arrival : Math.min(arrival, leaving)
  }
  return Number.NaN
}

/** after - before at one visit, both read in the same way; NaN where they were not. */
function trimStep(read: readonly BothStages[], place: number): number {
  for (const { before, after } of read) {
    const step = readingAt(after, place) - readingAt(before, place)
    if (!Number.isNaN(step)) return step
  }
  return Number.NaN
}

/** More than a limit, and not by arithmetic alone: a quarter of an inch four times is an inch. */
const over = (amount: number, limit: number): boolean => amount - limit > 1e-9

type Step = { readonly measure: MeasureId; readonly step: number; readonly limit: number }

/**
 * Speaks of each foot at which a measure gives an amount at the visit.
 * @param words made once a record, for what has to remember
 */
const amountSays =
  <F extends Facts>(
    measure: MeasureId,
    amountOf: (read: readonly BothStages[], place: number) => number,
    words: () => (amount: number, foot: Foot) => Word<F>,
  ) =>
  ({ columns }: CareRecord): Look<F> | null => {
    const read = feetRead(columns, [measure])
    if (read.length === 0) return null
    const wordOf = words()
    return (at, speak) => {
      for (const {
        foot,
        columns: [of = []],
      } of read) {
        const amount = amountOf(of, at.place)
        if (!Number.isNaN(amount)) speak(foot, wordOf(amount, foot))
      }
    }
  }

/** What one trim changed. */
const step = (measure: MeasureId, limit: number, sizeOf: (step: number) => number) =>
  amountSays<Step>(
    measure,
    trimStep,
    () => (changed) => (over(sizeOf(changed), limit) ? { measure, step: changed, limit } : 'lower'),
  )

/** Limits for one trim, mm and degrees. Common practice, no source. */
export const toeShortenedMuch = 10
export const heelsLoweredMuch = 6
const toeAngleChangedMuch = 4
const pairUneven = 5

/** One word for the foot: of the heel that lost more. */
const heelsLowered = ({ columns }: CareRecord): Look<Step> | null => {
  const read = feetRead(columns, ['heel-medial', 'heel-lateral'])
  if (read.length === 0) return null
  return (at, speak) => {
    for (const {
      foot,
      columns: [inner = [], outer = []],
    } of read) {
      const medial = trimStep(inner, at.place)
      const lateral = trimStep(outer, at.place)
      const byMedial = medial <= lateral || Number.isNaN(lateral)
      const lowered = byMedial ? medial : lateral
      if (Number.isNaN(lowered)) continue
      const facts: Step = {
        measure: byMedial ? 'heel-medial' : 'heel-lateral',
        step: lowered,
        limit: heelsLoweredMuch,
      }
      speak(foot, over(-lowered, heelsLoweredMuch) ? facts : 'lower')
    }
  }
}

type Uneven = {
  readonly left: number
  readonly right: number
  readonly difference: number
  readonly limit: number
}

const unevenPair = ({ columns: { find } }: CareRecord): Look<Uneven> => {
  const read = pairs.map((pair) => {
    const [left, right] = feetOf(pair).map((foot) =>
      families.map((family) => find(family, 'after', foot, 'toe-angle')),
    )
    return { pair, left: left ?? [], right: right ?? [] }
  })
  return (at, speak) => {
    for (const { pair, left, right } of read)
      for (let i = 0; i < families.length; i++) {
        const one = readingAt(left[i] ?? null, at.place)
        const other = readingAt(right[i] ?? null, at.place)
        const difference = one - other
        if (Number.isNaN(difference)) continue
        const facts = { left: one, right: other, difference, limit: pairUneven }
        speak(pair, over(Math.abs(difference), pairUneven) ? facts : 'lower')
        break
      }
  }
}

/** Below this a vet has the word; published, second hand: usually under 7 mm where the groove at the apex is gone. */
const soleCritical = 7
/** Common practice, no source. */
const soleLow = 10
/** Called thin in light breeds; published, second hand. */
const soleThin = 15
/** A loss of sole that is told, mm. Common practice, no source. */
const soleFall = 4

type Depth = { readonly depth: number; readonly limit: number }

const soleUnder = (limit: number) =>
  amountSays<Depth>('sole-depth', lowest, () => (depth) => (depth < limit ? { depth, limit } : 'gone'))

/** Against the deepest that was read before. */
const soleFalling = amountSays<Depth & { readonly before: number }>('sole-depth', lowest, () => {
  const deepest = new Map<Foot, number>()
  return (depth, foot) => {
    const before = deepest.get(foot) ?? depth
    deepest.set(foot, Math.max(before, depth))
    return before - depth > soleFall - 1e-9 ? { depth, before, limit: soleFall } : 'lower'
  }
})

type SoleWord = { readonly by: 'finding' | 'trim limits' }

/** As found, and as horse.md says: that is how the sole is now, so it counts at the latest visit. */
const soleFlat = ({ horse, names }: CareRecord): Look<SoleWord> | null => {
  const { sole } = horse.trimLimits
  if (!names.has('flat sole') && feet.every((foot) => sole[foot] !== 'flat')) return null
  return ({ findings, isLast }, speak) => {
    const said = isLast ? sole : {}
    for (const foot of feet) if (said[foot] === 'flat') speak(foot, { by: 'trim limits' })
    for (const { foot, finding } of findings)
      if (finding.what === 'flat sole' && (finding.grade > 0 || said[foot] !== 'flat'))
        speak(foot, finding.grade > 0 ? { by: 'finding' } : 'gone')
  }
}

type Thin = {
  readonly by: 'finding' | 'sole depth' | 'groove apex'
  readonly depth: number | null
  readonly limit: number | null
}

/** Three ways to know it, each a matter of its own. */
const soleIsThin = ({ columns, names }: CareRecord): Look<Thin> | null => {
  const depths = feetRead(columns, ['sole-depth'])
  const grooves = feetRead(columns, ['groove-apex'])
  if (!names.has('thin sole') && depths.length === 0 && grooves.length === 0) return null
  return (at, speak) => {
    for (const { foot, finding } of at.findings)
      if (finding.what === 'thin sole')
        speak(foot, finding.grade > 0 ? { by: 'finding', depth: null, limit: null } : 'gone', 'finding')
    for (const {
      foot,
      columns: [of = []],
    } of depths) {
      const depth = lowest(of, at.place)
      if (!Number.isNaN(depth))
        speak(foot, depth < soleThin ? { by: 'sole depth', depth, limit: soleThin } : 'gone', 'sole depth')
    }
    for (const {
      foot,
      columns: [of = []],
    } of grooves) {
      const depth = lowest(of, at.place)
      if (!Number.isNaN(depth))
        speak(foot, depth <= 0 ? { by: 'groove apex', depth, limit: 0 } : 'gone', 'groove apex')
    }
  }
}

export const measuredSigns = [
  sign({ code: 'sole-depth-critical', level: 'stop', family: 'sole', over: soleUnder(soleCritical) }),
  sign({ code: 'sole-depth-low', level: 'vet', family: 'sole', over: soleUnder(soleLow) }),
  sign({ code: 'sole-depth-falling', level: 'vet', family: 'sole', over: soleFalling }),
  sign({ code: 'sole-flat', level: 'mind', over: soleFlat }),
  sign({ code: 'sole-thin', level: 'mind', family: 'sole', over: soleIsThin }),
  sign({
    code: 'toe-shortened-much',
    level: 'mind',
    over: step('toe-length', toeShortenedMuch, (changed) => -changed),
  }),
  sign({ code: 'heels-lowered-much', level: 'mind', over: heelsLowered }),
  sign({
    code: 'toe-angle-changed-much',
    level: 'mind',
    over: step('toe-angle', toeAngleChangedMuch, Math.abs),
  }),
  sign({ code: 'pair-uneven-after-trim', level: 'mind', over: unevenPair }),
] as const
