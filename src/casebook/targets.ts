/** `targets` and `trim limits` of horse.md. */
import type { Band } from '../hoof/bands.ts'
import type { PerFoot } from '../hoof/feet.ts'
import {
  type AnyMeasureId,
  derivedIds,
  derivedMeasures,
  isMeasureId,
  measureIds,
  measures,
} from '../hoof/measures.ts'
import { parseAngle, parseLength, parseNumber } from '../hoof/units.ts'
import { perFoot } from './by-foot.ts'
import {
  emptyIn,
  field,
  gapIn,
  keyMeant,
  keyTwice,
  namesIn,
  type ParseContext,
  type Reader,
  readFields,
  wrongForm,
} from './fields.ts'
import { measureNamed, spellingsOf } from './measure-names.ts'
import type { Horse } from './model.ts'
import { figure } from './quantities.ts'
import { oneOf } from './readers.ts'
import { quote } from './words.ts'
import type { YamlNode, YamlText } from './yaml-tree.ts'

const measureOf = (id: AnyMeasureId) => (isMeasureId(id) ? measures[id] : derivedMeasures[id])
const spellings = spellingsOf([...measureIds, ...derivedIds])

export const targets: Reader<Horse['targets']> = (value, context, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, context, name, 'a measure and its band: toe angle: [50, 54]')
  const read: Horse['targets'] = {}
  const taken = namesIn(value)
  for (const row of value.entries) {
    const id = measureNamed(row.key.text)
    if (id === null) {
      context.report.error('measure-unknown', row.key, `${quote(row.key.text)} is not a measure.`, {
        expected: 'a measure of the page Measures and sources, such as toe angle or heel balance',
        fix: keyMeant(row.key.text, taken, spellings),
      })
      continue
    }
    if (read[id]) keyTwice(row, context)
    if (emptyIn(row, context) || gapIn(row.value, row.key.text, context)) continue
    const bands = perFoot(bandOf(id), isBand)(row.value, context, `target of ${measureOf(id).name}`)
    if (bands) read[id] = bands
  }
  return read
}

/** A list of two, or a text such as `50 to 54`, is one band for all feet. */
const isBand = (value: YamlNode): boolean =>
  value.kind === 'text' || (value.kind === 'list' && value.items.length === 2 && value.items.every(isEdge))
const isEdge = (item: YamlNode): boolean => item.kind === 'text' || item.kind === 'nothing'

const bandOf =
  (id: AnyMeasureId): Reader<Band> =>
  (value, context, name): Band | undefined => {
    const expected = 'a band: [50, 54], with ~ for an open side'
    const edges = edgesOf(value)
    if (!edges) return wrongForm(value, context, name, expected, { advice: adviceFor(value) })
    if (edges.some((edge) => edge.kind === 'text' && gapIn(edge, name, context))) return undefined
    const numbers = edges.map((edge) => (edge.kind === 'text' ? edgeValue(edge, id, context) : null))
    const [low = null, high = null] = numbers
    const wrong = edges.find((edge, index) => edge.kind === 'text' && numbers[index] === null)
    if (wrong) return wrongForm(wrong, context, name, expected)
    if (low === null && high === null) return wrongForm(value, context, name, 'at least one side of the band')
    if (low !== null && high !== null && low > high) {
      context.report.error(
        'target-reversed',
        value,
        `The ${name} begins at ${figure(low)} and ends below it, at ${figure(high)}.`,
        {
          expected: 'the lower side first',
          fix: `[${textOf(edges[1])}, ${textOf(edges[0])}]`,
        },
      )
      return undefined
    }
    doubtEdges({ low, high }, id, value, context, name)
    return { low, high }
  }

const textOf = (edge: YamlNode | undefined): string => (edge?.kind === 'text' ? edge.text : '~')

/** A bare number is no band: how wide it should be is the writer's to say. */
function adviceFor(value: YamlNode): string | null {
  const isBare = value.kind === 'text' && parseNumber(value.text) !== null
  return isBare ? 'write the lower and the upper side, as [50, 54]' : null
}

function edgesOf(value: YamlNode): readonly YamlNode[] | null {
  if (value.kind === 'list') return value.items.length === 2 && value.items.every(isEdge) ? value.items : null
  if (value.kind !== 'text') return null
  const written = value.text.trim()
  const mark = / to |\u2013|(?<=\d)-/.exec(written)
  if (!mark) return null
  const sides = [written.slice(0, mark.index), written.slice(mark.index + mark[0].length)].map((side) =>
    side.trim(),
  )
  return sides.includes('') ? null : sides.map((text): YamlText => ({ ...value, verbatim: false, text }))
}

function edgeValue(edge: YamlText, id: AnyMeasureId, context: ParseContext): number | null {
  const { kind } = measureOf(id)
  if (kind === 'length') return parseLength(edge.text, context.units)?.mm ?? null
  return kind === 'angle' ? parseAngle(edge.text) : parseNumber(edge.text)
}

/** A target wholly outside what is likely for the measure was probably written in another unit. */
function doubtEdges(
  band: Band,
  id: AnyMeasureId,
  value: YamlNode,
  context: ParseContext,
  name: string,
): void {
  if (!isMeasureId(id)) return
  const [low, high] = measures[id].likely
  if ((band.high === null || band.high >= low) && (band.low === null || band.low <= high)) return
  const unit = measures[id].kind === 'length' ? ' mm' : '°'
  context.report.warning('target-unlikely', value, `The ${name} lies outside all that is likely.`, {
    expected: `a band within ${low} to ${high}${unit}`,
    ...(unit === ' mm' && { advice: 'write the unit: 84 mm, 8.4 cm or 3.3 in' }),
  })
}

/** Common practice, no source: a trim takes a few millimetres beyond what has grown. */
const mostLikely = 6

const most: Reader<number> = (value, context, name) => {
  const length = value.kind === 'text' ? parseLength(value.text, context.units) : null
  if (!length) return wrongForm(value, context, name, 'a length: 1.5 mm')
  if (length.mm > mostLikely && length.mm <= 20) {
    const isWhole = Number.isInteger(length.amount) && length.amount >= 10
    context.report.warning(
      'limit-unlikely',
      value,
      `${figure(length.mm)} mm is unlikely as the most to take at one trim, beyond what has grown.`,
      {
        expected: `up to ${mostLikely} mm`,
        fix: isWhole ? `${figure(length.amount / 10)} ${length.unit}` : null,
      },
    )
  }
  if (length.mm > 0 && length.mm <= 20) return length.mm
  context.report.error(
    'limit-impossible',
    value,
    `${figure(length.mm)} mm cannot be the most to take at one trim.`,
    {
      expected: 'above 0, at most 20 mm',
    },
  )
  return undefined
}

const limitFields = {
  sole: field<PerFoot<'flat' | 'cupped'>>(
    perFoot(oneOf(['flat', 'cupped'] as const), (value) => value.kind === 'text'),
    {},
  ),
  'most per trim': field<number | null>(most, null),
}

export type LimitKey = keyof typeof limitFields

export const trimLimits: Reader<Horse['trimLimits']> = (value, context, name) => {
  if (value.kind !== 'map') return wrongForm(value, context, name, '{sole: flat, most per trim: 1.5 mm}')
  const read = readFields(value, limitFields, context, 'of trim limits')
  return { sole: read.sole, mostPerTrim: read['most per trim'] }
}
