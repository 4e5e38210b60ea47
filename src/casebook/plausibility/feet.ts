/** Feet against each other: two of them swapped, one reading copied to all four, a whole stage copied. */
import { type Foot, feet } from '../../hoof/feet.ts'
import { type MeasureId, measureIds, measures } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import { grouped } from '../grouped.ts'
import type { Stage } from '../model.ts'
import type { PlacedReading } from '../readings.ts'
import type { SpotEdit } from '../report.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { listed } from '../words.ts'
import { type Grid, inWords, type LastReadings, stages } from './history.ts'

/** What readings are held against: a value for a measure at a foot, and when that was, in words. */
export interface Reference {
  readonly when: string
  value(measure: MeasureId, foot: Foot): number | undefined
}

/** The last readings before this visit. */
export const lastTime = (last: LastReadings): Reference => ({
  when: 'last time',
  value: (measure, foot) => last.get(measure, foot)?.value,
})

/** This visit's readings before the trim, where they were taken; else the last ones. */
export const beforeTrim = (grid: Grid, last: LastReadings): Reference => ({
  when: 'until then',
  value: (measure, foot) => grid.at('before', measure, foot)?.reading.value ?? last.get(measure, foot)?.value,
})

export type FootPair = readonly [Foot, Foot]

export const footPairs: readonly FootPair[] = feet.flatMap((one, index) =>
  feet.slice(index + 1).map((other): FootPair => [one, other]),
)

/** Own misfit from which a swap is thought of, in squared standard deviations of a difference. */
export const clearly = 24
/** Crossed misfit a measure up to which the other foot's readings fit: chance alone gives 2. */
export const fits = 6

interface Swap {
  readonly pair: FootPair
  readonly score: number
  /** The measure that shows it best, and its readings at the two feet. */
  readonly measure: MeasureId
  readonly first: PlacedReading
  readonly second: PlacedReading
}

/**
 * Feet whose readings fit each other's earlier readings clearly better than their own. Common practice, no source: own and
 * crossed misfit are sums of squared differences between the two feet over the measures' repeatability, so growth that
 * both feet share drops out. Told in the report; the feet of a swap are returned.
 */
export function checkSwapped(
  placed: PlacedVisit,
  grid: Grid,
  stage: Stage,
  reference: Reference,
  units: LengthUnit,
): ReadonlySet<Foot> {
  const swaps = footPairs
    .map((pair) => swapOf(pair, grid, stage, reference))
    .filter((swap) => swap !== null)
    .sort((a, b) => b.score - a.score)
  const swapped = new Set<Foot>()
  const chosen = swaps.filter(({ pair }) => {
    if (pair.some((foot) => swapped.has(foot))) return false
    for (const foot of pair) swapped.add(foot)
    return true
  })
  const [best] = chosen
  if (best) reportSwaps(best, chosen, placed, stage, reference, units)
  return swapped
}

/** One remark, however many feet have changed places. */
function reportSwaps(
  best: Swap,
  chosen: readonly Swap[],
  placed: PlacedVisit,
  stage: Stage,
  reference: Reference,
  units: LengthUnit,
): void {
  const { pair, measure, first, second } = best
  const [one, other] = pair
  const { kind, name } = measures[measure]
  const say = (value: number | undefined) => inWords(value ?? 0, kind, units)
  const who = whoSwapped(chosen.map((swap) => swap.pair))
  const partner = new Map(chosen.flatMap(({ pair: [a, b] }) => [[a, b] as const, [b, a] as const]))
  const rows = placed.readings.filter(({ reading }) => reading.stage === stage)
  const edits = movedCells(rows, (foot) => partner.get(foot) ?? foot, placed)
  placed.report.warning(
    'feet-swapped',
    first.range,
    `${who} may have changed places ${stage} the trim: ${name} is ${say(first.reading.value)} at ${one} and ${say(second.reading.value)} at ${other}, ${reference.when} it was ${say(reference.value(measure, one))} and ${say(reference.value(measure, other))}.`,
    {
      expected: 'readings near the last ones of the same foot',
      ...(edits
        ? { fix: { words: `exchange them in every row under ${stage}`, edits } }
        : { advice: `exchange them in every row under ${stage}, or set feet: in the order they were read` }),
    },
  )
}

/** `LF and RF`; `fores and hinds` or `left and right feet` where all four have moved. */
export function whoSwapped(pairs: readonly FootPair[]): string {
  const names = pairs.map((pair) => listed([...pair]))
  const all = pairs
    .map((pair) => [...pair].sort().join(' '))
    .sort()
    .join(', ')
  if (all === 'LF LH, RF RH') return 'Fores and hinds'
  if (all === 'LF RF, LH RH') return 'Left and right feet'
  return names.join(', and ')
}

/**
 * What puts every cell where it belongs, or null where a cell has no partner to change places with. `from` names the foot
 * whose reading should stand at a foot.
 */
export function movedCells(
  rows: readonly PlacedReading[],
  from: (foot: Foot) => Foot,
  { report }: PlacedVisit,
): readonly SpotEdit[] | null {
  const edits: SpotEdit[] = []
  for (const cells of grouped(rows, ({ row }) => row.start).values()) {
    const at = new Map(cells.map((cell) => [cell.reading.foot, cell.range]))
    for (const { reading, range } of cells) {
      const source = at.get(from(reading.foot))
      if (!source) return null
      const text = report.textOf(source)
      if (text.includes('"')) return null
      if (source !== range) edits.push({ start: range.start, end: range.end, text })
    }
  }
  return edits.sort((a, b) => a.start - b.start)
}

function swapOf(pair: FootPair, grid: Grid, stage: Stage, reference: Reference): Swap | null {
  const [one, other] = pair
  let own = 0
  let crossed = 0
  let compared = 0
  let best: Omit<Swap, 'pair' | 'score'> | null = null
  let bestGain = 0
  for (const measure of measureIds) {
    const first = grid.at(stage, measure, one)
    const second = grid.at(stage, measure, other)
    const lastOne = reference.value(measure, one)
    const lastOther = reference.value(measure, other)
    if (!first || !second || lastOne === undefined || lastOther === undefined) continue
    compared++
    const now = first.reading.value - second.reading.value
    const then = lastOne - lastOther
    const variance = 2 * measures[measure].sd ** 2
    own += (now - then) ** 2 / variance
    crossed += (now + then) ** 2 / variance
    const gain = (-4 * now * then) / variance
    if (gain > bestGain) {
      bestGain = gain
      best = { measure, first, second }
    }
  }
  return best && own > clearly && crossed < own / 4 && crossed < fits * compared
    ? { pair, score: own - crossed, ...best }
    : null
}

/** Rows that read the same at all four feet; two of them are hardly chance. Small depths often do agree. */
export function checkCopiedFeet(placed: PlacedVisit, grid: Grid): void {
  for (const stage of stages) {
    const rows = measureIds.flatMap((measure) => {
      const [first, ...rest] = feet.map((foot) => grid.at(stage, measure, foot))
      const alike = first && rest.every((one) => one?.reading.value === first.reading.value)
      return alike && measures[measure].likely[1] > 45 ? [first] : []
    })
    const [first] = rows
    if (!first || rows.length < 2) continue
    const names = listed(rows.map(({ reading }) => measures[reading.measure].name))
    placed.report.warning(
      'feet-copied',
      first.row,
      `All four feet have the same reading ${stage} the trim, in ${names}.`,
      { expected: 'the reading of each foot', advice: 'write ~ for a foot that was not read' },
    )
  }
}

/** A stage that repeats an earlier stage reading for reading was probably copied and not yet changed. */
export function checkCopiedStage(
  placed: PlacedVisit,
  grid: Grid,
  before: PlacedVisit,
  beforeGrid: Grid,
): void {
  for (const [stage, from] of [
    ['before', 'before'],
    ['before', 'after'],
    ['after', 'after'],
  ] as const) {
    const readings = placed.readings.filter(({ reading }) => reading.stage === stage)
    const [first] = readings
    if (!first || readings.length < 8) continue
    const same = readings.every(
      ({ reading }) => beforeGrid.at(from, reading.measure, reading.foot)?.reading.value === reading.value,
    )
    if (!same || !grid.at(stage, first.reading.measure, first.reading.foot)) continue
    placed.report.warning(
      'stage-copied',
      first.row,
      `All ${readings.length} readings ${stage} the trim are those ${from} the trim of ${before.visit.date}.`,
      { expected: 'the readings of this visit' },
    )
    return
  }
}
