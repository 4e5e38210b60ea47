/** Drawings of a foot, as data: side outline, heels as a level, sole, wall. */
import type { Visit } from '../../../casebook/model.ts'
import { inBand } from '../../../hoof/bands.ts'
import { addDays, daysBetween, daysPerMonth } from '../../../hoof/dates.ts'
import type { Foot } from '../../../hoof/feet.ts'
import { behindMeasures, soleMeasures, wallMeasures } from '../../../hoof/stand-ins.ts'
import type { FootGeometry, GrowOut, NextVisit, Trend } from '../../../trend/assessment.ts'
import type { LevelDrawing, SideDrawing, SoleDrawing, WallDrawing } from '../../shared/figures.ts'
import { footMeasures } from '../../shared/foot-measures.ts'
import { sideDrawing } from '../../shared/side.ts'
import { standInNote } from '../../shared/stand-in-note.ts'
import { footTitle, type HorseCase } from '../case/horse-case.ts'

const idOf = (kind: string, foot: Foot) => `${kind}-${foot.toLowerCase()}`

/** Side outline, first against latest where both are of one stage; title and key say what changed. */
export function sideOf(of: HorseCase, geometry: FootGeometry): SideDrawing {
  const { format, words } = of
  const { latest } = geometry
  const first = geometry.first.stage === latest.stage ? geometry.first : latest
  const drawn = sideDrawing(
    { foot: geometry.foot, first, latest },
    format,
    words.chart.side,
    ({ date }, which) =>
      (which === 'first' ? words.chart.sideFirst : words.chart.sideLatest)(format.shortDate(date)),
  )
  const foot = footTitle(of, geometry.foot)
  const title =
    drawn.latest === null
      ? words.chart.sideTitle(foot, format.length(first.toeLength), format.angle(first.toeAngle))
      : words.chart.sideTitleTwo(
          foot,
          format.length(first.toeLength),
          format.length(latest.toeLength),
          format.angle(first.toeAngle),
          format.angle(latest.toeAngle),
        )
  return { ...drawn, title, description: '', table: null }
}

/** The heels at one reading: balance in mm, medial minus lateral, and tilt in degrees. */
export interface HeelState {
  readonly foot: Foot
  /** Of the visit at which they stood so. */
  readonly visit: string
  readonly balance: number
  readonly tilt: number | null
  readonly within: boolean
}

/** Null where nothing was read, or where the difference may be the error of the reading. Both figures are of one reading. */
export function heelState(trends: readonly Trend[], foot: Foot): HeelState | null {
  const of = (measure: Trend['measure']) =>
    trends.find((trend) => trend.foot === foot && trend.measure === measure)
  const balance = of('heel-balance')
  if (balance === undefined) return null
  const { last, smallestRealChange } = balance
  // What two readings must differ by is √2 times what one must differ from level.
  if (Math.abs(last.value) < smallestRealChange / Math.SQRT2) return null
  const tilt = of('heel-tilt')?.last ?? null
  return {
    foot,
    visit: last.visit,
    balance: last.value,
    tilt: tilt?.visit === last.visit && tilt.stage === last.stage ? tilt.value : null,
    within: balance.target === null || inBand(last.value, balance.target),
  }
}

/** Which heel stands higher, and by how much: `inner heel 3 mm higher`. */
export function heelText({ format, words }: HorseCase, balance: number): string {
  const amount = format.length(Math.abs(balance))
  const side = balance > 0 ? words.visit.sides.medial : words.visit.sides.lateral
  return isZero(amount) ? words.visit.heelsLevel : words.visit.heelHigher(side, amount)
}

const isZero = (text: string): boolean => !/[1-9]/.test(text)

export function levelOf(of: HorseCase, heels: HeelState): LevelDrawing {
  const { format, words } = of
  const measures = footMeasures(of.assessment.readings, heels.foot, heels.visit)
  const foot = footTitle(of, heels.foot)
  const text = heelText(of, heels.balance)
  const title =
    heels.tilt === null || isZero(format.length(heels.balance))
      ? words.visit.levelTitle(foot, text)
      : words.visit.levelTilted(foot, text, format.fine('heel-tilt', Math.abs(heels.tilt)))
  return {
    kind: 'level',
    id: idOf('level', heels.foot),
    foot: heels.foot,
    title,
    description: of.assessment.heldFeet.includes(heels.foot)
      ? `${title}.`
      : `${title}. ${heels.within ? words.visit.levelWithin : words.visit.levelBeyond}`,
    table: null,
    unread: standInNote(
      format,
      behindMeasures(measures).assumed.filter((id) => id === 'width'),
      measures,
    ),
    measures,
    balance: heels.balance,
    balanceLabel: format.length(Math.abs(heels.balance)),
  }
}

/** After every visit's id. */
const lastVisit = '\uffff'

/** The sole with one visit's findings, each by a figure that is explained beside it. */
export function soleOf(of: HorseCase, visit: Visit, foot: Foot): SoleDrawing | null {
  const { words } = of
  const findings = visit.findings.filter((finding) => finding.foot === foot)
  if (findings.length === 0) return null
  const name = footTitle(of, foot)
  const measures = footMeasures(of.assessment.readings, foot, visit.id)
  return {
    kind: 'sole',
    id: idOf('sole', foot),
    foot,
    title: words.visit.soleTitle(name, findings.length),
    description: '',
    table: null,
    unread: standInNote(of.format, soleMeasures(measures).assumed, measures),
    measures,
    marks: findings.map(({ what, place, grade }, i) => ({ what, place, grade, sign: String(i + 1) })),
  }
}

const visitsAhead = 3

/** Where followed features are on the wall now, and where at the next visits. */
export function wallOf(of: HorseCase, foot: Foot, growing: readonly GrowOut[]): WallDrawing | null {
  const here = growing.filter((one) => one.foot === foot && one.state !== 'grown out')
  if (here.length === 0) return null
  const { format, words } = of
  const name = footTitle(of, foot)
  const measures = footMeasures(of.assessment.readings, foot, lastVisit)
  return {
    kind: 'wall',
    id: idOf('wall', foot),
    foot,
    title: words.next.wallTitle(name),
    description: '',
    table: null,
    unread: standInNote(format, wallMeasures(measures).assumed),
    measures,
    features: here.map((one) => ({
      what: one.feature,
      place: one.place,
      label: words.next.wallAt(one.feature, one.place, format.length(atNow(one))),
      at: atNow(one),
      wallLength: one.wallLength,
      ahead: aheadOf(of, one),
    })),
  }
}

/** Where it should be today: no further than the ground. */
export const atNow = ({ expectedNow, wallLength }: GrowOut): number =>
  Math.min(expectedNow, wallLength ?? expectedNow)

/** Where the feature should be at the next visits, as long as it has not reached the ground. */
function aheadOf({ assessment, format, practice }: HorseCase, feature: GrowOut) {
  return nextDates(assessment.nextVisit, assessment.asOf, practice.trimCycleDays)
    .map((date) => ({
      label: format.shortDate(date),
      at: feature.expectedNow + (daysBetween(assessment.asOf, date) / daysPerMonth) * feature.ratePerMonth,
    }))
    .filter(({ at }) => feature.wallLength === null || at <= feature.wallLength)
}

/** The next visits: the one that is due, or today where it is overdue, then one a trim cycle. */
function nextDates({ due }: NextVisit, asOf: string, cycleDays: number): readonly string[] {
  const first = due !== null && due > asOf ? due : asOf
  return Array.from({ length: visitsAhead }, (_, i) => addDays(first, i * cycleDays)).filter(
    (date) => date > asOf,
  )
}
