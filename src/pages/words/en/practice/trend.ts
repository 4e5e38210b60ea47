/** What is said of the course of one measure at one foot, and of the numbers behind it. */
import type { Verdict } from '../../../../trend/assessment.ts'

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
  numbersOf: (measure: string) => `${measure}, from the readings to the verdict`,
  step: 'Step',
  readings: 'Readings used',
  source: { gauge: 'by gauge', photo: 'from photos' },
  stage: { before: 'before the trim', after: 'after the trim' },
  series: (n: number, stage: string, source: string) => `${n}, ${stage}, ${source}`,
  change: 'Change, last less first',
  smallest: 'Smallest real change, t × √2 × s',
  smallestText: (limit: string, t: string, s: string) => `${limit} = ${t} × 1.414 × ${s}`,
  smallestPrior: (limit: string) => `${limit}, from the known scatter of one reading`,
  scatter:
    'Scatter s round the line, pooled with the known scatter of this measure, which counts as 10 readings',
  freedom: 'Degrees of freedom ν',
  freedomText: (nu: string, n: number) => `${nu} = 10 + ${n} − 2`,
  slope: 'Slope b of the line, least squares',
  slopeInterval: 'Its 95 % interval, b ± t × s / √Sxx',
  level: 'Where the line stands at the last reading, with its 95 % interval',
  levelText: (level: string, interval: string) => `${level}, ${interval}`,
  median: 'Second opinion: the median of the slopes between every two readings (Theil-Sen)',
  target: 'Target',
  targetFrom: {
    practitioner: 'set by the practitioner',
    default: 'the usual band, since no target is set',
  },
  targetBand: (band: string, from: string) => `${band}, ${from}`,
  noTarget: 'none set',
  forecast: 'Forecast',
  forecastText: 'where the line crosses the edge of the target, with Fieller’s 95 % interval',
  verdict: 'Verdict',
  verdictText: {
    'on target': 'the last point of the line lies in the target',
    held: 'the last point of the line lies in the target, which is not called so while a vet is waited for',
    improving: 'the interval of the slope leaves 0 out, and the line moves toward the target',
    worsening: 'the interval of the slope leaves 0 out, and the line moves away from the target',
    steady: 'the interval of the slope holds 0 and leaves out every change that matters',
    rising: 'the interval of the slope leaves 0 out; there is no target to judge it by',
    falling: 'the interval of the slope leaves 0 out; there is no target to judge it by',
    'too early to tell': 'the interval of the slope holds 0, yet a change that matters is not ruled out',
  } satisfies Record<Verdict, string>,
  oneReading: 'a line needs two readings on two days',
}
