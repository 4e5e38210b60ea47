/** What the form shows of a horse before anything is written. */
import type { Horse, Practice, Stage } from '../casebook/model.ts'
import { daysBetween, daysPerMonth, type PlainDate } from '../hoof/dates.ts'
import type { Foot } from '../hoof/feet.ts'
import type { MeasureId } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { askedAt } from '../trend/asked-readings.ts'
import { type Assessment, type GrowOut, openFindings } from '../trend/assessment.ts'

export interface HorseKnowledge {
  readonly units: LengthUnit
  /** The order in which the practice goes round the horse. */
  readonly feetOrder: readonly Foot[]
  /** Of each measure, foot and stage the last reading that a hand took, in millimetres or degrees. */
  readonly last: readonly LastReading[]
  /** What this horse is read for, in the order of the trade: the rows and feet that `add visit` asks for. */
  readonly asked: Readonly<Record<Stage, readonly AskedMeasure[]>>
  /** Not said to be gone, the worst first. */
  readonly openFindings: readonly OpenFinding[]
  /** Followed down the wall, with `expectedNow`; without those that have grown out. */
  readonly features: readonly GrowOut[]
  /** What the owner was last asked to do. */
  readonly lastCare: readonly string[]
  /** Days between visits: the middle one of this horse's last intervals, else the practice's cycle. */
  readonly usualDays: number
  /** Names of surfaces on which it was seen, the latest first. */
  readonly surfaces: readonly string[]
}

export interface AskedMeasure {
  readonly measure: MeasureId
  readonly of: readonly Foot[]
}

export interface LastReading {
  readonly measure: MeasureId
  readonly foot: Foot
  readonly stage: Stage
  readonly value: number
  readonly date: PlainDate
}

export interface OpenFinding {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  readonly grade: number
  /** Day that last spoke of it. */
  readonly date: PlainDate
}

/** @param assessment of the day of the build */
export function knowledgeOf(horse: Horse, practice: Practice, assessment: Assessment): HorseKnowledge {
  const past = horse.visits.filter(({ date }) => date <= assessment.asOf)
  return {
    units: practice.units,
    feetOrder: practice.feetOrder,
    last: lastReadings(past),
    asked: { before: askedAt('before', horse, past), after: askedAt('after', horse, past) },
    openFindings: openFindings(past)
      .map(({ finding: { foot, what, place, grade }, visit: { date } }) => ({
        foot,
        what,
        place,
        grade,
        date,
      }))
      .toSorted((a, b) => b.grade - a.grade),
    features: assessment.growOut.filter(({ state }) => state !== 'grown out'),
    lastCare: past.findLast(({ care }) => care.length > 0)?.care ?? [],
    usualDays: usualDays(past, practice),
    surfaces: [...new Set(past.toReversed().flatMap(({ comfort }) => Object.keys(comfort.surfaces)))],
  }
}

function lastReadings(past: Horse['visits']): readonly LastReading[] {
  const last = new Map<string, LastReading>()
  for (const { date, readings } of past) {
    for (const { measure, foot, stage, value } of readings)
      last.set(`${measure} ${foot} ${stage}`, { measure, foot, stage, value, date })
  }
  return [...last.values()]
}

/**
 * The same on a later day, with no visit since: what is followed is further down, at most to the end of its wall.
 * @param asOf the day that it was made for
 */
export function knownLater(knowledge: HorseKnowledge, asOf: PlainDate, today: PlainDate): HorseKnowledge {
  const months = Math.max(0, daysBetween(asOf, today)) / daysPerMonth
  return {
    ...knowledge,
    features: knowledge.features.map((one) => ({
      ...one,
      expectedNow: Math.max(
        one.expectedNow,
        Math.min(one.expectedNow + months * one.ratePerMonth, one.wallLength ?? Number.POSITIVE_INFINITY),
      ),
    })),
  }
}

/** Intervals that are looked back on. */
const lastIntervals = 5

function usualDays(past: Horse['visits'], { trimCycleDays }: Practice): number {
  const dates = past.map(({ date }) => date).slice(-lastIntervals - 1)
  const days = dates
    .slice(1)
    .map((date, index) => daysBetween(dates[index] ?? date, date))
    .filter((count) => count > 0)
    .toSorted((a, b) => a - b)
  return days[Math.floor(days.length / 2)] ?? trimCycleDays
}
