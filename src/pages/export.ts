/**
 * The machine-readable result: everything the pages are made from, in the shape that the project documents.
 * Values are unrounded; a missing value is null. The JSON Schema comes from the same definition.
 */
import { z } from 'zod'
import { feet } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import type { AssessedReading, Assessment, Trend } from '../trend/assessment.ts'
import { cautionCodes } from '../trend/assessment.ts'
import { allMeasures } from '../trend/columns.ts'
import { standingCautions, wordsOf } from './shared/caution-lines.ts'
import { type Formatter, kindOf } from './shared/format.ts'

const date = z.iso.date()
const value = z.number()
const maybe = value.nullable()
const foot = z.enum(feet)
const measure = z.enum(allMeasures as readonly [AnyMeasureId, ...AnyMeasureId[]])
const stage = z.enum(['before', 'after'])
const unit = z.enum(['mm', 'deg', 'ratio', 'lb/in2'])

const reading = z.strictObject({
  date,
  stage,
  foot,
  measure,
  value,
  unit,
  source: z
    .enum(['entered', 'photo', 'derived'])
    .describe('photo includes what is derived from photos alone'),
})

const trend = z.strictObject({
  foot,
  measure,
  stage,
  n: z.int().min(1),
  first: value,
  last: value,
  change: maybe,
  smallestRealChange: maybe,
  slopePerMonth: maybe.describe('over all readings; null with fewer than two, or all on one day'),
  slopeLow: maybe,
  slopeHigh: maybe,
  theilSenPerMonth: maybe,
  targetLow: maybe,
  targetHigh: maybe,
  verdict: z.enum([
    'on target',
    'held',
    'improving',
    'worsening',
    'steady',
    'rising',
    'falling',
    'too early to tell',
  ]),
  forecast: z
    .strictObject({
      date,
      earliest: date,
      latest: date.nullable().describe('null past 18 months from the last reading'),
    })
    .nullable(),
})

const growth = z.strictObject({
  foot,
  measure,
  ratePerMonth: maybe,
  low: maybe,
  high: maybe,
  days: z.int().min(0),
})

const growOut = z.strictObject({
  foot,
  feature: z.string(),
  place: z.string(),
  distance: value,
  wallLength: maybe,
  ratePerMonth: value,
  rateLow: value,
  rateHigh: value,
  date: date.nullable(),
  earliest: date.nullable(),
  latest: date.nullable(),
  state: z.enum(['growing down', 'grown out', 'wall length unknown']),
})

const plan = z.strictObject({
  foot,
  measure: z.enum(['heel-balance', 'toe-length']),
  side: z.enum(['medial', 'lateral', 'toe']),
  now: value.describe('heels: the difference, without its sign'),
  limit: value,
  perTrim: value.describe('most beyond what has grown'),
  trims: z.int(),
  steps: z.array(z.strictObject({ date, expected: value })),
  next: z
    .strictObject({
      grown: value.describe('expected since the reading'),
      grownFrom: z.enum(['measured', 'published']),
      step: value,
      total: value.describe('off the toe, or off the higher heel'),
      careFrom: maybe.describe('set where the total passes what asks for care at one trim'),
      leaves: value,
    })
    .describe('the next trim in plain amounts'),
})

const check = z.strictObject({
  kind: z.string(),
  foot: foot.nullable(),
  date: date.nullable(),
  message: z.string(),
})

const caution = z.strictObject({
  code: z.enum(cautionCodes),
  level: z.enum(['stop', 'vet', 'mind']),
  foot: foot.nullable(),
  feet: z.array(foot).describe('every foot that it is about'),
  since: date,
  date: date.describe('last spoken of'),
  silentVisits: z.int().min(0).describe('visits since that did not speak of it'),
  holdsPlan: z.boolean(),
  message: z.string(),
})

const horse = z.strictObject({
  id: z.string(),
  name: z.string(),
  visits: z.array(date).describe('a day with two visits stands twice'),
  readings: z.array(reading),
  trends: z.array(trend),
  growth: z.array(growth),
  growOut: z.array(growOut),
  plans: z.array(plan).describe('none for a foot that a caution holds'),
  heldFeet: z.array(foot).describe('feet without plan or target while a caution that holds the plan stands'),
  checks: z.array(check),
  cautions: z.array(caution).describe('those that stand on asOf'),
})

/** The whole export. Lengths millimetres, angles degrees, rates a month of 30.4375 days. */
export const exportShape = z
  .strictObject({
    format: z.literal('growdown'),
    version: z.literal(1),
    asOf: date,
    horses: z.array(horse),
  })
  .describe(
    'Lengths in millimetres, angles in degrees, rates per month of 30.4375 days; null for a missing value.',
  )

export type Export = z.infer<typeof exportShape>
type ExportedHorse = Export['horses'][number]

/** JSON Schema (draft 2020-12) of the export. */
export const exportSchema = (): object => z.toJSONSchema(exportShape)

/** The export of assessments made for one day. */
export const exportOf = (assessments: readonly Assessment[], asOf: string, f: Formatter): Export => ({
  format: 'growdown',
  version: 1,
  asOf,
  horses: assessments.map((assessment) => exportHorse(assessment, f)),
})

const units = { length: 'mm', angle: 'deg', ratio: 'ratio', index: 'lb/in2' } as const

const exportHorse = (of: Assessment, f: Formatter): ExportedHorse => ({
  id: of.id,
  name: of.name,
  visits: of.visits.map(dateOfVisit),
  readings: of.readings.map(exportReading),
  trends: of.trends.map(exportTrend),
  growth: of.growth.map((one) => ({
    foot: one.foot,
    measure: one.measure,
    ratePerMonth: one.ratePerMonth,
    low: one.low,
    high: one.high,
    days: one.days,
  })),
  growOut: of.growOut.map((one) => ({
    foot: one.foot,
    feature: one.feature,
    place: one.place,
    distance: one.distance,
    wallLength: one.wallLength,
    ratePerMonth: one.ratePerMonth,
    rateLow: one.rateLow,
    rateHigh: one.rateHigh,
    date: one.date,
    earliest: one.earliest,
    latest: one.latest,
    state: one.state,
  })),
  plans: of.plans.map((one) => ({
    foot: one.foot,
    measure: one.measure,
    side: one.side,
    now: one.now,
    limit: one.limit,
    perTrim: one.perTrim,
    trims: one.trims,
    steps: one.steps.map((step) => ({ date: step.date, expected: step.expected })),
    next: one.next,
  })),
  heldFeet: [...of.heldFeet],
  checks: of.checks.map((one) => ({
    kind: one.kind,
    foot: one.foot,
    date: one.date,
    message: f.words.assessment.checkSentence(one, f),
  })),
  cautions: standingCautions(of.cautions).map((caution) => ({
    code: caution.code,
    level: caution.level,
    foot: caution.foot,
    feet: [...caution.feet],
    since: caution.since,
    date: caution.date,
    silentVisits: caution.silentVisits,
    holdsPlan: caution.holdsPlan,
    message: f.words.assessment.cautionAlone(wordsOf(f, caution).practice(caution.facts, f), caution.level),
  })),
})

const dateOfVisit = (visit: string): string => visit.slice(0, 10)

const exportReading = (one: AssessedReading): ExportedHorse['readings'][number] => ({
  date: one.date,
  stage: one.stage,
  foot: one.foot,
  measure: one.measure,
  value: one.value,
  unit: units[kindOf(one.measure)],
  source: one.source,
})

function exportTrend(one: Trend): ExportedHorse['trends'][number] {
  const { whole, forecast } = one
  const several = one.n > 1
  return {
    foot: one.foot,
    measure: one.measure,
    stage: one.stage,
    n: one.n,
    first: one.first,
    last: one.last,
    change: several ? one.change : null,
    smallestRealChange: several ? one.smallestRealChange : null,
    slopePerMonth: whole?.slopePerMonth ?? null,
    slopeLow: whole?.slopeLow ?? null,
    slopeHigh: whole?.slopeHigh ?? null,
    theilSenPerMonth: whole?.theilSenPerMonth ?? null,
    targetLow: one.target?.low ?? null,
    targetHigh: one.target?.high ?? null,
    verdict: one.verdict,
    forecast:
      forecast?.kind === 'date'
        ? { date: forecast.date, earliest: forecast.earliest, latest: forecast.latest }
        : null,
  }
}

/** Header of the readings as a long table. */
export const readingColumns = [
  'horse',
  'visit',
  'date',
  'stage',
  'foot',
  'measure',
  'value',
  'unit',
  'source',
] as const

/** One row a reading, in the order of `readingColumns`; values unrounded, in the units they name. */
export const readingRows = (assessments: readonly Assessment[]): readonly (readonly (string | number)[])[] =>
  assessments.flatMap(({ id, readings }) =>
    readings.map((one) => [
      id,
      one.visit,
      one.date,
      one.stage,
      one.foot,
      one.measure,
      one.value,
      units[kindOf(one.measure)],
      one.source,
    ]),
  )
