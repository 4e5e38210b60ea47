/** What a verdict rests on beside what the page says of the measure: a row a number, a column a foot. */
import type { AnyMeasureId } from '../../hoof/measures.ts'
import { standingOf, type Trend } from '../../trend/assessment.ts'
import type { Table } from '../shared/figures.ts'
import { capital } from '../shared/format.ts'
import { footTitle, type HorseCase } from './horse-case.ts'
import type { Fact } from './profile.ts'

/** What a step says of one foot; null where it says nothing of it. */
type Step = readonly [name: string, of: (trend: Trend) => string | null]

/**
 * @param trends those of one measure, one a foot
 * @param isCharted whether all readings stand beside their chart already
 */
export function trendNumbers(
  of: HorseCase,
  measure: AnyMeasureId,
  trends: readonly Trend[],
  isCharted: boolean,
): Table {
  const { format, words } = of
  const readings: readonly Step[] = (isCharted ? [] : visitsOf(trends)).map(({ visit, date }) => [
    format.shortDate(date),
    ({ points }) => {
      const point = points.find((each) => each.visit === visit)
      return point === undefined ? null : format.measure(measure, point.value)
    },
  ])
  const rows = [...readings, seriesStep(of), ...fitSteps(of, measure)]
  return {
    caption: words.trend.numbersOf(capital(format.name(measure))),
    head: [words.trend.step, ...trends.map(({ foot }) => footTitle(of, foot))],
    rows: rows.flatMap(([name, text]) => {
      const cells = trends.map(text)
      return cells.every((cell) => cell === null) ? [] : [[name, ...cells.map((cell) => cell ?? '–')]]
    }),
  }
}

/** Every visit at which any foot was read, in order; there may be two on a day. */
function visitsOf(trends: readonly Trend[]): readonly Trend['points'][number][] {
  const byVisit = new Map(
    trends.flatMap(({ points }) => points.map((point) => [point.visit, point] as const)),
  )
  const order = ({ visit, date }: Trend['points'][number]) => `${date} ${visit}`
  return [...byVisit.values()].sort((a, b) => (order(a) < order(b) ? -1 : 1))
}

function seriesStep({ words }: HorseCase): Step {
  const w = words.trend
  return [w.readings, ({ n, family }) => (family === 'photo' ? w.fromPhotos(n) : String(n))]
}

function fitSteps({ format, words }: HorseCase, measure: AnyMeasureId): readonly Step[] {
  const w = words.trend
  const fine = (value: number) => format.fine(measure, value)
  const between = (low: number, high: number) => format.interval(measure, low, high)
  return [
    [w.change, ({ points, change }) => (points.length > 1 ? format.change(measure, change) : null)],
    [w.smallest, ({ smallestRealChange }) => fine(smallestRealChange)],
    [w.scatter, ({ fit }) => fit && fine(fit.sd)],
    [w.freedom, ({ fit }) => fit && String(fit.freedom)],
    [
      w.leftOut,
      ({ leftOut }) =>
        leftOut.length === 0
          ? null
          : format.list(leftOut.map(({ date, value }) => `${fine(value)} (${format.shortDate(date)})`)),
    ],
    [
      w.level,
      ({ fit }) => {
        if (fit === null) return null
        const { low, high } = fit.levelAtLastInterval
        return w.levelText(fine(fit.levelAtLast), between(low, high))
      },
    ],
  ]
}

/** What these numbers are, and the rule of each verdict that this horse has. */
export function methodOf({ assessment, assessmentWords, words }: HorseCase): readonly Fact[] {
  const { steps, verdictText } = words.trend
  const standings = new Set(assessment.trends.map(standingOf))
  return [
    ...steps.map(([name, text]) => ({ name, text })),
    ...[...standings].map((one) => ({
      name: capital(assessmentWords.standings[one]),
      text: `${verdictText[one]}.`,
    })),
  ]
}
