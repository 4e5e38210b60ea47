/** The trend of each measure at each foot, and at all feet together: line, verdict, position, forecast. */
import type { Horse } from '../casebook/model.ts'
import { dayOf, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { PaceChange, Trend, TrendFit, TrendReading } from './assessed-trend.ts'
import { columnForTrend } from './chosen-column.ts'
import { allMeasures, type Columns } from './columns.ts'
import { discovered } from './discovery.ts'
import { forecastOf } from './forecast.ts'
import { lineOf } from './line.ts'
import { type Course, type FootOrAll, firstVisit, lastVisit, type Place, without } from './model/course.ts'
import { courseOfAllFeet, courseOfFoot, type ReadCourse } from './model/courses.ts'
import { type CourseFit, fitCourse, levelAt, levelSd, readingSd, slopeSd } from './model/fit.ts'
import { type Learned, type LearnedMeasure, learnedOf, scatterFor } from './model/learned.ts'
import { outliersOf } from './model/outliers.ts'
import { withoutSeason } from './model/season.ts'
import { changedPace } from './pace.ts'
import { t975, tBelow } from './student.ts'
import { noTarget, type Target, targetOf } from './targets.ts'
import { fewestMonths, positionAt, positionOf, verdictOf } from './verdict.ts'

/** A course as it was judged: without what no error explains, fitted under what the practice teaches. */
export interface Judged<F extends FootOrAll = FootOrAll> {
  readonly foot: F
  readonly course: ReadCourse
  /** Without the season. */
  readonly even: Course
  /** What is fitted. */
  readonly used: Course
  readonly leftOut: readonly Place[]
  readonly learned: LearnedMeasure
  readonly fit: CourseFit | null
}

export function judge<F extends FootOrAll>(foot: F, course: ReadCourse, learned: Learned): Judged<F> {
  const taught = learnedOf(learned, course.family, course.measure, foot)
  const scatter = scatterFor(taught, course.sd)
  const even = withoutSeason<Course>(course, taught.season)
  const leftOut = outliersOf(even, scatter.variances)
  const used = without(even, leftOut)
  return { foot, course, even, used, leftOut, learned: taught, fit: fitCourse(used, scatter) }
}

/** The one course of each foot and measure that was read, in order of feet, then measures. */
export const judgedFeet = (horse: Horse, columns: Columns, learned: Learned): readonly Judged<Foot>[] =>
  feet.flatMap((foot) =>
    allMeasures.flatMap((measure) => {
      const column = columnForTrend(columns, foot, measure)
      const course =
        column === null ? null : courseOfFoot(horse, columns, column.family, foot, measure, learned.people)
      return course === null ? [] : [judge(foot, course, learned)]
    }),
  )

/** All feet together, where two feet have a course of one family. */
export const judgedTogether = (
  horse: Horse,
  columns: Columns,
  of: readonly Judged<Foot>[],
  learned: Learned,
): readonly Judged<'all'>[] =>
  allMeasures.flatMap((measure) => {
    const family = of.find(({ course }) => course.measure === measure)?.course.family
    const course = family === undefined ? null : courseOfAllFeet(horse, columns, family, measure)
    return course === null ? [] : [judge('all' as const, course, learned)]
  })

interface TrendsOf {
  readonly horse: Horse
  readonly columns: Columns
  readonly heldFeet: readonly Foot[]
  readonly asOf: PlainDate
}

/** Share of false claims among what is told to move clearly. */
export const falseDiscoveries = 0.1

/** Trends of single feet and of all together, with those marked that clearly move. */
export function trendsOf(
  of: TrendsOf,
  single: readonly Judged<Foot>[],
  together: readonly Judged<'all'>[],
): { readonly trends: readonly Trend[]; readonly together: readonly Trend<'all'>[] } {
  const trends = single.flatMap((one) => {
    const target = targetOf(of.horse, one.foot, one.course.measure)
    return trendOf(of, one, target, of.heldFeet.includes(one.foot)) ?? []
  })
  const all = together.flatMap(
    (one) => trendOf(of, one, commonTarget(of.horse, one.course.measure), of.heldFeet.length > 0) ?? [],
  )
  const tested = [...trends, ...all].filter(({ chance }) => chance < 1)
  const found = discovered(
    tested.map(({ chance }) => chance),
    falseDiscoveries,
  )
  const clear = new Set<object>(tested.filter((_, i) => found[i] === true))
  return {
    trends: trends.map((trend) => ({ ...trend, isClear: clear.has(trend) })),
    together: all.map((trend) => ({ ...trend, isClear: clear.has(trend) })),
  }
}

/** The target of all feet together: where it is the same at each. */
function commonTarget(horse: Horse, measure: AnyMeasureId): Target {
  const [first, ...others] = feet.map((foot) => targetOf(horse, foot, measure))
  const same = others.every(({ band }) => band?.low === first?.band?.low && band?.high === first?.band?.high)
  return same && first !== undefined ? first : noTarget
}

function trendOf<F extends FootOrAll>(
  { columns, asOf }: TrendsOf,
  judged: Judged<F>,
  { band, from: targetFrom }: Target,
  isHeld: boolean,
): Omit<Trend<F>, 'isClear'> | null {
  const { course, fit, used, learned } = judged
  const { points, leftOut, n } = readingsOf(judged, columns)
  const [first] = points
  const last = points.at(-1)
  if (first === undefined || last === undefined) return null
  const readFrom = columns.visits[firstVisit(used)]?.date ?? first.date
  const readTo = columns.visits[lastVisit(used)]?.date ?? last.date
  const months = (dayOf(readTo) - dayOf(readFrom)) / daysPerMonth
  const single = Math.hypot(learned.e, learned.u) * course.sd
  const position = fit === null ? positionAt(last.value, single, learned.worth, band) : positionOf(fit, band)
  const from = columns.visits[0]?.date ?? first.date
  return {
    foot: judged.foot,
    measure: course.measure,
    stage: course.stage,
    family: course.family,
    n,
    points,
    leftOut,
    first,
    last,
    change: last.value - first.value,
    smallestRealChange:
      fit === null ? t975(learned.worth) * Math.SQRT2 * single : t975(fit.nu) * Math.SQRT2 * readingSd(fit),
    matters: course.matters,
    fit: fit === null ? null : trendFit(fit, from),
    target: band,
    targetFrom,
    verdict: fit === null ? 'too early to tell' : verdictOf(fit, months, band, course.matters),
    // A foot that waits for a vet is not called well.
    position: isHeld && (position === 'on target' || position === 'near target') ? 'held' : position,
    chance:
      fit === null || months < fewestMonths ? 1 : 2 * tBelow(-Math.abs(fit.slope) / slopeSd(fit), fit.nu),
    // No promise for it either.
    forecast:
      fit === null || isHeld
        ? null
        : forecastOf(
            { fit, slopes: learned.slopes * course.matters, firstDay: dayOf(from), readFrom, readTo, asOf },
            band,
          ),
    pace: paceOf(columns, judged),
  }
}

function readingsOf({ course, used, leftOut }: Judged, { visits }: Columns) {
  const reading = ({ trim, stage }: Place): TrendReading => {
    const visit = visits[stage === 'left' ? trim : trim + 1]
    return {
      visit: visit?.id ?? '',
      date: visit?.date ?? '',
      stage: stage === 'left' ? course.stage : 'before',
      value: course[stage][trim] ?? Number.NaN,
    }
  }
  const points: TrendReading[] = []
  let n = 0
  for (let trim = 0; trim < used.left.length; trim++) {
    if (!Number.isNaN(used.back[trim])) n++
    if (Number.isNaN(used.left[trim])) continue
    n++
    points.push(reading({ trim, stage: 'left' }))
  }
  return { n, points, leftOut: leftOut.map(reading) }
}

function trendFit(fit: CourseFit, from: PlainDate): TrendFit {
  const t = t975(fit.nu)
  const line = lineOf(fit)
  const half = t * slopeSd(fit)
  const level = levelAt(fit, fit.to)
  const around = t * levelSd(fit, fit.to)
  return {
    from,
    level: line.level,
    levelVariance: line.levelVariance,
    covariance: line.covariance,
    slopeVariance: line.slopeVariance,
    slopePerMonth: fit.slope,
    slopeLow: fit.slope - half,
    slopeHigh: fit.slope + half,
    sd: readingSd(fit),
    freedom: fit.nu,
    t,
    levelAtLast: level,
    levelAtLastInterval: { low: level - around, high: level + around },
  }
}

function paceOf({ visits }: Columns, { course, even, learned }: Judged): PaceChange | null {
  const halves = changedPace(even, scatterFor(learned, course.sd))
  if (halves === null) return null
  const { later, earlierPerMonth, laterPerMonth } = halves
  return { sinceVisit: visits[later]?.id ?? '', earlierPerMonth, laterPerMonth }
}

/** The line on a day, and its 95 % interval. */
export function lineOn(fit: TrendFit, date: PlainDate): { value: number; low: number; high: number } {
  const time = (dayOf(date) - dayOf(fit.from)) / daysPerMonth
  const value = fit.level + fit.slopePerMonth * time
  const variance = fit.levelVariance + 2 * time * fit.covariance + time ** 2 * fit.slopeVariance
  const half = fit.t * Math.sqrt(variance)
  return { value, low: value - half, high: value + half }
}
