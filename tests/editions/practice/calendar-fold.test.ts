import { foldLines } from 'ical-generator'
import { expect, it } from 'vitest'
import type { Practice } from '../../../src/casebook/model.ts'
import { visitsCalendar } from '../../../src/editions/practice/visits-calendar.ts'
import { asOf, summaryOf } from '../../build/kit.ts'
import { formatIn } from '../../english.ts'

it('folds long lines, in letters of any length, just as the library folds a whole calendar', () => {
  const names = ['Juno', 'Bö'.repeat(60), 'a'.repeat(66), 'a'.repeat(67), `${'x'.repeat(64)}🐴🐴`, 'a, b; c']
  const summaries = names.map((name, index) => ({ ...summaryOf(`horse-${index}`, name), due: '2026-07-04' }))
  const practice: Practice = {
    name: 'Reed Bank '.repeat(12),
    units: 'mm',
    language: 'en',
    trimCycleDays: 42,
    feetOrder: ['LF', 'RF', 'LH', 'RH'],
    owners: [],
    people: [],
    localRules: null,
    contacts: { practice: null, vet: { name: null, phone: null } },
    portfolio: { time: 'weeks', hidesPractice: false, holdBackDays: 0 },
    terms: {},
    body: '',
  }
  const text = visitsCalendar(practice, summaries, asOf, formatIn('mm'))
  const unfolded = text.replaceAll('\r\n ', '')
  expect(text).toBe(foldLines(unfolded))
  expect(unfolded.match(/BEGIN:VEVENT/g)).toHaveLength(names.length)
  expect(unfolded.endsWith('END:VEVENT\r\nEND:VCALENDAR\r\n')).toBe(true)
})
