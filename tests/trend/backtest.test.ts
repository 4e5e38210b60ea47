import { describe, expect, it } from 'vitest'
import { addDays } from '../../src/hoof/dates.ts'
import { assess } from '../../src/trend/assess.ts'
import type { PastForecast } from '../../src/trend/assessment.ts'
import { buildHorse, courseOf, practice, type VisitSketch } from './build-horse.ts'
import { seeded } from './random.ts'

const targets = { 'toe-angle': { LF: { low: 50, high: 54 } } }
const backtest = (visits: readonly VisitSketch[]) =>
  assess(buildHorse({ visits, targets }), practice(), '2030-01-01').backtest

describe('past forecasts', () => {
  it('are those that an assessment on the day of that visit gives, by what the practice teaches today', () => {
    const random = seeded(42)
    let compared = 0
    for (let run = 0; run < 60; run++) {
      // Two visits here and there without one of the readings; a slip of the pen in every third course.
      const visits = Array.from({ length: 10 }, (_, i): VisitSketch => {
        const value = 42 + 1.3 * i + 1.2 * random.normal() + (run % 3 === 0 && i === 4 ? 15 : 0)
        const sheet = (more: number) => (random.even() < 0.15 ? {} : { 'toe-angle': value + more })
        return { date: addDays('2026-01-05', i * 35), before: sheet(-1), after: sheet(0) }
      })
      const horse = buildHorse({ visits, targets })
      for (const { madeAt, measure, edge, date, earliest, latest } of assess(horse, practice(), '2030-01-01')
        .backtest.forecasts) {
        const then = assess(horse, practice(), madeAt).trends.find((one) => one.measure === measure)
        expect(then?.forecast).toMatchObject({ kind: 'date', edge, date, earliest, latest })
        compared++
      }
    }
    expect(compared).toBeGreaterThan(60)
  })

  it('are every one of a date that was shown, from the first on', () => {
    const visits = courseOf('toe-angle', [36, 41, 45, 49, 50.5, 51], { every: 80 })
    const horse = buildHorse({ visits, targets })
    const shown = visits
      .map(({ date }) => date)
      .filter((date) => assess(horse, practice(), date).trends[0]?.forecast?.kind === 'date')
    expect(shown.length).toBeGreaterThan(1)
    const { forecasts } = backtest(visits)
    expect(forecasts.map(({ madeAt }) => madeAt)).toEqual(shown.slice(0, forecasts.length))
  })

  it('with a range open at one end are counted apart, and as no success', () => {
    const { forecasts, made, held, open } = backtest(
      courseOf('toe-angle', [40, 41.8, 42.2, 43.9, 44.1, 46.6, 47, 48.9, 49.2, 51, 52]),
    )
    expect(open).toBe(forecasts.filter(({ latest }) => latest === null).length)
    expect(open).toBeGreaterThan(0)
    expect(made).toBe(forecasts.length - open)
    expect(held).toBe(forecasts.filter((one) => one.latest !== null && one.held).length)
  })

  it('are scored by the stretch between the last reading short of the edge and the first past it', () => {
    const { forecasts, made, held } = backtest(courseOf('toe-angle', [40, 42, 44, 46, 48, 50.5, 51, 52]))
    const [first] = forecasts
    expect(first).toMatchObject({
      madeAt: '2026-04-20',
      seenAfter: '2026-05-25',
      seenBy: '2026-06-29',
    } satisfies Partial<PastForecast>)
    expect(forecasts.map(({ madeAt }) => madeAt)).toEqual(['2026-04-20', '2026-05-25'])
    expect(made).toBeGreaterThan(0)
    expect(held).toBe(made)
  })

  it('did not hold where the whole interval passed and the edge was not reached', () => {
    const stalled = [40, 42, 44, 46, ...Array.from({ length: 14 }, () => 46.5)]
    const { forecasts, made, held } = backtest(courseOf('toe-angle', stalled))
    expect(made).toBeGreaterThan(0)
    expect(held).toBeLessThan(made)
    expect(forecasts.find((one) => !one.held)).toMatchObject({
      seenBy: null,
      seenAfter: addDays('2026-01-05', 17 * 35),
    })
  })

  it('are not counted while they are still open', () => {
    expect(backtest(courseOf('toe-angle', [40, 42, 44, 46, 47])).made).toBe(0)
  })

  it('are none without a band', () => {
    const horse = buildHorse({ visits: courseOf('toe-angle', [40, 42, 44, 46, 48, 50.5, 51]) })
    expect(assess(horse, practice(), '2030-01-01').backtest).toEqual({
      made: 0,
      held: 0,
      open: 0,
      forecasts: [],
    })
  })
})
