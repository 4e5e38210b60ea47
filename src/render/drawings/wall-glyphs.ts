/** Glyphs of what is found on the wall and the white line. */
import { type Point, type Stroke, stroke, through } from './curves.ts'
import { arrow, bow, by, type Glyph, line } from './glyph.ts'
import type { Patch } from './sole-places.ts'

/** A split across the wall from its edge inwards. */
export const crack: Glyph = (patch, grade) => {
  const reach = by(grade, 0.55, 0.9, 1.35)
  const wide = by(grade, 0.9, 1.5, 2.4) / patch.length
  const zigzag = [0, 0.03, -0.025, 0.02, 0].map((aside) => (aside * 20) / patch.length)
  const edge = (side: 1 | -1): Point[] =>
    zigzag.map((aside, i) => patch.at(0.5 + aside + side * wide * (1 - i / 4), (i / 4) * reach - 0.04))
  const wedge = through([...edge(1), ...edge(-1).reverse()])
  return [{ look: 'finding', strokes: [wedge], isArea: true }]
}

/** The white line opened along a patch of wall, of which it is the inmost part. */
const lens = (patch: Patch, half: number, from = 0.04, to = 0.96): Stroke => {
  const swell = (share: number) => half * Math.sin(Math.PI * share) ** 0.6
  const [out, back] = [
    bow(patch, from, to, (share) => 0.86 - swell(share)),
    bow(patch, to, from, (share) => 0.86 + 0.7 * swell(share)),
  ]
  return stroke(out.start, ...out.steps, ...back.steps)
}

export const separation: Glyph = (patch, grade) => [
  {
    look: 'gap',
    strokes: [lens(patch, by(grade, 0.06, 0.15, 0.28), by(grade, 0.2, 0.1, 0.02), by(grade, 0.8, 0.9, 0.98))],
    isArea: true,
  },
]

export const stretched: Glyph = (patch, grade) => {
  const half = by(grade, 0.14, 0.22, 0.32)
  const rungs = by(grade, 4, 7, 11)
  return [
    { look: 'opened', strokes: [lens(patch, half)], isArea: true },
    {
      look: 'mark',
      strokes: Array.from({ length: rungs }, (_, i) => {
        const s = 0.04 + (0.92 * (i + 0.5)) / rungs
        const swell = half * Math.sin((Math.PI * (i + 0.5)) / rungs) ** 0.6
        return line(patch, [s, 0.86 - swell], [s, 0.86 + 0.7 * swell])
      }),
    },
  ]
}

/** A piece broken out of the edge. */
export const chip: Glyph = (patch, grade) => {
  const [half, deep] = [by(grade, 2.5, 4.5, 7) / patch.length, by(grade, 0.35, 0.55, 0.8)]
  const torn = (
    [
      [-1, -0.16],
      [-0.75, 0.55],
      [-0.3, 0.8],
      [0.1, 1],
      [0.45, 0.7],
      [0.8, 0.5],
      [1, -0.16],
    ] as const
  ).map(([x, y]) => patch.at(0.5 + x * half, y * deep))
  return [
    { look: 'bite', strokes: [through(torn)], isArea: true },
    { look: 'mark', strokes: [through(torn)] },
  ]
}

/** One arc outside the wall for each grade, shorter the farther out. */
export const flare: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      bow(patch, 0.08 + 0.1 * i, 0.92 - 0.1 * i, (share) => -0.14 - 0.24 * (i + Math.sin(Math.PI * share))),
    ),
  },
]

/** One line round the wall for each grade. */
export const ring: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) => bow(patch, 0, 1, () => 0.22 + 0.2 * i)),
  },
]

export const dish: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      bow(patch, 0.15, 0.85, (share) => 0.1 + 0.18 * i + 0.3 * Math.sin(Math.PI * share)),
    ),
  },
]

/** The horn of a heel that leans forward: slanting lines across the wall, and an arrow as far as it has run. */
export const lean: Glyph = (patch, grade) => {
  const run = by(grade, 0.14, 0.22, 0.32)
  const count = 2 + 2 * grade
  return [
    {
      look: 'mark',
      strokes: [
        ...Array.from({ length: count }, (_, i) => {
          const s = 1 - (i * 0.62) / (count - 1)
          return line(patch, [s, 0.08], [s - run, 0.72])
        }),
        arrow(patch.at(1, -0.45), patch.at(0.8 - 1.6 * run, -0.45), 3.2),
      ],
    },
  ]
}

/** A nail's square hole; more of them, and larger, the worse. */
export const holesAt =
  (depth: number): Glyph =>
  (patch, grade) => {
    const half = by(grade, 1, 1.3, 1.7)
    const square = ([x, y]: Point): Stroke =>
      through([
        [x - half, y - half],
        [x + half, y - half],
        [x + half, y + half],
        [x - half, y + half],
      ])
    const places = Array.from({ length: grade }, (_, i) => patch.at((i + 0.5) / grade, depth))
    return [{ look: 'finding', strokes: places.map(square), isArea: true }]
  }

/** Horn that grows inward from the white line. */
export const keratoma: Glyph = (patch, grade) => {
  const [half, deep] = [by(grade, 0.14, 0.2, 0.28), by(grade, 0.4, 0.65, 1)]
  const lump = bow(patch, 0.5 - half, 0.5 + half, (share) => 0.88 + deep * Math.sin(Math.PI * share))
  return [{ look: 'finding', strokes: [lump], isArea: true }]
}
