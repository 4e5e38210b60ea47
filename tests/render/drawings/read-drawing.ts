/** What stands in a drawing, read back from its SVG. */
import { type Point, sampled, stroke } from '../../../src/render/drawings/curves.ts'

export interface DrawnPath {
  readonly look: string
  /** One list of points a subpath, along its curves. */
  readonly points: readonly (readonly Point[])[]
  readonly isClosed: boolean
}

export interface ReadDrawing {
  readonly width: number
  readonly height: number
  readonly paths: readonly DrawnPath[]
  readonly texts: readonly { readonly at: Point; readonly text: string }[]
}

export function readDrawing(svg: string): ReadDrawing {
  const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(svg) ?? []
  return {
    width: Number(width),
    height: Number(height),
    paths: [...svg.matchAll(/<path class="([^"]*)" d="([^"]*)"\/>/g)].map(([, look = '', d = '']) => ({
      look,
      points: subpaths(d),
      isClosed: /^(M[^M]*Z)+$/.test(d),
    })),
    texts: [...svg.matchAll(/<text x="(-?\d+)" y="(-?\d+)"[^>]*>([^<]*)<\/text>/g)].map(
      ([, x, y, text = '']) => ({ at: [Number(x), Number(y)] as const, text }),
    ),
  }
}

/** `M` is absolute, all else relative, as the program writes it. */
function subpaths(d: string): readonly (readonly Point[])[] {
  return d
    .split('M')
    .slice(1)
    .map((part) => {
      const points: Point[] = []
      for (const [, command = 'M', numbers = ''] of `M${part}`.matchAll(/([MclhZ])([^MclhZ]*)/g)) {
        const values = (numbers.match(/-?\d+/g) ?? []).map(Number)
        const [x, y] = points.at(-1) ?? [0, 0]
        const pairs = values.flatMap((value, i): Point[] =>
          i % 2 === 0 ? [[x + value, y + (values[i + 1] ?? 0)]] : [],
        )
        const [a, b, c] = pairs
        if (command === 'c' && a && b && c) points.push(...sampled(stroke([x, y], [a, b, c]), 8).slice(1))
        else if (command !== 'h') points.push(...pairs)
      }
      return points
    })
}

export const withLook = ({ paths }: ReadDrawing, look: string): readonly DrawnPath[] =>
  paths.filter((path) => path.look.split(' ').includes(look))
