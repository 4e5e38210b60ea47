/** From a place in a file to what may stand there. */
import { footNamed } from '../../../casebook/by-foot.ts'
import { normal } from '../../../casebook/words.ts'
import type { Foot } from '../../../hoof/feet.ts'
import { horseShape } from './horse.ts'
import { practiceShape } from './practice.ts'
import type { Shape } from './shape.ts'
import { visitShape } from './visit.ts'

export interface Found {
  readonly shape: Shape
  /** The foot under whose name, or in whose turn of a list of four, the place lies. */
  readonly foot: Foot | null
  /** Place in a line that stands in brackets, `[flare, toe, 2]`; 0 elsewhere. */
  readonly part: number
}

/** What a file of a casebook is by its path; null for one in no known place. */
export function shapeOfFile(path: string): Shape | null {
  if (path === 'practice.md') return practiceShape
  if (/^[^/]+\/horse\.md$/.test(path)) return horseShape
  return /^[^/]+\/\d{4}-\d{2}-\d{2}(?:-[b-z])?\.md$/.test(path) ? visitShape : null
}

/** Follows keys and places of lists down from the file; null where they lead nowhere. */
export function findShape(
  from: Shape,
  path: readonly (string | number)[],
  feetOrder: readonly Foot[],
): Found | null {
  let shape: Shape = from
  let foot: Foot | null = null
  let part = 0
  for (const step of path) {
    const at: Foot | null =
      typeof step === 'number' ? (shape.feet ? (feetOrder[step] ?? null) : null) : footNamed(step)
    const next = nextShape(shape, step, at)
    if (!next) return null
    if (at && next === shape.feet) foot = at
    part = typeof step === 'number' && (next.words?.length ?? 0) > 1 ? step : 0
    shape = next
  }
  return { shape, foot, part }
}

function nextShape(shape: Shape, step: string | number, foot: Foot | null): Shape | null {
  if (typeof step === 'number') return shape.items ?? shape.feet ?? null
  const key = Object.keys(shape.keys ?? {}).find(
    (known) => normal(known.replaceAll('-', ' ')) === normal(step.replaceAll('-', ' ')),
  )
  if (key !== undefined) return shape.keys?.[key] ?? null
  if (foot && shape.feet) return shape.feet
  return shape.each ?? null
}
