import { describe, expect, it } from 'vitest'
import { addDays, daysPerMonth } from '../../src/hoof/dates.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Plan } from '../../src/trend/assessment.ts'
import { tBelow } from '../../src/trend/student.ts'
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
    // By the fitted growth of the medial heel, and 35 days to the next visit.
    const { growth } = assess(buildHorse({ visits }), practice(), '2026-01-05')
    const rate = growth.find(({ measure }) => measure === 'heel-medial')?.ratePerMonth ?? Number.NaN
    expect(next.grown).toBeCloseTo((rate * 35) / daysPerMonth, 10)
    expect(next).toMatchObject({ grownFrom: 'measured', step: 1.5, leaves: 4.5, careFrom: 6 })
    expect(next.total).toBeCloseTo(next.grown + 1.5, 10)
    const published = only({ visits: twice(36, 30, { nextVisit: '2026-01-26' }) }).next
    expect(published).toMatchObject({ grownFrom: 'published', step: 1.5, careFrom: 6 })
    expect(published.grown).toBeCloseTo((8.5 * 21) / 30.4375, 10)
  })
})

describe('how sure a plan must be', () => {
  const heelsOf = (...balances: readonly number[]): readonly VisitSketch[] =>
    balances.map((balance, i) => heels(addDays('2025-01-06', i * 35), 30 + balance, 30))
  const level = (balances: readonly number[], mostPerTrim: number) => {
    const horse = buildHorse({
      trimLimits: { sole: {}, mostPerTrim },
      visits: heelsOf(...balances),
    })
    const { plans: found, trends } = assess(horse, practice(), '2026-06-01')
    const fit = trends.find(({ measure }) => measure === 'heel-balance')?.fit
    if (fit === null || fit === undefined) throw new Error('no fit')
    const sd = (fit.levelAtLastInterval.high - fit.levelAtLast) / fit.t
    return { isPlanned: found.length > 0, sure: tBelow((fit.levelAtLast - 2) / sd, fit.freedom) }
  }
  const still = (balance: number) => [balance, balance, balance, balance]

  it('is 90 % where one trim may take the excess, and 70 % where it takes more', () => {
    const tried = Array.from({ length: 30 }, (_, i) => 2.1 + i * 0.1)
    for (const balance of tried) {
      const { isPlanned, sure } = level(still(balance), 3.5)
      expect(isPlanned, `${balance} within one trim`).toBe(sure > 0.9)
    }
    for (const balance of tried) {
      const { isPlanned, sure } = level(still(balance), 0.5)
      expect(isPlanned, `${balance}, half a millimetre a trim`).toBe(sure > (balance - 2 > 0.5 ? 0.7 : 0.9))
    }
    expect(new Set(tried.map((balance) => level(still(balance), 3.5).isPlanned)).size).toBe(2)
  })

  it('asks for the latest reading to be over as well as the line', () => {
    expect(level([9, 9, 9, 1.9], 1.5).isPlanned).toBe(false)
    expect(level([9, 9, 9, 9], 1.5).isPlanned).toBe(true)
  })
})

describe('set against what happened', () => {
  const course = (...balances: readonly number[]): HorseSketch => ({
    trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
    visits: [balances[0] ?? 0, ...balances].map((balance, i) =>
      heels(addDays('2025-12-01', i * 35), 30 + balance, 30),
    ),
  })

  it.each<[Plan['standing'], readonly number[]]>([
    ['just begun', [8]],
    ['on plan', [8, 6.5]],
    ['on plan', [12, 10.5, 9, 7.5]],
    // Two visits without progress are no judgement yet, three are.
    ['on plan', [8, 8, 8]],
    ['behind', [8, 8, 8, 8]],
    ['behind', [8, 8.5, 9, 8.2]],
    ['ahead', [30, 20, 15, 10]],
    ['behind', [12, 14, 16, 18]],
  ])('%s: %j', (standing, balances) => expect(only(course(...balances)).standing).toBe(standing))

  it('is behind after three visits without progress, though the interval alone would not say so', () => {
    const slow = (...balances: readonly number[]) =>
      only({ ...course(...balances), trimLimits: { sole: {}, mostPerTrim: 0.5 } })
    const stuck = slow(8, 8, 8.2, 8)
    expect(stuck.standing).toBe('behind')
    expect(stuck.kept.at(-1)?.low).toBeLessThan(stuck.kept.at(-1)?.expected ?? 0)
    expect(slow(8, 8, 7.9, 8).standing).toBe('on plan')
    expect(slow(8, 8, 8.2).standing).toBe('on plan')
  })

  it('is judged by the interval of the level: behind only where all of it lies above what was due', () => {
    for (const { expected, actual, low, high, standing } of only(course(12, 14, 16, 18)).kept) {
      expect(low).toBeLessThan(actual)
      expect(high).toBeGreaterThan(actual)
      if (low > expected) expect(standing).toBe('behind')
    }
  })

  it('counts from the first visit that needed a plan and could have one', () => {
    const plan = only(course(1, 8, 6.5, 5))
    expect(plan.kept.map(({ date, expected }) => [date, expected])).toEqual([
      ['2026-03-16', 6.5],
      ['2026-04-20', 5],
    ])
  })

  it('counts from the very visit at which the plan was first shown', () => {
    const horse = buildHorse(course(8, 6.5))
    expect(assess(horse, practice(), '2026-01-05').plans[0]?.standing).toBe('just begun')
    expect(assess(horse, practice(), '2026-02-09').plans[0]?.kept).toMatchObject([{ date: '2026-02-09' }])
  })

  it('asks no more of a visit that came early or of one that did not come', () => {
    const sketch: HorseSketch = {
      trimLimits: { sole: { LF: 'flat' }, mostPerTrim: null },
      visits: [...twice(38, 30), heels('2026-02-05', 36.5, 30), heels('2026-04-20', 36.5, 30)],
    }
    expect(only(sketch).kept.map(({ expected }) => expected)).toEqual([6.5, 3.5])
  })

  it('measures the lateral side as the medial one', () => {
    const { visits, ...more } = course(8, 8, 8, 8)
    const mirrored = visits.map(({ date }, i) => heels(date, 30, 30 + ([8, 8, 8, 8, 8][i] ?? 0)))
    expect(only({ ...more, visits: mirrored })).toMatchObject({ side: 'lateral', standing: 'behind' })
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
