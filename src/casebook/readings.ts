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
import type { LengthUnit } from '../hoof/units.ts'
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
import { grouped } from './grouped.ts'
import type { Reading, Stage } from './model.ts'
import { doubtOf, quantityOf, type RawDoubt, type ReadRow, rangeOf, shown } from './quantities.ts'
import type { TextRange } from './report.ts'
import { meansNotRead, numberMeant, withColon } from './slips.ts'
import { either, holding, listed, normal, quote } from './words.ts'
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

/** The id that a measure's name stands for: `Toe length` is `toe-length`. */
export const measureIdNamed = (name: string): string => normal(name).replaceAll(' ', '-')

/** The measure that a row is named for, or null; a name that is near to none goes to `strange`. */
function measureOf(
  row: YamlEntry,
  taken: ReadonlySet<string>,
  strange: YamlEntry[],
  context: ParseContext,
): MeasureId | null {
  const id = measureIdNamed(row.key.text)
  if (isMeasureId(id)) return id
  if (isDerivedId(id)) {
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
  const names = measureIds.map((known) => measures[known].name)
  const meant = keyMeant(row.key.text, taken, names)
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

const knownMeasures = 'a measure of the reference page, such as toe length or heel medial'

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
    quantity: value.kind === 'text' ? quantityOf(value.text, measure, context.units) : null,
  }))
  const sound = read.find(({ quantity }) => quantity && !doubtOf(quantity, measure))
  const beside = sound?.quantity?.value ?? null
  return {
    row,
    measure,
    cells: read.map((cell) => ({
      ...cell,
      doubt: cell.quantity && doubtOf(cell.quantity, measure, beside),
    })),
  }
}

const readingsOf = (
  { row, measure, cells }: ReadRow,
  stage: Stage,
  isElsewhere: boolean,
): readonly PlacedReading[] =>
  cells.flatMap(({ foot, value, quantity, doubt }) =>
    quantity
      ? [
          {
            reading: { stage, foot, measure: measure.id, value: quantity.value },
            range: value,
            row: row.key,
            isDoubted: isElsewhere || doubt !== null,
          },
        ]
      : [],
  )

/** What is wrong with the cells of a row, each on its own. */
function reportRow({ row, measure, cells }: ReadRow, context: ParseContext): void {
  for (const { foot, value, quantity } of cells) {
    if (quantity) continue
    wrongForm(value, context, `${measure.name} ${foot}`, exampleOf(measure), {
      fix: value.kind === 'text' ? quantityMeant(value.text, measure, context.units) : null,
    })
  }
  const doubts = cells.flatMap(({ foot, value, doubt }) => (doubt ? [{ ...doubt, foot, at: value }] : []))
  reportDoubts(doubts, row, measure, context)
}

/** What a cell that cannot be read must have meant: `~`, or a number with one slip in it that then is likely. */
function quantityMeant(text: string, measure: Measure, units: LengthUnit): string | null {
  if (meansNotRead(text)) return '~'
  const meant = numberMeant(text, measure.kind)
  const quantity = meant === null ? null : quantityOf(meant, measure, units)
  return quantity && !doubtOf(quantity, measure) ? meant : null
}

const exampleOf = (measure: Measure): string =>
  measure.kind === 'angle' ? 'an angle: 44, 44.5 or 44°' : 'a length: 98, 98 mm, 9.8 cm or 3 5/8 in'

interface Doubt extends RawDoubt {
  readonly foot: Foot
  readonly at: TextRange
}

/** One remark a cell; where several cells of a row share a slip, one remark for them all. */
function reportDoubts(
  doubts: readonly Doubt[],
  row: YamlEntry,
  measure: Measure,
  context: ParseContext,
): void {
  const bySlip = grouped(doubts, (doubt) => `${doubt.impossible} ${doubt.slip?.looksLike}`)
  for (const alike of bySlip.values()) {
    const [first] = alike
    if (!first) continue
    const add = first.impossible ? context.report.error : context.report.warning
    const code = first.impossible ? 'reading-impossible' : 'reading-unlikely'
    const expected = rangeOf(measure, first.quantity)
    const verdict = first.impossible ? 'cannot be' : 'is unlikely'
    const slip = first.slip
      ? ` ${alike.length > 1 ? 'They look' : 'It looks'} like ${first.slip.looksLike}.`
      : ''
    const fixes = alike.map((doubt) => doubt.slip?.fix ?? null).filter((fix) => fix !== null)
    const help = {
      expected,
      ...(fixes.length > 0 && {
        fix: {
          words: fixes.join(', '),
          edits: alike.map(({ at }, index) => ({ start: at.start, end: at.end, text: fixes[index] ?? '' })),
        },
      }),
      ...(first.slip?.fix === null && { advice: 'write the unit after each number' }),
    }
    if (alike.length === 1) {
      const message = `A ${measure.name} of ${shown(first.quantity)} at ${first.foot} ${verdict}.${slip}`
      add(code, first.at, message, help)
      continue
    }
    const which = listed(alike.map(({ foot, quantity }) => `${foot} ${shown(quantity)}`))
    add(code, row.value, `${sentence(measure.name)} ${verdict}: ${which}.${slip}`, help)
  }
}
