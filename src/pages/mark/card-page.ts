/** The page from which the card is printed, in millimetres. */
import { markerCells } from '../../card/markers.ts'
import { cardHeight, cardWidth, markerCorners, markerIds, markerSide } from '../../hoof/card.ts'
import type { PageView } from '../shared/page.ts'
import type { Words } from '../words/index.ts'

export type Paper = 'A4' | 'letter'

/** Millimetres, upright. */
const papers: Readonly<Record<Paper, readonly [width: number, height: number]>> = {
  A4: [210, 297],
  letter: [215.9, 279.4],
}

/** What every printer leaves free at each side, millimetres: common practice. */
export const margin = 12

export function cardPage(paper: Paper, words: Words): PageView {
  const { card: w } = words
  const [width] = papers[paper]
  const cell = markerSide / 8
  const squares = markerIds.map((id, i) => {
    const [[left, top]] = markerCorners(i as 0 | 1 | 2 | 3)
    const at = { x: left, y: cardHeight - top }
    return {
      ...at,
      side: markerSide,
      cells: markerCells(id).flatMap((row, j) =>
        row.flatMap((isWhite, k) =>
          isWhite ? [{ x: at.x + (k + 1) * cell, y: at.y + (j + 1) * cell, side: cell }] : [],
        ),
      ),
    }
  })
  return {
    path: 'growdown-card.html',
    template: 'mark/card',
    model: {
      lang: words.base.lang,
      w,
      paper,
      margin,
      card: {
        width: cardWidth,
        height: cardHeight,
        middle: cardWidth / 2,
        left: (width - 2 * margin - cardWidth) / 2,
      },
      squares,
    },
  }
}
