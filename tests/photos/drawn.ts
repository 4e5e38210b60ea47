/** A drawing as pixels, and what can be found in them. */
import sharp from 'sharp'
import type { Point } from '../../src/hoof/landmarks.ts'

export interface Pixels {
  readonly width: number
  readonly height: number
  /** Whether a pixel has this colour, `#rrggbb`, give or take. */
  has(x: number, y: number, colour: string, by?: number): boolean
}

export async function pixelsOf(bytes: Uint8Array): Promise<Pixels> {
  const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true })
  const { width, height } = info
  return {
    width,
    height,
    has: (x, y, colour, by = 12) => {
      const at = (y * width + x) * 3
      return [1, 3, 5].every((from, i) => {
        const wanted = Number.parseInt(colour.slice(from, from + 2), 16)
        return Math.abs((data[at + i] ?? -99) - wanted) <= by
      })
    },
  }
}

/** Centres of all pixels of a colour, give or take. */
export function pointsOf({ width, height, has }: Pixels, colour: string, by: number): readonly Point[] {
  const found: Point[] = []
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) if (has(x, y, colour, by)) found.push([x + 0.5, y + 0.5])
  }
  return found
}

/** Direction of the best straight line through points, degrees from the x axis, 0 to 180 counted upward. */
export function directionOf(points: readonly Point[]): number {
  const mean = (i: 0 | 1) => points.reduce((sum, point) => sum + point[i], 0) / points.length
  const [mx, my] = [mean(0), mean(1)]
  let [xx, xy, yy] = [0, 0, 0]
  for (const [x, y] of points) {
    xx += (x - mx) ** 2
    xy += (x - mx) * (y - my)
    yy += (y - my) ** 2
  }
  const angle = (-0.5 * Math.atan2(2 * xy, xx - yy) * 180) / Math.PI
  return angle < 0 ? angle + 180 : angle
}
