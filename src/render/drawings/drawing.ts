import type { Drawing } from '../../pages/shared/figures.ts'
import type { FigureWords } from '../figure-words.ts'
import { createLevels } from './level.ts'
import { measureDrawing } from './measure.ts'
import { sideDrawing } from './side.ts'
import { soleDrawing } from './sole.ts'
import { wallDrawing } from './wall.ts'

/** A drawing in its frame; the drawing of a measure stands alone. */
export type Draw = (drawing: Drawing) => string

/** What draws, with the pictures that it has drawn before. */
export function createDrawings(words: FigureWords): Draw {
  const levelDrawing = createLevels(words)
  return (drawing) => {
    switch (drawing.kind) {
      case 'side':
        return sideDrawing(drawing)
      case 'sole':
        return soleDrawing(drawing, words)
      case 'wall':
        return wallDrawing(drawing, words)
      case 'level':
        return levelDrawing(drawing)
      case 'measure':
        return measureDrawing(drawing, words)
    }
  }
}
