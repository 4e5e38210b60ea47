import { describe, expect, it } from 'vitest'
import { addDays } from '../../src/hoof/dates.ts'
import { wordsOf } from '../../src/pages/shared/caution-lines.ts'
import { assess } from '../../src/trend/assess.ts'
import type { CautionCode, FactsOf } from '../../src/trend/assessment.ts'
import { english, formatIn } from '../english.ts'
import { buildHorse, practice } from '../trend/build-horse.ts'
import { sampleAsOf, sampleHorse } from '../trend/sample-horse.ts'
import { signTable } from '../trend/sign-table/index.ts'

const { assessment: words, cautions } = english

const f = formatIn('mm')
const sample = assess(sampleHorse, practice(), sampleAsOf)
const plain = (text: string): void => {
  expect(text).not.toMatch(/NaN|undefined|null|\u2014|Infinity|\[object/)
  expect(text).toMatch(/^[A-Za-z0-9+\u2212].*[.!]$/)
}

describe('cautions in words', () => {
  const said = <Code extends CautionCode>(code: Code, facts: FactsOf<Code>, as = f) =>
    cautions[code].practice(facts, as)

  it('carry their limits with them, and the place where there is one', () => {
    expect(said('puncture', { finding: 'puncture', place: 'frog', grade: 2 })).toBe(
      'A nail or puncture (frog). Leave it where it is, do not walk the horse, and ring the vet at once.',
    )
    expect(said('drainage', { finding: 'drainage', place: 'whole foot', grade: 2 })).toMatch(
      /^Fluid comes from the foot\. /,
    )
    expect(said('sole-thin', { by: 'sole depth', depth: 12, limit: 15 })).toBe(
      'The sole is 12 mm deep on the radiograph, which is thin. Never thin it, and lower the wall in stages.',
    )
    expect(said('heels-lowered-much', { measure: 'heel-lateral', step: -8, limit: 6 })).toBe(
      'The outer heel was lowered by 8 mm at one trim, more than 6 mm.',
    )
    expect(said('visit-overdue', { due: '2026-02-02', days: 21 })).toBe(
      'The visit planned for 2 February 2026 is overdue by 3 weeks.',
    )
  })

  it('speak in the unit of the practice', () => {
    expect(
      said('toe-shortened-much', { measure: 'toe-length', step: -12.7, limit: 10 }, formatIn('in')),
    ).toBe('The toe was shortened by 1/2 in at one trim, more than 3/8 in.')
    expect(said('weight-loss', { before: 500, now: 470, days: 28, percent: 5 }, formatIn('in'))).toContain(
      'from 1102 lb to 1036 lb',
    )
  })

  it('of a stop say at least one thing not to do', () => {
    for (const { code, level, raises, horse } of signTable) {
      if (level !== 'stop') continue
      const visits = raises.map((visit, i) => ({ date: addDays('2026-01-05', i * 35), ...visit }))
      const found = assess(buildHorse({ ...horse, visits }), practice(), visits.at(-1)?.date ?? '').cautions
      const caution = found.find((one) => one.code === code)
      if (caution === undefined) throw new Error(`${code} was not raised`)
      expect(wordsOf(f, caution).practice(caution.facts, f)).toMatch(/\b(?:not|leave|nothing|no trim)\b/i)
      expect(wordsOf(f, caution).owner(caution.facts, f)).toMatch(/vet/)
    }
  })

  it('say what to do where no word of their level stands beside them', () => {
    expect(words.cautionAlone('Swelling (coronet).', 'vet')).toBe('Swelling (coronet). Tell the vet.')
    expect(words.cautionAlone('An abscess.', 'stop')).toBe('An abscess. Ask a vet before any more work.')
  })
})

describe('checks in words', () => {
  const { checks } = words
  it('name both sources where hand and picture disagree', () =>
    expect(
      checks['entered against photo'](
        {
          measure: 'toe-angle',
          stage: 'after',
          entered: 45,
          photo: 48,
          difference: -3,
          within: 2.9,
          explained: false,
        },
        f,
      ),
    ).toBe(
      'toe angle, after the trim: 45° by hand, 48° from the photo, a difference of \u22123°, more than the errors of both explain. The hand reading is used.',
    ))

  it('carry their limits with them', () => {
    expect(checks['broken axis']({ value: -5, limit: 3 }, f)).toBe(
      'Pastern and hoof are not in one line: broken forward by 5°.',
    )
    expect(checks['sheared heels']({ value: -6, limit: 5 }, f)).toBe(
      'The outer heel is 6 mm higher. From 5 mm on a published definition speaks of sheared heels.',
    )
    expect(checks['frog ratio']({ value: 0.5, limit: 0.67 }, f)).toContain('Below 0.67 a published')
    expect(
      checks['toe length for weight']({ value: 95, guide: 82.5, difference: 12.5, weight: 450 }, f),
    ).toBe('Toe length 95 mm; the guide for this weight, given from memory, is 82.5 mm.')
  })

  it('of a whole horse are whole sentences', () => {
    for (const check of sample.checks)
      expect(words.checkSentence(check, f)).not.toMatch(/NaN|undefined|\u2014/)
  })
})

describe('a remark whose kind was explained above it', () => {
  it('says what it reads, of every kind', () => {
    for (const check of sample.checks) {
      const text = words.checkAgain(check, f)
      expect(text).not.toMatch(/NaN|undefined|\u2014/)
      expect(text).toMatch(/\.$/)
      expect(text.length).toBeLessThan(words.checkSentence(check, f).length)
    }
    expect(sample.checks.length).toBeGreaterThan(0)
  })
})

describe('other sentences', () => {
  it('of a whole horse are plain', () => {
    for (const hidden of Object.values(words.growthHidden)) plain(hidden)
    for (const out of sample.growOut) plain(words.growOutSentence(out, f))
    for (const plan of sample.plans) plain(words.planSentence(plan, f))
    plain(words.nextVisitSentence(sample.nextVisit, f))
    for (const sentence of words.always) plain(sentence)
  })

  it('stage a plan and say when it will be seen to hold', () => {
    const horse = buildHorse({
      trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
      visits: ['2025-12-01', '2026-01-05'].map((date) => ({
        date,
        after: { 'heel-medial': 36, 'heel-lateral': 30 },
      })),
    })
    const [plan] = assess(horse, practice(), '2026-01-05').plans
    if (plan === undefined) throw new Error('no plan')
    expect(words.planSentence(plan, f)).toBe(
      'The inner heel is 6 mm higher, 4 mm over the limit of 2 mm. 3 trims, at most 1.5 mm a trim beyond what grows (flat sole), to about 20 April 2026. Whether it holds shows at the visit after the last, about 25 May 2026: 5 months in all.',
    )
  })

  it('tells the next trim in plain amounts, in the unit of the practice', () => {
    const visits = ['2026-01-05', '2026-02-09'].map((date) => ({
      date,
      after: { 'heel-medial': 36, 'heel-lateral': 30 },
    }))
    const [plan] = assess(buildHorse({ visits }), practice(), '2026-02-09').plans
    if (plan === undefined) throw new Error('no plan')
    expect(words.offSentence(plan, f)).toBe(
      'Off the inner heel, at most: 11.5 mm (10 mm grown since 9 February 2026 at the published pace, and 1.5 mm more), and off the outer heel only what has grown. That leaves 4.5 mm between them. That is more than 6 mm: better in two trims, some weeks apart.',
    )
    expect(words.offSentence(plan, formatIn('in'))).toContain('7/16 in (3/8 in grown')
    expect(words.planSentence(plan, formatIn('in'))).toContain('at most 1/16 in a trim beyond what grows')
    expect(words.offSentence(plan, formatIn('cm'))).toContain('0.15 cm more')
  })
})
