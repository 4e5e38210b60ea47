/** Measures of depth, on a cut across the upturned foot with a straight-edge laid over it. */
import { joined, mirrored, type Point, reversed, type Stroke, stroke, through } from './curves.ts'
import { lengthMark, type MeasureView } from './measure-marks.ts'
import { area, lines, sheetFor } from './pens.ts'

/** The ground surface, on which the straight-edge lies, is at 0; the foot hangs below it. */
const sheet = sheetFor({ left: -84, right: 84, bottom: -92, top: 22 })

/** Half width and top of the frog, depth and distance of the groove beside it, depth of the cleft in the frog. */
interface Cut {
  readonly frog: number
  readonly frogTop: number
  readonly groove: number
  readonly depth: number
  readonly cleft: number
}

const cuts = {
  apex: { frog: 8, frogTop: 5, groove: 14, depth: 20, cleft: 0 },
  heel: { frog: 22, frogTop: 3, groove: 32, depth: 40, cleft: 0 },
  sulcus: { frog: 27, frogTop: 3, groove: 35, depth: 34, cleft: 30 },
} as const satisfies Record<string, Cut>

export function acrossGroove(where: 'apex' | 'heel'): MeasureView {
  const { groove, depth } = cuts[where]
  return section(cuts[where], lengthMark([groove, 0], [groove, -depth]))
}

export const acrossSulcus = (): MeasureView =>
  section(cuts.sulcus, lengthMark([0, 0], [0, -cuts.sulcus.cleft]))

/** From the wall over the sole into the groove, and up the frog to its middle; the right half. */
function surface({ frog, frogTop, groove, depth, cleft }: Cut): Stroke {
  return stroke(
    [74, 0],
    [[67, 0]],
    [
      [65, -9],
      [59, -9],
      [53, -10],
    ],
    [
      [groove + 19, -13],
      [groove + 7, -depth + 6],
      [groove, -depth],
    ],
    [
      [groove - 4, -depth],
      [frog + 1.5, -frogTop - 12],
      [frog, -frogTop - 4],
    ],
    [
      [frog - 2, -frogTop],
      [frog * 0.6, -frogTop],
      [frog * 0.35, -frogTop],
    ],
    cleft === 0
      ? [
          [3, -frogTop],
          [1.5, -frogTop],
          [0, -frogTop],
        ]
      : [
          [3, -frogTop - 2],
          [2.4, -cleft + 9],
          [0, -cleft],
        ],
  )
}

const outside = stroke(
  [74, 0],
  [
    [73, -24],
    [70, -52],
    [66, -80],
  ],
)
const edge: readonly Point[] = [
  [-78, 1],
  [78, 1],
  [78, 10],
  [-78, 10],
]

function section(cut: Cut, marks: readonly Stroke[]): MeasureView {
  const right = surface(cut)
  const across = joined(mirrored(right), reversed(right))
  const sides = [outside, mirrored(outside)]
  const body = joined(reversed(mirrored(outside)), across, outside)
  return {
    sheet,
    content:
      area(sheet, 'sole', body) +
      lines(
        sheet,
        'hair',
        through([
          [-66, -80],
          [66, -80],
        ]),
      ) +
      lines(sheet, 'outline', across, ...sides) +
      area(sheet, 'flat', through(edge)) +
      lines(sheet, 'mark', ...marks),
  }
}
