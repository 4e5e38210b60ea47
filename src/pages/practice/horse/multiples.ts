/** Small multiples of the problems' measures: a little chart a foot, all feet of a measure on one scale. */
import { feet, pairOf } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import type { TrendChart } from '../../shared/figures.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { measureChart } from '../parts/charts.ts'

/** Measures that are charted on the horse's own page; *All measures* has every one. */
const mostMeasures = 2

export function problemCharts(of: HorseCase): readonly TrendChart[] {
  const { problems, trends } = of.assessment
  const asked = problems.flatMap(({ foot, about, closedOn }) =>
    foot === null || about.kind !== 'measure' || closedOn !== null ? [] : [{ foot, measure: about.measure }],
  )
  const ids: readonly AnyMeasureId[] = [...new Set(asked.map(({ measure }) => measure))]
  return ids
    .flatMap((id) => {
      // The other foot of the pair beside it, to compare.
      const pairs = asked.filter(({ measure }) => measure === id).map(({ foot }) => pairOf(foot))
      const shown = feet.filter((foot) => pairs.includes(pairOf(foot)))
      const chart = measureChart(
        of,
        trends.filter(({ foot, measure }) => measure === id && shown.includes(foot)),
        'small',
      )
      return chart === null ? [] : [chart]
    })
    .slice(0, mostMeasures)
}
