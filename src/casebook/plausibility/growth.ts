/** Readings along the visits: growth, wear and change that no hoof shows, and trims that lengthen. */
import { daysBetween } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type Measure, type MeasureId, measures } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import { grouped } from '../grouped.ts'
import type { Stage } from '../model.ts'
import { figure, type PlacedReading } from '../readings.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { listed } from '../words.ts'
import { type Grid, inWords, type Last, type LastReadings } from './history.ts'

/** Walls that grow from the hairline and are shortened by the trim. */
const walls: ReadonlySet<MeasureId> = new Set<MeasureId>([
  'toe-length',
  'heel-medial',
  'heel-lateral',
  'quarter-medial',
  'quarter-lateral',
])

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

/** Every first reading of the visit against the last one before it. Feet told of as swapped are passed over. */
export function checkJumps(
  placed: PlacedVisit,
  last: LastReadings,
  swapped: Readonly<Record<Stage, ReadonlySet<Foot>>>,
  units: LengthUnit,
): void {
  for (const { reading, spot } of placed.readings) {
    const { measure: id, foot, stage, value } = reading
    if (swapped[stage].has(foot)) continue
    const measure = measures[id]
    const earlier = last.get(id, foot)
    const isFirst = stage === 'before' || earlier?.date !== placed.visit.date
    const now: Last = { value, stage, date: placed.visit.date, unlessDoubted: null }
    const doubt = earlier && isFirst ? jumpOf(earlier, now, measure) : null
    const stands = doubt && earlier?.unlessDoubted ? !jumpOf(earlier.unlessDoubted, now, measure) : !doubt
    if (doubt && earlier && !stands) {
      const days = daysBetween(earlier.date, placed.visit.date)
      const say = (amount: number) => inWords(amount, measure.kind, units)
      const when = earlier.stage === 'after' ? 'after the trim of' : 'on'
      const swappedDigits = digitsSwapped(
        value,
        (other) => !jumpOf(earlier, { ...now, value: other }, measure),
      )
      placed.report.warning(
        'jump',
        spot,
        `${measure.name} at ${foot} is ${say(value)}; ${when} ${earlier.date} it was ${say(earlier.value)}. ${doubt.words(say(Math.abs(value - earlier.value)), days)}`.replace(
          /^./,
          (letter) => letter.toUpperCase(),
        ),
        {
          expected: `${say(doubt.low)} to ${say(doubt.high)}`,
          ...(swappedDigits !== null && {
            fix: `${figure(swappedDigits)}, if two figures have changed places`,
          }),
        },
      )
    }
    last.set(id, foot, { ...now, unlessDoubted: stands ? null : (earlier ?? null) })
  }
}

interface Jump {
  readonly low: number
  readonly high: number
  words(change: string, days: number): string
}

function jumpOf(from: Last, to: Last, measure: Measure): Jump | null {
  const days = Math.max(0, daysBetween(from.date, to.date))
  const between = from.stage === 'after' && to.stage === 'before'
  const bounds = boundsOf(from, measure, days, between)
  if (!bounds || (to.value >= bounds.low && to.value <= bounds.high)) return null
  return { ...bounds, words: (change, count) => jumpWords(to.value > from.value, measure, change, count) }
}

function boundsOf(
  from: Last,
  measure: Measure,
  days: number,
  between: boolean,
): { low: number; high: number } | null {
  const slack = noise(measure)
  if (walls.has(measure.id)) {
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
  if (!walls.has(measure.id)) return `A change of ${change} in ${span} without a trim is unlikely.`
  return more ? `No hoof grows ${change} in ${span}.` : `A wear of ${change} in ${span} is unlikely.`
}

/** `89` for `98`, if that would be likely. */
function digitsSwapped(value: number, isLikely: (other: number) => boolean): number | null {
  const match = /^(\d)(\d)((?:\.\d+)?)$/.exec(figure(value))
  const other = match ? Number(`${match[2]}${match[1]}${match[3]}`) : value
  return other !== value && isLikely(other) ? other : null
}

/** Walls that are longer after the trim than before it, by more than readings differ by chance. One remark a row. */
export function checkAfterLonger(placed: PlacedVisit, grid: Grid, units: LengthUnit): void {
  const longer: PlacedReading[] = []
  let compared = 0
  for (const id of walls) {
    for (const foot of feet) {
      const before = grid.at('before', id, foot)
      const after = grid.at('after', id, foot)
      if (!before || !after) continue
      compared++
      if (after.reading.value - before.reading.value > Math.SQRT2 * measures[id].sd) longer.push(after)
    }
  }
  const everywhere = longer.length > 1 && longer.length > compared / 2
  for (const [id, row] of grouped(longer, ({ reading }) => reading.measure)) {
    const [first] = row
    if (!first) continue
    const say = (value: number | undefined) => inWords(value ?? 0, 'length', units)
    const which = row.map(({ reading: { foot, value } }) => {
      return `${foot} from ${say(grid.at('before', id, foot)?.reading.value)} to ${say(value)}`
    })
    placed.report.warning(
      'after-longer',
      row.length === 1 ? first.spot : first.row,
      `The ${measures[id].name} became longer at the trim: ${listed(which)}.`,
      {
        expected: 'after at most as long as before',
        fix: everywhere ? 'before and after may have changed places' : 'check which of the two was mistyped',
      },
    )
  }
}
