/** Measures of depth, on a cut across the upturned foot with a straight-edge laid over it. */
import { shape } from '../html.ts'
import { ink, inkSoft, latest, paper } from '../ink.ts'
import { curve, dimension, type Point, path } from './svg.ts'

const middle = 110
/** The ground surface, on which the straight-edge lies. */
const surface = 58

const straightEdge = shape('rect', {
  x: 14,
  y: surface - 14,
  width: 192,
  height: 12,
  rx: 2,
  fill: paper,
  stroke: ink,
  'stroke-width': 1.8,
})
const strong = { stroke: latest, 'stroke-width': 3 }

/** Half width and height of the frog, depth and distance of the groove beside it, depth of the cleft in the frog. */
interface Cut {
  readonly frog: number
  readonly frogTop: number
  readonly groove: number
  readonly depth: number
  readonly cleft: number
}

const cuts = {
  apex: { frog: 11, frogTop: 6, groove: 18, depth: 26, cleft: 0 },
  heel: { frog: 30, frogTop: 4, groove: 42, depth: 52, cleft: 0 },
  sulcus: { frog: 36, frogTop: 4, groove: 46, depth: 44, cleft: 40 },
} as const satisfies Record<string, Cut>

export function acrossGroove(where: 'apex' | 'heel'): string {
  const cut = cuts[where]
  const x = middle + cut.groove
  return section(cut) + straightEdge + dimension([x, surface], [x, surface + cut.depth], strong)
}

export const acrossSulcus = (): string =>
  section(cuts.sulcus) +
  straightEdge +
  dimension([middle, surface], [middle, surface + cuts.sulcus.cleft], strong)

/** From the left: wall, sole rising into the groove, frog with its cleft, groove, sole, wall. */
function section({ frog, frogTop, groove, depth, cleft }: Cut): string {
  const at = (x: number, y: number): Point => [middle + x, surface + y]
  const half = (s: 1 | -1): readonly (readonly [Point, Point, Point])[] => [
    [at(s * 86, 12), at(s * 78, 12), at(s * 70, 13)],
    [at(s * (groove + 26), 16), at(s * (groove + 10), depth - 8), at(s * groove, depth)],
    [at(s * (groove - 5), depth), at(s * (frog + 2), frogTop + 16), at(s * frog, frogTop + 5)],
    [at(s * (frog - 3), frogTop), at(s * (frog * 0.6), frogTop), at(s * (frog * 0.35), frogTop)],
    cleft === 0
      ? [at(s * 4, frogTop), at(s * 2, frogTop), at(0, frogTop)]
      : [at(s * 4, frogTop + 2), at(s * 3, cleft - 12), at(0, cleft)],
  ]
  const left = curve(at(-88, 0), ...half(-1))
  const right = curve(at(88, 0), ...half(1))
  const outside = curve(at(-97, 0), [at(-96, 30), at(-92, 62), at(-86, 92)])
  const outsideRight = curve(at(97, 0), [at(96, 30), at(92, 62), at(86, 92)])
  const rims = path(`M${middle - 97} ${surface}H${middle - 88}M${middle + 88} ${surface}H${middle + 97}`, {
    stroke: ink,
    'stroke-width': 2.4,
  })
  return (
    path(left + right, { stroke: ink, 'stroke-width': 2 }) +
    path(outside + outsideRight, { stroke: ink, 'stroke-width': 2 }) +
    rims +
    path(`M${middle - 86} ${surface + 92}H${middle + 86}`, {
      stroke: inkSoft,
      'stroke-width': 1.2,
      'stroke-dasharray': '3 4',
    })
  )
}
