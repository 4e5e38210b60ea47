import { type Point, through } from './curves.ts'
import { lines, type Sheet, words } from './pens.ts'

/** What a sign in the margin stands for: the place to which a hair leads from it. */
export interface MarginSign {
  readonly sign: string
  readonly at: Point
  readonly side: 'left' | 'right'
}

/** Between two signs, from the edge of the sheet to the middle of one, and to where its hair begins; in its units. */
const step = 76
const inset = 34
const hair = 64

/** Signs in both margins of a sheet, each as high as what it stands for where there is room, none over another. */
export const marginSigns = (sheet: Sheet, signs: readonly MarginSign[], top: number): string =>
  (['left', 'right'] as const).map((side) => column(sheet, signs, side, top)).join('')

function column(sheet: Sheet, signs: readonly MarginSign[], side: MarginSign['side'], top: number): string {
  const { box, scale } = sheet
  const own = signs.filter((one) => one.side === side && one.sign !== '').sort((a, b) => b.at[1] - a.at[1])
  const from = (units: number) => (side === 'left' ? box.left + units / scale : box.right - units / scale)
  let free = top
  return own
    .map(({ sign, at }, i) => {
      const lowest = box.bottom + (25 + (own.length - 1 - i) * step) / scale
      const y = Math.max(Math.min(free, at[1]), lowest)
      free = y - step / scale
      return (
        lines(sheet, 'leader', through([[from(hair), y], at])) +
        words(sheet, [from(inset), y], sign, 'middle', 'figure')
      )
    })
    .join('')
}
