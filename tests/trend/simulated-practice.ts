/**
 * Practices whose truth is known: horses are drawn, read as a trimmer reads them, learned from as a whole and then
 * assessed by the engine as it runs. Nothing of the engine's own model is used to draw them but its equations.
 */
import type { Horse } from '../../src/casebook/model.ts'
import { addDays, dayOf, daysPerMonth, type PlainDate } from '../../src/hoof/dates.ts'
import { type Foot, feet, type PerFoot } from '../../src/hoof/feet.ts'
import { type MeasureId, measures } from '../../src/hoof/measures.ts'
import { assess } from '../../src/trend/assess.ts'
import type { Assessment } from '../../src/trend/assessment.ts'
import type { Learned } from '../../src/trend/model/learned.ts'
import { learnPractice } from '../../src/trend/model/practice.ts'
import { teachingOf } from '../../src/trend/model/teaching.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'
import type { Random } from './random.ts'

/** How readings come about; what is not said is as the model has it. */
export interface World {
  readonly horses: number
  readonly visits: number
  readonly measures: readonly MeasureId[]
  /** Errors as multiples of the literature's repeatability. */
  readonly noise: number
  /** Share of the feet that move at all. */
  readonly moving: number
  /** Share by which growth follows the season, either way. */
  readonly season?: number
  /** Correlation of one reading's error with the one before it at the same foot. */
  readonly correlation?: number
  /** Share of readings that are off by eight times the literature's repeatability. */
  readonly slips?: number
  /** Share of readings that were not taken. */
  readonly missing?: number
  /** Whether readings are written to the half degree and the millimetre, as they are. */
  readonly rounded?: boolean
}

export interface Truth {
  /** A month. */
  readonly slope: number
  readonly growth: number
}

export interface SimulatedHorse {
  readonly horse: Horse
  readonly truth: (foot: Foot, measure: MeasureId) => Truth
  readonly last: PlainDate
}

/** Feet begin outside these, so that half of what moves gets better and half worse. */
const targets: Partial<Record<MeasureId, { low: number | null; high: number | null }>> = {
  'toe-length': { low: null, high: 82 },
  'toe-angle': { low: 52, high: 56 },
  'heel-medial': { low: 44, high: null },
}
const starts: Partial<Record<MeasureId, number>> = { 'toe-length': 90, 'toe-angle': 47, 'heel-medial': 38 }

const walls: readonly MeasureId[] = [
  'toe-length',
  'heel-medial',
  'heel-lateral',
  'quarter-medial',
  'quarter-lateral',
]

/** Degrees of freedom of how feet differ in scatter. */
const differing = 20

const everyFoot = <T>(value: T): PerFoot<T> => Object.fromEntries(feet.map((foot) => [foot, value]))

/** What the year's round has added to growth by a day, in months of mean growth for a share of 1. */
const seasonUntil = (day: number): number => (Math.sin((2 * Math.PI * day) / 365.25) * 12) / (2 * Math.PI)

export function simulateHorse(random: Random, of: World, id: string): SimulatedHorse {
  const first = addDays('2024-03-01', Math.floor(random.even() * 300))
  const dates = [first]
  while (dates.length < of.visits)
    dates.push(addDays(dates.at(-1) ?? first, 28 + Math.floor(random.even() * 21)))
  const times = dates.map((date) => (dayOf(date) - dayOf(first)) / daysPerMonth)
  const sheets = dates.map(() => ({
    before: {} as Record<string, Record<string, number>>,
    after: {} as Record<string, Record<string, number>>,
  }))
  const truths = new Map<string, Truth>()
  for (const measure of of.measures)
    for (const foot of feet) {
      const { sd, matters, kind, likely } = measures[measure]
      const isMoving = random.even() < of.moving
      const way = random.even() < 0.5 ? -1 : 1
      const slope = isMoving ? way * (matters / 6) * (0.6 + 1.4 * random.even()) : 0
      const growth = walls.includes(measure) ? 8.5 + 2.1 * random.normal() : 0.5 * random.normal()
      truths.set(`${foot} ${measure}`, { slope, growth })
      const e = sd * of.noise * Math.sqrt(differing / random.chiSquared(differing))
      const start = starts[measure] ?? (likely[0] + likely[1]) / 2
      const levels = times.map((time) => start + slope * time + 0.4 * e * random.normal())
      const correlation = of.correlation ?? 0
      let last = random.normal()
      const write = (i: number, stage: 'before' | 'after', level: number) => {
        last = correlation * last + Math.sqrt(1 - correlation ** 2) * random.normal()
        const slip = random.even() < (of.slips ?? 0) ? (random.even() < 0.5 ? -8 : 8) * sd : 0
        if (random.even() < (of.missing ?? 0)) return
        const value = level + e * last + slip
        const grain = of.rounded === true ? (kind === 'angle' ? 0.5 : 1) : 0
        const sheet = sheets[i]?.[stage]
        if (sheet === undefined) return
        sheet[measure] ??= {}
        sheet[measure][foot] = grain === 0 ? value : Math.round(value / grain) * grain
      }
      for (const [i, level] of levels.entries()) {
        if (i === 0) write(0, 'before', level + 6)
        else {
          const gap = (times[i] ?? 0) - (times[i - 1] ?? 0)
          const lent = seasonUntil(dayOf(dates[i] ?? first)) - seasonUntil(dayOf(dates[i - 1] ?? first))
          const grown = growth * (gap + (of.season ?? 0) * lent) + 0.4 * e * Math.sqrt(gap) * random.normal()
          write(i, 'before', (levels[i - 1] ?? 0) + grown)
        }
        write(i, 'after', level)
      }
    }
  const visits = dates.map((date, i): VisitSketch => ({ date, ...sheets[i] }))
  const aims = Object.fromEntries(
    of.measures.flatMap((measure) => {
      const band = targets[measure]
      return band === undefined ? [] : [[measure, everyFoot(band)]]
    }),
  )
  return {
    horse: buildHorse({ id, visits, targets: aims }),
    truth: (foot, measure) => truths.get(`${foot} ${measure}`) ?? { slope: Number.NaN, growth: Number.NaN },
    last: dates.at(-1) ?? first,
  }
}

/** What a practice of these horses has learned long after the last visit of all. */
export const learnedFromAll = (horses: readonly Horse[]): Learned =>
  learnPractice(horses.map((horse) => teachingOf(horse, '2035-01-15'))).learned

/** Each horse of a drawn practice with its assessment on the day after its last visit. */
export function assessedPractice(
  random: Random,
  of: World,
): readonly (SimulatedHorse & { readonly assessment: Assessment })[] {
  const drawn = Array.from({ length: of.horses }, (_, i) => simulateHorse(random, of, `h${i}`))
  const learned = learnedFromAll(drawn.map(({ horse }) => horse))
  return drawn.map((one) => ({
    ...one,
    assessment: assess(one.horse, practice(), addDays(one.last, 1), learned),
  }))
}

/** Counts of what was hoped for or feared, by name. */
export class Tally {
  readonly #counts = new Map<string, { of: number; met: number }>()

  add(name: string, isMet: boolean): void {
    const count = this.#counts.get(name) ?? { of: 0, met: 0 }
    count.of++
    if (isMet) count.met++
    this.#counts.set(name, count)
  }

  count(name: string): { readonly of: number; readonly met: number } {
    return this.#counts.get(name) ?? { of: 0, met: 0 }
  }

  /** In percent; NaN where nothing was counted. */
  share(name: string): number {
    const { of, met } = this.count(name)
    return (100 * met) / of
  }

  toString(): string {
    return [...this.#counts]
      .toSorted(([a], [b]) => a.localeCompare(b))
      .map(([name, { of, met }]) => `${name} ${((100 * met) / of).toFixed(1)} (${of})`)
      .join(', ')
  }
}

const better = ['improving', 'rising']
const worse = ['worsening', 'falling']
const moves = [...better, ...worse]

/** What the assessments of drawn practices say, against the truth. */
export function tallyOf(random: Random, worlds: readonly World[]): Tally {
  const tally = new Tally()
  for (const world of worlds)
    for (const { assessment, truth } of assessedPractice(random, world)) {
      for (const { foot, measure, fit, verdict, isClear, matters, pace, first, last } of assessment.trends) {
        const { slope } = truth(foot, measure as MeasureId)
        const months = Math.min(6, (dayOf(last.date) - dayOf(first.date)) / daysPerMonth)
        if (fit === null || Number.isNaN(slope)) continue
        tally.add('slope in interval', fit.slopeLow <= slope && slope <= fit.slopeHigh)
        tally.add('too early', verdict === 'too early to tell')
        if (slope === 0) {
          tally.add('flat called better', better.includes(verdict))
          tally.add('flat called worse', worse.includes(verdict))
          tally.add('flat called clear', isClear)
          tally.add('flat called a changed pace', pace !== null)
        } else {
          tally.add('moving called moving', moves.includes(verdict))
          tally.add('moving called clear', isClear)
          if (Math.abs(slope) * months > matters)
            tally.add('change that matters called steady', verdict === 'steady')
        }
      }
      for (const { measure, fit } of assessment.together) {
        const slope = feet.reduce((sum, foot) => sum + truth(foot, measure as MeasureId).slope / 4, 0)
        if (fit !== null && !Number.isNaN(slope))
          tally.add('slope of all feet in interval', fit.slopeLow <= slope && slope <= fit.slopeHigh)
      }
      for (const { foot, measure, low, high } of assessment.growth) {
        if (low === null || high === null) continue
        const { growth } = truth(foot, measure)
        tally.add('growth in interval', low <= growth && growth <= high)
      }
    }
  return tally
}
