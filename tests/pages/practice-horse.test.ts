import { describe, expect, it } from 'vitest'
import type { HorsePage } from '../../src/pages/practice/horse-page.ts'
import { buildHorse } from '../trend/build-horse.ts'
import { asOf, modelAt, pagesOf, practice, uneven } from './practice-kit.ts'

const page = modelAt<HorsePage>(pagesOf(), 'mallow/index.html')
const leftFore = page.feet.feet[0]

describe('a horse’s page', () => {
  it('says who the horse is and when it was seen', () => {
    expect(page.identity).toBe('Cob, mare, 12 years old')
    expect(page.seen).toBe('Seen 3 times since 12 January 2026, last on 23 March 2026.')
    expect(page.next).toBe('Due on 27 April 2026.')
  })

  it('puts stop cautions first, and every caution with its visit', () => {
    const [stop] = page.cautions
    expect(page.cautions.map(({ level }) => level)).toEqual(['stop', 'mind'])
    expect(stop?.word).toBe('Stop: ask a vet first')
    expect(stop?.items.map(({ text }) => text)).toContain(
      'Right fore: Lameness 4 of 5. Do not trim and do not make the horse walk.',
    )
    expect(stop?.items[0]?.visit).toEqual({ text: 'visit of 23 March 2026', href: '2026-03-23.html' })
  })

  it('lays the feet out left fore, right fore, left hind, right hind', () => {
    expect(page.feet.feet.map(({ name }) => name)).toEqual([
      'Left fore',
      'Right fore',
      'Left hind',
      'Right hind',
    ])
  })

  it('shows telling numbers with change, certainty and verdict, each linked to its measure', () => {
    // Three readings 45, 48, 51 without scatter: s² = 10 × 1.4² / 11, so s = 1.335; t(0.975, 11) = 2.201;
    // the smallest real change is 2.201 × √2 × 1.335 = 4.16.
    expect(leftFore?.numbers[0]).toEqual({
      measure: { text: 'Toe angle', href: '../reference.html#toe-angle' },
      value: '51°',
      side: null,
      since: '+6° since 12 Jan 26',
      sure: 'real',
      verdict: { text: 'improving', tone: 'good' },
    })
  })

  it('says of heel balance which heel is the higher', () => {
    expect(leftFore?.numbers[2]).toMatchObject({
      value: '3 mm',
      side: 'inner heel higher',
      since: 'was inner heel 6 mm higher on 12 Jan 26',
    })
    expect(page.feet.levels[0]?.title).toBe('Left fore: inner heel 3 mm higher, a tilt of 1.4°')
  })

  it('flags a foot and names its open findings', () => {
    expect(page.feet.feet[1]?.flag).toEqual({ level: 'stop', text: 'Stop: ask a vet first' })
    expect(leftFore?.flag?.level).toBe('mind')
    expect(leftFore?.findings).toBe('Flare, medial quarter (mild)')
    expect(page.feet.feet[1]?.findings).toBe('No open finding.')
  })

  it('compares left and right of a pair', () => {
    // Two single readings: t(0.975, 10) × √2 × 1.4 = 4.41.
    expect(page.feet.pairs).toContain(
      'Fores, toe angle: left 51°, right 46°. They differ by 5°, more than measuring error (4.4°).',
    )
  })

  it('names real changes, greatest first', () => {
    expect(page.changed.real[0]).toEqual({
      name: 'Left fore, toe angle:',
      href: '../reference.html#toe-angle',
      text: '45° to 51° (+6°) since 12 January 2026; improving.',
    })
  })

  it('titles a chart with what was found', () => {
    const charts = page.changed.charts.map(({ chart }) => chart.title)
    expect(charts).toEqual([
      'Left fore toe angle: 45° to 51° in 2 months',
      'Toe length: no change beyond measuring error on any foot in 2 months',
      'Heel balance: no change beyond measuring error on any foot in 2 months',
    ])
  })

  it('says what changed, how sure, where it goes and when it gets there', () => {
    const says = page.changed.charts[0]?.trends[0]
    expect(says?.sentences.slice(0, 2)).toEqual([
      '45° on 12 January 2026, 51° now: +6°. More than measuring error (4.2°), so the change is real.',
      'Improving: +2.6° a month (95 % interval 0.8 to 4.4° a month), the line stands at 51°, wanted 54° to 58°.',
    ])
    // 3° short at 3° in 35 days: 35 days after 23 March.
    expect(says?.sentences[2]).toContain('Should reach 54° about 27 April 2026')
  })

  it('gives every number behind a statement', () => {
    const numbers = page.changed.charts[0]?.numbers
    expect(numbers?.head.slice(0, 2)).toEqual(['Step', 'Left fore'])
    expect(numbers?.rows.map(([step, leftFore]) => [step, leftFore])).toEqual([
      ['Readings used', '3, after the trim, by gauge'],
      ['12 Jan 26', '45°'],
      ['16 Feb 26', '48°'],
      ['23 Mar 26', '51°'],
      ['Change, last less first', '+6°'],
      ['Smallest real change, t × √2 × s', '4.2° = 2.20 × 1.414 × 1.3°'],
      [
        'Scatter s round the line, pooled with the known scatter of this measure, which counts as 10 readings',
        '1.3°',
      ],
      ['Degrees of freedom ν', '11 = 10 + 3 − 2'],
      ['Slope b of the line, least squares', '+2.6° a month'],
      ['Its 95 % interval, b ± t × s / √Sxx', '0.8 to 4.4°'],
      ['Where the line stands at the last reading, with its 95 % interval', '51.0°, 48.3 to 53.7°'],
      ['Second opinion: the median of the slopes between every two readings (Theil-Sen)', '+2.6° a month'],
      ['Target', '54° to 58°, set by the practitioner'],
      ['Forecast', 'where the line crosses the edge of the target, with Fieller’s 95 % interval'],
      ['Verdict', 'the interval of the slope leaves 0 out, and the line moves toward the target'],
    ])
  })

  it('gives both readings of a day with two visits', () => {
    const twice = buildHorse({
      id: 'twice',
      visits: [
        { date: '2026-01-12', after: { 'toe-angle': 45 } },
        { date: '2026-02-16', id: '2026-02-16', after: { 'toe-angle': 48 } },
        { date: '2026-02-16', id: '2026-02-16-2', after: { 'toe-angle': 49 } },
      ],
    })
    const [chart] = modelAt<HorsePage>(pagesOf(twice), 'twice/index.html').changed.charts
    expect(chart?.numbers.rows.slice(0, 4)).toEqual([
      ['Readings used', '3, after the trim, by gauge'],
      ['12 Jan 26', '45°'],
      ['16 Feb 26', '48°'],
      ['16 Feb 26', '49°'],
    ])
  })

  it('keeps what the hoof did apart from what the trims did', () => {
    // Grown 9 mm in each of two stretches of 35 days: 18 / 70 × 30.4375 = 7.8 mm a month; trims took 8, 11, 10 mm.
    const [toe] = page.changed.growth
    expect(toe?.sentences[0]).toContain('Left fore, toe length:')
    expect(toe?.sentences[0]).toContain('7.8 mm a month')
    expect(toe?.sentences[0]).toContain('3 trims took 29 mm.')
    expect(toe?.steps.head.slice(0, 2)).toEqual(['Step', 'Left fore'])
    expect(toe?.steps.rows.map(([step, leftFore]) => [step, leftFore])).toEqual([
      ['Trim of 12 Jan 26', '\u22128 mm'],
      ['Grown 12 Jan 26 to 16 Feb 26, 35 days', '+9 mm, 7.8 mm a month'],
      ['Trim of 16 Feb 26', '\u221211 mm'],
      ['Grown 16 Feb 26 to 23 Mar 26, 35 days', '+9 mm, 7.8 mm a month'],
      ['Trim of 23 Mar 26', '\u221210 mm'],
    ])
  })

  it('says what comes next: plan, forecast, what grows out', () => {
    const { coming } = modelAt<HorsePage>(pagesOf(uneven), 'mallow/index.html')
    const plan = coming.plans.find(({ foot }) => foot === 'Left fore')
    expect(plan?.sentences[0]).toContain('Off the inner heel, at most:')
    expect(plan?.sentences[1]).toContain('The inner heel is 6 mm higher, 4 mm over the limit of 2 mm.')
    expect(coming.held).toEqual([
      'Right fore: no plan and no amount while a caution waits for the vet. A visit that says it is gone, or cleared with the vet’s day, ends the wait.',
    ])
    // 3 mm, as Mallow stands, may be the error of the readings.
    expect(page.coming.plans).toEqual([])
    expect(page.coming.forecasts[0]?.name).toBe('Left fore, toe angle:')
    expect(page.coming.growing[0]?.name).toBe('Nail holes, left fore toe')
    expect(page.coming.growing[0]?.why.map(({ name }) => name)).toEqual(['Sightings', 'Rate', 'Wall'])
    expect(page.coming.walls[0]?.features[0]).toMatchObject({
      what: 'nail holes',
      place: 'toe',
      wallLength: 87,
    })
  })

  it('tells the history: findings by visit, visits newest first, profile', () => {
    expect(page.history.grid?.rows).toEqual([
      { foot: 'LF', label: 'LF flare, medial quarter', grades: [2, 2, 1] },
      { foot: 'LF', label: 'LF thrush, central sulcus', grades: [2, 1, 0] },
    ])
    expect(page.history.grid?.title).toBe('1 finding open, 1 resolved')
    expect(page.history.visits.map(({ href }) => href)).toEqual([
      '2026-03-23.html',
      '2026-02-16.html',
      '2026-01-12.html',
    ])
    const facts = Object.fromEntries(page.history.profile.map(({ name, text }) => [name, text]))
    expect(facts).toMatchObject({
      Owner: 'Orla Fenn',
      Height: '14.2 hh (147 cm)',
      Weight: '505 kg (1113 lb)',
      Vet: 'Involved. Diagnosis by the vet: old laminitis in both fores.',
      Targets: 'Toe angle: left fore 54° to 58°',
      'Trim limits':
        'Left fore sole flat; Left fore, left hind and right hind: at most 1.5 mm a trim beyond what grows',
      Consent: 'none given',
    })
  })

  it('carries the standing cautions and the local rule', () => {
    expect(page.page.standing.join(' ')).toContain('a trimmer does not diagnose')
    expect(page.page.standing.join(' ')).toContain('a horse in pain can kick or strike')
    expect(page.page.localRules).toBe('In this county a trimmer may not nail.')
  })

  it('stands without a single reading', () => {
    const bare = buildHorse({ id: 'new', name: 'New', visits: [] })
    const model = modelAt<HorsePage>(pagesOf(bare, asOf, practice), 'new/index.html')
    expect(model.seen).toBe('No visit is on record yet.')
    expect(model.feet.hasReadings).toBe(false)
    expect(model.changed.charts).toEqual([])
    expect(model.history.grid).toBeNull()
  })
})
