/** Readers of single values: text, lines, yes or no, dates, words of a list, numbers of a scale. */
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { parseNumber, parseWeight } from '../hoof/units.ts'
import { type ParseContext, type Reader, sentence, wrongForm } from './fields.ts'
import { limits } from './limits.ts'
import type { TextRange } from './report.ts'
import { meansNotRead, numberWords } from './slips.ts'
import { either, nearest, normal, quote } from './words.ts'
import { isUnfilled, type YamlNode, type YamlText } from './yaml-tree.ts'

/** Text on one or more lines. A line such as `Left: swollen` that YAML took for a key is read as the text it is. */
export const text: Reader<string> = (value, context, name) => {
  const only = value.kind === 'map' && value.entries.length === 1 ? value.entries[0] : undefined
  const words = only ? only.value : value
  if (words.kind !== 'text')
    return wrongForm(value, context, name, 'text', { advice: 'put the text in quotes' })
  reportCut(words, context, name)
  return only ? `${only.key.text}: ${words.text}` : words.text.trim()
}

/** Text of at most so many letters. */
export const textUpTo =
  (most: number): Reader<string> =>
  (value, context, name) => {
    const read = text(value, context, name)
    return read !== undefined && isTooLong(read, value, context, name, most) ? undefined : read
  }

/** A name, a number to ring, a few words. */
export const name = textUpTo(limits.name)

/** True, and told, for a text that is longer than a name. */
export function isTooLong(
  written: string,
  at: TextRange,
  context: ParseContext,
  name: string,
  most: number = limits.name,
): boolean {
  if (written.length <= most) return false
  context.report.error('too-long', at, `${sentence(name)} has ${written.length} letters.`, {
    expected: `at most ${most} letters`,
    advice: 'shorten it; notes go below the second line of ---',
  })
  return true
}

/** Warns of words that a ` #` cuts off a text. */
export function reportCut(value: YamlText, context: ParseContext, name: string, mayBeQuoted = true): void {
  if (!value.cut) return
  const whole = context.report.textOf({ start: value.start, end: value.cut.end }).trimEnd()
  const fix = { start: value.start, end: value.cut.end, text: `"${whole}"` }
  context.report.warning(
    'words-cut',
    value.cut,
    `From the # on, this counts as a remark and is left out of ${name}.`,
    {
      expected: 'text with a # in quotes; a remark comes after two spaces',
      ...(!mayBeQuoted || /["\\]/.test(whole)
        ? { advice: 'write it without the #, or put the whole text in quotes' }
        : { fix: { words: fix.text, edits: [fix] } }),
    },
  )
}

/** A list of what is read alike; a single one will do. */
export const listOf =
  <T extends string | object>(readOne: Reader<T>): Reader<readonly T[]> =>
  (value, context, name) => {
    if (value.kind !== 'list') {
      if (isJoined(value, context, name)) return undefined
      const line = readOne(value, context, name)
      return line === undefined ? undefined : [line]
    }
    const read: T[] = []
    for (const item of value.items) {
      if (item.kind === 'nothing') continue
      if (isUnfilled(item)) {
        context.report.gap(item, `A line of ${name} is not yet filled in.`)
        continue
      }
      const line = readOne(item, context, `a line of ${name}`)
      if (line) read.push(line)
    }
    return read
  }

export const lines = listOf(text)
export const names = listOf(name)

/** Lines of which the first has no dash, or no space after it: YAML joins them all into one. Reported. */
function isJoined(value: YamlNode, context: ParseContext, name: string): boolean {
  if (value.kind !== 'text' || value.quoted || value.verbatim) return false
  const [first = '', ...others] = context.report.textOf(value).split('\n')
  if (others.length === 0 || !others.every((line) => /^\s*-\s/.test(line))) return false
  const dash = /^-?/.exec(first)?.[0].length ?? 0
  context.report.error('dash-missing', value, `A dash is missing in ${name}, so its lines are read as one.`, {
    expected: 'each line begins with a dash and a space',
    fix: {
      words: '- before each line',
      edits: [{ start: value.start, end: value.start + dash, text: '- ' }],
    },
  })
  return true
}

const yes = new Set(['yes', 'true', 'y', 'on'])
const no = new Set(['no', 'false', 'n', 'off'])

/** Yes or no in the words that people and YAML use, else null. */
export function yesOrNo(value: YamlNode): boolean | null {
  const word = value.kind === 'text' ? normal(value.text) : ''
  if (yes.has(word)) return true
  return no.has(word) ? false : null
}

export const yesNo: Reader<boolean> = (value, context, name) =>
  yesOrNo(value) ??
  wrongForm(value, context, name, 'yes or no', {
    fix: value.kind === 'text' ? nearest(value.text, ['yes', 'no']) : null,
  })

/** A calendar date. YamlNode another way it is refused, with the date that was probably meant where only one can be. */
export const date: Reader<PlainDate> = (value, context, name) => {
  const written = value.kind === 'text' ? value.text.trim() : ''
  return (
    parseDate(written) ??
    wrongForm(
      value,
      context,
      name,
      'a date that exists, year-month-day: 2026-03-14',
      likelyDate(written) ?? undefined,
    )
  )
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/**
 * The date that a text in another form can only mean: `2026-3-4`, `2026/03/04`, `20260304`, `2026-03-04T10:00`, `4.3.2026`,
 * `31/3/2026`, `4 March 2026`. Null for `4/3/2026`, which has two readings.
 */
export function likelyDate(written: string): PlainDate | null {
  const yearFirst =
    /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})(?:[T ]\d{1,2}:.*)?$/.exec(written) ??
    /^(\d{4})(\d{2})(\d{2})$/.exec(written)
  if (yearFirst) {
    const [, year, month, day] = yearFirst
    return dateFrom(year, month, day) ?? (Number(month) > 12 ? dateFrom(year, day, month) : null)
  }
  const named =
    /^(\d{1,2})(?:st|nd|rd|th)?[ .-]*([a-z]{3,9})\.?[ ,-]*(\d{4})$/i.exec(written) ??
    /^([a-z]{3,9})\.? *(\d{1,2})(?:st|nd|rd|th)?,? +(\d{4})$/i.exec(written)
  if (named) return dateWithMonth(named.slice(1, 3), named[3])
  const dayOrMonthFirst = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})$/.exec(written)
  if (!dayOrMonthFirst) return null
  const [, first, mark, second, year] = dayOrMonthFirst
  if (mark === '.' || Number(first) > 12) return dateFrom(year, second, first)
  return Number(second) > 12 ? dateFrom(year, first, second) : null
}

/** Day and month in either order, the month by its name. */
function dateWithMonth(words: readonly string[], year: string | undefined): PlainDate | null {
  const month = words.find((word) => /[a-z]/i.test(word)) ?? ''
  const day = words.find((word) => word !== month)
  const index = months.indexOf(month.slice(0, 3).toLowerCase())
  return index < 0 ? null : dateFrom(year, String(index + 1), day)
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

export const interval: Reader<number> = (value, context, name) =>
  (value.kind === 'text' ? parseInterval(value.text) : null) ??
  wrongForm(value, context, name, 'a number of weeks or days: 5 weeks', likelyInterval(value) ?? undefined)

const likelyInterval = (value: YamlNode): string | null =>
  value.kind === 'text' ? intervalMeant(value.text) : null

/** `5 wks`, `6w` and a bare number, which can only be weeks when it is small and days when it is large. */
export function intervalMeant(written: string): string | null {
  const match = /^(?:in\s+)?(\d{1,3})\s*([a-z]*)\.?$/i.exec(written.trim())
  if (!match) return null
  const [, count = '', unit = ''] = match
  const number = Number(count)
  const bare = number <= 12 ? 'weeks' : number >= 21 ? 'days' : null
  const short = {
    w: 'weeks',
    wk: 'weeks',
    wks: 'weeks',
    d: 'days',
    m: 'months',
    mth: 'months',
    mths: 'months',
  }
  const lower = unit.toLowerCase()
  const named =
    unit === ''
      ? bare
      : lower in short
        ? short[lower as keyof typeof short]
        : nearest(unit, ['weeks', 'days', 'months'])
  const meant = named && `${count} ${named}`
  return meant && parseInterval(meant) !== null ? meant : null
}

/** One of the words, in any case, spaces or hyphens; the answer is spelled as in `words`. */
export const oneOf =
  <W extends string>(words: readonly W[]): Reader<W> =>
  (value, context, name) =>
    value.kind === 'text'
      ? (words.find((word) => normal(word) === normal(value.text)) ??
        wrongForm(value, context, name, either(words), nearest(value.text, words) ?? undefined))
      : wrongForm(value, context, name, either(words))

/** A grade of a scale from `low` to `high`, whole unless `step` is 0.5; `names` are words for 0, 1, 2, ... */
export const grade =
  (low: number, high: number, names: readonly string[] = [], step: 1 | 0.5 = 1): Reader<number> =>
  (value, context, name) => {
    const expected = `${step === 1 ? 'a whole number' : 'a number, in halves,'} from ${low} to ${high}${
      names.length > 0 ? `, or ${either(names)}` : ''
    }`
    if (value.kind !== 'text') return wrongForm(value, context, name, expected)
    const word = names.findIndex((known) => known.toLowerCase() === normal(value.text))
    if (word >= 0) return low + word
    const number = parseNumber(value.text)
    if (number === null || isOutOf(value.text, high)) {
      const fix = gradeMeant(value.text, low, high) ?? nearest(value.text, names)
      return wrongForm(value, context, name, expected, {
        fix: meansNotRead(value.text) && !fix ? '~' : fix,
        advice:
          !fix && /^\d\s*(?:-|to)\s*\d$/.test(value.text) ? 'write one; where in doubt, the higher' : null,
      })
    }
    if (number < low || number > high || number % step !== 0) {
      context.report.error('grade-impossible', value, `${quote(value.text)} is no grade of ${name}.`, {
        expected,
      })
      return undefined
    }
    return number
  }

/** `2/5` on a scale to 5 is no fraction. */
const isOutOf = (text: string, high: number): boolean => new RegExp(`^\\d\\s*/\\s*${high}$`).test(text)

/** `2/5` and `2 out of 5` on a scale to 5, `grade 2` and `two`. */
function gradeMeant(text: string, low: number, high: number): string | null {
  const word = normal(text).replace(/^grade /, '')
  const outOf = /^(\d)\s*(?:\/|of|out of)\s*(\d)$/.exec(word)
  const meant = outOf ? (Number(outOf[2]) === high ? outOf[1] : undefined) : (numberWords[word] ?? word)
  return meant !== undefined && /^\d$/.test(meant) && Number(meant) >= low && Number(meant) <= high
    ? meant
    : null
}

/** Kilograms; the unit must be written. */
export const weight: Reader<number> = (value, context, name) => {
  const kg = value.kind === 'text' ? parseWeight(value.text) : null
  if (kg === null) {
    const bare = value.kind === 'text' ? parseNumber(value.text) : null
    // Where inches are used, pounds are too: then a bare number can be either.
    // A decimal comma inside braces parts the number, and what stands here is only its first half.
    const isHalf = /^,\d/.test(context.report.textOf({ start: value.end, end: value.end + 2 }))
    const isKilograms = !isHalf && bare !== null && context.units !== 'in' && bare >= 60 && bare <= 900
    return wrongForm(value, context, name, 'a weight with its unit: 505 kg or 1100 lb', {
      fix: isKilograms ? `${bare} kg` : null,
      advice: isHalf
        ? 'write a point, not a comma: 505.5 kg'
        : bare !== null && !isKilograms
          ? 'write the unit, kg or lb'
          : null,
    })
  }
  return kg
}
