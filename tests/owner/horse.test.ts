import { describe, expect, it } from 'vitest'
import { presentOwnerHorse } from '../../src/pages/owner/horse.ts'
import type { OwnerHorse } from '../../src/pages/owner/view.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import type { Assessment, Forecast, Trend } from '../../src/trend/assessment.ts'
import { formatIn } from '../english.ts'
import { dates, visit, zoe } from './zoe.ts'
import { assessment, caution, input, trend } from './zoe-assessed.ts'

function shown(change: Partial<HorseInput> = {}): OwnerHorse {
  const view = presentOwnerHorse({ ...input, ...change })
  if (view === null) throw new Error('the fixture has consent')
  return view
}
const withAssessment = (change: Partial<Assessment>) => shown({ assessment: { ...assessment, ...change } })
const withVisits = (visits: (typeof zoe)['visits']) =>
  shown({
    horse: { ...zoe, visits },
    assessment: { ...assessment, visits: visits.map(({ id }) => id), trends: [], heldFeet: [] },
  })

/** What is told of each foot: `left fore: Worse: ... Better: ...`. */
const told = ({ changes }: OwnerHorse) =>
  changes.feet.map(
    ({ foot, moods }) =>
      `${foot}: ${moods.map(({ word, sentences }) => `${word} ${sentences.join(' ')}`).join(' ')}`,
  )
const noFindings = zoe.visits.map((one) => ({ ...one, findings: [] }))
const saidOf = (...trends: readonly Trend[]) =>
  told(
    shown({
      horse: { ...zoe, visits: noFindings },
      assessment: { ...assessment, trends, heldFeet: [] },
    }),
  )

describe("what passes to the owner's page", () => {
  it('is nothing without consent, and nothing without an owner', () => {
    expect(
      presentOwnerHorse({ ...input, horse: { ...zoe, consent: { ...zoe.consent, ownerSite: false } } }),
    ).toBeNull()
    expect(presentOwnerHorse({ ...input, horse: { ...zoe, owner: null } })).toBeNull()
  })

  it('is no word of notes, captions, remarks, problems, history or diagnosis', () => {
    const about = { kind: 'words' } as const
    const problem = { feet: [], about, text: 'PRIVATE-PROBLEM' }
    const judged = { foot: null, text: 'PRIVATE-PROBLEM', from: 'written', about, closedOn: null } as const
    const text = JSON.stringify(
      shown({
        horse: { ...zoe, problems: [problem] },
        assessment: { ...assessment, problems: [judged] },
      }),
    )
    expect(text).not.toMatch(/PRIVATE/)
    expect(text).not.toContain('teaching')
    expect(text).not.toContain('Bramble')
  })

  it('is what stands under the heading for owners, the latest open and the others behind it', () => {
    const { letter, lettersBefore } = shown()
    expect(letter).toEqual({ head: 'Visit of 27 April 2026', text: 'A good visit.' })
    expect(lettersBefore).toEqual([
      { head: 'Visit of 23 March 2026', text: 'The frog is **much** better.' },
      { head: 'About Zoë', text: 'She likes company.' },
    ])
  })

  it('is one picture then and now, with consent only', () => {
    expect(shown().thenAndNow).toEqual({
      head: 'left fore, from the outer side',
      shots: [
        expect.objectContaining({
          label: 'Then: 12 January 2026',
          alt: 'Left fore, from the outer side, before the trim, 12 January 2026',
        }),
        expect.objectContaining({ label: 'Now: 27 April 2026' }),
      ],
    })
    expect(shown().drawing).toBeNull()
    const without = shown({ horse: { ...zoe, consent: { ...zoe.consent, photos: false } } })
    expect([without.thenAndNow, ...without.photos]).toEqual([null])
  })

  it('is an outline where there is no pair of pictures, of a foot whose toe clearly moved by more than the error', () => {
    const outline = (trends: readonly Trend[]) =>
      shown({
        horse: { ...zoe, consent: { ...zoe.consent, photos: false } },
        assessment: { ...assessment, trends },
      }).drawing
    expect(outline(assessment.trends)?.foot).toBe('LF')
    expect(outline([trend({ more: { smallestRealChange: 12 } })])).toBeNull()
    expect(outline([trend({ isClear: false })])).toBeNull()
  })

  it('is nothing of a visit after the day that the page is made for', () => {
    const early = withAssessment({ visits: assessment.visits.slice(0, 3) })
    expect(early.seen).toBe('Seen 3 times since 12 January 2026. Last seen on 23 March 2026.')
    expect(early.care).toEqual([])
    expect(early.letter?.head).toBe('Visit of 23 March 2026')
  })

  it('is no letter, task or picture of the time before the horse was theirs', () => {
    const sold = shown({ horse: { ...zoe, ownerSince: '2026-04-28' } })
    expect([sold.letter?.head, sold.care, sold.thenAndNow]).toEqual(['About Zoë', [], null])
    expect(sold.since).toBe(
      'This horse has been yours since 28 April 2026. Letters and photos from before that day are not shown.',
    )
  })
})

describe('what is told of a foot', () => {
  it('is what got worse first and all of it, then two sentences at most', () => {
    expect(told(shown())).toEqual([
      'Left fore: Better: Flare on the inner side: medium in January, mild now. The toe is about 9 mm shorter than in January.',
      'Right fore: Worse: Crack at the toe: mild in January, medium now.',
      'Right hind: Worse: Chip at the toe: new, mild. The toe is about 10 mm longer than in January.',
    ])
  })

  it('rests on what clearly moves, never on first against last', () => {
    expect(saidOf(trend({ values: [98, 89], isClear: false }))).toEqual([])
    const line = trend({ values: [96, 94, 94, 94] }).fit
    const along = trend({ values: [98, 94, 92, 89], more: { fit: line } })
    expect(saidOf(along)).toEqual(['Left fore: Better: The toe is about 2 mm shorter than in January.'])
  })

  it('calls good what goes to a target or came into it, bad what goes away, and judges nothing else', () => {
    const band = { target: { low: null, high: 84 }, targetFrom: 'practitioner' } as const
    expect(saidOf(trend({ verdict: 'worsening', values: [80, 90] }))[0]).toContain('Worse: The toe')
    expect(
      saidOf(trend({ verdict: 'falling', position: 'on target', values: [90, 87, 84, 80], more: band })),
    ).toEqual(['Left fore: Better: The toe is about 10 mm shorter than in January, and is where we want it.'])
    expect(
      saidOf(trend({ verdict: 'falling', position: 'on target', values: [83, 82, 81, 80], more: band })),
    ).toEqual(['Left fore: Changed: The toe is about 3 mm shorter than in January, and is where we want it.'])
    expect(saidOf(trend({ verdict: 'falling', position: 'no target' }))[0]).toContain('Changed: The toe')
  })

  it('calls nothing good where a vet comes first', () => {
    const held = shown({
      horse: { ...zoe, visits: noFindings },
      assessment: { ...assessment, trends: [trend({})], heldFeet: ['LF'] },
    })
    expect(told(held)[0]).toContain('Changed: The toe')
    expect(held.urgent.at(-1)?.text).toBe('We wait with the left fore until your vet has had a look.')
  })

  it('tells heels by how far they stand apart, whichever is the higher', () => {
    const level = (values: readonly number[]) =>
      saidOf(trend({ measure: 'heel-balance', values, verdict: 'improving' }))[0]
    for (const values of [
      [6, 2],
      [-6, -2],
      [6, -2],
    ])
      expect(level(values)).toContain('The gap in height between the heels is about 4 mm smaller')
  })

  it('says the day of a reading that is not of the last visit', () => {
    expect(saidOf(trend({ values: [98, 94, 92] }))[0]).toContain('in January, last read on 23 March 2026.')
  })

  it('says that nothing else moved only where nothing else did', () => {
    const rest = (...trends: readonly Trend[]) =>
      shown({ horse: { ...zoe, visits: noFindings }, assessment: { ...assessment, trends, heldFeet: [] } })
        .changes.rest
    expect(rest(trend({}))).toBe('Nothing else has clearly moved.')
    expect(rest(trend({ isClear: false }))).toBe('Nothing has clearly moved.')
    // What is worked out from a reading that is told says nothing new; another reading does.
    expect(rest(trend({}), trend({ measure: 'toe-to-heel-ratio', verdict: 'falling' }))).toBe(
      'Nothing else has clearly moved.',
    )
    expect(
      rest(trend({}), trend({ measure: 'toe-angle' }), trend({ measure: 'frog-width', verdict: 'rising' })),
    ).toBe('More has moved; the numbers further down have all of it.')
    expect(withVisits([visit(0)]).changes.rest).toBe(
      'There is one visit so far. After the next ones we can tell what moves.',
    )
  })

  it('tells what moves at all feet together where it shows at no single one', () => {
    const all = {
      ...trend({ measure: 'toe-angle', verdict: 'worsening', values: [52, 50, 48, 46] }),
      foot: 'all' as const,
    }
    const together = (trends: readonly Trend[]) =>
      told(
        shown({
          horse: { ...zoe, visits: noFindings },
          assessment: { ...assessment, trends, together: [all], heldFeet: [] },
        }),
      )
    expect(together([])).toEqual([
      'All feet together: Worse: The front of the hoof is about 6° flatter than in January.',
    ])
    expect(together([trend({ measure: 'toe-angle', values: [44, 49] })])).toHaveLength(1)
  })

  it("speaks in the practice's unit", () => {
    const inches = shown({
      practice: { ...input.practice, units: 'in' },
      format: formatIn('in'),
      horse: { ...zoe, visits: noFindings },
      assessment: { ...assessment, trends: [trend({})] },
    })
    expect(told(inches)[0]).toContain('The toe is about 3/8 in shorter than in January.')
  })

  it.each([
    [[2, 1, 2], 'Worse: Flare at the toe: mild in February, medium now.'],
    [[3, 1, 2], 'Worse: Flare at the toe: mild in February, medium now.'],
    [[1, 3, 2], 'Worse: Flare at the toe: mild in January, medium now.'],
    [[3, 2, 1], 'Better: Flare at the toe: medium in February, mild now.'],
    [[1, 1, 0], 'Better: Flare at the toe: mild in January, gone now.'],
    [[null, null, 1], 'Worse: Flare at the toe: new, mild.'],
    [
      [1, 2, null],
      'Worse: Flare at the toe: mild in January, medium on 16 February 2026, when we last looked.',
    ],
  ])('gives the grade then and now: %j', (grades, text) => {
    const visits = grades.map((grade, i) =>
      visit(i, {
        findings:
          grade === null ? [] : [{ foot: 'LF', what: 'flare', place: 'toe', grade, words: null } as never],
      }),
    )
    expect(told(withVisits(visits))).toEqual([`Left fore: ${text}`])
  })

  it('tells what got worse as long as it stays so, and good news for three visits', () => {
    const course = (...grades: readonly number[]) =>
      told(
        withVisits(
          grades.map((grade, i) => ({
            ...visit(0, {
              findings: [{ foot: 'LF', what: 'flare', place: 'toe', grade, words: null } as never],
            }),
            id: `2026-0${i + 1}-05`,
            date: `2026-0${i + 1}-05`,
          })),
        ),
      )
    expect(course(1, 2, 2, 2, 2)).toEqual([
      'Left fore: Worse: Flare at the toe: mild in January, medium now.',
    ])
    expect(course(2, 1, 1, 1)).toHaveLength(1)
    expect(course(2, 1, 1, 1, 1)).toEqual([])
  })
})

describe('what to look for', () => {
  it('is advice for each open finding, the gravest first, with its feet and grades', () => {
    expect(shown().lookFor).toEqual([
      'Crack (right fore, medium). Look whether it gets longer or opens as your horse walks. If it bleeds or is sore, ring your vet.',
      'Flare (left fore, mild). Look whether the wall bends out more or chips. If it does, ring us.',
      'Moon ring (left hind, mild on 12 January 2026). If it gets worse or your horse is sore there, ring us.',
      'Left fore: The sole is flat. Choose soft or smooth ground, and take care on stones.',
    ])
  })

  it('is nothing of a foot that waits for the vet', () => {
    expect(JSON.stringify(withAssessment({ heldFeet: ['RF'] }).lookFor)).not.toContain('Crack')
  })

  it('is the pulse of a horse that ever had a sign of laminitis', () => {
    const past = caution('pulse-pair', 'stop', 'LF', 0, { left: 2, right: 2, from: 2 } as never, false)
    expect(withAssessment({ cautions: [past] }).lookFor[0]).toContain('Feel the pulse')
  })

  it('is what a great step at a trim asks for, while it is not long ago', () => {
    const step = caution('toe-shortened-much', 'mind', 'LF', 3, { step: -14, limit: 12 } as never, true)
    const fresh = withAssessment({ cautions: [step] })
    expect(fresh.lookFor.at(-1)).toContain('careful on stones for some days')
    expect(fresh.numbers.record).toEqual([])
    const later = withAssessment({ cautions: [step], asOf: '2026-06-30' })
    expect(JSON.stringify(later.lookFor)).not.toContain('for some days')
    expect(later.numbers.record).toHaveLength(1)
  })

  it('goes with the numbers that the casebook knows', () => {
    expect(shown().contacts).toEqual([])
    const contacts = { practice: '01632 960000', vet: { name: 'Dr Penrose', phone: '+44 1632 960001' } }
    expect(shown({ practice: { ...input.practice, contacts } }).contacts).toEqual([
      { text: 'Vet: Dr Penrose, +44 1632 960001', dial: '+441632960001' },
      { text: 'Us: 01632 960000', dial: '01632960000' },
    ])
  })
})

describe('the rest of the page', () => {
  it('puts what stops the work first, each once, and leaves out what passed', () => {
    expect(shown().urgent.map(({ level, word, text }) => `${level}: ${word ?? ''} ${text}`)).toEqual([
      'stop: Stop. Right hind: Fluid came from the foot. Ring your vet before anyone works on it.',
      'stop:  We wait with the right hind until your vet has had a look.',
    ])
    const both = [
      ...assessment.cautions,
      ...assessment.cautions.map((one) => ({ ...one, foot: 'RF' as const, feet: ['RF' as const] })),
    ]
    expect(withAssessment({ cautions: both }).urgent[0]?.text).toContain('Right fore and right hind: Fluid')
  })

  it('says in the index of horses what is gravest and when the next visit is', () => {
    expect(shown().brief).toEqual({ level: 'stop', word: 'Stop.', next: 'next visit 1 June 2026' })
    expect(withAssessment({ cautions: [] }).brief).toMatchObject({ level: null, word: null })
  })

  it('tells nothing past as to come', () => {
    const ahead = (forecast: Forecast, asOf = assessment.asOf) =>
      withAssessment({ asOf, trends: [trend({ more: { forecast } })], growOut: [], plans: [] }).numbers.ahead
    const date = { kind: 'date', edge: 84, date: '2026-07-10', earliest: '2026-06-02', latest: null } as const
    expect(ahead({ ...date, isDue: false })).toEqual([
      'Left fore: the toe should be where we want it about July, at the earliest in June.',
    ])
    expect(ahead({ ...date, latest: '2027-01-20', isDue: false }, '2026-06-03')).toEqual([
      'Left fore: the toe should be where we want it about July, at the latest in January 2027.',
    ])
    expect(ahead({ ...date, isDue: true }, '2026-07-11')).toEqual([
      'Left fore: the toe was expected to be where we want it by 10 July 2026; we look at the next visit.',
    ])
    expect(ahead({ kind: 'not before', edge: 84, month: '2027-02-01' })).toEqual([
      'Left fore: the toe will not be where we want it before February 2027.',
    ])
    const due = assessment.growOut.map((one) => ({ ...one, state: 'due' as const }))
    expect(withAssessment({ growOut: due, trends: [], plans: [] }).numbers.ahead).toEqual([
      'Nail holes at the toe, left fore: was expected at the ground by 20 October 2026; we look at the next visit.',
    ])
  })

  it('has each reading with its day and stage among the numbers', () => {
    const [table] = shown().numbers.tables
    expect(table?.caption).toBe('Left fore: single readings')
    expect(table?.rows[0]).toEqual([
      'the toe, after the trim',
      '98 mm, 12 Jan 26 to 89 mm, 27 Apr 26',
      'getting better',
    ])
    expect(shown().numbers.found[0]?.lines[0]).toBe(
      'Flare on the inner side: medium on 12 January 2026, mild on 27 April 2026.',
    )
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
    const next = (due: string | null) =>
      withAssessment({ nextVisit: { last: dates[3], due, from: 'visit', overdueDays: null } }).next
    expect(next('2026-06-01')).toBe('It is planned for 1 June 2026.')
    expect(next('2026-05-01')).toBe(
      'It was planned for 1 May 2026. If no new date is set, please get in touch.',
    )
    expect(next(null)).toBe('None is planned yet. Please get in touch.')
  })
})
