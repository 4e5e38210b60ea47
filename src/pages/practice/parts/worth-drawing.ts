/** One drawing a foot, of what is worth drawing there: what grows down the wall, or an outline that has clearly changed. */
import { feet } from '../../../hoof/feet.ts'
import type { SideDrawing, WallDrawing } from '../../shared/figures.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { sideOf, wallOf } from './drawings.ts'
import { isTold } from './real.ts'

/** What the side view shows. */
const seenFromTheSide = ['toe-angle', 'toe-length', 'heel-angle', 'bearing-length']

/** Feet with a problem first. */
export function worthDrawing(of: HorseCase): readonly (WallDrawing | SideDrawing)[] {
  const { assessment } = of
  const asked = assessment.problems.flatMap(({ foot, closedOn }) =>
    foot === null || closedOn !== null ? [] : [foot],
  )
  return [...new Set([...asked, ...feet])].flatMap((foot): readonly (WallDrawing | SideDrawing)[] => {
    const view = assessment.geometry.find((one) => one.foot === foot)
    const hasChanged =
      view !== undefined &&
      view.first.stage === view.latest.stage &&
      assessment.trends.some(
        (trend) => trend.foot === foot && seenFromTheSide.includes(trend.measure) && isTold(trend),
      )
    const drawing = hasChanged ? sideOf(of, view) : wallOf(of, foot, assessment.growOut)
    return drawing === null ? [] : [drawing]
  })
}
