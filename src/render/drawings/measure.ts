/** Small drawings of how each measure is taken: a view of a foot, and the measure in a strong line. */
import type { MeasureId } from '../../hoof/measures.ts'
import { isMeasureId } from '../../hoof/measures.ts'
import type { MeasureDrawing } from '../../pages/shared/figures.ts'
import type { FigureWords } from '../figure-words.ts'
import { element } from '../html.ts'
import type { MeasureView } from './measure-marks.ts'
import { acrossGroove, acrossSulcus } from './measure-section.ts'
import * as side from './measure-side.ts'
import * as sole from './measure-sole.ts'
import { atHeel, atQuarter } from './measure-wall.ts'
import { picture } from './pens.ts'

/** The drawing of one measure; empty for a measure that is not drawn. */
export function measureDrawing({ measure, description }: MeasureDrawing, words: FigureWords): string {
  if (!isMeasureId(measure)) return ''
  const { sheet, content } = views[measure](words)
  const drawn = picture(sheet, { 'aria-label': description }, content)
  return element('div', { class: 'drawn measure-drawing' }, drawn)
}

const views: Readonly<Record<MeasureId, (words: FigureWords) => MeasureView>> = {
  'toe-length': side.toeLength,
  'toe-angle': side.toeAngle,
  'new-angle': side.newAngle,
  'new-length': side.newLength,
  'heel-angle': side.heelAngle,
  'pastern-angle': side.pasternAngle,
  'coronet-angle': side.coronetAngle,
  'heel-medial': (words) => atHeel('medial', words),
  'heel-lateral': (words) => atHeel('lateral', words),
  'quarter-medial': (words) => atQuarter('medial', words),
  'quarter-lateral': (words) => atQuarter('lateral', words),
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
