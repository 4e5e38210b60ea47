/**
 * Measures that follow from others, each with its partial derivatives, so that the repeatability and the smallest
 * change that matters of the parts carry over: first-order propagation, the root of the sum of (derivative x error)
 * squared. For a difference that is the root of the sum of squares.
 */
import { type DerivedId, type MeasureId, measures } from '../hoof/measures.ts'
import { mmPerInch, toPounds } from '../hoof/units.ts'

/** A part: a measure of the same foot, of the pair's right foot, or the horse's weight in kilograms. */
export type Part = MeasureId | { readonly rightFoot: MeasureId } | 'weight'

export interface Derivation {
  readonly id: DerivedId
  readonly parts: readonly Part[]
  /** The value; NaN where it cannot be formed. */
  readonly value: (parts: readonly number[]) => number
  /** Writes the partial derivatives at the given parts, in the order of the parts: this is asked for every reading. */
  readonly gradient: (parts: readonly number[], slopes: number[]) => void
}

/** Standard deviation of a weight told by a tape, kg. Common practice, no source. */
export const weightSd = 5

const part = (parts: readonly number[], i: number): number => parts[i] ?? Number.NaN

const degrees = 180 / Math.PI

const difference = (id: DerivedId, from: Part, less: Part): Derivation => ({
  id,
  parts: [from, less],
  value: (parts) => part(parts, 0) - part(parts, 1),
  gradient: (_, slopes) => {
    slopes[0] = 1
    slopes[1] = -1
  },
})

const quotient = (id: DerivedId, top: Part, bottom: Part): Derivation => ({
  id,
  parts: [top, bottom],
  value: (parts) => part(parts, 0) / part(parts, 1),
  gradient: (parts, slopes) => {
    const below = part(parts, 1)
    slopes[0] = 1 / below
    slopes[1] = -part(parts, 0) / (below * below)
  },
})

/** Tilt of the heels in degrees, above 0 where the first is the higher: atan((medial - lateral) / width). */
const tiltOf = (medial: number, lateral: number, width: number): number =>
  degrees * Math.atan((medial - lateral) / width)

/** Weight on the area within the hairline: weight (lb) x 12.56 / girth (in) squared, lb/in2. */
export const loadIndexOf = (girthMm: number, weightKg: number): number =>
  (toPounds(weightKg) * 12.56) / (girthMm / mmPerInch) ** 2

export const derivations: readonly Derivation[] = [
  difference('axis-deviation', 'pastern-angle', 'toe-angle'),
  difference('heel-gap', 'toe-angle', 'heel-angle'),
  difference('heel-balance', 'heel-medial', 'heel-lateral'),
  {
    id: 'heel-tilt',
    parts: ['heel-medial', 'heel-lateral', 'width'],
    value: (parts) => tiltOf(part(parts, 0), part(parts, 1), part(parts, 2)),
    gradient: (parts, slopes) => {
      const gap = part(parts, 0) - part(parts, 1)
      const width = part(parts, 2)
      const square = width ** 2 + gap ** 2
      slopes[0] = (degrees * width) / square
      slopes[1] = (-degrees * width) / square
      slopes[2] = (-degrees * gap) / square
    },
  },
  {
    id: 'toe-to-heel-ratio',
    parts: ['toe-length', 'heel-medial', 'heel-lateral'],
    value: (parts) => part(parts, 0) / ((part(parts, 1) + part(parts, 2)) / 2),
    gradient: (parts, slopes) => {
      const heel = (part(parts, 1) + part(parts, 2)) / 2
      const byHeel = -part(parts, 0) / (2 * heel ** 2)
      slopes[0] = 1 / heel
      slopes[1] = byHeel
      slopes[2] = byHeel
    },
  },
  quotient('frog-ratio', 'frog-width', 'frog-length'),
  difference('pair-mismatch', 'toe-angle', { rightFoot: 'toe-angle' }),
  quotient('toe-share', 'breakover', 'bearing-length'),
  {
    id: 'load-index',
    parts: ['coronet-girth', 'weight'],
    value: (parts) => loadIndexOf(part(parts, 0), part(parts, 1)),
    gradient: (parts, slopes) => {
      const index = loadIndexOf(part(parts, 0), part(parts, 1))
      slopes[0] = (-2 * index) / part(parts, 0)
      slopes[1] = index / part(parts, 1)
    },
  },
]

/**
 * Error of a derived value at the given parts, from an error of each part.
 * @param slopes where the partial derivatives are written
 */
export function propagate(
  derivation: Derivation,
  at: readonly number[],
  errors: readonly number[],
  slopes: number[] = [],
): number {
  derivation.gradient(at, slopes)
  let square = 0
  for (let i = 0; i < at.length; i++) square += ((slopes[i] ?? 0) * (errors[i] ?? 0)) ** 2
  return Math.sqrt(square)
}

/** The measure behind a part; null for the weight. */
export const measureOf = (part: Part): MeasureId | null =>
  part === 'weight' ? null : typeof part === 'string' ? part : part.rightFoot

/** Smallest change that matters of each part; 0 for the weight, whose change is no change of the foot. */
export const partsMatter = (derivation: Derivation): readonly number[] =>
  derivation.parts.map((part) => {
    const id = measureOf(part)
    return id === null ? 0 : measures[id].matters
  })

/** Parts at the middle of their likely ranges: where a derived value was read with no parts beside it. */
export const typicalParts = (derivation: Derivation): readonly number[] =>
  derivation.parts.map((part) => {
    const id = measureOf(part)
    return id === null ? 500 : (measures[id].likely[0] + measures[id].likely[1]) / 2
  })
