/** What is said of the course of one measure at one foot, and of the numbers behind it. */
import type { Verdict } from '../../../../trend/assessment.ts'

const readings = (n: number) => (n === 1 ? '1 reading' : `${n} readings`)

export const trend = {
  one: (value: string, date: string) => `One reading so far: ${value}, on ${date}.`,
  real: (first: string, since: string, last: string, change: string, limit: string) =>
    `${first} on ${since}, ${last} now: ${change}. More than measuring error (${limit}), so the change is real.`,
  within: (first: string, since: string, last: string, change: string, limit: string) =>
    `${first} on ${since}, ${last} now: ${change}. Within measuring error (${limit}), so it may be no change at all.`,
  withinYet: (first: string, since: string, last: string, change: string, limit: string) =>
    `${first} on ${since}, ${last} now: ${change}. Those two alone lie within measuring error (${limit}); all readings together say more.`,
  sinceFirst: (change: string, date: string) => `${change} since ${date}`,
  isReal: 'real',
  isWithin: 'within measuring error',
  firstReading: 'first reading',

  why: 'Why the page says this',
  whyReadings: 'Readings used',
  whySource: { gauge: 'by gauge', photo: 'from photos' },
  whyStage: { before: 'before the trim', after: 'after the trim' },
  whySeries: (n: number, stage: string, source: string, list: string) =>
    `${readings(n)}, ${stage}, ${source}: ${list}`,
  whyPoint: (value: string, date: string) => `${value} on ${date}`,
  whyChange: 'Change',
  whyChangeText: (last: string, first: string, change: string) => `${last} − ${first} = ${change}`,
  whySmallest: 'Smallest real change',
  whySmallestText: (limit: string, t: string, s: string) => `${limit} = t × √2 × s = ${t} × 1.414 × ${s}`,
  whySmallestPrior: (limit: string) => `${limit}, from the known scatter of one reading`,
  whyScatter: 'Scatter',
  whyScatterText: (s: string, nu: string, n: number) =>
    `s = ${s}: the scatter of the ${readings(n)} round the line, pooled with the known scatter of this measure, which counts as 10 readings; ν = ${nu} degrees of freedom`,
  whySlope: 'Slope',
  whySlopeText: (rate: string, interval: string, n: number) =>
    `${rate}, 95 % interval ${interval}: least squares through n = ${n}; the interval is b ± t × s / √Sxx`,
  whyLevel: 'Where the line stands',
  whyLevelText: (level: string, interval: string) =>
    `${level} at the last reading, 95 % interval ${interval}`,
  whyMedian: 'Second opinion',
  whyMedianText: (rate: string) => `${rate}: the median of the slopes between every two readings (Theil-Sen)`,
  whyTarget: 'Target',
  whyTargetText: {
    practitioner: 'set by the practitioner',
    default: 'the usual band, since no target is set',
  },
  whyTargetBand: (band: string, from: string) => `${band}, ${from}`,
  whyNoTarget: 'none set',
  whyForecast: 'Forecast',
  whyForecastText: 'where the line crosses the edge of the target, with Fieller’s 95 % interval',
  whyVerdict: 'Verdict',
  whyVerdictText: {
    'on target': 'the last point of the line lies in the target',
    improving: 'the interval of the slope leaves 0 out, and the line moves toward the target',
    worsening: 'the interval of the slope leaves 0 out, and the line moves away from the target',
    steady: 'the interval of the slope holds 0 and leaves out every change that matters',
    rising: 'the interval of the slope leaves 0 out; there is no target to judge it by',
    falling: 'the interval of the slope leaves 0 out; there is no target to judge it by',
    'too early to tell': 'the interval of the slope holds 0, yet a change that matters is not ruled out',
  } satisfies Record<Verdict, string>,
  whyOneReading: 'a line needs two readings on two days',
}
