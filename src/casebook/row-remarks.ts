/** What is wrong with the cells of a row of readings, each on its own. */
import type { Foot } from '../hoof/feet.ts'
import type { Measure } from '../hoof/measures.ts'
import { fromMillimetres, type LengthUnit } from '../hoof/units.ts'
import { type ParseContext, sentence, wrongForm } from './fields.ts'
import { grouped } from './grouped.ts'
import {
  figure,
  fits,
  mostLetters,
  type PlacedDoubt,
  type PlacedQuantity,
  quantitiesOf,
  type ReadRow,
  type RowCell,
  rangeOf,
  readingsIn,
  shown,
} from './quantities.ts'
import { meansNotRead, numberMeant } from './slips.ts'
import { listed } from './words.ts'
import type { YamlEntry, YamlNode } from './yaml-tree.ts'

/** One remark a cell, or one for cells that share a slip. */
export function reportRow({ row, measure, cells }: ReadRow, context: ParseContext): void {
  for (const { foot, value, quantities } of cells) {
    if (quantities.length > 0) continue
    const count = value.kind === 'text' ? countIn(value.text, measure, context.units) : 0
    if (count > 2) {
      context.report.error(
        'read-too-often',
        value,
        `${sentence(measure.name)} ${foot} has ${count} readings.`,
        {
          expected: 'one reading of a foot, or two: 98 and 97',
          advice: 'keep two of them',
        },
      )
      continue
    }
    wrongForm(value, context, `${measure.name} ${foot}`, exampleOf(measure), {
      fix: cellMeant(value, measure, context.units),
    })
  }
  const doubts = cells.flatMap(({ foot, doubts }) => doubts.map((doubt) => ({ ...doubt, foot })))
  reportDoubts(doubts, row, measure, context)
  for (const cell of cells) if (cell.doubts.length === 0) reportApart(cell, measure, context)
}

/** How many readings stand in a cell that has too many of them. */
function countIn(text: string, measure: Measure, units: LengthUnit): number {
  const parts = readingsIn(text)
  return parts.every((part) => quantitiesOf(part, measure, units).length === 1) ? parts.length : 0
}

function reportApart(cell: RowCell, measure: Measure, context: ParseContext): void {
  const [first, second] = cell.quantities
  if (!first || !second || !areApart(cell, measure)) return
  const inFirst = (mm: number) =>
    first.quantity.unit === 'deg'
      ? `${figure(mm)}°`
      : `${figure(fromMillimetres(mm, first.quantity.unit))} ${first.quantity.unit}`
  context.report.warning(
    'readings-apart',
    cell.value,
    `The two readings of ${measure.name} at ${cell.foot}, ${shown(first.quantity)} and ${shown(second.quantity)}, are ${inFirst(Math.abs(gapBetween(first, second)))} apart.`,
    {
      expected: `two readings of one foot within ${inFirst(mostApart(measure))}`,
      advice: 'read the foot again, or keep the reading that is right',
    },
  )
}

/** What a cell that cannot be read must have meant: `~`, a number with one slip in it that then is likely, or two of them. */
function cellMeant(value: YamlNode, measure: Measure, units: LengthUnit): string | null {
  if (value.kind === 'list') {
    const texts = value.items.map((item) => (item.kind === 'text' ? item.text : ''))
    return texts.length === 2 && texts.every((text) => fits(text, measure, units))
      ? texts.join(' and ')
      : null
  }
  if (value.kind !== 'text' || value.text.length > mostLetters) return null
  if (meansNotRead(value.text)) return '~'
  // Two numbers with a stroke between are no fraction where the first is not the smaller.
  const text = value.text.replace(/\s+and$|\s*&$/i, '').replace(/(?<=\d) ?[/+] ?(?=\d)/, ' and ')
  const parts = readingsIn(text).filter((part) => !meansNotRead(part) && part !== '~')
  if (parts.length > 2) return null
  const meant = parts.map((part) => (fits(part, measure, units) ? part : numberMeant(part, measure.kind)))
  const whole = meant.includes(null) ? null : meant.join(' and ')
  return whole !== null && fits(whole, measure, units) ? whole : null
}

const exampleOf = (measure: Measure): string =>
  measure.kind === 'angle'
    ? 'an angle: 44, 44.5 or 44°, or two: 44 and 45'
    : 'a length: 98, 98 mm, 9.8 cm or 3 5/8 in, or two: 98 and 97'

interface Doubt extends PlacedDoubt {
  readonly foot: Foot
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

/** Common practice, no source: two readings of one foot, one after the other, differ by more only where one is a slip. */
const mostApart = ({ sd }: Measure): number => 6 * sd

export function areApart({ quantities }: RowCell, measure: Measure): boolean {
  const [first, second] = quantities
  return second !== undefined && Math.abs(gapBetween(first, second)) > mostApart(measure)
}

const gapBetween = (first: PlacedQuantity | undefined, second: PlacedQuantity): number =>
  second.quantity.value - (first?.quantity.value ?? second.quantity.value)
