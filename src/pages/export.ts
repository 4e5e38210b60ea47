/**
 * The machine-readable result: everything the pages are made from, in the shape that the project documents.
 * Values are unrounded; a missing value is null. The JSON Schema comes from the same definition.
 */
import { z } from 'zod'
import { feet } from '../hoof/feet.ts'
import type { AnyMeasureId } from '../hoof/measures.ts'
import {
  type AssessedReading,
  type Assessment,
  cautionCodes,
  type Forecast,
  type Position,
  type Problem,
  type Trend,
  type TrendReading,
  verdicts,
} from '../trend/assessment.ts'
import { allMeasures } from '../trend/columns.ts'
import type { FootOrAll } from '../trend/model/course.ts'
import { learnedOfKey } from '../trend/model/learned.ts'
import type { PracticeLessons } from '../trend/model/practice.ts'
import { literatureSd } from '../trend/scale.ts'
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

const seen = z.strictObject({ date, stage, value })

const forecast = z
  .strictObject({
    date: date.nullable(),
    earliest: date.nullable().describe('never before the last reading'),
    latest: date.nullable().describe('null past 18 months from asOf'),
    notBefore: date
      .nullable()
      .describe('first day of the first month in which it may be reached, where no date can be given'),
  })
  .nullable()

const trend = z.strictObject({
  foot: z.enum([...feet, 'all']),
  measure,
  family: z.enum(['gauge', 'photo']),
  stage: stage.describe(
    'of the readings whose level is followed; those of the other stage tell of growth as well',
  ),
  n: z.int().min(1).describe('readings used, of both stages'),
  leftOut: z.array(seen).describe('readings that no error explains'),
  first: seen,
  last: seen,
  change: maybe.describe('last less first'),
  level: maybe.describe('of the line at the last reading'),
  levelLow: maybe,
  levelHigh: maybe,
  slopePerMonth: maybe.describe('null with fewer than two readings, or all of one day'),
  slopeLow: maybe.describe('95 %'),
  slopeHigh: maybe,
  smallestRealChange: maybe.describe('between two readings of the stage'),
  targetLow: maybe,
  targetHigh: maybe,
  verdict: z.enum(verdicts),
  position: z.enum(['on target', 'near target', 'off target', 'no target']),
  clear: z.boolean().describe('moves, at a false discovery rate of 10 % over the horse'),
  forecast,
})

const growth = z.strictObject({
  foot,
  measure,
  ratePerMonth: maybe,
  low: maybe,
  high: maybe,
  days: z.int().min(0),
  hidden: z
    .enum(['not read on arrival', 'not read after the trim', 'too few readings'])
    .nullable()
    .describe('why there is no rate'),
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
  state: z.enum(['growing down', 'due', 'grown out', 'wall length unknown']),
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

const problem = z.strictObject({
  foot: foot.nullable(),
  from: z.enum(['written', 'chosen']),
  text: z.string().nullable().describe('as written; private'),
  kind: z.enum(['measure', 'finding', 'grow-out', 'words']),
  of: z.string().nullable().describe('the measure, the finding, or what is followed'),
  place: z.string().nullable(),
  first: z.strictObject({ date, value }).nullable().describe('a reading, a grade, or mm from the hairline'),
  last: z.strictObject({ date, value }).nullable(),
  verdict: z.enum(verdicts).nullable(),
  position: z.enum(['on target', 'near target', 'off target', 'no target']).nullable(),
  forecast,
  closedOn: date.nullable(),
})

const learned = z.strictObject({
  measure,
  family: z.enum(['gauge', 'photo']),
  foot: z.enum(['one', 'all']),
  readings: z.int().min(0).describe('that it was learned from'),
  literature: value.describe('repeatability as the literature has it, at the middle of the likely range'),
  e: value.describe('sd of one reading'),
  u: value.describe('sd of what a trim leaves about its line'),
  w: value.describe('sd of growth in a month'),
  freedom: value.describe('degrees of freedom beside a single course'),
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
  problems: z.array(problem).describe('most important first'),
  plans: z.array(plan).describe('none for a foot that a caution holds'),
  heldFeet: z.array(foot).describe('feet without plan or target while a caution that holds the plan stands'),
  checks: z.array(check),
  cautions: z.array(caution).describe('those that stand on asOf'),
})

/** The whole export. Lengths millimetres, angles degrees, rates a month of 30.4375 days. */
export const exportShape = z
  .strictObject({
    format: z.literal('growdown'),
    version: z.literal(2),
    asOf: date,
    learned: z.array(learned).describe('what the practice has taught, from the readings of whole months'),
    horses: z.array(horse),
  })
  .describe(
    'Lengths in millimetres, angles in degrees, rates per month of 30.4375 days; null for a missing value.',
  )

export type Export = z.infer<typeof exportShape>
type ExportedHorse = Export['horses'][number]

/** JSON Schema (draft 2020-12) of the export. */
export const exportSchema = (): object => z.toJSONSchema(exportShape)

/** The export of assessments made for one day, with what they rest on. */
export const exportOf = (
  assessments: readonly Assessment[],
  { lessons }: Pick<PracticeLessons, 'lessons'>,
  asOf: string,
  f: Formatter,
): Export => ({
  format: 'growdown',
  version: 2,
  asOf,
  learned: Object.entries(lessons).map(([key, lesson]) => {
    const { family, measure, isAll } = learnedOfKey(key)
    const literature = literatureSd(measure)
    return {
      measure,
      family,
      foot: isAll ? 'all' : 'one',
      readings: lesson.readings,
      literature,
      e: lesson.e * literature,
      u: lesson.u * literature,
      w: lesson.w * literature,
      freedom: lesson.worth,
    }
  }),
  horses: assessments.map((assessment) => exportHorse(assessment, f)),
})

const units = { length: 'mm', angle: 'deg', ratio: 'ratio', index: 'lb/in2' } as const

const exportHorse = (of: Assessment, f: Formatter): ExportedHorse => ({
  id: of.id,
  name: of.name,
  visits: of.visits.map(dateOfVisit),
  readings: of.readings.map(exportReading),
  trends: [...of.trends, ...of.together].map(exportTrend),
  growth: of.growth.map((one) => ({
    foot: one.foot,
    measure: one.measure,
    ratePerMonth: one.ratePerMonth,
    low: one.low,
    high: one.high,
    days: one.days,
    hidden: one.hidden,
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
  problems: of.problems.map(exportProblem),
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

const exportSeen = ({ date: on, stage: at, value: read }: TrendReading) => ({
  date: on,
  stage: at,
  value: read,
})

const exportPosition = (position: Position): ExportedHorse['trends'][number]['position'] =>
  position === 'held' ? 'no target' : position

function exportForecast(of: Forecast | null): ExportedHorse['trends'][number]['forecast'] {
  if (of?.kind === 'date') return { date: of.date, earliest: of.earliest, latest: of.latest, notBefore: null }
  if (of?.kind === 'not before') return { date: null, earliest: null, latest: null, notBefore: of.month }
  return null
}

function exportTrend(one: Trend<FootOrAll>): ExportedHorse['trends'][number] {
  const { fit, points } = one
  return {
    foot: one.foot,
    measure: one.measure,
    family: one.family,
    stage: one.stage,
    n: one.n,
    leftOut: one.leftOut.map(exportSeen),
    first: exportSeen(one.first),
    last: exportSeen(one.last),
    change: points.length > 1 ? one.change : null,
    level: fit?.levelAtLast ?? null,
    levelLow: fit?.levelAtLastInterval.low ?? null,
    levelHigh: fit?.levelAtLastInterval.high ?? null,
    slopePerMonth: fit?.slopePerMonth ?? null,
    slopeLow: fit?.slopeLow ?? null,
    slopeHigh: fit?.slopeHigh ?? null,
    smallestRealChange: points.length > 1 ? one.smallestRealChange : null,
    targetLow: one.target?.low ?? null,
    targetHigh: one.target?.high ?? null,
    verdict: one.verdict,
    position: exportPosition(one.position),
    clear: one.isClear,
    forecast: exportForecast(one.forecast),
  }
}

function exportProblem({
  foot: at,
  from,
  text,
  about,
  closedOn,
}: Problem): ExportedHorse['problems'][number] {
  const nothing = {
    of: null,
    place: null,
    first: null,
    last: null,
    verdict: null,
    position: null,
    forecast: null,
  }
  const head = { foot: at, from, text, kind: about.kind, ...nothing }
  if (about.kind === 'words') return { ...head, closedOn }
  if (about.kind === 'measure') {
    const { measure: of, trend: course } = about
    if (course === null) return { ...head, of, closedOn }
    const value = ({ date: on, value: read }: TrendReading) => ({ date: on, value: read })
    return {
      ...head,
      of,
      first: value(course.first),
      last: value(course.last),
      verdict: course.verdict,
      position: exportPosition(course.position),
      forecast: exportForecast(course.forecast),
      closedOn,
    }
  }
  const named = { ...head, of: about.what, place: about.place, closedOn }
  const course =
    about.kind === 'finding'
      ? about.course.map(({ date: on, grade }) => ({ date: on, value: grade }))
      : (about.growOut[0]?.sightings ?? []).map(({ date: on, distance }) => ({ date: on, value: distance }))
  const ground = about.kind === 'grow-out' ? (about.growOut[0] ?? null) : null
  return {
    ...named,
    first: course[0] ?? null,
    last: course.at(-1) ?? null,
    forecast:
      ground === null || ground.date === null
        ? null
        : { date: ground.date, earliest: ground.earliest, latest: ground.latest, notBefore: null },
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
