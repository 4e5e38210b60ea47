/** Readings along the visits: growth, wear and change that no hoof shows, and trims that lengthen. */
import { daysBetween } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type Measure, type MeasureId, measures } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import { isWallLength, wallLengths } from '../../hoof/walls.ts'
import { sentence } from '../fields.ts'
import { grouped } from '../grouped.ts'
import type { Stage } from '../model.ts'
import { figure } from '../quantities.ts'
import type { PlacedReading } from '../readings.ts'
import type { TextRange } from '../report.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { listed } from '../words.ts'
import { type Grid, inWords, type Last, type LastReadings } from './history.ts'

/**
 * More than any published growth (Butler & Hintz 1977: up to 0.384 mm a day in yearling ponies), so that only a slip
 * passes it. The other bounds are common practice, no source. Millimetres or degrees.
 */
const mostGrowthPerDay = 0.6
const mostWearPerDay = 0.3
const mostTurn = 8
const mostShare = 0.25
/** Three standard deviations of a difference of two readings. */
const noise = (measure: Measure): number => 3 * Math.SQRT2 * measure.sd

/** What has been told of already: feet and rows that have changed places. */
export interface Exchanged {
  readonly swapped: Readonly<Record<Stage, ReadonlySet<Foot>>>
  readonly exchanged: Readonly<Record<Stage, ReadonlySet<MeasureId>>>
}

/** Every first reading of the visit against the last one before it. What has changed places is passed over. */
export function checkJumps(
  placed: PlacedVisit,
  last: LastReadings,
  { swapped, exchanged }: Exchanged,
  units: LengthUnit,
): void {
  const jumps: Jumped[] = []
  for (const read of placed.readings) {
    const { measure: id, foot, stage, value } = read.reading
    if (swapped[stage].has(foot) || exchanged[stage].has(id)) continue
    const measure = measures[id]
    const earlier = last.get(id, foot)
    const isFirst = stage === 'before' || earlier?.date !== placed.visit.date
    const now: Last = { value, stage, date: placed.visit.date, unlessDoubted: null }
    const doubt = earlier && isFirst ? jumpOf(earlier, now, measure) : null
    const stands = doubt && earlier?.unlessDoubted ? !jumpOf(earlier.unlessDoubted, now, measure) : !doubt
    if (doubt && earlier && !stands) jumps.push({ read, measure, earlier, now, doubt })
    last.set(id, foot, { ...now, unlessDoubted: stands ? null : (earlier ?? null) })
  }
  const byRow = grouped(jumps, ({ read, earlier, now }) => {
    return `${read.row.start} ${earlier.date} ${earlier.stage} ${now.value > earlier.value}`
  })
  for (const row of byRow.values()) {
    const [first] = row
    if (first && row.length > 1) reportRowJump(first, row, placed, units)
    else if (first) reportJump(first, placed, units)
  }
}

interface Jumped {
  readonly read: PlacedReading
  readonly measure: Measure
  readonly earlier: Last
  readonly now: Last
  readonly doubt: Jump
}

export const whenOf = ({ stage, date }: Last): string =>
  `${stage === 'after' ? 'after the trim of' : 'on'} ${date}`

function reportJump(
  { read, measure, earlier, now, doubt }: Jumped,
  placed: PlacedVisit,
  units: LengthUnit,
): void {
  const { value, foot } = read.reading
  const days = daysBetween(earlier.date, placed.visit.date)
  const say = (amount: number) => inWords(amount, measure.kind, units)
  const swappedDigits = digitsSwapped(value, (other) => !jumpOf(earlier, { ...now, value: other }, measure))
  // Only a bare number is replaced: another figure in another unit would be no better.
  const isBare = placed.report.textOf(read.range) === figure(value)
  const words = swappedDigits === null ? null : `${figure(swappedDigits)}, if two figures have changed places`
  placed.report.warning(
    'jump',
    read.range,
    `${sentence(measure.name)} at ${foot} is ${say(value)}; ${whenOf(earlier)} it was ${say(earlier.value)}. ${doubt.words(say(Math.abs(value - earlier.value)), days)}`,
    {
      expected: `${say(doubt.low)} to ${say(doubt.high)}`,
      ...(words && isBare && swappedDigits !== null
        ? {
            fix: {
              words,
              edits: [{ start: read.range.start, end: read.range.end, text: figure(swappedDigits) }],
            },
          }
        : { advice: words }),
    },
  )
}

/** Several cells of a row that jump the same way have most likely one cause: one remark. */
function reportRowJump(first: Jumped, row: readonly Jumped[], placed: PlacedVisit, units: LengthUnit): void {
  const { measure, earlier, read } = first
  const days = daysBetween(earlier.date, placed.visit.date)
  const say = (amount: number) => inWords(amount, measure.kind, units)
  const which = row.map(
    (one) => `${one.read.reading.foot} from ${say(one.earlier.value)} to ${say(one.now.value)}`,
  )
  const most = row.reduce((a, b) => (change(b) > change(a) ? b : a))
  placed.report.warning(
    'jump',
    read.row,
    `${sentence(measure.name)} has changed since ${whenOf(earlier).replace(/^on /, '')}: ${listed(which)}. ${most.doubt.words(say(change(most)), days)}`,
    { expected: 'readings near the last ones', advice: 'check the row, its unit and the date of the visit' },
  )
}

const change = ({ now, earlier }: Jumped): number => Math.abs(now.value - earlier.value)

interface Jump {
  readonly low: number
  readonly high: number
  words(change: string, days: number): string
}

/** @param slack by how much two readings differ at most by chance */
export function jumpOf(from: Last, to: Last, measure: Measure, slack = noise(measure)): Jump | null {
  const days = Math.max(0, daysBetween(from.date, to.date))
  const between = from.stage === 'after' && to.stage === 'before'
  const bounds = boundsOf(from, measure, days, between, slack)
  if (!bounds || (to.value >= bounds.low && to.value <= bounds.high)) return null
  return { ...bounds, words: (change, count) => jumpWords(to.value > from.value, measure, change, count) }
}

function boundsOf(
  from: Last,
  measure: Measure,
  days: number,
  between: boolean,
  slack: number,
): { low: number; high: number } | null {
  if (isWallLength(measure.id)) {
    // Across a trim a wall may be shortened at will, so only growth is bounded there.
    const low = between ? Math.max(0, from.value - mostWearPerDay * days - slack) : 0
    return { low, high: from.value + mostGrowthPerDay * days + slack }
  }
  if (!between) return null
  const most = measure.kind === 'angle' ? mostTurn : from.value * mostShare
  return { low: from.value - most - slack, high: from.value + most + slack }
}

function jumpWords(more: boolean, measure: Measure, change: string, days: number): string {
  const span = `${days} ${days === 1 ? 'day' : 'days'}`
  if (!isWallLength(measure.id)) return `A change of ${change} in ${span} without a trim is unlikely.`
  return more ? `No hoof grows ${change} in ${span}.` : `A wear of ${change} in ${span} is unlikely.`
}

/** `89` for `98`, if that would be likely. */
function digitsSwapped(value: number, isLikely: (other: number) => boolean): number | null {
  const match = /^(\d)(\d)((?:\.\d+)?)$/.exec(figure(value))
  const other = match ? Number(`${match[2]}${match[1]}${match[3]}`) : value
  return other !== value && isLikely(other) ? other : null
}

/**
 * Walls that are longer after the trim than before it, by more than readings differ by chance. One remark a row; where
 * most walls are, one for both stages.
 *
 * @returns whether the stages have changed places
 */
export function checkAfterLonger(placed: PlacedVisit, grid: Grid, units: LengthUnit): boolean {
  const longer: PlacedReading[] = []
  let compared = 0
  for (const id of wallLengths) {
    for (const foot of feet) {
      const before = grid.at('before', id, foot)
      const after = grid.at('after', id, foot)
      if (!before || !after) continue
      compared++
      if (after.reading.value - before.reading.value > Math.SQRT2 * measures[id].sd) longer.push(after)
    }
  }
  const say = (value: number | undefined) => inWords(value ?? 0, 'length', units)
  const rowWords = (id: MeasureId, row: readonly PlacedReading[]) =>
    listed(
      row.map(({ reading: { foot, value } }) => {
        return `${foot} from ${say(grid.at('before', id, foot)?.reading.value)} to ${say(value)}`
      }),
    )
  const rows = grouped(longer, ({ reading }) => reading.measure)
  const [first] = rows
  if (first && longer.length > 1 && longer.length > compared / 2) {
    reportStages(
      placed,
      first[1][0]?.row ?? null,
      `the ${measures[first[0]].name} became longer at the trim: ${rowWords(...first)}`,
    )
    return true
  }
  for (const [id, row] of rows) {
    const [one] = row
    if (!one) continue
    placed.report.warning(
      'after-longer',
      row.length === 1 ? one.range : one.row,
      `The ${measures[id].name} became longer at the trim: ${rowWords(id, row)}.`,
      { expected: 'after at most as long as before', advice: 'check which of the two was mistyped' },
    )
  }
  return false
}

function reportStages(placed: PlacedVisit, row: TextRange | null, why: string): void {
  const { before, after } = placed.stageKeys
  placed.report.warning(
    'stages-exchanged',
    after ?? row,
    `Before and after may have changed places: ${why}.`,
    {
      expected: 'after at most as long as before',
      ...(before && after
        ? {
            fix: {
              words: 'exchange the two names',
              edits: [
                { start: before.start, end: before.end, text: 'after' },
                { start: after.start, end: after.end, text: 'before' },
              ].sort((a, b) => a.start - b.start),
            },
          }
        : { advice: 'exchange the two' }),
    },
  )
}
