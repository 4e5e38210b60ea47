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
  it('are those that an assessment on the day of that visit gives', () => {
    const random = seeded(42)
    for (let run = 0; run < 40; run++) {
      const visits = Array.from({ length: 9 }, (_, i): VisitSketch => {
        const value = 42 + 1.3 * i + 1.2 * random.normal()
        // Some arrivals come first, so that the stage of the series changes on the way.
        const stage = i < 3 && run % 2 === 0 ? 'before' : 'after'
        return {
          date: addDays('2026-01-05', i * 35),
          [stage]: { 'toe-angle': value, 'frog-width': 50 + i, 'frog-length': 84 },
        }
      })
      const horse = buildHorse({ visits, targets })
      const { forecasts } = assess(horse, practice(), '2030-01-01').backtest
      for (const past of forecasts) {
        const then = assess(horse, practice(), past.madeAt).trends.find((one) => one.measure === past.measure)
        const { edge, date, earliest, latest } = past
        expect(then?.forecast).toEqual({ kind: 'date', edge, date, earliest, latest })
      }
    }
  })

  it('are scored by the stretch between the last reading short of the edge and the first past it', () => {
    const { forecasts, made, held } = backtest(courseOf('toe-angle', [40, 42, 44, 46, 48, 50.5, 51, 52]))
    const [first] = forecasts
    expect(first).toMatchObject({
      madeAt: '2026-04-20',
      seenAfter: '2026-05-25',
      seenBy: '2026-06-29',
    } satisfies Partial<PastForecast>)
    expect(forecasts.map(({ madeAt }) => madeAt)).toEqual(
      ['2026-03-16', '2026-04-20', '2026-05-25'].slice(3 - made),
    )
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
    expect(assess(horse, practice(), '2030-01-01').backtest).toEqual({ made: 0, held: 0, forecasts: [] })
  })
})
