/** What marked points measure: angles against the ground line, lengths by the scale. */
import { at, between, dot, frameOf, type Marks, mmPerPixel, type PhotoView } from './marks.ts'
import type { AnyMeasureId } from './measures.ts'

/** NaN where a point that it needs is not marked. */
export type Formula = (marks: Marks, scaleLength: number | null) => number
const degrees = 180 / Math.PI

const length =
  (from: string, to: string): Formula =>
  (marks, scaleLength) =>
    Math.hypot(...between(at(marks, from), at(marks, to))) * mmPerPixel(marks, scaleLength)

/** Angle to the ground of a wall that runs up and back. */
const lean =
  (from: string, to: string): Formula =>
  (marks) => {
    const { back, up } = frameOf(marks)
    const wall = between(at(marks, from), at(marks, to))
    return degrees * Math.atan2(dot(wall, up), dot(wall, back))
  }

/** The lower straight part: up to where the new growth ends, if that is marked. */
const toeAngle: Formula = (marks, scaleLength) =>
  lean('toe-at-ground', marks.has('new-growth-ends') ? 'new-growth-ends' : 'toe-at-hairline')(
    marks,
    scaleLength,
  )

/** Either end of the pastern line may be the upper one. */
const pasternAngle: Formula = (marks, scaleLength) => {
  const { up } = frameOf(marks)
  const rises = dot(between(at(marks, 'pastern from'), at(marks, 'pastern to')), up) > 0
  const [low, high] = rises ? ['pastern from', 'pastern to'] : ['pastern to', 'pastern from']
  return lean(low ?? '', high ?? '')(marks, scaleLength)
}

const coronetAngle: Formula = (marks) => {
  const { back, up } = frameOf(marks)
  const hairline = between(at(marks, 'toe-at-hairline'), at(marks, 'heel-at-hairline'))
  return degrees * Math.atan2(-dot(hairline, up), dot(hairline, back))
}

/** Pixels in front of the line through both heels, seen on the sole. */
function inFrontOfHeels(marks: Marks, name: string): number {
  const medial = at(marks, 'heel-medial')
  const line = between(medial, at(marks, 'heel-lateral'))
  const [x, y] = between(medial, at(marks, name))
  return (line[0] * y - line[1] * x) / Math.hypot(...line)
}

const solarBearing: Formula = (marks, scaleLength) =>
  Math.abs(inFrontOfHeels(marks, 'toe')) * mmPerPixel(marks, scaleLength)

const toeShare: Formula = (marks) => 1 - inFrontOfHeels(marks, 'frog-tip') / inFrontOfHeels(marks, 'toe')

/**
 * From behind, the heels lean away from the camera: their heights above the ground are seen, not the lengths of their
 * walls. So the heights are compared, and no heel length is claimed.
 */
const heelBalance: Formula = (marks, scaleLength) => {
  const { up } = frameOf(marks)
  const lateralToMedial = between(at(marks, 'heel-lateral'), at(marks, 'heel-medial'))
  return dot(lateralToMedial, up) * mmPerPixel(marks, scaleLength)
}

const sideFormulas: readonly (readonly [AnyMeasureId, Formula])[] = [
  ['toe-angle', toeAngle],
  ['toe-length', length('toe-at-ground', 'toe-at-hairline')],
  ['new-angle', lean('new-growth-ends', 'toe-at-hairline')],
  ['new-length', length('toe-at-hairline', 'new-growth-ends')],
  ['heel-angle', lean('heel-at-ground', 'heel-at-hairline')],
  ['pastern-angle', pasternAngle],
  ['coronet-angle', coronetAngle],
  ['bearing-length', length('toe-at-ground', 'heel-at-ground')],
]

/** What each view shows. The heel seen from the side is the one on that side. */
export const formulas: Readonly<Record<PhotoView, readonly (readonly [AnyMeasureId, Formula])[]>> = {
  lateral: [...sideFormulas, ['heel-lateral', length('heel-at-ground', 'heel-at-hairline')]],
  medial: [...sideFormulas, ['heel-medial', length('heel-at-ground', 'heel-at-hairline')]],
  solar: [
    ['frog-length', length('frog-tip', 'frog-base')],
    ['width', length('widest-medial', 'widest-lateral')],
    ['bearing-length', solarBearing],
    ['breakover', length('frog-tip', 'breakover')],
    ['toe-share', toeShare],
  ],
  behind: [['heel-balance', heelBalance]],
  front: [],
  other: [],
}

/** A wall that leans the wrong way, a length of nothing, a frog that ends in front of the toe. */
export const canBe = (measure: AnyMeasureId, value: number): boolean => {
  if (!Number.isFinite(value)) return false
  if (measure === 'heel-balance') return true
  const most = measure === 'toe-share' ? 1 : measure.endsWith('-angle') ? 90 : Number.POSITIVE_INFINITY
  return value > 0 && value < most
}
