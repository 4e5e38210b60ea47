/** The rows under `before` and `after`: each measure, each foot, in millimetres or degrees. */
import {
  derivedMeasures,
  isMeasureId,
  type Measure,
  type MeasureId,
  measureIds,
  measures,
} from '../hoof/measures.ts'
import { cellsByFoot } from './by-foot.ts'
import { reportExchanged } from './exchanged.ts'
import {
  emptyIn,
  gapIn,
  keyMeant,
  keyTwice,
  namesIn,
  type ParseContext,
  type Reader,
  sentence,
  wrongForm,
} from './fields.ts'
import { measureNamed, spellingsOf } from './measure-names.ts'
import type { Reading, Stage } from './model.ts'
import { doubtOf, placedIn, type ReadRow } from './quantities.ts'
import type { TextRange } from './report.ts'
import { areApart, reportRow } from './row-remarks.ts'
import { withColon } from './slips.ts'
import { either, holding, listed, quote } from './words.ts'
import type { YamlEntry } from './yaml-tree.ts'

/** A reading and where it stands: its own place, and that of its row's name. */
export interface PlacedReading {
  readonly reading: Reading
  readonly range: TextRange
  readonly row: TextRange
  /** Told of as unlikely or out of place: what it says is held against nothing further. */
  readonly isDoubted: boolean
}

/** All readings of one stage. */
export const readStage =
  (stage: Stage): Reader<readonly PlacedReading[]> =>
  (value, context) => {
    if (value.kind !== 'map') {
      return wrongForm(
        value,
        context,
        stage,
        'lines of a measure and its readings: toe length: [98, 96, 90, 91]',
        { fix: value.kind === 'text' && value.verbatim ? withColon(value.text) : null },
      )
    }
    const seen = new Set<MeasureId>()
    const rows: ReadRow[] = []
    const strange: YamlEntry[] = []
    const taken = namesIn(value)
    for (const row of value.entries) {
      const id = measureOf(row, taken, strange, context)
      if (!id) continue
      if (seen.has(id)) keyTwice(row, context)
      else rows.push(readRow(row, measures[id], context))
      seen.add(id)
    }
    reportStrange(strange, stage, context)
    const exchanged = reportExchanged(rows, context)
    return rows.flatMap((row) => {
      if (!exchanged.has(row)) reportRow(row, context)
      return readingsOf(row, stage, exchanged.has(row))
    })
  }

/** The measure that a row is named for, or null; a name that is near to none goes to `strange`. */
function measureOf(
  row: YamlEntry,
  taken: ReadonlySet<string>,
  strange: YamlEntry[],
  context: ParseContext,
): MeasureId | null {
  const id = measureNamed(row.key.text)
  if (id !== null && isMeasureId(id)) return id
  if (id !== null) {
    const parts = listed(derivedMeasures[id].parts.map((part) => measures[part].name))
    context.report.error(
      'measure-derived',
      row.key,
      `${sentence(quote(row.key.text))} is worked out, not entered.`,
      {
        expected: `the readings it is made of: ${parts}`,
      },
    )
    return null
  }
  const meant = keyMeant(row.key.text, taken, spellings)
  const several = holding(row.key.text, names)
  const choice = !meant && several.length > 1 && several.length < 4 ? `write ${either(several)}` : null
  if (!meant && !choice) {
    strange.push(row)
    return null
  }
  context.report.error('measure-unknown', row.key, `${quote(row.key.text)} is not a measure.`, {
    expected: knownMeasures,
    fix: meant,
    advice: choice,
  })
  return null
}

const names = measureIds.map((id) => measures[id].name)
const spellings = spellingsOf(measureIds)

const knownMeasures = 'a measure of the page Measures and sources, such as toe length or heel medial'

/** Names that are like no measure have most likely one cause, such as a key that is missing above them: one remark. */
function reportStrange(rows: readonly YamlEntry[], stage: Stage, context: ParseContext): void {
  const [first, ...more] = rows
  if (!first) return
  const names = listed(rows.map(({ key }) => quote(key.text)))
  const message = more.length > 0 ? `${names} under ${stage} are not measures.` : `${names} is not a measure.`
  context.report.error('measure-unknown', first.key, message, { expected: knownMeasures })
}

function readRow(row: YamlEntry, measure: Measure, context: ParseContext): ReadRow {
  const isOpen = emptyIn(row, context) || gapIn(row.value, measure.name, context)
  const cells = isOpen ? [] : (cellsByFoot(row.value, context, measure.name) ?? [])
  const read = cells.map(({ foot, value }) => ({
    foot,
    value,
    quantities: placedIn(value, measure, context.units),
  }))
  const all = read.flatMap(({ quantities }) => quantities)
  const sound = all.find(({ quantity }) => !doubtOf(quantity, measure))
  const beside = sound?.quantity.value ?? null
  return {
    row,
    measure,
    cells: read.map((cell) => ({
      ...cell,
      doubts: cell.quantities.flatMap(({ quantity, at }) => {
        const doubt = doubtOf(quantity, measure, beside)
        if (!doubt) return []
        // Where the place is that of both readings, mending one would lose the other.
        const isOfBoth = cell.quantities.length > 1 && at === cell.value
        return [{ ...doubt, at, slip: isOfBoth ? null : doubt.slip }]
      }),
    })),
  }
}

const readingsOf = (
  { row, measure, cells }: ReadRow,
  stage: Stage,
  isElsewhere: boolean,
): readonly PlacedReading[] =>
  cells.flatMap((cell) => {
    const [first, second] = cell.quantities.map(({ quantity }) => quantity.value)
    if (first === undefined) return []
    const { foot, value } = cell
    const measured = { stage, foot, measure: measure.id }
    return [
      {
        reading:
          second === undefined
            ? { ...measured, value: first }
            : { ...measured, value: (first + second) / 2, twice: [first, second] },
        range: value,
        row: row.key,
        isDoubted: isElsewhere || cell.doubts.length > 0 || areApart(cell, measure),
      },
    ]
  })
