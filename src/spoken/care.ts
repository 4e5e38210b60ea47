/** What the owner is asked to do, and when the next visit is. */
import { addDays, dayOf, type PlainDate, parseDate } from '../hoof/dates.ts'
import { type Hearing, merged } from './hearing.ts'
import { figure } from './quantity.ts'
import { ask, type Scan, stretch } from './scan.ts'
import { as, isA, type Sentence, type Token } from './tokens.ts'
import type { Word } from './words.ts'

/** A longer sentence has no stops, so where the care in it ends is not known. */
const mostWords = 40

const toOwner =
  /^(?:(?:and|so|please|can you|i'll|i have to|must|remember to)\s+){0,3}(?:tell|ask|remind|text|told|asked)\s+(?:the\s+)?[\p{L}'-]+(?:\s+[\p{L}'-]+)?\s+(?:to|that)\s+/iu
const ownerTo = /^(?:the\s+)?owners?\s+(?:to|should|must|needs to|is to)\s+/iu
const untilFirst = /^until\s+(?:the\s+)?next\s+(?:time|visit|trim),?\s+/iu
const untilLast = /,?\s+until\s+(?:the\s+)?next\s+(?:time|visit|trim)[.!]?$/iu
const someone =
  /^(?:he|she|they|you|owner)\s+(?:should|must|needs to|need to|has to|have to|is to|are to)\s+/iu

/** The care that a sentence asks for, or null. */
export function careOf(sentence: Sentence, words: readonly Word[]): string | null {
  if (sentence.asks || sentence.lastWord - sentence.firstWord >= mostWords) return null
  const text = words
    .slice(sentence.firstWord, sentence.lastWord + 1)
    .map((word) => word.text)
    .join(' ')
    .replaceAll('\u2019', "'")
  // Where a measure is read in it, the sentence is more than care.
  if (sentence.tokens.some((token, at) => token.number && isA(sentence.tokens[at - 1], 'measure')))
    return null
  let rest: string | null = null
  for (const form of [toOwner, ownerTo, untilFirst]) {
    const match = form.exec(text)
    if (match && rest === null) rest = text.slice(match[0].length)
  }
  if (rest === null && untilLast.test(text)) rest = text.replace(someone, '')
  if (rest === null) return null
  return (
    rest
      .replace(untilLast, '')
      .replace(/[.!,;:]+$/, '')
      .trim() || null
  )
}

const ordinals = [
  'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth',
  'sixteenth seventeenth eighteenth nineteenth twentieth',
].flatMap((line) => line.split(' '))

const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
]

/** Days within which a next visit lies. */
const farthest = 300

/** @returns the first token after the next visit's day, or null where none is said */
export function hearNextVisit(
  hearing: Hearing,
  scan: Scan,
  at: number,
  words: readonly Word[],
): number | null {
  const { tokens } = scan
  const cue = tokens[at]
  if (!cue || !as(cue, 'next-visit')) return null
  const token = tokens[at + 1]
  const span = token && cue.pause !== 'stop' ? spanAt(tokens, at + 1) : null
  if (span) {
    const from = [stretch(scan, at, span.end - 1)]
    for (let index = at; index < span.end; index++) scan.used.add(index)
    if (span.text === null || (hearing.nextVisit && hearing.nextVisit.text !== span.text))
      ask(hearing, 'When is the next visit?', from)
    else hearing.nextVisit = { text: span.text, from: merged(from), doubt: null }
    return span.end
  }
  const date = dateIn(words, cue.last + 1, hearing.known.date)
  if (!date) return null
  hearing.nextVisit ??= { text: date.date, from: [{ first: cue.first, last: date.last }], doubt: null }
  let end = at + 1
  while (tokens[end] && (tokens[end] as Token).first <= date.last) end++
  for (let index = at; index < end; index++) scan.used.add(index)
  return end
}

/** "Five weeks", "a fortnight"; no text where two numbers were said. */
function spanAt(
  tokens: readonly Token[],
  at: number,
): { readonly text: string | null; readonly end: number } | null {
  const from = isA(tokens[at], 'doubt') ? at + 1 : at
  const token = tokens[from]
  const single = /^(?:day|week|month)$/.exec(token?.text ?? '')?.[0]
  if (single && token?.lead.includes('a')) return { text: `in 1 ${single}`, end: from + 1 }
  if (token?.text === 'fortnight') return { text: 'in 2 weeks', end: from + 1 }
  const isOr = isA(tokens[from + 1], 'or') || tokens[from + 1]?.number != null
  const unitAt = isOr ? (isA(tokens[from + 1], 'or') ? from + 3 : from + 2) : from + 1
  const unit = /^(day|week|month)s?$/.exec((tokens[unitAt]?.text ?? '').replace(/^wk/, 'week'))?.[1]
  if (!token?.number || unit === undefined) return null
  const count = token.number.value
  const isSure = !isOr && Number.isInteger(count) && count > 0 && count < 100
  return { text: isSure ? `in ${figure(count)} ${unit}${count === 1 ? '' : 's'}` : null, end: unitAt + 1 }
}

/** "The fourteenth of January", "14 Jan": the next such day after the visit. */
function dateIn(
  words: readonly Word[],
  from: number,
  visit: PlainDate,
): { readonly date: PlainDate; readonly last: number } | null {
  const near = words.slice(from, from + 7).map((word) => word.text.toLowerCase().replace(/[^a-z0-9-]/g, ''))
  for (let at = 0; at < near.length; at++) {
    const month = monthOf(near[at] ?? '')
    if (month === null) continue
    const before = near[at - 1] === 'of' ? dayAt(near, at - 2) : dayAt(near, at - 1)
    const after = before === null ? dayAfter(near, at + 1) : null
    const day = before ?? after?.day ?? null
    if (day === null) return null
    const date = nextSuch(day, month, visit)
    return date && { date, last: from + (after ? after.last : at) }
  }
  return null
}

const monthOf = (word: string): number | null => {
  const at = months.findIndex(
    (month) => word === month || (word.length === 3 && word !== 'may' && month.startsWith(word)),
  )
  return at === -1 ? null : at + 1
}

/** A day's number that ends at this word: `14th`, `fourteenth`, `twenty-first`, `twenty first`. */
function dayAt(words: readonly string[], at: number): number | null {
  const word = words[at] ?? ''
  const figures = /^(\d{1,2})(?:st|nd|rd|th)?$/.exec(word)?.[1]
  if (figures !== undefined) return Number(figures)
  const [ten, unit = ''] = word.includes('-') ? word.split('-') : [words[at - 1] ?? '', word]
  const small = ordinals.indexOf(unit) + 1
  const big = ten === 'twenty' ? 20 : ten === 'thirty' ? 30 : 0
  if (small > 0) return big > 0 && small < 10 ? big + small : small
  return word === 'thirtieth' ? 30 : null
}

function dayAfter(
  words: readonly string[],
  at: number,
): { readonly day: number; readonly last: number } | null {
  const from = words[at] === 'the' ? at + 1 : at
  for (const last of [from + 1, from]) {
    const day = dayAt(words, last)
    if (day !== null) return { day, last }
  }
  return null
}

function nextSuch(day: number, month: number, visit: PlainDate): PlainDate | null {
  const two = (number: number) => String(number).padStart(2, '0')
  for (const year of [Number(visit.slice(0, 4)), Number(visit.slice(0, 4)) + 1]) {
    const date = parseDate(`${year}-${two(month)}-${two(day)}`)
    if (date && date > visit && dayOf(date) <= dayOf(addDays(visit, farthest))) return date
  }
  return null
}
