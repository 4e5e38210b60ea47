import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { buildDemo } from '../../browser/site.ts'

/** RFC 5545, read by a parser that is not the one that wrote it. */
describe('visits.ics', () => {
  const site = buildDemo('practice')
  const text = site.text('practice/visits.ics')

  it('is a calendar of one all-day event for each next visit', () => {
    const calendar = new ICAL.Component(ICAL.parse(text))
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0')
    const events = calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event))
    const samphire = events.find(({ uid }) => uid === 'next-visit-samphire@growdown')
    expect(events.length).toBeGreaterThan(7)
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length)
    expect(samphire?.summary).toContain('Samphire')
    expect(samphire?.startDate.isDate).toBe(true)
    expect(samphire?.startDate.toString()).toBe('2026-12-05')
  })

  it('keeps its lines as RFC 5545 section 3.1 asks: ended by CRLF, at most 75 octets', () => {
    expect(text.endsWith('\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75)
  })

  it('is the same, with the whole site, in another time zone and language', () => {
    const there = buildDemo('practice', 'cases', {
      TZ: 'Pacific/Auckland',
      LANG: 'de_DE.UTF-8',
      LC_ALL: 'de_DE.UTF-8',
    })
    const paths = [...site.pages('practice'), 'practice/visits.ics', 'practice/assets/growdown.css']
    expect(paths.length).toBeGreaterThan(90)
    for (const path of paths) expect(there.text(path) === site.text(path), path).toBe(true)
  })
})
