import type { Foot } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { Assessment, FootGeometry, SideView } from '../../trend/assessment.ts'
import type { SideDrawing, SideOutline } from './figures.ts'
import type { OwnerFormatter } from './format.ts'

/** Words that a side drawing needs; each edition has its own. */
export interface SideWords {
  readonly drawingTitle: (foot: string) => string
  readonly drawingCaption: (foot: string) => string
  readonly drawingHead: readonly string[]
  readonly drawingToeAngle: string
  readonly drawingToeLength: string
  readonly drawing: (foot: string, first: string, latest: string) => string
  readonly drawingOnce: (foot: string, first: string) => string
  readonly drawingSays: (length: string, angle: string) => string
}

/** The outline of a foot from the side, first over latest. `label` says when: a date, or a day of the case. */
export function sideDrawing(
  geometry: Pick<FootGeometry, 'foot' | 'first' | 'latest'>,
  format: OwnerFormatter,
  words: SideWords,
  label: (view: SideView, which: 'first' | 'latest') => string,
): SideDrawing {
  const foot = format.foot(geometry.foot)
  const { first, latest } = geometry
  const once = first.visit === latest.visit && first.stage === latest.stage
  const sizes = (view: SideView) =>
    words.drawingSays(format.length(view.toeLength), format.angle(view.toeAngle))
  const row = (name: string, value: (view: SideView) => string) =>
    once ? [name, value(first)] : [name, value(first), value(latest)]
  return {
    kind: 'side',
    id: sideId(geometry.foot),
    foot: geometry.foot,
    title: words.drawingTitle(foot),
    description: once
      ? words.drawingOnce(foot, sizes(first))
      : words.drawing(foot, sizes(first), sizes(latest)),
    table: {
      caption: words.drawingCaption(foot),
      head: once ? words.drawingHead.slice(0, 2) : words.drawingHead,
      rows: [
        row(words.drawingToeLength, (view) => format.length(view.toeLength)),
        row(words.drawingToeAngle, (view) => format.angle(view.toeAngle)),
      ],
    },
    first: outline(first, label(first, 'first'), format),
    latest: once ? null : outline(latest, label(latest, 'latest'), format),
  }
}

/**
 * First and latest outline of a foot, where they show something: its toe clearly became longer, shorter, steeper or
 * flatter, and by more than the error of two readings. Null else: what is smaller than its error is not drawn.
 */
export function movedOutline(
  { geometry, trends }: Pick<Assessment, 'geometry' | 'trends'>,
  foot: Foot,
): FootGeometry | null {
  const found = geometry.find((one) => one.foot === foot)
  if (found === undefined) return null
  const isReal = (measure: MeasureId, of: (side: SideView) => number) =>
    trends.some(
      (trend) =>
        trend.isClear &&
        trend.foot === foot &&
        trend.measure === measure &&
        Math.abs(of(found.latest) - of(found.first)) >= trend.smallestRealChange,
    )
  const shows =
    isReal('toe-angle', ({ toeAngle }) => toeAngle) || isReal('toe-length', ({ toeLength }) => toeLength)
  return shows ? found : null
}

const sideId = (foot: Foot) => `side-${foot.toLowerCase()}`

const outline = (view: SideView, label: string, format: OwnerFormatter): SideOutline => ({
  label,
  toeHairline: view.toeHairline,
  heelHairline: view.heelHairline,
  heelGround: view.heelGround,
  toeAngle: view.toeAngle,
  toeAngleLabel: format.angle(view.toeAngle),
  toeLengthLabel: format.length(view.toeLength),
  assumed: view.assumed.length > 0,
})
