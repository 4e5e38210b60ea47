import type { Foot } from '../../hoof/feet.ts'
import type { MeasureId } from '../../hoof/measures.ts'
import type { FootMeasures } from '../../hoof/stand-ins.ts'
import type { Assessment, FootGeometry, SideView } from '../../trend/assessment.ts'
import type { SideDrawing, SideOutline, Table } from './figures.ts'
import type { OwnerFormatter } from './format.ts'
import { standInNote } from './stand-in-note.ts'

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

/** A foot from the side, first over latest. `label` says when: a date, or a day of the case. */
export function sideDrawing(
  geometry: Pick<FootGeometry, 'foot' | 'first' | 'latest'>,
  format: OwnerFormatter,
  words: SideWords,
  label: (view: SideView, which: 'first' | 'latest') => string,
): SideDrawing & { readonly table: Table } {
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
    unread: standInNote(format, once ? first.assumed : [...first.assumed, ...latest.assumed]),
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
  measures: measuresOf(view),
  toeAngleLabel: format.angle(view.toeAngle),
  toeLengthLabel: format.length(view.toeLength),
})

/** Without those that stand in for readings. The view knows the mean of the heels. */
function measuresOf(view: SideView): FootMeasures {
  const heel = view.assumed.includes('heel-medial') && view.assumed.includes('heel-lateral')
  return {
    'toe-length': view.toeLength,
    'toe-angle': view.toeAngle,
    'heel-angle': view.assumed.includes('heel-angle') ? undefined : view.heelAngle,
    'heel-medial': heel ? undefined : view.heelLength,
    'heel-lateral': heel ? undefined : view.heelLength,
    'bearing-length': view.assumed.includes('bearing-length') ? undefined : view.bearingLength,
  }
}
