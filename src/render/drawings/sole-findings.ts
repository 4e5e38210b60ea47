/**
 * What is found on a foot, drawn as it looks on the sole: a crack is a wedge, separation an opened white line, thrush a
 * ragged dark groove, a bruise a stain of dots. A grade is told by size and by number or density of marks, so that it
 * is seen without colour.
 */
import type { FindingName } from '../../hoof/findings.ts'
import { through } from './curves.ts'
import { type Glyph, line, type Marks } from './glyph.ts'
import { area, lines, type Sheet } from './pens.ts'
import * as sole from './sole-glyphs.ts'
import type { Grade, Patch } from './sole-places.ts'
import * as wall from './wall-glyphs.ts'

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
      { look: 'dots', strokes: sole.dotsAt(dots) },
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
  flare: wall.flare,
  'wall separation': wall.separation,
  'white-line disease': wall.separation,
  'white line stretched': wall.stretched,
  crack: wall.crack,
  chip: wall.chip,
  ring: wall.ring,
  dish: wall.dish,
  bruise: sole.stain,
  'fresh blood': sole.stain,
  'nail hole': wall.holesAt(0.45),
  'nail in white line': wall.holesAt(0.86),
  puncture: sole.puncture,
  abscess: sole.abscess,
  'old abscess': sole.oldAbscess,
  thrush: sole.rot,
  canker: sole.rot,
  'sulcus split': sole.split,
  'contracted heels': sole.contracted,
  'underrun heels': wall.lean,
  'sheared heels': sole.sheared,
  'bar laid over': sole.foldedBar,
  'flat sole': sole.levelLines(false),
  'thin sole': sole.levelLines(true),
  'false sole': sole.flakes,
  'sole prolapse': sole.prolapse,
  'ragged frog': sole.ragged,
  'overgrown frog': sole.overgrown,
  'twisted frog': sole.twisted,
  keratoma: wall.keratoma,
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
