/** The rows under `before` and `after`: each measure, each foot, in millimetres or degrees. */
import type { Foot } from '../hoof/feet.ts'
import {
  derivedMeasures,
  isDerivedId,
  isMeasureId,
  type Measure,
  type MeasureId,
  measureIds,
  measures,
} from '../hoof/measures.ts'
import { fromMillimetres, type LengthUnit, parseAngle, parseLength, toMillimetres } from '../hoof/units.ts'
import { cellsByFoot } from './by-foot.ts'
import { gapIn, keyTwice, type Reader, type Sheet, sentence, wrongForm } from './fields.ts'
import { grouped } from './grouped.ts'
import type { Reading, Stage } from './model.ts'
import type { Spot } from './report.ts'
import { listed, nearest, normal, quote } from './words.ts'
import type { WrittenEntry, WrittenText } from './written.ts'

/** A reading and where it stands: its own place, and that of its row's name. */
export interface PlacedReading {
  readonly reading: Reading
  readonly spot: Spot
  readonly row: Spot
}

/** All readings of one stage. */
export const readStage =
  (stage: Stage): Reader<readonly PlacedReading[]> =>
  (value, sheet) => {
    if (value.kind !== 'map') {
      return wrongForm(
        value,
        sheet,
        stage,
        'lines of a measure and its readings: toe length: [98, 96, 90, 91]',
      )
    }
    const seen = new Set<MeasureId>()
    const readings: PlacedReading[] = []
    for (const row of value.entries) {
      const id = measureOf(row, sheet)
      if (!id) continue
      if (seen.has(id)) keyTwice(row, sheet)
      else readings.push(...readRow(row, measures[id], stage, sheet))
      seen.add(id)
    }
    return readings
  }

/** The id that a measure's name stands for: `Toe length` is `toe-length`. */
export const measureIdNamed = (name: string): string => normal(name).replaceAll(' ', '-')

function measureOf(row: WrittenEntry, sheet: Sheet): MeasureId | null {
  const id = measureIdNamed(row.key.text)
  if (isMeasureId(id)) return id
  if (isDerivedId(id)) {
    const parts = listed(derivedMeasures[id].parts.map((part) => measures[part].name))
    sheet.report.error(
      'measure-derived',
      row.key,
      `${sentence(quote(row.key.text))} is worked out, not entered.`,
      {
        expected: `the readings it is made of: ${parts}`,
      },
    )
    return null
  }
  const meant = nearest(
    row.key.text,
    measureIds.map((known) => measures[known].name),
  )
  sheet.report.error('measure-unknown', row.key, `${quote(row.key.text)} is not a measure.`, {
    expected: 'a measure of the reference page, such as toe length or heel medial',
    ...(meant && { fix: meant }),
  })
  return null
}

function readRow(row: WrittenEntry, measure: Measure, stage: Stage, sheet: Sheet): readonly PlacedReading[] {
  if (row.value.kind === 'nothing' || gapIn(row.value, measure.name, sheet)) return []
  const cells = cellsByFoot(row.value, sheet, measure.name) ?? []
  const doubts: Doubt[] = []
  const readings: PlacedReading[] = []
  for (const cell of cells) {
    const quantity = cell.value.kind === 'text' ? quantityOf(cell.value, measure, sheet) : null
    if (!quantity || cell.value.kind !== 'text') {
      wrongForm(cell.value, sheet, `${measure.name} ${cell.foot}`, exampleOf(measure))
      continue
    }
    readings.push({
      reading: { stage, foot: cell.foot, measure: measure.id, value: quantity.value },
      spot: cell.value,
      row: row.key,
    })
    const doubt = doubtOf(quantity, measure)
    if (doubt) doubts.push({ ...doubt, foot: cell.foot, at: cell.value })
  }
  tellDoubts(doubts, row, measure, sheet)
  return readings
}

const exampleOf = (measure: Measure): string =>
  measure.kind === 'angle' ? 'an angle: 44, 44.5 or 44°' : 'a length: 98, 98 mm, 9.8 cm or 3 5/8 in'

/** A number as written, with the unit it was taken in; `value` in millimetres or degrees. */
interface Quantity {
  readonly value: number
  readonly amount: number
  readonly unit: LengthUnit | 'deg'
  readonly unitWritten: boolean
}

function quantityOf(cell: WrittenText, measure: Measure, sheet: Sheet): Quantity | null {
  if (measure.kind === 'angle') {
    const angle = parseAngle(cell.text)
    return angle === null ? null : { value: angle, amount: angle, unit: 'deg', unitWritten: true }
  }
  const length = parseLength(cell.text, sheet.units)
  return (
    length && { value: length.mm, amount: length.amount, unit: length.unit, unitWritten: length.unitWritten }
  )
}

interface Slip {
  /** What the number looks like, after "looks like". */
  readonly looksLike: string
  readonly fix: string
}

interface RawDoubt {
  readonly impossible: boolean
  readonly quantity: Quantity
  readonly slip: Slip | null
}

interface Doubt extends RawDoubt {
  readonly foot: Foot
  readonly at: Spot
}

/** No hoof has an edge a metre long, and no wall lies flat or leans over. */
function isImpossible(value: number, measure: Measure): boolean {
  if (measure.kind === 'angle') return value <= 0 || value >= 90
  return value < 0 || value > 1000 || (value === 0 && measure.likely[0] > 0)
}

function doubtOf(quantity: Quantity, measure: Measure): RawDoubt | null {
  const [low, high] = measure.likely
  const impossible = isImpossible(quantity.value, measure)
  if (!impossible && quantity.value >= low && quantity.value <= high) return null
  return { impossible, quantity, slip: likelySlip(quantity, measure) }
}

const unitNames: Readonly<Record<LengthUnit, string>> = { mm: 'millimetres', cm: 'centimetres', in: 'inches' }

/** Another unit in which the number would be likely, else a decimal point lost or put in. */
function likelySlip(quantity: Quantity, measure: Measure): Slip | null {
  const fits = (value: number) => value >= measure.likely[0] && value <= measure.likely[1]
  if (quantity.unit !== 'deg') {
    for (const unit of ['mm', 'cm', 'in'] as const) {
      if (unit !== quantity.unit && fits(toMillimetres(quantity.amount, unit))) {
        return { looksLike: unitNames[unit], fix: `${figure(quantity.amount)} ${unit}` }
      }
    }
  }
  if (quantity.amount < 0 && fits(-quantity.value)) {
    return { looksLike: 'a dash before the number', fix: figure(-quantity.amount) }
  }
  for (const factor of [0.1, 10, 0.01]) {
    if (fits(quantity.value * factor)) {
      const unit = quantity.unit !== 'deg' && quantity.unitWritten ? ` ${quantity.unit}` : ''
      return { looksLike: 'a lost decimal point', fix: `${figure(quantity.amount * factor)}${unit}` }
    }
  }
  return null
}

export const figure = (value: number): string => String(Number(value.toFixed(2)))

/** One remark a cell; where several cells of a row share a slip, one remark for them all. */
function tellDoubts(doubts: readonly Doubt[], row: WrittenEntry, measure: Measure, sheet: Sheet): void {
  const bySlip = grouped(doubts, (doubt) => `${doubt.impossible} ${doubt.slip?.looksLike ?? doubt.foot}`)
  for (const alike of bySlip.values()) {
    const [first] = alike
    if (!first) continue
    const add = first.impossible ? sheet.report.error : sheet.report.warning
    const code = first.impossible ? 'reading-impossible' : 'reading-unlikely'
    const expected = rangeOf(measure, first.quantity)
    const verdict = first.impossible ? 'cannot be' : 'is unlikely'
    if (alike.length === 1) {
      const slip = first.slip ? ` It looks like ${first.slip.looksLike}.` : ''
      add(
        code,
        first.at,
        `A ${measure.name} of ${shown(first.quantity)} at ${first.foot} ${verdict}.${slip}`,
        {
          expected,
          ...(first.slip && { fix: first.slip.fix }),
        },
      )
      continue
    }
    const which = listed(alike.map(({ foot, quantity }) => `${foot} ${shown(quantity)}`))
    add(
      code,
      row.value,
      `${sentence(measure.name)} ${verdict}: ${which}. They look like ${first.slip?.looksLike}.`,
      {
        expected,
        fix: alike.map((doubt) => doubt.slip?.fix).join(', '),
      },
    )
  }
}

const shown = ({ amount, unit }: Quantity): string =>
  unit === 'deg' ? `${figure(amount)}°` : `${figure(amount)} ${unit}`

function rangeOf(measure: Measure, { unit }: Quantity): string {
  const [low, high] = measure.likely
  if (unit === 'deg') return `${low} to ${high}°`
  return `${figure(fromMillimetres(low, unit))} to ${figure(fromMillimetres(high, unit))} ${unit}`
}
