/** Glyphs of what is found on sole, frog, bars and bulbs. */
import { type Point, type Stroke, smooth, stroke, through } from './curves.ts'
import { arrow, bow, by, circle, type Glyph, line } from './glyph.ts'

/** Even but not regular: points of the golden angle, in the disc of radius one. */
const scattered = (count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const [radius, turn] = [Math.sqrt((i + 0.5) / count), i * 2.39996]
    return [radius * Math.cos(turn), radius * Math.sin(turn)]
  })

export const dotsAt = (points: readonly Point[]): Stroke[] => points.map((point) => stroke(point, [point]))

export const stain: Glyph = (patch, grade) => {
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
export const rot: Glyph = (patch, grade) => {
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
export const split: Glyph = (patch, grade) => {
  const [from, to, wide] = [by(grade, 0.45, 0.2, 0), by(grade, 1, 1.12, 1.3), by(grade, 0.12, 0.22, 0.36)]
  const aside = [0, 0.14, -0.12, 0.1, -0.08, 0]
  const edge = (side: 1 | -1): Point[] =>
    aside.map((offset, i) =>
      patch.at(from + ((to - from) * i) / 5, 0.5 + offset + side * wide * Math.sin((Math.PI * i) / 5)),
    )
  const [out, back] = [smooth(edge(1)), smooth(edge(-1).reverse())]
  return [{ look: 'gap', strokes: [stroke(out.start, ...out.steps, ...back.steps)], isArea: true }]
}

/** Arrows from both sides, one pair for each grade. */
export const contracted: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) => {
      const d = 0.5 + (i - (grade - 1) / 2) * 0.42
      return [arrow(patch.at(-0.1, d), patch.at(0.16, d), 3), arrow(patch.at(1.1, d), patch.at(0.84, d), 3)]
    }).flat(),
  },
]

export const sheared: Glyph = (patch, grade) => {
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
export const foldedBar: Glyph = (patch, grade) => {
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

export const abscess: Glyph = (patch, grade) => {
  const [at, r] = [patch.at(0.5, 0.55), by(grade, 2.6, 3.6, 5)]
  return [
    { look: 'ringed', strokes: [circle(at, r)], isArea: true },
    { look: 'finding', strokes: [circle(at, 0.5 * r)], isArea: true },
  ]
}

/** An open track: a ring with a slit. */
export const oldAbscess: Glyph = (patch, grade) => {
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

export const puncture: Glyph = (patch, grade) => {
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
export const flakes: Glyph = (patch, grade) => [
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
export const levelLines =
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
export const prolapse: Glyph = (patch, grade) => [
  {
    look: grade === 3 ? 'mark bold' : 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      bow(patch, 0.2 - 0.05 * i, 0.8 + 0.05 * i, (share) => 0.98 - 0.2 * i - 0.5 * Math.sin(Math.PI * share)),
    ),
  },
]

export const ragged: Glyph = (patch, grade) => [
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

export const overgrown: Glyph = (patch, grade) => [
  {
    look: 'mark',
    strokes: Array.from({ length: grade }, (_, i) =>
      [-1, 1].map((side) =>
        line(patch, [0.5 + side * (0.64 + 0.12 * i), 0.1], [0.5 + side * (0.64 + 0.12 * i), 0.95]),
      ),
    ).flat(),
  },
]

export const twisted: Glyph = (patch, grade) => {
  const aside = by(grade, 0.18, 0.32, 0.48)
  const along = Array.from({ length: 9 }, (_, i) =>
    patch.at(0.5 + aside * Math.sin((Math.PI * i) / 4), i / 8),
  )
  return [{ look: grade === 3 ? 'mark bold' : 'mark', strokes: [smooth(along)] }]
}
