/**
 * How the camera stood to the foot, as told or assumed, and what of that cannot be seen in the points. The figures are
 * what was found with feet of known geometry through a simulated telephone (tests/photos); common practice where people
 * stand, no source.
 */

/** Told in the case file; `yard` where nothing is. */
export type Camera = 'block' | 'yard' | 'flat' | CameraPlace

/** The camera's height over the ground and its distance from the foot, millimetres. */
export interface CameraPlace {
  readonly height: number
  readonly distance: number
}

export interface Stance {
  /** How far the camera looks down, radians: what is known of it, and the root mean square of what is not. */
  readonly down: number
  readonly downSd: number
  /** How far it stands from square on, radians. */
  readonly yawSd: number
  /** From the foot, millimetres, and how far the scale lies out of the foot's plane. */
  readonly distance: number
  readonly scaleDepthSd: number
}

const degree = Math.PI / 180

const held: Readonly<Record<'block' | 'yard' | 'flat', Stance>> = {
  /** By hand: low, some ten degrees from above, the stick beside the foot and not in its plane. */
  yard: { down: 0, downSd: 11 * degree, yawSd: 6 * degree, distance: 900, scaleDepthSd: 38 },
  /** On a block at the foot's height, 0.5 to 0.7 m away, the scale in the foot's plane. */
  block: { down: 0, downSd: 4 * degree, yawSd: 4 * degree, distance: 600, scaleDepthSd: 8 },
  /** A drawing, or a tracing on a scanner: nothing leans. */
  flat: { down: 0, downSd: 0, yawSd: 0, distance: Number.POSITIVE_INFINITY, scaleDepthSd: 0 },
}

/** The middle of a foot over the ground, millimetres. */
const middleHeight = 50

/** @param nearer whether it was told how much nearer the scale lies */
export function stanceOf(camera: Camera, nearer: boolean): Stance {
  const told = nearer ? { scaleDepthSd: 10 } : {}
  if (typeof camera === 'string') return { ...held[camera], ...(camera !== 'flat' && told) }
  const down = Math.atan((camera.height - middleHeight) / camera.distance)
  return { ...held.yard, down, downSd: 3 * degree, distance: camera.distance, ...told }
}

/** A sole is held up by hand: it leans either way, whatever the camera stands on. */
export const soleLeanSd = (camera: Camera): number =>
  camera === 'flat' ? 0 : (camera === 'block' ? 3.5 : 7) * degree

/**
 * How far the heel that is seen from the side lies in front of the plane of the toe, millimetres, and how far from that
 * feet differ; how much nearer or further its hairline lies than its ground edge. Common practice, no source.
 */
export const heelOut = { mean: 37, sd: 8, leanSd: 4 } as const

/** How far beneath the sole's plane a point of it lies, millimetres. The same. */
export const frogDepths: ReadonlyMap<string, number> = new Map([
  ['frog-tip', 9],
  ['frog-base', 4],
  ['breakover', 2],
])

/** Radius of the toe seen from above at the ground and at the hairline, millimetres; how the hairline falls. The same. */
export const toeRound = { ground: 60, hairline: 51, fall: 0.45 } as const
