/**
 * Growth of horn as published, and the prior that follows: what is known of the rate before a foot has shown its own.
 * Rates in mm a month of 30.4375 days.
 */
import { daysPerMonth } from './dates.ts'
import type { Evidence } from './evidence.ts'

export interface GrowthPrior {
  readonly mean: number
  readonly sd: number
  readonly evidence: Evidence
}

/**
 * Lungwitz & Adams 1897: 1/6 to 1/2 inch a month, mean 1/3: mean 8.5 mm, and with sd 2.1 the 95 % range is his.
 * Equal at toe, quarter and heel, fore and hind: Kolstrung 2012.
 */
export const adultPrior: GrowthPrior = {
  mean: 8.5,
  sd: 2.1,
  evidence: { mark: 'published', source: 'lungwitz' },
}

/** At six months of age. Foals renew the hoof in 145 days (Curtis 2014). */
export const foalPrior: GrowthPrior = {
  mean: 11.7,
  sd: 2.5,
  evidence: { mark: 'published', source: 'curtis' },
}

const foalYears = 0.5
const grownYears = 1.5

/** What is believed of a wall's growth at an age: a foal's passes into a grown horse's in a straight line. */
export function wallBelief(ageYears: number | null): Pick<GrowthPrior, 'mean' | 'sd'> {
  const grown =
    ageYears === null ? 1 : Math.min(1, Math.max(0, (ageYears - foalYears) / (grownYears - foalYears)))
  const between = (foal: number, adult: number) => foal + grown * (adult - foal)
  return { mean: between(foalPrior.mean, adultPrior.mean), sd: between(foalPrior.sd, adultPrior.sd) }
}

/** Standard deviation of a distance read from the hairline, mm. Common practice, no source. */
export const distanceSd = 1.5

export interface PublishedGrowth {
  readonly evidence: Evidence
  readonly who: string
  /** mm a month; a range where the source gives one. */
  readonly perMonth: readonly [number, number]
  readonly figure: string
}

const inch = 25.4
const perDay = (mm: number) => mm * daysPerMonth

export const publishedGrowth: readonly PublishedGrowth[] = [
  {
    evidence: { mark: 'published', source: 'lungwitz' },
    who: 'horses',
    perMonth: [inch / 6, inch / 2],
    figure: '1/6 to 1/2 inch a month, mean 1/3; hind faster than fore, unshod than shod',
  },
  {
    evidence: { mark: 'published', source: 'kolstrung' },
    who: 'horses',
    perMonth: [perDay(2.1 / 7), perDay(2.1 / 7)],
    figure: '2.1 mm a week, 13 mm in six weeks; equal round the hoof, fore and hind',
  },
  {
    evidence: { mark: 'published', source: 'josseck' },
    who: 'horses',
    perMonth: [perDay(7 / 28), perDay(7 / 28)],
    figure: '7 mm in 28 days; renewal in 11 months',
  },
  {
    evidence: { mark: 'published', source: 'reilly' },
    who: 'ponies',
    perMonth: [30.69 / 5, 35.34 / 5],
    figure: 'toe, 5 months: 30.69 mm without biotin, 35.34 mm with',
  },
  {
    evidence: { mark: 'published', source: 'butlerHintz' },
    who: 'yearling ponies',
    perMonth: [perDay(0.254), perDay(0.384)],
    figure: '0.254 and 0.384 mm a day',
  },
]

/** Months in which a wall is renewed, as published. */
export const publishedRenewal = [
  { evidence: { mark: 'published', source: 'lungwitz' }, place: 'toe', months: [11, 13] },
  { evidence: { mark: 'published', source: 'lungwitz' }, place: 'quarter', months: [6, 8] },
  { evidence: { mark: 'published', source: 'lungwitz' }, place: 'heel', months: [3, 5] },
  { evidence: { mark: 'published', source: 'josseck' }, place: 'toe', months: [11, 11] },
  {
    evidence: { mark: 'published', source: 'curtis' },
    place: 'toe',
    months: [270 / daysPerMonth, 365 / daysPerMonth],
  },
] as const
