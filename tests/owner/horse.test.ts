import { describe, expect, it } from 'vitest'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import type { OwnerHorse } from '../../src/pages/owner/view.ts'
import type { HorseInput } from '../../src/pages/practice/index.ts'
import type { Assessment, Trend } from '../../src/trend/assessment.ts'
import { assessment, input, trend, zoe } from './fixture.ts'

function shown(change: Partial<HorseInput> = {}): OwnerHorse {
  const view = presentOwnerHorse({ ...input, ...change })
  if (view === null) throw new Error('the fixture has consent')
  return view
}
const withAssessment = (change: Partial<Assessment>) => shown({ assessment: { ...assessment, ...change } })
const said = (one: Trend) =>
  withAssessment({ trends: [one], geometry: [] })
    .feet.flatMap(({ statements }) => statements)
    .map(({ badge, sentences }) => `[${badge}] ${sentences.join(' ')}`)

describe("what passes to the owner's page", () => {
  it('is nothing without consent, and nothing without an owner', () => {
    expect(
      presentOwnerHorse({ ...input, horse: { ...zoe, consent: { ...zoe.consent, ownerSite: false } } }),
    ).toBeNull()
    expect(presentOwnerHorse({ ...input, horse: { ...zoe, owner: null } })).toBeNull()
  })

  it('is no word of notes, captions, remarks, history or diagnosis', () => {
    const text = JSON.stringify(shown())
    expect(text).not.toMatch(/PRIVATE/)
    expect(text).not.toContain('teaching')
    expect(text).not.toContain('Bramble')
  })

  it('is what stands under the heading for owners, newest first', () => {
    expect(shown().letters).toEqual([
      { head: 'Visit of 27 April 2026', text: 'A good visit.' },
      { head: 'Visit of 23 March 2026', text: 'The frog is **much** better.' },
      { head: 'About Zoë', text: 'She likes company.' },
    ])
  })

  it('is pictures with consent only, first beside latest', () => {
    expect(shown().photos).toEqual([
      {
        head: 'left fore, from the outer side',
        shots: [
          expect.objectContaining({
            label: 'Then: 12 January 2026',
            alt: 'Left fore, from the outer side, before the trim, 12 January 2026',
          }),
          expect.objectContaining({ label: 'Now: 27 April 2026' }),
        ],
      },
    ])
    const without = { ...zoe, consent: { ...zoe.consent, photos: false } }
    expect(shown({ horse: without }).photos).toEqual([])
  })

  it('is nothing of a visit after the day that the page is made for', () => {
    const early = withAssessment({ visits: assessment.visits.slice(0, 3) })
    expect(early.seen).toBe('Seen 3 times since 12 January 2026. Last seen on 23 March 2026.')
    expect(early.care).toEqual([])
    expect(early.letters.map(({ head }) => head)).toEqual(['Visit of 23 March 2026', 'About Zoë'])
  })
})

describe('sentences about a foot', () => {
  it('say a real change, that it is real, and where it goes', () => {
    expect(said(trend({ verdict: 'improving' }))).toEqual([
      '[getting better] The left fore toe is 9 mm shorter than in January. That is more than measuring error, so the change is real. It is moving the right way.',
    ])
    expect(said(trend({ foot: 'RH', values: [80, 90], verdict: 'worsening' }))).toEqual([
      '[watch] The right hind toe is 10 mm longer than in January. That is more than measuring error, so the change is real. It is moving the wrong way. We are keeping a close eye on it.',
    ])
  })

  it('claim nothing of a change within measuring error', () => {
    expect(said(trend({ values: [90, 91, 90, 91], verdict: 'steady', real: false }))).toEqual([
      '[steady] The left fore toe reads 1 mm longer than in January. That is within measuring error, so it may be no change at all. It is holding steady.',
    ])
    expect(said(trend({ values: [90, 90], verdict: 'steady', real: false }))[0]).toContain(
      'The left fore toe reads the same as in January.',
    )
  })

  it('say when it is too early, and what would settle it', () => {
    const early = { wouldSettle: { readings: 1, furtherVisits: 2, date: '2026-06-01' } }
    expect(said(trend({ values: [90], verdict: 'too early to tell', real: false, more: early }))).toEqual([
      '[too early to tell] The left fore toe: one reading so far, 90 mm. It is too early to tell where it is going. About 2 more visits should tell.',
    ])
  })

  it('say two doubts in one breath', () => {
    expect(said(trend({ values: [90, 88], verdict: 'too early to tell', real: false }))).toEqual([
      '[too early to tell] The left fore toe reads 2 mm shorter than in January. That is within measuring error, and it is too early to tell where it is going.',
    ])
  })

  it('give a date as a range, and an open end as open', () => {
    const forecast = (latest: string | null) => ({
      forecast: { kind: 'date' as const, edge: 84, date: '2026-07-10', earliest: '2026-06-02', latest },
    })
    expect(said(trend({ more: forecast('2027-01-20') }))[0]).toContain(
      'If it goes on like this it gets there about July. It could be as early as June or as late as January 2027.',
    )
    expect(said(trend({ more: forecast(null) }))[0]).toContain(
      'It could be as early as June; how late, nobody can say yet.',
    )
    expect(said(trend({ verdict: 'steady', more: forecast(null) }))[0]).not.toContain('If it goes on')
  })

  it('tell heels by how far they stand apart', () => {
    const level = (values: readonly number[]) =>
      said(trend({ measure: 'heel-balance', values, verdict: 'improving' }))[0]
    expect(level([6, 2])).toContain(
      'The two left fore heels were 6 mm apart in height in January. Now they are 2 mm apart.',
    )
    expect(level([-6, -2])).toContain('were 6 mm apart in height in January. Now they are 2 mm apart.')
    expect(level([6, -3])).toContain('The other heel is the higher one now.')
  })

  it("speak in the practice's unit", () => {
    const inches = shown({
      practice: { ...input.practice, units: 'in' },
      assessment: { ...assessment, trends: [trend({})], geometry: [] },
    })
    expect(inches.feet[0]?.statements[0]?.sentences[0]).toBe(
      'The left fore toe is 3/8 in shorter than in January.',
    )
  })

  it('name the year where it is another', () => {
    const points = [
      { visit: '2025-11-03', date: '2025-11-03', day: 0, value: 98 },
      { visit: '2026-02-16', date: '2026-02-16', day: 105, value: 89 },
    ]
    expect(said(trend({ more: { points } }))[0]).toContain('than in November 2025.')
  })
})

describe('the rest of the page', () => {
  it('counts verdicts at a glance and no more', () => {
    expect(shown().glance).toEqual([
      "We follow six things on Zoë's feet.",
      'One is moving the wrong way.',
      'Two are where we want them, or getting better.',
      'One is holding steady.',
      'One is changing, with no target set for it.',
      'For one it is too early to tell.',
    ])
  })

  it('puts cautions that stand first, the gravest on top, and leaves out those that passed', () => {
    expect(shown().urgent.map(({ level, word, text }) => `${level}: ${word} ${text}`)).toEqual([
      'stop: Stop. Right hind: Fluid came from the foot. Ring your vet before anyone works on it.',
      'mind: Take care. Left fore: The sole is flat. Choose soft or smooth ground, and take care on stones.',
    ])
    const both = [
      ...assessment.cautions,
      ...assessment.cautions.map((one) => ({ ...one, foot: 'RF' as const, feet: ['RF' as const] })),
    ]
    expect(withAssessment({ cautions: both }).urgent.map(({ text }) => text.split('.')[0])).toEqual([
      'Right fore and right hind: Fluid came from the foot',
      'Left fore and right fore: The sole is flat',
    ])
  })

  it('follows each finding from first to last, each word explained once', () => {
    expect(
      shown().findings.map(({ foot, lines }) => [
        foot,
        ...lines.map(({ mood, text, meaning }) => `${mood}: ${text} ${meaning ?? ''}`),
      ]),
    ).toEqual([
      [
        'left fore',
        'good: Flare on the inner side: better. It was medium and is now mild. That means: the wall bends outward instead of running straight.',
        'good: Thrush in the middle groove of the frog: gone. That means: foul, soft horn in the frog or its grooves.',
      ],
      [
        'right fore',
        'bad: Crack at the toe: worse. It was mild and is now medium. That means: a split in the wall.',
      ],
      [
        'left hind',
        'steady: Moon ring: mild when we last looked, on 12 January 2026. That means: a ring that goes all the way round.',
      ],
      [
        'right hind',
        'bad: Chip at the toe: new at the last visit, mild. That means: a piece of wall has broken away.',
      ],
    ])
  })

  it('promises no trim where a vet comes first', () => {
    expect(shown().plans).toEqual([
      'We wait with the right hind until your vet has had a look.',
      'We are levelling the left fore heels, a little at each trim. That should take about 3 more trims. So far it goes as planned.',
    ])
  })

  it('makes a week of boxes for each task', () => {
    const [task] = shown().care
    expect(task?.task).toBe('Pick out both front feet every day')
    expect(task?.ticks.map(({ label }) => label).slice(0, 2)).toEqual([
      'Mon: Pick out both front feet every day',
      'Tue: Pick out both front feet every day',
    ])
  })

  it('says when the next visit is, and when it was', () => {
    const next = (due: string | null, overdueDays: number | null) =>
      withAssessment({ nextVisit: { last: '2026-04-27', due, from: 'visit', overdueDays } }).next
    expect(next('2026-06-01', -28)).toBe('The next visit is planned for 1 June 2026.')
    expect(next('2026-05-01', 3)).toBe(
      'The next visit was planned for 1 May 2026. If no new date is set, please get in touch.',
    )
    expect(next(null, null)).toBe('No next visit is planned yet. Please get in touch.')
  })
})
