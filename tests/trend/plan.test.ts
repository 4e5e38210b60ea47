import { describe, expect, it } from 'vitest'
import { assess } from '../../src/trend/assess.ts'
import type { Plan } from '../../src/trend/assessment.ts'
import { buildHorse, type HorseSketch, practice, type VisitSketch } from './build-horse.ts'

const heels = (
  date: string,
  medial: number,
  lateral: number,
  more: Partial<VisitSketch> = {},
): VisitSketch => ({
  date,
  after: { 'heel-medial': medial, 'heel-lateral': lateral },
  ...more,
})
/** The same heels a visit earlier: a plan wants two readings. */
const twice = (medial: number, lateral: number, more: Partial<VisitSketch> = {}): readonly VisitSketch[] => [
  heels('2025-12-01', medial, lateral),
  heels('2026-01-05', medial, lateral, more),
]
const plans = (sketch: HorseSketch, asOf = sketch.visits.at(-1)?.date ?? ''): readonly Plan[] =>
  assess(buildHorse(sketch), practice(), asOf).plans
const only = (sketch: HorseSketch, asOf?: string): Plan => {
  const [plan, ...more] = plans(sketch, asOf)
  if (plan === undefined || more.length > 0) throw new Error('expected one plan')
  return plan
}

describe('heels', () => {
  it('come down from the high side in stages, the last only by what is over', () => {
    const plan = only({
      trimLimits: { sole: { LF: 'cupped' }, mostPerTrim: null },
      visits: twice(30, 39),
    })
    expect(plan).toMatchObject({
      measure: 'heel-balance',
      side: 'lateral',
      now: 9,
      limit: 2,
      excess: 7,
      perTrim: 3,
      trims: 3,
      standing: 'just begun',
    })
    expect(plan.steps).toEqual([
      { date: '2026-02-09', expected: 6 },
      { date: '2026-03-16', expected: 3 },
      { date: '2026-04-20', expected: 2 },
    ])
  })

  it('need none within the limit', () => expect(plans({ visits: twice(32, 30) })).toEqual([]))

  it('start at the visit that the last one named, or today where that has passed', () => {
    const named = twice(36, 30, { nextVisit: '2026-01-26' })
    expect(only({ visits: named }).steps[0]?.date).toBe('2026-01-26')
    expect(only({ visits: named }, '2026-02-03').steps[0]?.date).toBe('2026-02-03')
  })

  it.each<[string, HorseSketch['trimLimits'], readonly string[], number, Plan['perTrimFrom']]>([
    ['the horse has a limit of its own', { sole: { LF: 'cupped' }, mostPerTrim: 1 }, [], 1, 'trim limits'],
    ['the sole is flat', { sole: { LF: 'flat' }, mostPerTrim: null }, [], 1.5, 'flat sole'],
    ['the sole is cupped', { sole: { LF: 'cupped' }, mostPerTrim: null }, [], 3, 'cupped sole'],
    [
      'the sole was found thin',
      { sole: { LF: 'cupped' }, mostPerTrim: null },
      ['LF thin sole, sole, 1'],
      1.5,
      'flat sole',
    ],
    ['the sole was found flat', { sole: {}, mostPerTrim: null }, ['LF flat sole, sole, 2'], 1.5, 'flat sole'],
    ['nothing is said', { sole: {}, mostPerTrim: null }, [], 1.5, 'sole not said, taken as flat'],
  ])('take at most per trim where %s', (_, trimLimits, findings, perTrim, from) => {
    const plan = only({
      ...(trimLimits === undefined ? {} : { trimLimits }),
      visits: twice(37, 30, { findings }),
    })
    expect(plan.perTrim).toBe(perTrim)
    expect(plan.perTrimFrom).toBe(from)
    const amounts = plan.steps.map(({ expected }, i) => (plan.steps[i - 1]?.expected ?? plan.now) - expected)
    for (const amount of amounts) expect(amount).toBeLessThanOrEqual(perTrim + 1e-12)
    expect(plan.steps.at(-1)?.expected).toBe(plan.limit)
  })

  it("work to the edge of the practitioner's own band, on either side", () => {
    const targets = { 'heel-balance': { LF: { low: -1, high: 3 } } }
    expect(only({ targets, visits: twice(36, 30) })).toMatchObject({
      side: 'medial',
      limit: 3,
      excess: 3,
    })
    expect(only({ targets, visits: twice(30, 36) })).toMatchObject({
      side: 'lateral',
      limit: 1,
      excess: 5,
    })
    const open = { 'heel-balance': { LF: { low: null, high: 3 } } }
    expect(plans({ targets: open, visits: twice(30, 36) })).toEqual([])
  })

  it('are not planned while a caution holds the foot, and are again when it is over', () => {
    const drained = twice(36, 30, { findings: ['LF drainage, toe, 2'] })
    expect(plans({ visits: drained })).toEqual([])
    expect(plans({ visits: twice(36, 30, { comfort: { digitalPulse: { LF: 2, RF: 2 } } }) })).toEqual([])
    expect(plans({ visits: twice(36, 30, { comfort: { lameness: { LF: 3 } } }) })).toEqual([])
    expect(plans({ visits: twice(36, 30, { comfort: { lameness: { LF: 2 } } }) })).toHaveLength(1)
    expect(plans({ visits: twice(36, 30, { findings: ['RF drainage, toe, 2'] }) })).toHaveLength(1)
    const silent = heels('2026-02-09', 36, 30)
    expect(plans({ visits: [...drained, silent] })).toEqual([])
    const gone = heels('2026-02-09', 36, 30, { findings: ['LF drainage, toe, 0'] })
    expect(only({ visits: [...drained, gone] })).toMatchObject({ trims: 3 })
  })

  it('are not planned from one reading, nor for what may be the error of the readings', () => {
    expect(plans({ visits: [heels('2026-01-05', 40, 30)] })).toEqual([])
    expect(plans({ visits: twice(33, 30) })).toEqual([])
    expect(plans({ visits: twice(36, 30) })).toHaveLength(1)
    const noisy = [heels('2025-11-01', 30, 30), heels('2025-12-01', 30, 30), heels('2026-01-05', 33, 30)]
    expect(plans({ visits: noisy })).toEqual([])
  })

  it('tell what comes off the wall in all: what grows until then, and the step', () => {
    const visits = [
      heels('2025-12-01', 36, 30),
      heels('2026-01-05', 36, 30, {
        before: { 'heel-medial': 43, 'heel-lateral': 37 },
        nextVisit: '2026-02-09',
      }),
    ]
    const { next } = only({ visits })
    // 7 mm in 35 days, and 35 days to the next visit.
    expect(next.grown).toBeCloseTo(7, 10)
    expect(next).toMatchObject({ grownFrom: 'measured', step: 1.5, leaves: 4.5, careFrom: 6 })
    expect(next.total).toBeCloseTo(8.5, 10)
    const published = only({ visits: twice(36, 30, { nextVisit: '2026-01-26' }) }).next
    expect(published).toMatchObject({ grownFrom: 'published', step: 1.5, careFrom: 6 })
    expect(published.grown).toBeCloseTo((8.5 * 21) / 30.4375, 10)
  })
})

describe('set against what happened', () => {
  const course = (...balances: readonly number[]): HorseSketch => ({
    trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
    visits: [balances[0] ?? 0, ...balances].map((balance, i) =>
      heels(
        ['2025-12-01', '2026-01-05', '2026-02-09', '2026-03-16', '2026-04-20'][i] ?? '',
        30 + balance,
        30,
      ),
    ),
  })

  it.each<[Plan['standing'], readonly number[]]>([
    ['just begun', [8]],
    ['on plan', [8, 6.5]],
    ['on plan', [8, 8, 6]],
    ['behind', [8, 8, 8]],
    ['ahead', [12, 6, 5]],
  ])('%s: %j', (standing, balances) => expect(only(course(...balances)).standing).toBe(standing))

  it('counts from the first visit that needed a plan and could have one', () => {
    const plan = only(course(1, 8, 6.5, 5))
    expect(plan.kept.map(({ date, expected, actual }) => [date, expected, actual])).toEqual([
      ['2026-03-16', 6.5, 6.5],
      ['2026-04-20', 5, 5],
    ])
  })

  it('asks no more of a visit that came early or of one that did not come', () => {
    const sketch = course(8, 6.5, 5)
    const late = {
      ...sketch,
      visits: [...twice(38, 30), heels('2026-02-05', 36.5, 30), heels('2026-04-20', 36.5, 30)],
    }
    expect(only(late).kept.map(({ expected }) => expected)).toEqual([6.5, 3.5])
    expect(only(late).standing).toBe('behind')
  })
})

describe('toe length', () => {
  const visits: readonly VisitSketch[] = [
    { date: '2025-12-01', after: { 'toe-length': 88 } },
    { date: '2026-01-05', before: { 'toe-length': 98 }, after: { 'toe-length': 88 } },
  ]
  const targets = { 'toe-length': { LF: { low: null, high: 84 } } }

  it('is planned against its band, and only where the practitioner set one', () => {
    const plan = only({ targets, trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null }, visits })
    expect(plan).toMatchObject({
      measure: 'toe-length',
      side: 'toe',
      now: 88,
      limit: 84,
      excess: 4,
      trims: 3,
    })
    expect(plan.steps.map(({ expected }) => expected)).toEqual([86.5, 85, 84])
    expect(plans({ visits })).toEqual([])
  })

  it('is never planned longer', () => {
    const short = { 'toe-length': { LF: { low: 90, high: 95 } } }
    expect(plans({ targets: short, visits })).toEqual([])
  })
})
