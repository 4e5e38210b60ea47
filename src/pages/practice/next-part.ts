/** "What comes next": the next visit, staged plans and how they were kept, forecasts, what grows out. */
import { feet } from '../../hoof/feet.ts'
import type { Capsule, GrowOut, NewGrowth, PastForecast, Plan } from '../../trend/assessment.ts'
import type { Table, WallDrawing } from '../shared/figures.ts'
import type { Formatter } from '../shared/format.ts'
import { capital } from '../shared/format.ts'
import { wallOf } from './drawings.ts'
import { dateOfVisit, footTitle, type HorseCase, measureHref } from './horse-case.ts'
import { type Fact, heldText } from './profile.ts'
import { forecastSentence } from './trends.ts'

export interface NextPart {
  readonly visit: string
  /** Feet that have no plan, and why. */
  readonly held: readonly string[]
  readonly plans: readonly PlanView[]
  readonly forecasts: readonly { readonly name: string; readonly href: string; readonly text: string }[]
  readonly past: { readonly text: string; readonly table: Table } | null
  readonly growing: readonly GrowOutView[]
  readonly walls: readonly WallDrawing[]
  readonly capsules: Table | null
  readonly newGrowth: readonly string[]
}

interface PlanView {
  readonly foot: string
  readonly sentences: readonly string[]
  readonly steps: Table | null
  readonly kept: Table | null
}

interface GrowOutView {
  readonly name: string
  readonly sentences: readonly string[]
  /** From the sightings to the date, step by step. */
  readonly why: readonly Fact[]
}

export function nextPart(of: HorseCase): NextPart {
  const { assessment, format, words } = of
  return {
    visit: of.assessmentWords.nextVisitSentence(assessment.nextVisit, format),
    held: heldText(of),
    plans: assessment.plans.map((plan) => planView(of, plan)),
    forecasts: assessment.trends
      .filter(({ forecast }) => forecast?.kind === 'date')
      .flatMap((trend) =>
        forecastSentence(of, trend).map((text) => ({
          name: words.horse.changedOf(footTitle(of, trend.foot), format.name(trend.measure)),
          href: measureHref(trend.measure),
          text,
        })),
      ),
    past: pastForecasts(of),
    growing: assessment.growOut.map((one) => growOutView(of, one)),
    walls: feet.flatMap((foot) => wallOf(of, foot, assessment.growOut) ?? []),
    capsules: capsuleTable(of, assessment.capsules),
    newGrowth: assessment.newGrowth.map((one) => newGrowthText(of, one)),
  }
}

function planView(of: HorseCase, plan: Plan): PlanView {
  const { format, words, assessmentWords } = of
  const w = words.next
  const steps = plan.steps.map(({ date, expected }) => [format.date(date), format.length(expected)])
  const kept = plan.kept.map(({ date, expected, actual, standing }) => [
    format.date(date),
    format.length(expected),
    format.measure(plan.measure, actual),
    assessmentWords.planStanding[standing],
  ])
  const name = `${footTitle(of, plan.foot)}, ${format.name(plan.measure)}`
  return {
    foot: footTitle(of, plan.foot),
    sentences: [
      assessmentWords.offSentence(plan, format),
      assessmentWords.planSentence(plan, format),
      w.planStands(assessmentWords.planStanding[plan.standing]),
      w.planCaution,
    ],
    steps: steps.length === 0 ? null : { caption: w.planSteps(name), head: w.planStepsHead, rows: steps },
    kept: kept.length === 0 ? null : { caption: w.planKept(name), head: w.planKeptHead, rows: kept },
  }
}

/** Growth of horn: no sign, since it only goes down the wall. */
const pace = (format: Formatter, perMonth: number) =>
  format.words.base.perMonth(format.fine('toe-length', perMonth))

const range = (format: Formatter, earliest: string, latest: string | null, open: string) =>
  [format.date(earliest), latest === null ? open : format.date(latest)] as const

function pastForecasts(of: HorseCase): NextPart['past'] {
  const { made, held, forecasts } = of.assessment.backtest
  if (made === 0) return null
  const { format, words } = of
  const w = words.horse
  const row = (one: PastForecast) => [
    format.date(dateOfVisit(of, one.madeAt)),
    `${footTitle(of, one.foot)} ${format.name(one.measure)}`,
    format.measure(one.measure, one.edge),
    w.pastRange(...range(format, one.earliest, one.latest, w.pastOpen)),
    one.seenBy === null
      ? w.pastNotSeen(format.date(one.seenAfter))
      : w.pastSeen(format.date(one.seenAfter), format.date(one.seenBy)),
    one.held ? w.yes : w.no,
  ]
  return {
    text: w.pastForecasts(held, made),
    table: { caption: w.pastForecastsWhy, head: w.pastHead, rows: forecasts.map(row) },
  }
}

function growOutView(of: HorseCase, one: GrowOut): GrowOutView {
  const { format, words } = of
  const w = words.next
  const length = (mm: number) => format.length(mm)
  const seen = one.sightings.map(({ distance, date }) => w.sighting(length(distance), format.shortDate(date)))
  const rate = w.rateSays(
    w.featureRate(pace(format, one.ratePerMonth), format.interval('toe-length', one.rateLow, one.rateHigh)),
    w.rateFrom[one.rateFrom],
  )
  const last = one.sightings.at(-1)
  const now =
    last === undefined || one.state === 'grown out'
      ? []
      : [w.featureNow(length(one.expectedNow), format.date(last.date))]
  return {
    name: capital(w.feature(one.feature, format.foot(one.foot), one.place)),
    sentences: [of.assessmentWords.growOutSentence(one, format), ...now],
    why: [
      { name: w.sightingsName, text: format.list(seen) },
      { name: w.rateName, text: rate },
      ...(one.wallLength === null ? [] : [{ name: w.wallName, text: w.wall(length(one.wallLength)) }]),
    ],
  }
}

function capsuleTable(of: HorseCase, capsules: readonly Capsule[]): Table | null {
  if (capsules.length === 0) return null
  const { format, words } = of
  const w = words.next
  return {
    caption: words.horse.capsules,
    head: w.capsuleHead,
    rows: capsules.map((one) => [
      footTitle(of, one.foot),
      w.places[one.place],
      format.length(one.wallLength),
      format.shortDate(one.since),
      pace(format, one.ratePerMonth),
      format.monthOf(one.date),
      words.horse.pastRange(
        format.monthOf(one.earliest),
        one.latest === null ? w.noLimit : format.monthOf(one.latest),
      ),
    ]),
  }
}

function newGrowthText(of: HorseCase, one: NewGrowth): string {
  const { format, words } = of
  const w = words.next
  const angle = format.angle(one.newAngle)
  const said = [w.newAngle(footTitle(of, one.foot), angle, format.length(one.newLength))]
  if (one.toeAngle !== null) said.push(w.newAgainst(format.angle(one.toeAngle)))
  if (one.date === null || one.earliest === null) said.push(w.newNoDate)
  else {
    const [earliest, latest] = range(format, one.earliest, one.latest, '')
    said.push(
      one.latest === null
        ? w.newDateOpen(angle, format.date(one.date), earliest)
        : w.newDate(angle, format.date(one.date), earliest, latest),
    )
  }
  return said.join(' ')
}
