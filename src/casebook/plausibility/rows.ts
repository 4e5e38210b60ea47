/** Rows of a stage that fit the last readings of other feet, or of another measure, clearly better than their own. */
import type { Foot } from '../../hoof/feet.ts'
import { type MeasureId, measures } from '../../hoof/measures.ts'
import { grouped } from '../grouped.ts'
import type { Stage } from '../model.ts'
import type { PlacedReading } from '../readings.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { listed } from '../words.ts'
import { clearly, type FootPair, fits, movedCells, type Reference, whoSwapped } from './feet.ts'

type Row = readonly PlacedReading[]

/** How the feet of one row may have changed places: two of them, or all four. */
const exchanges: readonly (readonly FootPair[])[] = [
  [
    ['LF', 'LH'],
    ['RF', 'RH'],
  ],
  [
    ['LF', 'RF'],
    ['LH', 'RH'],
  ],
  [['LF', 'RF']],
  [['LH', 'RH']],
  [['RF', 'LH']],
]

/**
 * Tells of every row of the stage that was exchanged with another, or whose feet were, as one remark.
 *
 * @returns the measures told of
 */
export function checkRows(placed: PlacedVisit, stage: Stage, reference: Reference): ReadonlySet<MeasureId> {
  const rows = grouped(
    placed.readings.filter(({ reading }) => reading.stage === stage),
    ({ reading }) => reading.measure,
  )
  const reported = new Set<MeasureId>()
  const strangers = [...rows].flatMap(([id, row]) => {
    const own = row.length < 2 ? null : misfit(row, id, reference, sameFoot, 0)
    return own !== null && own > clearly ? [{ id, row, own }] : []
  })
  strangers.forEach((one, index) => {
    if (reported.has(one.id)) return
    const other = strangers
      .slice(index + 1)
      .find((next) => !reported.has(next.id) && areExchanged(one, next, reference))
    if (!other) return
    reportRows(placed, rows, one.id, other.id, reference)
    reported.add(one.id).add(other.id)
  })
  for (const [id, row] of rows) {
    const pairs = reported.has(id) ? undefined : exchangeOf(row, id, reference)
    if (!pairs) continue
    reportFeet(placed, row, id, pairs, reference)
    reported.add(id)
  }
  return reported
}

/** Sum of squared differences from what was last read, in the measure's own scatter; null where nothing was. */
function misfit(
  row: Row,
  id: MeasureId,
  reference: Reference,
  from: (foot: Foot) => Foot,
  shift: number,
): number | null {
  let sum = 0
  for (const { reading } of row) {
    const last = reference.value(id, from(reading.foot))
    if (last === undefined) return null
    sum += (reading.value - last - shift) ** 2
  }
  return sum / (2 * measures[id].sd ** 2)
}

const sameFoot = (foot: Foot): Foot => foot

/** A row that does not fit its own last readings, and by how much. */
interface Stranger {
  readonly id: MeasureId
  readonly row: Row
  readonly own: number
}

/** Both fit each other's last readings, as neither does its own. As for feet: common practice, no source. */
function areExchanged(one: Stranger, other: Stranger, reference: Reference): boolean {
  const fitsThere = ({ row, own }: Stranger, { id }: Stranger) => {
    const crossed = misfit(row, id, reference, sameFoot, 0)
    return crossed !== null && crossed < own / 4
  }
  return fitsThere(one, other) && fitsThere(other, one)
}

/** The exchange of feet that explains the row, once what all feet share (growth, another hand) is taken out. */
function exchangeOf(row: Row, id: MeasureId, reference: Reference): readonly FootPair[] | undefined {
  if (row.length < 4) return undefined
  const changes = row.map(({ reading }) => reading.value - (reference.value(id, reading.foot) ?? Number.NaN))
  const shift = changes.reduce((sum, change) => sum + change, 0) / changes.length
  const own = Number.isNaN(shift) ? null : misfit(row, id, reference, sameFoot, shift)
  if (own === null || own <= clearly) return undefined
  const crossed = exchanges.map((pairs) => ({
    pairs,
    size: misfit(row, id, reference, partnerIn(pairs), shift) ?? own,
  }))
  const best = crossed.reduce((a, b) => (b.size < a.size ? b : a))
  return best.size < own / 4 && best.size < fits * row.length ? best.pairs : undefined
}

const partnerIn =
  (pairs: readonly FootPair[]) =>
  (foot: Foot): Foot => {
    const pair = pairs.find((one) => one.includes(foot))
    return pair?.find((one) => one !== foot) ?? foot
  }

function reportRows(
  placed: PlacedVisit,
  rows: ReadonlyMap<MeasureId, Row>,
  one: MeasureId,
  other: MeasureId,
  reference: Reference,
): void {
  const [a, b] = [rows.get(one)?.[0]?.row, rows.get(other)?.[0]?.row]
  if (!a || !b) return
  placed.report.warning(
    'rows-exchanged',
    a,
    `${measures[one].name} and ${measures[other].name} may have changed places: each fits what the other was ${reference.when}.`.replace(
      /^./,
      (letter) => letter.toUpperCase(),
    ),
    {
      expected: 'readings near the last ones of the same measure',
      fix: {
        words: 'exchange the two names',
        edits: [
          { start: a.start, end: a.end, text: placed.report.textOf(b) },
          { start: b.start, end: b.end, text: placed.report.textOf(a) },
        ].sort((first, second) => first.start - second.start),
      },
    },
  )
}

function reportFeet(
  placed: PlacedVisit,
  row: Row,
  id: MeasureId,
  pairs: readonly FootPair[],
  reference: Reference,
): void {
  const [first] = row
  if (!first) return
  const edits = movedCells(row, partnerIn(pairs), placed)
  const last = row.map(({ reading: { foot } }) => `${foot} ${reference.value(id, foot)}`)
  placed.report.warning(
    'feet-swapped',
    first.row,
    `${whoSwapped(pairs)} may have changed places in ${measures[id].name}; ${reference.when} it was ${listed(last)}.`,
    {
      expected: 'readings near the last ones of the same foot',
      ...(edits
        ? { fix: { words: 'exchange them in this row', edits } }
        : { advice: 'exchange them in this row' }),
    },
  )
}
