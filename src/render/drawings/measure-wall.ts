/** Measures of the wall at the heels, seen from behind, and at the quarters, seen from the front: a left foot. */
import { behindMeasures, wallMeasures } from '../../hoof/stand-ins.ts'
import type { FigureWords } from '../figure-words.ts'
import { behindBase } from './behind.ts'
import { behindShape } from './behind-shape.ts'
import { add, endOf } from './curves.ts'
import { lengthMark, type MeasureView, middling } from './measure-marks.ts'
import { lines, sheetFor, words } from './pens.ts'
import { wallBase } from './wall.ts'
import { wallShape } from './wall-shape.ts'

const heels = behindShape(behindMeasures(middling))
const wall = wallShape(wallMeasures({ ...middling, 'toe-length': 72 }))
const behind = sheetFor({ left: -84, right: 84, bottom: -20, top: 104 })
const front = sheetFor({ left: -84, right: 84, bottom: -20, top: 112 })

/** From behind the inner side of a left foot is on the right. */
export function atHeel(side: 'medial' | 'lateral', { inner, outer }: FigureWords): MeasureView {
  const { heel, turn } = heels[side]
  return {
    sheet: behind,
    content:
      behindBase(behind, heels) +
      lines(behind, 'mark', ...lengthMark(heel, endOf(turn))) +
      words(behind, [-54, -15], outer) +
      words(behind, [54, -15], inner),
  }
}

/** From the front it is on the left. */
export function atQuarter(side: 'medial' | 'lateral', { inner, outer }: FigureWords): MeasureView {
  const edge = wall.sides[side]
  const aside = side === 'medial' ? -7 : 7
  return {
    sheet: front,
    content:
      wallBase(front, wall) +
      lines(front, 'mark', ...lengthMark(add(edge.start, aside, 0), add(endOf(edge), aside, 0))) +
      words(front, [-54, -15], inner) +
      words(front, [54, -15], outer),
  }
}
