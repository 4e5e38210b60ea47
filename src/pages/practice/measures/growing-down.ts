/** What grows down the wall, in full: followed features, new horn, a whole new capsule. */
import type { Capsule, GrowOut, NewGrowth } from '../../../trend/assessment.ts'
import type { Table } from '../../shared/figures.ts'
import type { Formatter } from '../../shared/format.ts'
import { capital } from '../../shared/format.ts'
import { fromToday } from '../case/ahead.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'

export interface GrowOutView {
  readonly name: string
  readonly sentence: string
}

/** Growth of horn: no sign, since it only goes down the wall. */
const pace = (format: Formatter, perMonth: number) =>
  format.words.base.perMonth(format.fine('toe-length', perMonth))

export const growOutView = (of: HorseCase, one: GrowOut): GrowOutView => ({
  name: capital(of.words.next.feature(one.feature, of.format.foot(one.foot), one.place)),
  sentence: of.assessmentWords.growOutSentence(fromToday(one, of.assessment.asOf), of.format),
})

/** From the sightings to the day, a row a feature. */
export function growOutTable(of: HorseCase): Table | null {
  const { format, words, assessment } = of
  const w = words.next
  if (assessment.growOut.length === 0) return null
  return {
    caption: w.growOutSteps,
    head: w.growOutHead,
    rows: assessment.growOut.map((one) => [
      `${one.foot} ${one.feature}, ${one.place}`,
      format.list(
        one.sightings.map(({ distance, date }) =>
          w.sighting(format.length(distance), format.shortDate(date)),
        ),
      ),
      w.featureRate(pace(format, one.ratePerMonth), format.interval('toe-length', one.rateLow, one.rateHigh)),
      w.rateFrom[one.rateFrom],
      one.wallLength === null ? format.words.base.notRead : format.length(one.wallLength),
    ]),
  }
}

export function capsuleTable(of: HorseCase): Table | null {
  const { format, words, assessment } = of
  const { capsules } = assessment
  if (capsules.length === 0) return null
  const w = words.next
  const row = (one: Capsule) => [
    footTitle(of, one.foot),
    w.places[one.place],
    format.length(one.wallLength),
    format.shortDate(one.since),
    pace(format, one.ratePerMonth),
    format.monthOf(one.date),
    words.horse.pastRange(
      format.monthOf(fromToday(one, assessment.asOf).earliest),
      one.latest === null ? w.noLimit : format.monthOf(one.latest),
    ),
  ]
  return { caption: words.horse.capsules, head: w.capsuleHead, rows: capsules.map(row) }
}

/** A strip of which a followed feature at the toe tells as well has its day there: one day for the same horn. */
export function newGrowthText(of: HorseCase, one: NewGrowth): string {
  const { format, words, assessment } = of
  const w = words.next
  const angle = format.angle(one.newAngle)
  const said = [w.newAngle(footTitle(of, one.foot), angle, format.length(one.newLength))]
  if (one.toeAngle !== null) said.push(w.newAgainst(format.angle(one.toeAngle)))
  const isFollowed = assessment.growOut.some(
    ({ foot, place, state }) => foot === one.foot && place === 'toe' && state !== 'grown out',
  )
  if (isFollowed) return said.join(' ')
  const { date, latest } = one
  if (date === null || date <= assessment.asOf)
    said.push(date === null ? w.newNoDate : w.newDue(format.date(date)))
  else if (latest === null) said.push(w.newDateOpen(angle, format.date(date)))
  else said.push(w.newDate(angle, format.date(date), format.date(latest)))
  return said.join(' ')
}
