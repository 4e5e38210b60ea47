/** Readers of single values: text, lines, yes or no, dates, words of a list, numbers of a scale. */
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { parseNumber, parseWeight } from '../hoof/units.ts'
import { type Reader, wrongForm } from './fields.ts'
import { either, nearest, normal, quote } from './words.ts'
import { isUnfilled, type Written } from './written.ts'

/** Text on one or more lines. A line such as `Left: swollen` that YAML took for a key is read as the text it is. */
export const text: Reader<string> = (value, sheet, name) => {
  const words = asText(value)
  return words ?? wrongForm(value, sheet, name, 'text', 'put the text in quotes')
}

function asText(value: Written): string | null {
  if (value.kind === 'text') return value.text.trim()
  const only = value.kind === 'map' && value.entries.length === 1 ? value.entries[0] : undefined
  return only?.value.kind === 'text' ? `${only.key.text}: ${only.value.text}` : null
}

/** A list of plain lines; a single line will do. */
export const lines: Reader<readonly string[]> = (value, sheet, name) => {
  if (value.kind !== 'list') {
    const line = text(value, sheet, name)
    return line === undefined ? undefined : [line]
  }
  const read: string[] = []
  for (const item of value.items) {
    if (item.kind === 'nothing') continue
    if (isUnfilled(item)) {
      sheet.report.gap(item, `A line of ${name} is not yet filled in.`)
      continue
    }
    const line = text(item, sheet, `a line of ${name}`)
    if (line) read.push(line)
  }
  return read
}

const yes = new Set(['yes', 'true', 'y', 'on'])
const no = new Set(['no', 'false', 'n', 'off'])

/** Yes or no in the words that people and YAML use, else null. */
export function yesOrNo(value: Written): boolean | null {
  const word = value.kind === 'text' ? normal(value.text) : ''
  if (yes.has(word)) return true
  return no.has(word) ? false : null
}

export const yesNo: Reader<boolean> = (value, sheet, name) =>
  yesOrNo(value) ?? wrongForm(value, sheet, name, 'yes or no')

/** A calendar date. Written another way it is refused, with the date that was probably meant where only one can be. */
export const date: Reader<PlainDate> = (value, sheet, name) => {
  const written = value.kind === 'text' ? value.text.trim() : ''
  return (
    parseDate(written) ??
    wrongForm(
      value,
      sheet,
      name,
      'a date that exists, year-month-day: 2026-03-14',
      likelyDate(written) ?? undefined,
    )
  )
}

/** `2026-3-4`, `2026/03/04`, `20260304`, `2026-03-04T10:00`, `4.3.2026` and `31/3/2026` have one reading each. */
export function likelyDate(written: string): PlainDate | null {
  const yearFirst =
    /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})(?:[T ].*)?$/.exec(written) ??
    /^(\d{4})(\d{2})(\d{2})$/.exec(written)
  if (yearFirst) return dateFrom(yearFirst[1], yearFirst[2], yearFirst[3])
  const dayOrMonthFirst = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})$/.exec(written)
  if (!dayOrMonthFirst) return null
  const [, first, mark, second, year] = dayOrMonthFirst
  if (mark === '.' || Number(first) > 12) return dateFrom(year, second, first)
  return Number(second) > 12 ? dateFrom(year, first, second) : null
}

const dateFrom = (year = '', month = '', day = ''): PlainDate | null =>
  parseDate(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`)

/** `5 weeks`, `35 days`, `2 months` as whole days; a month is 30.4375 days, rounded. Null for anything else. */
export function parseInterval(written: string): number | null {
  const match = /^(?:in\s+)?(\d+|a|an|one|two|three|four|five|six|seven|eight)\s*(day|week|month)s?$/i.exec(
    written.trim(),
  )
  if (!match) return null
  const words = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight']
  const count = (match[1] ?? '').toLowerCase()
  const amount =
    count === 'a' || count === 'an' ? 1 : words.indexOf(count) > 0 ? words.indexOf(count) : Number(count)
  const days = { day: 1, week: 7, month: 30.4375 }[(match[2] ?? '').toLowerCase()] ?? 1
  const total = Math.round(amount * days)
  return total >= 1 && total <= 3660 ? total : null
}

export const interval: Reader<number> = (value, sheet, name) =>
  (value.kind === 'text' ? parseInterval(value.text) : null) ??
  wrongForm(value, sheet, name, 'a number of weeks or days: 5 weeks', likelyInterval(value) ?? undefined)

const likelyInterval = (value: Written): string | null =>
  value.kind === 'text' && /^\d+$/.test(value.text) ? `${value.text} weeks` : null

/** One of the words, in any case, spaces or hyphens; the answer is spelled as in `words`. */
export const oneOf =
  <W extends string>(words: readonly W[]): Reader<W> =>
  (value, sheet, name) =>
    value.kind === 'text'
      ? (words.find((word) => normal(word) === normal(value.text)) ??
        wrongForm(value, sheet, name, either(words), nearest(value.text, words) ?? undefined))
      : wrongForm(value, sheet, name, either(words))

/** A grade of a scale from `low` to `high`, whole unless `step` is 0.5; `names` are words for 0, 1, 2, ... */
export const grade =
  (low: number, high: number, names: readonly string[] = [], step: 1 | 0.5 = 1): Reader<number> =>
  (value, sheet, name) => {
    const expected = `${step === 1 ? 'a whole number' : 'a number, in halves,'} from ${low} to ${high}${
      names.length > 0 ? `, or ${either(names)}` : ''
    }`
    if (value.kind !== 'text') return wrongForm(value, sheet, name, expected)
    const word = names.findIndex((known) => known.toLowerCase() === normal(value.text))
    if (word >= 0) return low + word
    const number = parseNumber(value.text)
    if (number === null)
      return wrongForm(value, sheet, name, expected, nearest(value.text, names) ?? undefined)
    if (number < low || number > high || number % step !== 0) {
      sheet.report.error('grade-impossible', value, `${quote(value.text)} is no grade of ${name}.`, {
        expected,
      })
      return undefined
    }
    return number
  }

/** Kilograms; the unit must be written. A weight no horse has is doubted. */
export const weight: Reader<number> = (value, sheet, name) => {
  const kg = value.kind === 'text' ? parseWeight(value.text) : null
  if (kg === null) {
    const bare = value.kind === 'text' && parseNumber(value.text) !== null ? value.text.trim() : null
    return wrongForm(
      value,
      sheet,
      name,
      'a weight with its unit: 505 kg or 1100 lb',
      bare ? `${bare} kg` : undefined,
    )
  }
  if (kg < 40 || kg > 1400) {
    sheet.report.warning(
      'weight-unlikely',
      value,
      `A weight of ${Math.round(kg)} kg is unlikely for a horse.`,
      {
        expected: '40 to 1400 kg',
      },
    )
  }
  return kg
}
