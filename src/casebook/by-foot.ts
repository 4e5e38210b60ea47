/** Values by foot: a list of four in the practice's order, a map of feet, or one value for all. */
import { type Foot, feet, type PerFoot } from '../hoof/feet.ts'
import { parseNumber } from '../hoof/units.ts'
import {
  emptyIn,
  keyMeant,
  keyTwice,
  namesIn,
  type ParseContext,
  type Reader,
  sentence,
  withoutSpace,
  wrongForm,
} from './fields.ts'
import { listItems } from './slips.ts'
import { listed, normal, quote } from './words.ts'
import { isUnfilled, type YamlEntry, type YamlList, type YamlMap, type YamlNode } from './yaml-tree.ts'

const footWords: Readonly<Record<string, Foot>> = {
  lf: 'LF',
  'left fore': 'LF',
  'left front': 'LF',
  'near fore': 'LF',
  rf: 'RF',
  'right fore': 'RF',
  'right front': 'RF',
  'off fore': 'RF',
  lh: 'LH',
  'left hind': 'LH',
  'near hind': 'LH',
  rh: 'RH',
  'right hind': 'RH',
  'off hind': 'RH',
}

export const footNamed = (text: string): Foot | null => {
  const name = normal(text)
  return Object.hasOwn(footWords, name) ? (footWords[name] ?? null) : null
}

/** A foot named by a value. */
export const foot: Reader<Foot> = (value, context, name) =>
  (value.kind === 'text' ? footNamed(value.text) : null) ??
  wrongForm(value, context, name, 'LF, RF, LH or RH')

const groups: Readonly<Record<string, readonly Foot[]>> = {
  fores: ['LF', 'RF'],
  'both fores': ['LF', 'RF'],
  fronts: ['LF', 'RF'],
  'both fronts': ['LF', 'RF'],
  hinds: ['LH', 'RH'],
  'both hinds': ['LH', 'RH'],
  all: feet,
  'all four': feet,
}

/** The feet that a word or two name, `left fore` or `both hinds`; null for other words. */
export function feetInWords(text: string): readonly Foot[] | null {
  const group = normal(text)
  if (Object.hasOwn(groups, group)) return groups[group] ?? null
  const one = footNamed(text)
  return one && [one]
}

/** Any feet: `LF`, `[LF, RF]`, `fores`, `hinds`, `all`. In the usual order, each once. */
export const feetNamed: Reader<readonly Foot[]> = (value, context, name) => {
  const texts = value.kind === 'list' ? value.items : [value]
  const named = texts.flatMap((one): readonly (Foot | null)[] =>
    one.kind === 'text' ? (feetInWords(one.text) ?? [null]) : [null],
  )
  if (named.includes(null)) return wrongForm(value, context, name, 'feet: LF, [LF, RF], fores, hinds or all')
  return feet.filter((one) => named.includes(one))
}

/** The order in which a list of four is written: each foot once. */
export const feetOrder: Reader<readonly Foot[]> = (value, context, name) => {
  const named =
    value.kind === 'list'
      ? value.items.map((item) => (item.kind === 'text' ? footNamed(item.text) : null))
      : []
  const order = named.filter((one) => one !== null)
  if (order.length === 4 && new Set(order).size === 4) return order
  return wrongForm(value, context, name, 'each of the four feet once, as [LF, RF, LH, RH]')
}

export interface Cell {
  readonly foot: Foot
  readonly value: YamlNode
}

/** Keys that a map of feet may hold besides the feet. */
type Others = Readonly<Record<string, (value: YamlNode) => void>>

/**
 * The cells of a row, or undefined when the row has another form (reported). Cells left open (`~`, `?`, `_`) are not in
 * the result; those still to be filled in are told of together.
 */
export function cellsByFoot(
  value: YamlNode,
  context: ParseContext,
  name: string,
  others: Others = {},
): readonly Cell[] | undefined {
  if (value.kind === 'list') return reported(listOfFour(value, context, name), context, name)
  if (value.kind === 'map') return reported(mapOfFeet(value, context, name, others), context, name)
  const items = value.kind === 'text' ? listItems(value.text) : []
  const isList = items.length === 4 && value.kind === 'text' && !value.quoted
  return wrongForm(value, context, name, 'a list of four, or feet with their values: {LF: ..., RF: ...}', {
    fix: isList ? `[${items.join(', ')}]` : null,
  })
}

function reported(
  cells: readonly Cell[] | undefined,
  context: ParseContext,
  name: string,
): readonly Cell[] | undefined {
  if (!cells) return undefined
  const open = cells.filter(({ value }) => isUnfilled(value))
  const [first] = open
  if (first) {
    const which = open.length === 4 ? 'all four feet' : listed(open.map((cell) => cell.foot))
    context.report.gap(first.value, `${sentence(name)} is not yet filled in for ${which}.`)
  }
  return cells.filter((cell) => cell.value.kind !== 'nothing' && !open.includes(cell))
}

function listOfFour(list: YamlList, context: ParseContext, name: string): readonly Cell[] | undefined {
  if (list.items.length === 4) {
    return list.items.flatMap((value, index) => {
      const at = context.feetOrder[index]
      return at ? [{ foot: at, value }] : []
    })
  }
  const fix = rowMeant(list)
  context.report.error(
    'four-feet',
    list,
    `${sentence(name)} lists ${list.items.length} ${list.items.length === 1 ? 'value' : 'values'}.`,
    {
      expected: `four, in the order ${context.feetOrder.join(', ')}; ~ for a foot not read`,
      fix: fix && `[${fix.join(', ')}]`,
      advice: fix
        ? null
        : list.items.length > 4 && numbersIn(list) === list.items.length
          ? 'if a comma is a decimal comma, write a point: 98.5'
          : 'name the feet: {LF: ..., RF: ...}, or add ~ for those not read',
    },
  )
  return undefined
}

const numbersIn = (list: YamlList): number =>
  list.items.filter((item) => item.kind === 'text' && parseNumber(item.text) !== null).length

/**
 * The four values of a list that seems to have another number: written without commas between, or with decimal commas,
 * which are told from the others by the space that only the others have after them.
 */
function rowMeant(list: YamlList): readonly string[] | null {
  const texts: string[] = []
  let lastEnd = -1
  for (const item of list.items) {
    const text = item.kind === 'text' ? item.text : '~'
    const isFraction = item.start === lastEnd + 1 && /^\d+(?:\s*[a-z"]+)?$/i.test(text)
    if (isFraction && /^\d+$/.test(texts.at(-1) ?? '')) texts.push(`${texts.pop()}.${text}`)
    else texts.push(text)
    lastEnd = item.end
  }
  if (list.items.length > 4) return texts.length === 4 || list.items.length === 8 ? fourOf(texts, list) : null
  // In inches a space also stands before a fraction: 3 1/2.
  if (texts.length > 1 && texts.some((text) => text.includes('/'))) return null
  const apart = texts.flatMap((text) => listItems(text))
  return apart.length === 4 ? apart : null
}

/** Eight numbers can only be four with decimal commas, whatever the spaces. */
function fourOf(texts: readonly string[], { items }: YamlList): readonly string[] | null {
  if (texts.length === 4) return texts
  const parts = items.map((item) => (item.kind === 'text' ? item.text : ''))
  if (!parts.every((part, index) => (index % 2 ? /^\d{1,2}(?: *[a-z]+)?$/i : /^\d+$/).test(part))) return null
  return [0, 2, 4, 6].map((index) => `${parts[index]}.${parts[index + 1]}`)
}

function mapOfFeet(map: YamlMap, context: ParseContext, name: string, others: Others): readonly Cell[] {
  const cells: Cell[] = []
  const unknown: YamlEntry[] = []
  for (const [index, entry] of map.entries.entries()) {
    const other = normal(entry.key.text)
    if (Object.hasOwn(others, other)) {
      if (entry.value.kind !== 'nothing') others[other]?.(entry.value)
      continue
    }
    const at = footNamed(entry.key.text)
    if (!at && isFractionOf(map.entries[index - 1], entry)) {
      reportDecimalComma(map.entries[index - 1] as YamlEntry, entry, context, name)
      cells.pop()
    } else if (!at) unknown.push(entry)
    else if (cells.some((cell) => cell.foot === at)) keyTwice(entry, context)
    else if (!emptyIn(entry, context)) cells.push({ foot: at, value: entry.value })
  }
  reportUnknownFeet(unknown, map, context, name)
  return cells
}

/** `5` or `3 cm` after `LF: 98`, with nothing of its own: what a decimal comma makes of 98,5. */
const isFractionOf = (before: YamlEntry | undefined, { key, value }: YamlEntry): boolean =>
  value.kind === 'nothing' &&
  /^\d+(?:\s*[a-z"]+)?$/i.test(key.text) &&
  before?.value.kind === 'text' &&
  /^\d+$/.test(before.value.text)

function reportDecimalComma(
  before: YamlEntry,
  { key }: YamlEntry,
  context: ParseContext,
  name: string,
): void {
  const whole = before.value.kind === 'text' ? before.value.text : ''
  const range = { start: before.value.start, end: key.end }
  context.report.error('decimal-comma', range, `${sentence(name)}: in braces a comma parts the values.`, {
    expected: 'a decimal point',
    fix: `${whole}.${key.text}`,
  })
}

/** One remark for a row, however many of its names are no feet. */
export function reportUnknownFeet(
  unknown: readonly YamlEntry[],
  map: YamlMap,
  context: ParseContext,
  name: string,
): void {
  const [entry, ...more] = unknown
  if (!entry) return
  const expected = 'LF, RF, LH or RH'
  if (more.length > 0) {
    const names = listed(unknown.map(({ key }) => quote(key.text)))
    context.report.error('foot-unknown', entry.key, `${names} under ${name} are not feet.`, { expected })
    return
  }
  const { key, value } = entry
  const glued = value.kind === 'nothing' ? withoutSpace(key.text, feet) : null
  context.report.error('foot-unknown', key, `${quote(key.text)} under ${name} is not a foot.`, {
    expected,
    fix: glued ?? keyMeant(key.text, namesIn(map), feet),
  })
}

/** A reader of a value for each foot; where `forAll` says so, the one value counts for all four. */
export const perFoot =
  <T>(read: Reader<T>, forAll: (value: YamlNode) => boolean = () => false): Reader<PerFoot<T>> =>
  (value, context, name) => {
    if (forAll(value)) {
      const one = read(value, context, name)
      return one === undefined ? undefined : { LF: one, RF: one, LH: one, RH: one }
    }
    const cells = cellsByFoot(value, context, name)
    const result: PerFoot<T> = {}
    for (const cell of cells ?? []) {
      const one = read(cell.value, context, name)
      if (one !== undefined) result[cell.foot] = one
    }
    return cells && result
  }
