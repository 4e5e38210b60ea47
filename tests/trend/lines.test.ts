/** What is read from a line: when it reaches a level, which way it goes, where it stands, whether it has bent. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Band } from '../../src/hoof/bands.ts'
import { addDays, dayOf, daysPerMonth } from '../../src/hoof/dates.ts'
import { discovered } from '../../src/trend/discovery.ts'
import { forecastOf } from '../../src/trend/forecast.ts'
import { lineLimit, lineOf, lineShrunk, reach } from '../../src/trend/line.ts'
import { type CourseFit, fitCourse, levelAt, levelSd, slopeSd } from '../../src/trend/model/fit.ts'
import { changedPace } from '../../src/trend/pace.ts'
import { t95, t975, t985, tBelow } from '../../src/trend/student.ts'
import { edgeAhead, positionAt, positionOf, verdictOf, wayToTarget } from '../../src/trend/verdict.ts'
import { bothStages } from './model/build-course.ts'

const scatter = { variances: { e: 1.96, u: 0.31, w: 0.31 }, worth: 10 }

/** The fit of readings a month apart about a line: small fixed wobbles stand for errors. */
function fitted(slope: number, months = 8, level = 44, wobble = 1): CourseFit {
  const wobbles = [0.2, -0.3, 0.1, 0.3, -0.2, -0.1, 0.2, -0.2, 0.1]
  const times = Array.from({ length: months + 1 }, (_, i) => i)
  const fit = fitCourse(
    bothStages(
      times,
      times.map((t) => level + slope * t + wobble * (wobbles[t % 9] ?? 0)),
      times.map(() => null),
    ),
    scatter,
  )
  if (fit === null) throw new Error('no fit')
  return fit
}

describe('when a line reaches a level', () => {
  const line = { level: 40, levelVariance: 0.5, covariance: -0.05, slope: 1.5, slopeVariance: 0.02 }
  const t = 2.1

  it('is unbounded where the slope may be flat', () => {
    expect(reach({ ...line, slope: 0.2 }, 50, t)).toBeNull()
    expect(reach({ ...line, slope: -0.2 }, 50, t)).toBeNull()
    expect(reach({ ...line, slope: 0, slopeVariance: 0 }, 50, t)).toBeNull()
  })

  it('has its limits where the limit of the line meets the level', () => {
    for (const target of [30, 39.5, 44, 60]) {
      const reached = reach(line, target, t)
      expect(line.level + line.slope * (reached?.at ?? 0)).toBeCloseTo(target, 9)
      expect(lineLimit(line, reached?.low ?? 0, t)).toBeCloseTo(target, 9)
      expect(lineLimit(line, reached?.high ?? 0, -t)).toBeCloseTo(target, 9)
      expect(reached?.low).toBeLessThan(reached?.at ?? 0)
      expect(reached?.high).toBeGreaterThan(reached?.at ?? 0)
    }
  })

  it('comes when a falling line falls to it, early and late in their order', () => {
    const reached = reach({ ...line, slope: -1.5 }, 30, t)
    expect(reached?.low).toBeLessThan(reached?.at ?? 0)
    expect(reached?.high).toBeGreaterThan(reached?.at ?? 0)
  })

  it('is a point where nothing is unsure', () => {
    const sure = { level: 40, levelVariance: 0, covariance: 0, slope: 2, slopeVariance: 0 }
    expect(reach(sure, 50, t)).toEqual({ at: 5, low: 5, high: 5 })
  })
})

describe('a line under the belief that slopes are small', () => {
  it('is what adding 1 / spread^2 to the inverse of the covariance makes of it', () => {
    const line = lineOf(fitted(0.8))
    const spread = 0.3
    const det = line.levelVariance * line.slopeVariance - line.covariance ** 2
    const inverse = {
      level: line.slopeVariance / det,
      both: -line.covariance / det,
      slope: line.levelVariance / det + 1 / spread ** 2,
    }
    const after = inverse.level * inverse.slope - inverse.both ** 2
    const shrunk = lineShrunk(line, spread)
    expect(shrunk.levelVariance).toBeCloseTo(inverse.slope / after, 9)
    expect(shrunk.slopeVariance).toBeCloseTo(inverse.level / after, 9)
    expect(shrunk.covariance).toBeCloseTo(-inverse.both / after, 9)
    // The solution of the same equations: the old right side, the new matrix.
    const right = [
      inverse.level * line.level + inverse.both * line.slope,
      inverse.both * line.level + (line.levelVariance / det) * line.slope,
    ] as const
    expect(shrunk.level).toBeCloseTo((inverse.slope * right[0] - inverse.both * right[1]) / after, 9)
    expect(shrunk.slope).toBeCloseTo((inverse.level * right[1] - inverse.both * right[0]) / after, 9)
  })

  it('is the line itself where slopes may be anything, and flat where they may not', () => {
    const line = lineOf(fitted(0.8))
    expect(lineShrunk(line, 1e6).slope).toBeCloseTo(line.slope, 6)
    expect(lineShrunk(line, 1e-6).slope).toBeCloseTo(0, 6)
  })
})

describe('the verdict', () => {
  const matters = 2
  const above: Band = { low: 56, high: null }
  const below: Band = { low: null, high: 30 }

  it('moves only where the 97 % interval of the slope leaves 0 out', () => {
    for (let slope = -1; slope <= 1; slope += 0.02) {
      const fit = fitted(slope)
      const moves = Math.abs(fit.slope) > t985(fit.nu) * slopeSd(fit)
      const up = fit.slope > 0
      expect(['rising', 'falling'].includes(verdictOf(fit, 8, null, matters))).toBe(moves)
      if (!moves) continue
      expect(verdictOf(fit, 8, null, matters)).toBe(up ? 'rising' : 'falling')
      expect(verdictOf(fit, 8, above, matters)).toBe(up ? 'improving' : 'worsening')
      expect(verdictOf(fit, 8, below, matters)).toBe(up ? 'worsening' : 'improving')
      expect(verdictOf(fit, 8, { low: 20, high: 80 }, matters)).toBe(up ? 'rising' : 'falling')
    }
  })

  it('else goes by what the 90 % interval leaves out of a change that matters over six months', () => {
    const seen = new Set<string>()
    for (const months of [3, 4, 6, 8, 12])
      for (let slope = -0.6; slope <= 0.6; slope += 0.02) {
        const fit = fitted(slope, months)
        if (Math.abs(fit.slope) > t985(fit.nu) * slopeSd(fit)) continue
        const delta = matters / Math.min(months, 6)
        const half = t95(fit.nu) * slopeSd(fit)
        const notWorse = fit.slope - half > -delta
        const notBetter = fit.slope + half < delta
        const expected =
          notWorse && notBetter
            ? 'steady'
            : notWorse
              ? 'not worsening'
              : notBetter
                ? 'not improving'
                : 'too early to tell'
        expect(verdictOf(fit, months, above, matters)).toBe(expected)
        // Without a way to go there is no better or worse.
        expect(verdictOf(fit, months, null, matters)).toBe(
          expected === 'steady' ? 'steady' : 'too early to tell',
        )
        seen.add(expected)
      }
    expect([...seen].toSorted()).toEqual(['not improving', 'not worsening', 'steady', 'too early to tell'])
  })

  it('is none before two and a half months', () => {
    const fit = fitted(3)
    expect(verdictOf(fit, 2.49, null, matters)).toBe('too early to tell')
    expect(verdictOf(fit, 2.5, null, matters)).toBe('rising')
  })

  it('counts a level on the very edge as in the band', () => {
    expect(edgeAhead(50.8, { low: null, high: 2 * 25.4 })).toBeNull()
    expect(edgeAhead(50.81, { low: null, high: 50.8 })).toBe(50.8)
    expect(wayToTarget(49, above)).toBe(1)
    expect(wayToTarget(31, below)).toBe(-1)
    expect(wayToTarget(57, above)).toBe(0)
    expect(wayToTarget(51, { low: null, high: null })).toBe(0)
    expect(wayToTarget(51, null)).toBe(0)
  })
})

describe('the position', () => {
  it('is on target from 80 % on, off it up to 20 %, near it in between', () => {
    const band = { low: 50, high: 54 }
    const nu = 12
    for (let level = 44; level <= 60; level += 0.25) {
      const within = tBelow((54 - level) / 1.2, nu) - tBelow((50 - level) / 1.2, nu)
      expect(positionAt(level, 1.2, nu, band)).toBe(
        within >= 0.8 ? 'on target' : within <= 0.2 ? 'off target' : 'near target',
      )
    }
    expect(positionAt(52, 1.2, nu, band)).toBe('on target')
    expect(positionAt(50, 1.2, nu, band)).toBe('near target')
    expect(positionAt(45, 1.2, nu, band)).toBe('off target')
  })

  it('of a band open on one side is by that side alone', () => {
    expect(positionAt(70, 1, 10, { low: 50, high: null })).toBe('on target')
    expect(positionAt(30, 1, 10, { low: null, high: 40 })).toBe('on target')
    expect(positionAt(50, 1, 10, { low: 50, high: null })).toBe('near target')
    expect(positionAt(48, 1, 10, { low: 50, high: null })).toBe('off target')
  })

  it('is none without a band, and is by the level alone where that is sure', () => {
    expect(positionAt(50, 1, 10, null)).toBe('no target')
    expect(positionAt(50, 1, 10, { low: null, high: null })).toBe('no target')
    expect(positionAt(50, 0, 10, { low: 50, high: 54 })).toBe('on target')
    expect(positionAt(49.9, 0, 10, { low: 50, high: 54 })).toBe('off target')
  })

  it('is by the level at the last trim', () => {
    const fit = fitted(1, 8, 44)
    const level = levelAt(fit, 8)
    expect(positionOf(fit, { low: 51, high: null })).toBe(
      positionAt(level, levelSd(fit, 8), fit.nu, { low: 51, high: null }),
    )
  })

  it('of a very narrow band is not on target from few readings: nothing shows that it is', () =>
    expect(positionAt(50, 2, 10, { low: 49.5, high: 50.5 })).toBe('off target'))
})

describe('the forecast', () => {
  const first = '2026-01-05'
  const forecast = (
    slope: number,
    band: Band | null,
    { months = 8, slopes = 5, asOf = addDays(first, Math.round(8 * daysPerMonth)), level = 44 } = {},
  ) =>
    forecastOf(
      {
        fit: fitted(slope, months, level),
        slopes,
        firstDay: dayOf(first),
        readFrom: first,
        readTo: addDays(first, Math.round(months * daysPerMonth)),
        asOf,
      },
      band,
    )
  const far: Band = { low: 60, high: null }

  it('gives the day the line enters the band, and none where there is no band or it is reached', () => {
    const found = forecast(1.5, far)
    expect(found).toMatchObject({ kind: 'date', edge: 60, isDue: false })
    const months = found?.kind === 'date' ? (dayOf(found.date) - dayOf(first)) / daysPerMonth : Number.NaN
    expect(Math.abs(months - 16 / 1.5)).toBeLessThan(0.3)
    expect(forecast(1.5, null)).toBeNull()
    expect(forecast(1.5, { low: null, high: null })).toBeNull()
    expect(forecast(1.5, { low: 50, high: null })).toBeNull()
    expect(forecast(-1.5, { low: null, high: 30 })).toMatchObject({ kind: 'date', edge: 30 })
  })

  it('says nothing of a date before two and a half months', () => {
    expect(forecast(8, { low: 90, high: null }, { months: 2 })).toEqual({ kind: 'no date yet', edge: 90 })
    expect(forecast(8, { low: 90, high: null }, { months: 3 })?.kind).toBe('date')
  })

  it('says moving away only of a slope that surely does', () => {
    expect(forecast(-1.5, far)).toEqual({ kind: 'moving away', edge: 60 })
    expect(forecast(-0.1, far)?.kind).not.toBe('moving away')
  })

  it('never starts a range before the last reading, and is due from its day on', () => {
    const near: Band = { low: 57, high: null }
    for (let later = 0; later < 900; later += 30) {
      const asOf = addDays(first, Math.round(8 * daysPerMonth) + later)
      const found = forecast(1.5, near, { asOf })
      if (found?.kind !== 'date') throw new Error('expected a date')
      expect(found.earliest >= addDays(first, Math.round(8 * daysPerMonth))).toBe(true)
      expect(found.earliest <= found.date).toBe(true)
      expect(found.latest === null || found.latest >= found.date).toBe(true)
      expect(found.isDue).toBe(found.date <= asOf)
    }
  })

  it('is open at the end past 18 months from today, and no date where the day itself is', () => {
    const horizon = addDays(first, Math.round(26 * daysPerMonth))
    const found = Array.from({ length: 60 }, (_, i) => forecast(0.3 + i * 0.02, far))
    for (const one of found)
      if (one?.kind === 'date') {
        expect(one.date <= horizon).toBe(true)
        expect(one.latest === null || one.latest <= horizon).toBe(true)
      }
    expect(found.some((one) => one?.kind === 'date' && one.latest === null)).toBe(true)
    expect(found.some((one) => one?.kind === 'date' && one.latest !== null)).toBe(true)
    expect(forecast(0.5, far)?.kind).toBe('more than 18 months')
  })

  it('else is not before the first month by whose end the upper limit of the line is there', () => {
    const band: Band = { low: 50, high: null }
    const fit = fitted(0.05)
    const found = forecast(0.05, band)
    if (found?.kind !== 'not before') throw new Error(`expected not before, got ${found?.kind}`)
    const monthsTo = (date: string) => (dayOf(date) - dayOf(first)) / daysPerMonth
    const limit = (date: string) => lineLimit(lineOf(fit), monthsTo(date), t975(fit.nu))
    expect(found.month.endsWith('-01')).toBe(true)
    expect(limit(addDays(found.month, -1))).toBeLessThan(50)
    const next = addDays(found.month, 31)
    expect(limit(addDays(`${next.slice(0, 7)}-01`, -1))).toBeGreaterThanOrEqual(50)
    // Nothing to say where the limit is there already; more than 18 months where it never comes so far.
    expect(forecast(0.05, { low: 44.8, high: null })).toEqual({ kind: 'no date yet', edge: 44.8 })
    expect(forecast(0.05, { low: 80, high: null })).toEqual({ kind: 'more than 18 months', edge: 80 })
  })

  it('gives a date the later the smaller slopes of this practice are, and at last none', () => {
    const dates = [5, 0.5, 0.3].map((slopes) => forecast(1.5, far, { slopes }))
    const days = dates.map((one) => (one?.kind === 'date' ? one.date : ''))
    expect(days).toEqual(days.toSorted())
    expect(new Set(days).size).toBe(3)
    expect(forecast(1.5, far, { slopes: 0.02 })?.kind).not.toBe('date')
  })
})

describe('a changed pace', () => {
  const course = (n: number, later: number, rate = 3) => {
    const times = Array.from({ length: n }, (_, i) => 2 * i)
    return bothStages(
      times,
      times.map((_, i) => 40 + rate * Math.min(i, later)),
      times.map(() => null),
    )
  }

  it('is said of two halves with eight trims at the least', () => {
    expect(changedPace(course(8, 4), scatter)).toMatchObject({ later: 4, laterPerMonth: 0 })
    expect(changedPace(course(8, 4), scatter)?.earlierPerMonth).toBeCloseTo(1.5, 9)
    expect(changedPace(course(7, 3), scatter)).toBeNull()
  })

  it('is not said of a straight line, nor of a small bend', () => {
    expect(changedPace(course(10, 99), scatter)).toBeNull()
    expect(changedPace(course(8, 4, 0.4), scatter)).toBeNull()
  })

  it('is not said because of one slip of the pen', () => {
    const straight = course(10, 99)
    straight.left[9] = 10
    expect(changedPace(straight, scatter)).toBeNull()
  })
})

describe('what is believed of many', () => {
  // Benjamini & Hochberg 1995, section 3: fifteen probabilities of a heart trial (figures from memory). At 5 % the four
  // smallest are rejected; Bonferroni rejects three.
  const trial = [
    0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
    0.759, 1,
  ]

  it('are the four of the published example at 5 %', () => {
    expect(discovered(trial, 0.05).filter(Boolean)).toHaveLength(4)
    const mixed = [...trial].toReversed()
    expect(discovered(mixed, 0.05)).toEqual(discovered(trial, 0.05).toReversed())
  })

  it('are by the definition: the largest k with p(k) <= k q / m', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 30 }),
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        (chances, rate) => {
          const sorted = chances.toSorted((a, b) => a - b)
          let k = 0
          for (let i = 1; i <= sorted.length; i++)
            if ((sorted[i - 1] ?? 1) <= (i / sorted.length) * rate) k = i
          const limit = k === 0 ? -1 : (sorted[k - 1] ?? -1)
          expect(discovered(chances, rate)).toEqual(chances.map((chance) => chance <= limit))
        },
      ),
      { numRuns: 200, seed: 1995 },
    )
  })

  it('are none of none', () => expect(discovered([], 0.1)).toEqual([]))
})
