import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { standInPractice } from '../../../src/casebook/practice-file.ts'
import { visitsCalendar } from '../../../src/editions/practice/visits-calendar.ts'
import { asOf, summaryOf } from '../../build/kit.ts'
import { formatIn } from '../../english.ts'

const event = (end: string) => ['x', 'END:VEVENT', 'BEGIN:VEVENT', 'UID:evil', 'SUMMARY:Evil', ''].join(end)

/** A name, and what a calendar program reads where it says anything else. */
const names: [name: string, read?: string][] = [
  ['Juno'],
  [event('\r\n'), event('\n')],
  [event('\n')],
  [event('\r'), event('\n')],
  [event('\u2028'), event('\n')],
  [event('\u2029'), event('\n')],
  [event('\u0085'), event('\n')],
  [event('\u000b'), event('')],
  [event('\u000c'), event('')],
  [event('\u001e'), event('')],
  ['a\0b\u001b[31mc\u007fd\u009be', 'ab[31mcde'],
  ['\u202eonuJ\u202c \u2066x\u2069', 'onuJ x'],
  ['tab\tstays'],
  ['a;b,c\\d:e"f\\n\\,g'],
  [';LANGUAGE=de:x'],
  ['ends in a backslash \\'],
  ['\u05d9\u05d5\u05e0\u05d5\u200f (12)'],
  ['\u0645\u06cc\u200c\u062e\u0648'],
  ['Bö'.repeat(200)],
  ['馬'.repeat(100)],
  ['🐴'.repeat(60)],
  [`${'x'.repeat(70)}\n${'é'.repeat(70)}`],
]

describe('visits.ics, read by a parser that is not the one that wrote it', () => {
  const format = formatIn('mm')
  const { title, visit } = format.words.calendar
  const calendarOf = (practiceName: string, horses: readonly string[]) =>
    visitsCalendar(
      { ...standInPractice, name: practiceName },
      horses.map((name, index) => ({
        ...summaryOf(`horse-${index}`, name),
        due: '2026-07-04',
        lastVisit: '2026-05-04',
      })),
      asOf,
      format,
    )

  /** RFC 5545, section 3.1: lines of at most 75 octets; section 3.3.11: no control character but a tab in a text. */
  const expectSound = (text: string) => {
    const inLines = text.replaceAll('\r\n', '')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(inLines).not.toMatch(/[\0-\u0008\n-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/)
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75)
  }

  it.each(names)('a practice called %j brings no event', (name: string, read = name) => {
    const text = calendarOf(name, ['Juno'])
    expectSound(text)
    const calendar = new ICAL.Component(ICAL.parse(text))
    expect(calendar.getAllProperties().map((property) => property.name)).toEqual([
      'version',
      'prodid',
      'name',
      'x-wr-calname',
    ])
    // A property that ical.js has no type for is given as it stands, its escapes not undone.
    const named = calendar.getFirstPropertyValue('name')
    expect(textOf(String(named))).toBe(title(read))
    expect(calendar.getFirstPropertyValue('x-wr-calname')).toBe(named)
    expect(calendar.getAllSubcomponents().map((part) => part.getFirstPropertyValue('uid'))).toEqual([
      'next-visit-horse-0@growdown',
    ])
  })

  it.each(names)('a horse called %j is one event and reads back', (name: string, read = name) => {
    const text = calendarOf('Reed Bank', [name, 'Juno'])
    expectSound(text)
    const calendar = new ICAL.Component(ICAL.parse(text))
    expect(calendar.getFirstPropertyValue('name')).toBe(title('Reed Bank'))
    const events = calendar.getAllSubcomponents()
    expect(events.map((part) => part.name)).toEqual(['vevent', 'vevent'])
    expect(events.map((part) => new ICAL.Event(part).summary)).toEqual([visit(read), visit('Juno')])
    expect(events[0]?.getAllProperties().map((property) => property.name)).toEqual(
      events[1]?.getAllProperties().map((property) => property.name),
    )
  })
})

/** RFC 5545, section 3.3.11: ESCAPED-CHAR. */
const textOf = (value: string): string =>
  value.replace(/\\(?:([\\;,])|[nN])/g, (_escape, sign: string | undefined) => sign ?? '\n')
