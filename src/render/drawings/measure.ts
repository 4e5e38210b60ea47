/** Small drawings of how each measure is taken: a view of the foot in thin lines, the measure in a strong one. */
import type { MeasureId } from '../../hoof/measures.ts'
import { isMeasureId } from '../../hoof/measures.ts'
import type { MeasureDrawing } from '../../pages/shared/figures.ts'
import type { FigureWords } from '../figure-words.ts'
import { fromBehind, fromFront } from './measure-ends.ts'
import { acrossGroove, acrossSulcus } from './measure-section.ts'
import * as side from './measure-side.ts'
import * as sole from './measure-sole.ts'
import { svg } from './svg.ts'

/** Size of every drawing, in its own units. */
const width = 220
const height = 170

/** The drawing of one measure; empty for a measure that is not drawn. */
export function measureDrawing({ measure, description }: MeasureDrawing, words: FigureWords): string {
  if (!isMeasureId(measure)) return ''
  return svg(width, height, { 'aria-label': description, class: 'measure-drawing' }, views[measure](words))
}

const views: Readonly<Record<MeasureId, (words: FigureWords) => string>> = {
  'toe-length': side.toeLength,
  'toe-angle': side.toeAngle,
  'new-angle': side.newAngle,
  'new-length': side.newLength,
  'heel-angle': side.heelAngle,
  'pastern-angle': side.pasternAngle,
  'coronet-angle': side.coronetAngle,
  'heel-medial': (words) => fromBehind('inner', words),
  'heel-lateral': (words) => fromBehind('outer', words),
  'quarter-medial': (words) => fromFront('inner', words),
  'quarter-lateral': (words) => fromFront('outer', words),
  'bearing-length': sole.bearingLength,
  width: sole.width,
  breakover: sole.breakover,
  'frog-length': sole.frogLength,
  'frog-width': sole.frogWidth,
  'groove-apex': () => acrossGroove('apex'),
  'groove-heel': () => acrossGroove('heel'),
  'sulcus-depth': acrossSulcus,
  'wall-thickness': sole.wallThickness,
  'white-line': sole.whiteLine,
  'coronet-girth': side.coronetGirth,
  'sole-depth': side.soleDepth,
}
