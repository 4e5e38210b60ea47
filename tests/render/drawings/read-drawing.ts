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
      isClosed: /^(m[^m]*z)+$/.test(d),
    })),
    texts: [...svg.matchAll(/<text x="(-?\d+)" y="(-?\d+)"[^>]*>([^<]*)<\/text>/g)].map(
      ([, x, y, text = '']) => ({ at: [Number(x), Number(y)] as const, text }),
    ),
  }
}

/** Every step is relative to the last; `z` goes back to where its subpath began. */
function subpaths(d: string): readonly (readonly Point[])[] {
  const found: Point[][] = []
  let [x, y]: Point = [0, 0]
  for (const [, command = 'm', numbers = ''] of d.matchAll(/([mclhz])([^mclhz]*)/g)) {
    const values = (numbers.match(/-?\d+/g) ?? []).map(Number)
    const pairs = values.flatMap((value, i): Point[] =>
      i % 2 === 0 ? [[x + value, y + (values[i + 1] ?? 0)]] : [],
    )
    const [a, b, c] = pairs
    const points = found.at(-1) ?? []
    if (command === 'm' && a) found.push([a])
    else if (command === 'c' && a && b && c) points.push(...sampled(stroke([x, y], [a, b, c]), 8).slice(1))
    else if (command === 'l' && a) points.push(a)
    const at = command === 'z' ? points[0] : (found.at(-1) ?? []).at(-1)
    ;[x, y] = at ?? [x, y]
  }
  return found
}

export const withLook = ({ paths }: ReadDrawing, look: string): readonly DrawnPath[] =>
  paths.filter((path) => path.look.split(' ').includes(look))
