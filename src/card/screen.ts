/** Whether a card is shown on a screen and not printed: its light comes in a grid, which beats with the camera's. */
import type { Point } from '../hoof/plane.ts'

/** The white of the card between its markers, where nothing is printed, millimetres. */
const [left, right, low, high] = [68, 112, 30, 118]
/** Shades of a white field of paper go up and down by no more than this share of its brightness, in no rhythm. */
const mostSwing = 0.018
const mostRhythm = 0.2

/** @param shade brightness at a place of the card @param pixel pixels of the picture to a millimetre of the card */
export function hasGrid(shade: (at: Point) => number, pixel: number): boolean {
  const step = 1 / pixel
  const columns = Math.min(64, Math.floor((right - left) / step))
  const rows = Math.min(64, Math.floor((high - low) / step))
  const field = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => shade([left + column * step, low + row * step])),
  )
  const mean = field.flat().reduce((sum, value) => sum + value, 0) / (rows * columns)
  const flat = withoutSlope(field)
  const swing =
    Math.sqrt(flat.flat().reduce((sum, value) => sum + value * value, 0) / (rows * columns)) / mean
  const rhythm = Math.max(...ways.map((way) => rhythmOf(flat, way)))
  return swing > mostSwing && rhythm > mostRhythm
}

const ways: readonly Point[] = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
]

/** Each value less the mean of those around it: shadows and the fall of light go. */
function withoutSlope(field: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const reach = 9
  return field.map((row, y) =>
    row.map((value, x) => {
      let [sum, n] = [0, 0]
      for (let dy = -reach; dy <= reach; dy++)
        for (let dx = -reach; dx <= reach; dx++) {
          const other = field[y + dy]?.[x + dx]
          if (other === undefined) continue
          sum += other
          n++
        }
      return value - sum / n
    }),
  )
}

/** How well a field agrees with itself moved along, where it did not agree when moved less far. */
function rhythmOf(field: readonly (readonly number[])[], [dx, dy]: Point): number {
  const agreement = (lag: number) => {
    let [product, square] = [0, 0]
    for (const [y, row] of field.entries())
      for (const [x, one] of row.entries()) {
        const other = field[y + lag * dy]?.[x + lag * dx]
        if (other === undefined) continue
        product += one * other
        square += (one * one + other * other) / 2
      }
    return product / square
  }
  let [deepest, best] = [1, 0]
  for (let lag = 1; lag <= 16; lag++) {
    const now = agreement(lag)
    // A rhythm goes down and comes up again; a shadow or a smear only goes down.
    if (deepest < -0.1) best = Math.max(best, now)
    deepest = Math.min(deepest, now)
  }
  return best
}
