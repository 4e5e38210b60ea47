import { describe, expect, it } from 'vitest'
import { formatter } from '../../src/pages/shared/format.ts'
import { assessment as words } from '../../src/pages/words/en/assessment.ts'
import { assess } from '../../src/trend/assess.ts'
import { cautionCodes, type Facts } from '../../src/trend/assessment.ts'
import { buildHorse, courseOf, practice } from '../trend/build-horse.ts'
import { sampleAsOf, sampleHorse } from '../trend/sample-horse.ts'

const f = formatter('mm')
const sample = assess(sampleHorse, practice(), sampleAsOf)
const plain = (text: string): void => {
  expect(text).not.toMatch(/NaN|undefined|null|\u2014|Infinity|\[object/)
  expect(text).toMatch(/^[A-Za-z0-9+\u2212].*[.!]$/)
}

describe('cautions in words', () => {
  it.each<[(typeof cautionCodes)[number], Facts, string]>([
    ['lameness-severe', { grade: 4 }, 'Lameness 4 of 5. Ask a vet before any more work on this foot.'],
    [
      'puncture',
      { place: 'frog', grade: 2, words: null },
      'A nail or puncture in the foot (frog). Leave it where it is, do not walk the horse, and call the vet at once.',
    ],
    [
      'lameness-rising',
      { grade: 2, before: 1 },
      'Lameness has risen from 1 to 2 of 5 since it was last judged.',
    ],
    [
      'finding-worsening',
      { finding: 'flare', place: 'toe', first: 1, middle: 2, grade: 3 },
      'Worse over three visits: flare (toe), grade 1, then 2, now 3.',
    ],
    [
      'sole-thin',
      { by: 'sole depth', depth: 12 },
      'The sole is 12 mm deep on the radiograph, which is thin. Never thin it, and lower the wall in stages.',
    ],
    [
      'heels-lowered-much',
      { measure: 'heel-lateral', step: -8 },
      'The outer heel was lowered by 8 mm at one trim, more than 6 mm.',
    ],
    [
      'pair-uneven-after-trim',
      { pair: 'hind', left: 55, right: 49, difference: 6 },
      'After the trim the hind pair stands at 55° left and 49° right, more than 5° apart.',
    ],
    [
      'visit-overdue',
      { due: '2026-02-02', days: 21 },
      'The visit planned for 2 February 2026 is overdue by 3 weeks.',
    ],
  ])('%s', (code, facts, message) => expect(words.cautions[code](facts, f)).toBe(message))

  it('exist for every code, and say who to ask at the levels stop and vet', () => {
    const facts = {
      grade: 3,
      before: 1,
      place: 'toe',
      depth: 5,
      surfaces: 'sand',
      lameness: 2,
      finding: 'flare',
      first: 1,
      middle: 2,
      step: -12,
      measure: 'heel-medial',
      pair: 'fore',
      left: 55,
      right: 48,
      due: '2026-02-02',
      days: 30,
    }
    for (const code of cautionCodes) plain(words.cautions[code](facts, f))
    for (const code of ['drainage', 'sole-depth-critical', 'heat-with-lameness'] as const)
      expect(words.cautions[code](facts, f)).toContain('Ask a vet')
  })

  it('say what to do once, where the word of their level stands beside them and where it does not', () => {
    const alone = (code: (typeof cautionCodes)[number], level: 'stop' | 'vet' | 'mind', facts: Facts) =>
      words.cautionAlone({ code, level, foot: 'LF', date: '2026-01-10', visit: '', facts, standing: true }, f)
    expect(alone('swelling', 'vet', { place: 'coronet' })).toBe('Swelling (coronet). Tell the vet.')
    expect(alone('condition-high', 'mind', { grade: 8 })).toBe(
      'Body condition 8 of 9: the feet carry more than they should. Take care.',
    )
    expect(alone('drainage', 'stop', {})).toBe(
      'Fluid comes from the foot. Ask a vet before any more work on this foot.',
    )
    expect(alone('sole-flat', 'mind', {})).toBe(
      'The sole is flat. Never thin it, and lower the wall in stages.',
    )
  })

  it('speak in the unit of the practice', () =>
    expect(words.cautions['toe-shortened-much']({ step: -12.7 }, formatter('in'))).toBe(
      'The toe was shortened by 1/2 in at one trim, more than 3/8 in.',
    ))
})

describe('checks in words', () => {
  it.each<[keyof typeof words.checks, Facts, string]>([
    [
      'entered against photo',
      {
        measure: 'toe-angle',
        stage: 'after',
        entered: 45,
        photo: 48,
        difference: -3,
        within: 2.9,
        explained: 'no',
      },
      'toe angle, after the trim: 45° by hand, 48° from the photo, a difference of \u22123°, more than the errors of both explain. The hand reading is used.',
    ],
    [
      'broken axis',
      { measure: 'axis-deviation', value: -5 },
      'Pastern and hoof do not stand in one line: broken forward by 5°.',
    ],
    [
      'sheared heels',
      { measure: 'heel-balance', value: -6 },
      'The outer heel is 6 mm higher. From 5 mm on a published definition speaks of sheared heels.',
    ],
    [
      'toe length for weight',
      { value: 95, guide: 82.5, difference: 12.5, weight: 450 },
      'Toe length 95 mm; the guide for this weight, given from memory, is 82.5 mm.',
    ],
  ])('%s', (kind, facts, message) => expect(words.checks[kind](facts, f)).toBe(message))

  it('of a whole horse are whole sentences', () => {
    for (const { kind, facts } of sample.checks)
      expect(words.checks[kind](facts, f)).not.toMatch(/NaN|undefined|\u2014/)
  })
})

describe('sentences of a trend', () => {
  const trend = (values: readonly number[], low: number | null = 50) => {
    const horse = buildHorse({
      visits: courseOf('toe-angle', values),
      targets: { 'toe-angle': { LF: { low, high: low === null ? null : 54 } } },
    })
    const [one] = assess(horse, practice(), '2026-06-01').trends
    if (one === undefined) throw new Error('no trend')
    return one
  }

  it('say improving, with the figures', () =>
    expect(words.verdictSentence(trend([40, 42, 44, 46, 48]), f)).toMatch(
      /^Improving: \+1\.7\d?° a month \(95 % interval .+\), the line stands at 48°, wanted 50° to 54°\.$/,
    ))

  it('say too early, and what would settle it', () =>
    expect(words.verdictSentence(trend([45, 46]), f)).toMatch(
      /^Too early to tell from 2 readings\. \d further visits?, to about \d+ \w+ \d{4}, should settle it\.$/,
    ))

  it('say whether the change is more than measuring error', () => {
    expect(words.changeSentence(trend([44, 50]), f)).toMatch(
      /^Changed by \+6° since .*more than measuring error/,
    )
    expect(words.changeSentence(trend([44, 45]), f)).toMatch(
      /^Changed by \+1° since .*within measuring error/,
    )
  })

  it('say when, how sure, and when nothing can be said', () => {
    const improving = trend([40, 42, 44, 46, 48])
    if (improving.forecast === null) throw new Error('no forecast')
    expect(words.forecastSentence(improving.forecast, 'toe-angle', f)).toMatch(
      /^Should reach 50° about 29 June 2026 \(95 % interval .+ to .+\), if it goes on like this\.$/,
    )
    expect(words.forecastSentence({ kind: 'no date yet', edge: 50 }, 'toe-angle', f)).toBe(
      'No date can be given yet for reaching 50°.',
    )
    expect(words.forecastSentence({ kind: 'more than 18 months', edge: 50 }, 'toe-angle', f)).toBe(
      'More than 18 months to 50°.',
    )
    expect(words.forecastSentence({ kind: 'moving away', edge: 50 }, 'toe-angle', f)).toBe(
      'Moving away from 50°.',
    )
  })
})

describe('other sentences', () => {
  it('of a whole horse are plain', () => {
    for (const trend of sample.trends) {
      plain(words.verdictSentence(trend, f))
      plain(words.changeSentence(trend, f))
    }
    for (const growth of sample.growth) plain(words.growthSentence(growth, f))
    for (const out of sample.growOut) plain(words.growOutSentence(out, f))
    for (const plan of sample.plans) plain(words.planSentence(plan, f))
    plain(words.nextVisitSentence(sample.nextVisit, f))
    for (const sentence of words.always) plain(sentence)
  })

  it('say what the hoof did and what the trims did, apart', () => {
    const toe = sample.growth.find(({ foot, measure }) => foot === 'LF' && measure === 'toe-length')
    if (toe === undefined) throw new Error('no growth')
    expect(words.growthSentence(toe, f)).toMatch(
      / left after wear \(95 % interval .+\), over 8 months\. 8 trims took /,
    )
  })

  it('stage a plan and say when it will be seen to hold', () => {
    const horse = buildHorse({
      trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
      visits: [{ date: '2026-01-05', after: { 'heel-medial': 36, 'heel-lateral': 30 } }],
    })
    const [plan] = assess(horse, practice(), '2026-01-05').plans
    if (plan === undefined) throw new Error('no plan')
    expect(words.planSentence(plan, f)).toBe(
      'The inner heel is 6 mm higher, 4 mm over the limit of 2 mm. 3 trims, at most 1.5 mm a trim (flat sole), to about 20 April 2026. Whether it holds shows at the visit after the last, about 25 May 2026: 5 months in all.',
    )
  })

  it('give no amount while a stop stands', () => {
    const horse = buildHorse({
      visits: [
        {
          date: '2026-01-05',
          after: { 'heel-medial': 36, 'heel-lateral': 30 },
          findings: ['LF drainage, toe, 2'],
        },
      ],
    })
    const [plan] = assess(horse, practice(), '2026-01-05').plans
    if (plan === undefined) throw new Error('no plan')
    expect(words.planSentence(plan, f)).toBe(
      'The inner heel is 6 mm higher, 4 mm over the limit of 2 mm. No amount is given while the caution on this foot stands: a vet must clear it first.',
    )
  })
})
