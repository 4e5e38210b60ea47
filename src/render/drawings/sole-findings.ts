/**
 * What is found on a foot, drawn as it looks on the sole: a crack is a wedge, separation an opened white line, thrush a
 * ragged dark groove, a bruise a stain of dots. A grade is told by size and by number or density of marks, so that it
 * is seen without colour.
 */
import type { FindingName } from '../../hoof/findings.ts'
import { type Point, type Stroke, smooth, stroke, through } from './curves.ts'
import { area, lines, type Sheet } from './pens.ts'
import type { Grade, Patch } from './sole-places.ts'

/** What one finding leaves on the sheet, in the order of painting. */
type Glyph = (patch: Patch, grade: 1 | 2 | 3) => readonly Marks[]

interface Marks {
  /** A class of the stylesheet. */
  readonly look: string
  readonly strokes: readonly Stroke[]
  readonly isArea?: boolean
}

const by = <T>(grade: 1 | 2 | 3, ...values: readonly [T, T, T]): T => values[(grade - 1) as 0 | 1 | 2]

const line = (patch: Patch, ...places: readonly Point[]): Stroke =>
  through(places.map(([s, d]) => patch.at(s, d)))
const bow = (patch: Patch, from: number, to: number, d: (share: number) => number): Stroke =>
  smooth(Array.from({ length: 5 }, (_, i) => patch.at(from + ((to - from) * i) / 4, d(i / 4))))

/** A split across the wall from its edge inwards. */
const crack: Glyph = (patch, grade) => {
  const reach = by(grade, 0.55, 0.9, 1.35)
  const wide = by(grade, 0.9, 1.5, 2.4) / patch.length
  const zigzag = [0, 0.03, -0.025, 0.02, 0].map((aside) => (aside * 20) / patch.length)
  const edge = (side: 1 | -1): Point[] =>
    zigzag.map((aside, i) => patch.at(0.5 + aside + side * wide * (1 - i / 4), (i / 4) * reach - 0.04))
  const wedge = through([...edge(1), ...edge(-1).reverse()])
  return [{ look: 'finding', strokes: [wedge], isArea: true }]
}

/** The white line opened along the patch; its middle lies at `centre` of the depth of wall and white line. */
const lens = (patch: Patch, half: number, from = 0.04, to = 0.96): Stroke => {
  const swell = (share: number) => half * Math.sin(Math.PI * share) ** 0.6
  const [out, back] = [
    bow(patch, from, to, (share) => 0.86 - swell(share)),
    bow(patch, to, from, (share) => 0.86 + 0.7 * swell(share)),
  ]
  return stroke(out.start, ...out.steps, ...back.steps)
}

const separation: Glyph = (patch, grade) => [
  {
    look: 'gap',
    strokes: [lens(patch, by(grade, 0.06, 0.15, 0.28), by(grade, 0.2, 0.1, 0.02), by(grade, 0.8, 0.9, 0.98))],
    isArea: true,
  },
]

const stretched: Glyph = (patch, grade) => {
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
const chip: Glyph = (patch, grade) => {
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
const flare: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      bow(patch, 0.08 + 0.1 * i, 0.92 - 0.1 * i, (share) => -0.14 - 0.24 * (i + Math.sin(Math.PI * share))),
    ),
  },
]

/** One line round the wall for each grade. */
const ring: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) => bow(patch, 0, 1, () => 0.22 + 0.2 * i)),
  },
]

const dish: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      bow(patch, 0.15, 0.85, (share) => 0.1 + 0.18 * i + 0.3 * Math.sin(Math.PI * share)),
    ),
  },
]

/** Even but not regular: points of the golden angle, in the disc of radius one. */
const scattered = (count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const [radius, turn] = [Math.sqrt((i + 0.5) / count), i * 2.39996]
    return [radius * Math.cos(turn), radius * Math.sin(turn)]
  })

const dotsAt = (points: readonly Point[]): Stroke[] => points.map((point) => stroke(point, [point]))

const stain: Glyph = (patch, grade) => {
  const [half, deep] = [by(grade, 0.24, 0.33, 0.44), by(grade, 0.24, 0.34, 0.46)]
  const at = ([x, y]: Point): Point => patch.at(0.5 + half * x, 0.55 + deep * y)
  return [
    {
      look: by(grade, 'dots', 'dots', 'dots bold'),
      strokes: dotsAt(scattered(by(grade, 9, 20, 34)).map(at)),
    },
  ]
}

/** A ragged dark patch that eats forward from the back of a groove. */
const rot: Glyph = (patch, grade) => {
  const front = by(grade, 0.62, 0.36, 0.08)
  const ragged = [0.5, 0.2, 0.36, 0.08, 0.26, 0.02, 0.18, 0.1]
  const edge = (side: 1 | -1): Point[] =>
    ragged.map((_, i) => {
      const inset = ragged[side === 1 || i === 0 ? i : (i + 3) % ragged.length] ?? 0
      return patch.at(front + ((1 - front) * i) / (ragged.length - 1), 0.5 + side * (0.5 - 0.9 * inset))
    })
  return [{ look: 'gap', strokes: [through([...edge(1), ...edge(-1).reverse()])], isArea: true }]
}

/** A cleft along the middle groove, out between the bulbs when it is worse. */
const split: Glyph = (patch, grade) => {
  const [from, to, wide] = [by(grade, 0.45, 0.2, 0), by(grade, 1, 1.12, 1.3), by(grade, 0.12, 0.22, 0.36)]
  const aside = [0, 0.14, -0.12, 0.1, -0.08, 0]
  const edge = (side: 1 | -1): Point[] =>
    aside.map((offset, i) =>
      patch.at(from + ((to - from) * i) / 5, 0.5 + offset + side * wide * Math.sin((Math.PI * i) / 5)),
    )
  const [out, back] = [smooth(edge(1)), smooth(edge(-1).reverse())]
  return [{ look: 'gap', strokes: [stroke(out.start, ...out.steps, ...back.steps)], isArea: true }]
}

const arrow = (from: Point, to: Point, head: number): Stroke => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy) || 1
  const [ux, uy] = [(dx / length) * head, (dy / length) * head]
  const wing = (side: 1 | -1): Point => [to[0] - ux - side * 0.6 * uy, to[1] - uy + side * 0.6 * ux]
  return stroke(from, [to], [wing(1)], [to], [wing(-1)])
}

/** The horn of a heel that leans forward: slanting lines across the wall, and an arrow as far as it has run. */
const lean: Glyph = (patch, grade) => {
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

/** Arrows from both sides, one pair for each grade. */
const contracted: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) => {
      const d = 0.5 + (i - (grade - 1) / 2) * 0.42
      return [arrow(patch.at(-0.1, d), patch.at(0.16, d), 3), arrow(patch.at(1.1, d), patch.at(0.84, d), 3)]
    }).flat(),
  },
]

const sheared: Glyph = (patch, grade) => {
  const tall = by(grade, 0.5, 0.8, 1.2)
  return [
    {
      look: grade === 3 ? 'mark bold' : 'mark',
      strokes: [
        arrow(patch.at(0.22, 0.5 + tall / 2), patch.at(0.22, 0.5 - tall / 2), 3.4),
        arrow(patch.at(0.78, 0.5 - tall / 2), patch.at(0.78, 0.5 + tall / 2), 3.4),
        line(patch, [0.5, 0.5 - tall], [0.5, 0.5 + tall]),
      ],
    },
  ]
}

/** The bar folded out over the sole. */
const foldedBar: Glyph = (patch, grade) => {
  const over = by(grade, 0.9, 1.5, 2.1)
  const [edge, back] = [
    bow(patch, 0.12, 1, (share) => 0.9 + over * Math.sin(Math.PI * share) ** 0.8),
    bow(patch, 1, 0.12, () => 0.55),
  ]
  const folds = Array.from({ length: 1 + grade }, (_, i) => {
    const s = 0.3 + (0.5 * i) / grade
    return line(patch, [s, 0.8], [s + 0.05, 0.75 + 0.75 * over * Math.sin((Math.PI * (s - 0.12)) / 0.88)])
  })
  return [
    { look: 'flap', strokes: [stroke(edge.start, ...edge.steps, [back.start], ...back.steps)], isArea: true },
    { look: 'mark-hair', strokes: folds },
  ]
}

/** A nail's square hole; more of them, and larger, the worse. */
const holesAt =
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

const circle = ([x, y]: Point, r: number): Stroke => {
  const k = 0.552 * r
  return stroke(
    [x + r, y],
    [
      [x + r, y + k],
      [x + k, y + r],
      [x, y + r],
    ],
    [
      [x - k, y + r],
      [x - r, y + k],
      [x - r, y],
    ],
    [
      [x - r, y - k],
      [x - k, y - r],
      [x, y - r],
    ],
    [
      [x + k, y - r],
      [x + r, y - k],
      [x + r, y],
    ],
  )
}

const abscess: Glyph = (patch, grade) => {
  const [at, r] = [patch.at(0.5, 0.55), by(grade, 2.6, 3.6, 5)]
  return [
    { look: 'ringed', strokes: [circle(at, r)], isArea: true },
    { look: 'finding', strokes: [circle(at, 0.5 * r)], isArea: true },
  ]
}

/** An open track: a ring with a slit. */
const oldAbscess: Glyph = (patch, grade) => {
  const [at, r] = [patch.at(0.5, 0.55), by(grade, 2.2, 3.2, 4.4)]
  return [
    { look: 'ringed', strokes: [circle(at, r)], isArea: true },
    {
      look: 'mark',
      strokes: [
        through([
          [at[0] - 0.5 * r, at[1]],
          [at[0] + 0.5 * r, at[1]],
        ]),
      ],
    },
  ]
}

const puncture: Glyph = (patch, grade) => {
  const [[x, y], r] = [patch.at(0.5, 0.5), by(grade, 3, 4, 5.2)]
  return [
    { look: 'ringed', strokes: [circle([x, y], r)], isArea: true },
    {
      look: 'mark bold',
      strokes: [
        through([
          [x - 1.5 * r, y],
          [x + 1.5 * r, y],
        ]),
        through([
          [x, y - 1.5 * r],
          [x, y + 1.5 * r],
        ]),
      ],
    },
  ]
}

/** Scales of dead horn in rows. */
const flakes: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade + 1 }, (_, row) =>
      Array.from({ length: 3 }, (_, i) => {
        const [s, d] = [0.18 + 0.26 * i + 0.1 * (row % 2), 0.2 + (0.66 * row) / (grade + 1)]
        return stroke(patch.at(s - 0.1, d), [
          patch.at(s - 0.08, d + 0.14),
          patch.at(s + 0.08, d + 0.14),
          patch.at(s + 0.1, d),
        ])
      }),
    ).flat(),
  },
]

/** A sole without its hollow: level lines across it. */
const levelLines =
  (crossed: boolean): Glyph =>
  (patch, grade) => {
    const count = by(grade, 3, 5, 8)
    const rows = Array.from({ length: count }, (_, i) => {
      const d = 0.12 + (0.8 * i) / (count - 1)
      const half = 0.42 - 0.1 * Math.abs(d - 0.5)
      return bow(patch, 0.5 - half, 0.5 + half, () => d)
    })
    const columns = crossed
      ? Array.from({ length: count }, (_, i) => {
          const s = 0.14 + (0.72 * i) / (count - 1)
          return line(patch, [s, 0.1], [s, 0.92])
        })
      : []
    return [{ look: 'mark-hair', strokes: [...rows, ...columns] }]
  }

/** Bulging in front of the frog: crescents, one for each grade. */
const prolapse: Glyph = (patch, grade) => [
  {
    look: grade === 3 ? 'mark bold' : 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      bow(patch, 0.2 - 0.05 * i, 0.8 + 0.05 * i, (share) => 0.98 - 0.2 * i - 0.5 * Math.sin(Math.PI * share)),
    ),
  },
]

const ragged: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: [-1, 1].flatMap((side) =>
      Array.from({ length: 1 + grade }, (_, i) => {
        const d = 0.25 + (0.6 * i) / (1 + grade)
        const s = (aside: number) => 0.5 + side * aside
        return line(patch, [s(0.56), d], [s(0.3), d + 0.05], [s(0.42), d + 0.12], [s(0.22), d + 0.16])
      }),
    ),
  },
]

const overgrown: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      [-1, 1].map((side) =>
        line(patch, [0.5 + side * (0.64 + 0.12 * i), 0.1], [0.5 + side * (0.64 + 0.12 * i), 0.95]),
      ),
    ).flat(),
  },
]

const twisted: Glyph = (patch, grade) => {
  const aside = by(grade, 0.18, 0.32, 0.48)
  const along = Array.from({ length: 9 }, (_, i) =>
    patch.at(0.5 + aside * Math.sin((Math.PI * i) / 4), i / 8),
  )
  return [{ look: grade === 3 ? 'mark bold' : 'mark', strokes: [smooth(along)] }]
}

/** Horn that grows inward from the white line. */
const keratoma: Glyph = (patch, grade) => {
  const [half, deep] = [by(grade, 0.14, 0.2, 0.28), by(grade, 0.4, 0.65, 1)]
  const lump = bow(patch, 0.5 - half, 0.5 + half, (share) => 0.88 + deep * Math.sin(Math.PI * share))
  return [{ look: 'finding', strokes: [lump], isArea: true }]
}

/** What has no shape of its own: dotted, hatched or cross-hatched within a thin rim. */
const hatched: Glyph = (patch, grade) => {
  const rim = through([
    ...Array.from({ length: 9 }, (_, i) => patch.at(i / 8, 0)),
    ...Array.from({ length: 9 }, (_, i) => patch.at(1 - i / 8, 1)),
  ])
  const count = Math.max(4, Math.round(patch.length / 4))
  const sparse = Math.ceil(count / 2)
  if (grade === 1) {
    const dots = Array.from({ length: sparse }, (_, i) => patch.at((i + 0.5) / sparse, 0.35 + 0.3 * (i % 2)))
    return [
      { look: 'rim', strokes: [rim], isArea: true },
      { look: 'dots', strokes: dotsAt(dots) },
    ]
  }
  const slant = (turn: 1 | -1) =>
    Array.from({ length: count }, (_, i) => {
      const s = (i + 0.5) / count
      const lean = (turn * 0.5) / count
      return line(patch, [s - lean, 0.02], [s + lean, 0.98])
    })
  return [
    { look: 'rim', strokes: [rim], isArea: true },
    { look: 'mark-hair', strokes: [...slant(1), ...(grade === 3 ? slant(-1) : [])] },
  ]
}

const glyphs: Readonly<Partial<Record<FindingName, Glyph>>> = {
  flare,
  'wall separation': separation,
  'white-line disease': separation,
  'white line stretched': stretched,
  crack,
  chip,
  ring,
  dish,
  bruise: stain,
  'fresh blood': stain,
  'nail hole': holesAt(0.45),
  'nail in white line': holesAt(0.86),
  puncture,
  abscess,
  'old abscess': oldAbscess,
  thrush: rot,
  canker: rot,
  'sulcus split': split,
  'contracted heels': contracted,
  'underrun heels': lean,
  'sheared heels': sheared,
  'bar laid over': foldedBar,
  'flat sole': levelLines(false),
  'thin sole': levelLines(true),
  'false sole': flakes,
  'sole prolapse': prolapse,
  'ragged frog': ragged,
  'overgrown frog': overgrown,
  'twisted frog': twisted,
  keratoma,
}

interface Found {
  readonly what: string
  readonly place: string
  readonly grade: Grade
}

/** A finding that has resolved: an open rim where it was. */
const resolved = (patch: Patch): readonly Marks[] => [
  { look: 'rim unread', strokes: hatched(patch, 1)[0]?.strokes ?? [], isArea: true },
]

/** All findings of a sole, milder ones first, so that the worst lie on top. */
export function findingMarks(
  sheet: Sheet,
  patchesOf: (place: string) => readonly Patch[],
  findings: readonly Found[],
): string {
  return [...findings]
    .sort((a, b) => a.grade - b.grade)
    .flatMap(({ what, place, grade }) =>
      sitesOf(what, place, patchesOf).flatMap((patch) =>
        grade === 0 ? resolved(patch) : (glyphs[what as FindingName] ?? hatched)(patch, grade),
      ),
    )
    .map(({ look, strokes, isArea = false }) =>
      isArea ? area(sheet, look, ...strokes) : lines(sheet, look, ...strokes),
    )
    .join('')
}

/** Faults of both heels are drawn at the heels, wherever they were written. */
function sitesOf(what: string, place: string, patchesOf: (place: string) => readonly Patch[]) {
  if (what === 'contracted heels' || what === 'sheared heels') return patchesOf('heel bulbs')
  if (what === 'underrun heels' && !place.endsWith(' heel'))
    return [...patchesOf('medial heel'), ...patchesOf('lateral heel')]
  if (what === 'sulcus split') return patchesOf('central sulcus')
  return patchesOf(place)
}
