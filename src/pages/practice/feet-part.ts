/** "How each foot stands": the four feet as seen from above, the pairs, the heels. */
import { type Foot, feet, pairs } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { type CautionLevel, type PairComparison, standingOf, type Trend } from '../../trend/assessment.ts'
import { cautionLevels, standingCautions } from '../shared/caution-lines.ts'
import type { LevelDrawing, SideDrawing } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { heelSide, heelState, heelText, levelOf, sideOf } from './drawings.ts'
import { findingDate, findingName, gradeName, openFindingsOf } from './findings.ts'
import { footTitle, type HorseCase, type Link, measureLink } from './horse-case.ts'
import { type VerdictView, verdictView } from './trends.ts'

interface FootView {
  readonly id: string
  readonly name: string
  /** The gravest caution in force at this foot, in a word. */
  readonly flag: { readonly level: CautionLevel; readonly text: string } | null
  readonly numbers: readonly FootNumber[]
  readonly findings: string
  readonly side: SideDrawing | null
}

interface FootNumber {
  readonly measure: Link
  readonly value: string
  /** Which heel the value speaks of: `inner heel higher`. */
  readonly side: string | null
  /** `+6° since 12 Jan 26`; null for a first reading. */
  readonly since: string | null
  /** `real`, `within measuring error`, `first reading`. */
  readonly sure: string
  readonly verdict: VerdictView
}

export interface FeetPart {
  readonly feet: readonly FootView[]
  readonly levels: readonly LevelDrawing[]
  readonly pairs: readonly string[]
  readonly lowering: readonly string[]
  readonly hasReadings: boolean
  readonly hasSides: boolean
}

/** Telling numbers in order of telling; the first four that were read anywhere stand at every foot. */
export const telling: readonly AnyMeasureId[] = [
  'toe-angle',
  'toe-length',
  'heel-balance',
  'heel-gap',
  'heel-angle',
  'frog-ratio',
  'sulcus-depth',
  'white-line',
  'width',
]
const shownAtFoot = 4

export function feetPart(of: HorseCase): FeetPart {
  const { trends, geometry } = of.assessment
  const shown = telling.filter((id) => trends.some(({ measure }) => measure === id)).slice(0, shownAtFoot)
  const heels = feet.flatMap((foot) => heelState(trends, foot) ?? [])
  return {
    feet: feet.map((foot) => {
      const view = geometry.find((one) => one.foot === foot)
      return {
        id: foot,
        name: footTitle(of, foot),
        flag: flagOf(of, foot),
        numbers: shown.flatMap((id) => numberOf(of, trends, foot, id)),
        findings: findingsText(of, foot),
        side: view === undefined ? null : sideOf(of, view),
      }
    }),
    levels: heels.map((state) => levelOf(of, state)),
    pairs: pairs.flatMap((pair) => pairTexts(of, latestOfPair(of, pair))),
    lowering: geometry
      .filter(({ foot }) => !of.assessment.heldFeet.includes(foot))
      .map((one) => loweringText(of, one)),
    hasReadings: trends.length > 0,
    hasSides: geometry.length > 0,
  }
}

function flagOf({ assessment, words }: HorseCase, foot: Foot): FootView['flag'] {
  const here = standingCautions(assessment.cautions).filter(
    (caution) => caution.feet.includes(foot) && (caution.foot !== null || caution.level === 'stop'),
  )
  const level = cautionLevels.find((one) => here.some((caution) => caution.level === one))
  return level === undefined ? null : { level, text: words.horse.flagged[level] }
}

function numberOf(
  of: HorseCase,
  trends: readonly Trend[],
  foot: Foot,
  id: AnyMeasureId,
): readonly FootNumber[] {
  const { format, words } = of
  const trend = trends.find((one) => one.foot === foot && one.measure === id)
  if (trend === undefined) return []
  const moved = trend.points.length > 1
  const date = format.shortDate(trend.first.date)
  const last = trend.last.value
  const heels = id === 'heel-balance'
  return [
    {
      measure: measureLink(of, id),
      value: heels ? format.length(Math.abs(last)) : format.measure(id, last),
      side: heels ? heelSide(of, last) : null,
      since: !moved
        ? null
        : heels
          ? words.horse.heelsWere(heelText(of, trend.first.value), date)
          : words.trend.sinceFirst(format.change(id, trend.change), date),
      sure: !moved ? words.trend.firstReading : trend.isClear ? words.trend.isClear : words.trend.isUnclear,
      verdict: verdictView(of, standingOf(trend)),
    },
  ]
}

function findingsText(of: HorseCase, foot: Foot): string {
  const open = openFindingsOf(of).filter((finding) => finding.foot === foot)
  if (open.length === 0) return of.words.horse.noFindings
  return open
    .map((finding) => {
      const date = findingDate(of, finding)
      const grade = gradeName(of, finding.grade)
      return `${capital(findingName(finding))} (${date === null ? grade : of.words.horse.gradeOn(grade, date)})`
    })
    .join('; ')
}

/** The latest readings of both feet of a pair: `after` where both stages were read, one line a measure. */
function latestOfPair({ assessment }: HorseCase, pair: PairComparison['pair']): readonly PairComparison[] {
  const mine = assessment.pairs.filter((one) => one.pair === pair)
  const ids = [...new Set(mine.map(({ measure }) => measure))]
  return ids.flatMap((id) => {
    const last = mine.filter(({ measure }) => measure === id)
    const newest = last.at(-1)?.visit
    const there = last.filter(({ visit }) => visit === newest)
    return there.find(({ stage }) => stage === 'after') ?? there[0] ?? []
  })
}

/** A sentence for each comparison of left and right. */
export const pairTexts = (of: HorseCase, comparisons: readonly PairComparison[]): readonly string[] =>
  comparisons.map(({ pair, measure, left, right, difference, smallestRealDifference, isReal }) => {
    const { format, words } = of
    const sentence = isReal ? words.horse.pairReal : words.horse.pairWithin
    return sentence(
      words.horse.pair[pair],
      format.name(measure),
      format.measure(measure, left),
      format.measure(measure, right),
      format.measure(measure, Math.abs(difference)),
      format.fine(measure, smallestRealDifference),
    )
  })

function loweringText(
  of: HorseCase,
  { foot, perMillimetre }: HorseCase['assessment']['geometry'][number],
): string {
  const { format, words } = of
  const angle = (value: number) => format.fine('toe-angle', value)
  const length = (value: number) => `${value < 0 ? '−' : ''}${Math.abs(value).toFixed(2)} mm`
  return [
    words.horse.geometryToe(
      footTitle(of, foot),
      signed(angle, perMillimetre.toe.angle),
      length(perMillimetre.toe.length),
    ),
    words.horse.geometryHeel(signed(angle, perMillimetre.heel.angle), length(perMillimetre.heel.length)),
  ].join(' ')
}

const signed = (text: (value: number) => string, value: number): string =>
  value > 0 ? `+${text(value)}` : text(value)
