/** Values by foot: a list of four in the practice's order, a map of feet, or one value for all. */
import { type Foot, feet, type PerFoot } from '../hoof/feet.ts'
import { parseNumber } from '../hoof/units.ts'
import { keyTwice, type Reader, type Sheet, sentence, wrongForm } from './fields.ts'
import { listed, nearest, normal, quote } from './words.ts'
import { isUnfilled, type Written, type WrittenList, type WrittenMap, type WrittenText } from './written.ts'

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
export const foot: Reader<Foot> = (value, sheet, name) =>
  (value.kind === 'text' ? footNamed(value.text) : null) ?? wrongForm(value, sheet, name, 'LF, RF, LH or RH')

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

/** Any feet: `LF`, `[LF, RF]`, `fores`, `hinds`, `all`. In the usual order, each once. */
export const feetNamed: Reader<readonly Foot[]> = (value, sheet, name) => {
  const texts = value.kind === 'list' ? value.items : [value]
  const named = texts.flatMap((one): readonly (Foot | null)[] =>
    one.kind === 'text' ? (groups[normal(one.text)] ?? [footNamed(one.text)]) : [null],
  )
  if (named.includes(null)) return wrongForm(value, sheet, name, 'feet: LF, [LF, RF], fores, hinds or all')
  return feet.filter((one) => named.includes(one))
}

/** The order in which a list of four is written: each foot once. */
export const feetOrder: Reader<readonly Foot[]> = (value, sheet, name) => {
  const named =
    value.kind === 'list'
      ? value.items.map((item) => (item.kind === 'text' ? footNamed(item.text) : null))
      : []
  const order = named.filter((one) => one !== null)
  if (order.length === 4 && new Set(order).size === 4) return order
  return wrongForm(value, sheet, name, 'each of the four feet once, as [LF, RF, LH, RH]')
}

export interface Cell {
  readonly foot: Foot
  readonly value: Written
}

/** Keys that a map of feet may hold besides the feet. */
type Others = Readonly<Record<string, (value: Written) => void>>

/**
 * The cells of a row, or undefined when the row has another form (reported). Cells left open (`~`, `?`, `_`) are not in
 * the result; those still to be filled in are told of together.
 */
export function cellsByFoot(
  value: Written,
  sheet: Sheet,
  name: string,
  others: Others = {},
): readonly Cell[] | undefined {
  if (value.kind === 'list') return told(listOfFour(value, sheet, name), sheet, name)
  if (value.kind === 'map') return told(mapOfFeet(value, sheet, name, others), sheet, name)
  return wrongForm(value, sheet, name, 'a list of four, or feet with their values: {LF: ..., RF: ...}')
}

function told(cells: readonly Cell[] | undefined, sheet: Sheet, name: string): readonly Cell[] | undefined {
  if (!cells) return undefined
  const open = cells.filter(({ value }) => isUnfilled(value))
  const [first] = open
  if (first) {
    const which = open.length === 4 ? 'all four feet' : listed(open.map((cell) => cell.foot))
    sheet.report.gap(first.value, `${sentence(name)} is not yet filled in for ${which}.`)
  }
  return cells.filter((cell) => cell.value.kind !== 'nothing' && !open.includes(cell))
}

function listOfFour(list: WrittenList, sheet: Sheet, name: string): readonly Cell[] | undefined {
  if (list.items.length === 4) {
    return list.items.flatMap((value, index) => {
      const at = sheet.feetOrder[index]
      return at ? [{ foot: at, value }] : []
    })
  }
  const numbers = list.items.filter((item) => item.kind === 'text' && parseNumber(item.text) !== null).length
  const commas = list.items.length > 4 && numbers === list.items.length
  sheet.report.error(
    'four-feet',
    list,
    `${sentence(name)} lists ${list.items.length} ${list.items.length === 1 ? 'value' : 'values'}.`,
    {
      expected: `four, in the order ${sheet.feetOrder.join(', ')}; ~ for a foot not read`,
      fix: commas
        ? 'in a list a comma parts the values: write 98.5, not 98,5'
        : 'name the feet: {LF: ..., RF: ...}, or add ~ for those not read',
    },
  )
  return undefined
}

function mapOfFeet(map: WrittenMap, sheet: Sheet, name: string, others: Others): readonly Cell[] {
  const cells: Cell[] = []
  for (const entry of map.entries) {
    const other = normal(entry.key.text)
    if (Object.hasOwn(others, other)) {
      if (entry.value.kind !== 'nothing') others[other]?.(entry.value)
      continue
    }
    const at = footNamed(entry.key.text)
    if (!at) unknownFoot(entry.key, sheet, name)
    else if (cells.some((cell) => cell.foot === at)) keyTwice(entry, sheet)
    else cells.push({ foot: at, value: entry.value })
  }
  return cells
}

function unknownFoot(key: WrittenText, sheet: Sheet, name: string): void {
  const comma = /^\d+$/.test(key.text)
  const meant = comma ? 'write 98.5, not 98,5: here a comma parts the values' : nearest(key.text, feet)
  sheet.report.error('foot-unknown', key, `${quote(key.text)} under ${name} is not a foot.`, {
    expected: 'LF, RF, LH or RH',
    ...(meant && { fix: meant }),
  })
}

/** A reader of a value for each foot; where `forAll` says so, the one value counts for all four. */
export const perFoot =
  <T>(read: Reader<T>, forAll: (value: Written) => boolean = () => false): Reader<PerFoot<T>> =>
  (value, sheet, name) => {
    if (forAll(value)) {
      const one = read(value, sheet, name)
      return one === undefined ? undefined : { LF: one, RF: one, LH: one, RH: one }
    }
    const cells = cellsByFoot(value, sheet, name)
    const result: PerFoot<T> = {}
    for (const cell of cells ?? []) {
      const one = read(cell.value, sheet, name)
      if (one !== undefined) result[cell.foot] = one
    }
    return cells && result
  }
