/** Telephone numbers, compared by their digits alone and known by their layout. */
import { parsePhoneNumberFromString } from 'libphonenumber-js/min'

/** A number as it is dialled within its country, without the zero in front: `01632 960117` and `+44 1632 960117` alike. */
export function nationalDigits(text: string): string {
  const trimmed = text.trim().replace(/^00/, '+')
  const parsed = trimmed.startsWith('+') ? parsePhoneNumberFromString(trimmed) : undefined
  return parsed?.nationalNumber ?? text.replace(/\D/g, '').replace(/^0+/, '')
}

export interface NumberPlace {
  readonly start: number
  readonly end: number
}

const gap = '[\\s\\u00A0().\\/\\u2010-\\u2015-]{0,3}'
const lead = `(?:(?:\\+|00)${gap}\\d(?:${gap}\\d){0,2}${gap})?\\(?(?:0${gap})?\\(?`

/** Finds known numbers in any layout; `known` by their national digits. */
export function knownNumbers<T>(
  known: ReadonlyMap<string, T>,
): (text: string) => readonly (NumberPlace & { of: T })[] {
  const lengths = [...new Set([...known.keys()].map(({ length }) => length))]
  return (text) => {
    if (lengths.length === 0) return []
    const found: (NumberPlace & { of: T })[] = []
    for (const cluster of text.matchAll(new RegExp(`\\d(?:${gap}\\d){5,}`, 'g'))) {
      const digits = cluster[0].replace(/\D/g, '')
      for (let at = 0; at < digits.length; at++) {
        for (const length of lengths) {
          const number = digits.slice(at, at + length)
          const of = number.length === length ? known.get(number) : undefined
          if (of === undefined) continue
          const from = Math.max(0, cluster.index - 8)
          const pattern = new RegExp(`${lead}${[...number].join(gap)}`)
          const match = pattern.exec(text.slice(from, cluster.index + cluster[0].length))
          if (match === null) continue
          found.push({ start: from + match.index, end: from + match.index + match[0].length, of })
        }
      }
    }
    return found
  }
}

/** Countries whose national layouts are known for certain to be telephone numbers where they begin with a zero or an area code. */
const countries = ['GB', 'IE', 'DE', 'FR', 'NL', 'BE', 'AT', 'CH', 'IT', 'AU', 'NZ', 'ZA', 'US'] as const

const digitRun = new RegExp(
  `(?<![\\d.,/\\p{L}+-])(?:\\+|\\()?\\d(?:${gap.replace('{0,3}', '{0,2}')}\\d){5,15}(?![\\d%]|[.,/]\\d)`,
  'gu',
)
const called =
  /(?:ring|rang|call(?:ed)?|phone|phoned|tel|telephone|mobile|mob|text|texted|whatsapp|fax|number)\.?:?\s+(?:on\s+|at\s+)?$/i

/** A number that is written as only telephone numbers are: with `+`, a zero and an area in front, or after "ring". */
export function phoneNumbersIn(text: string): readonly NumberPlace[] {
  const found: NumberPlace[] = []
  for (const { 0: raw, index } of text.matchAll(digitRun)) {
    if (/[\n\r]/.test(raw)) continue
    const digits = raw.replace(/\D/g, '')
    const isCalled = called.test(text.slice(Math.max(0, index - 20), index))
    if (isCalled ? digits.length < 6 : !isPhone(raw, digits)) continue
    found.push({ start: index, end: index + raw.length })
  }
  return found
}

function isPhone(raw: string, digits: string): boolean {
  if (digits.length < 9) return false
  if (/^\+|^00\d/.test(raw)) return parsePhoneNumberFromString(raw.replace(/^00/, '+'))?.isPossible() ?? false
  const isAreaFirst = /^\(?0\d{2,5}/.test(raw) || /^(?:\(\d{3}\)\s?|\d{3}[-.])\d{3}[-. ]\d{4}$/.test(raw)
  return (
    isAreaFirst &&
    countries.some((country) => parsePhoneNumberFromString(raw, country)?.isPossible() ?? false)
  )
}
