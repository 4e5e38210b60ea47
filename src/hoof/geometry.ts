/**
 * The hoof capsule seen from the side, as four points and two walls.
 * Origin where the toe meets the ground, x toward the heel, y up. Millimetres and degrees.
 */
export interface CapsuleReadings {
  readonly toeAngle: number
  readonly toeLength: number
  readonly heelAngle: number
  /** Mean of the two heels. */
  readonly heelLength: number
  readonly bearingLength: number
}

type PlanePoint = readonly [x: number, y: number]

export interface CapsuleSide {
  readonly toeHairline: PlanePoint
  readonly heelGround: PlanePoint
  readonly heelHairline: PlanePoint
  /** Hairline to ground, degrees; above 0 where the toe's end is the higher. */
  readonly coronetAngle: number
}

const radians = Math.PI / 180
const degrees = 180 / Math.PI

export function capsuleSide(of: CapsuleReadings): CapsuleSide {
  const toe = of.toeAngle * radians
  const heel = of.heelAngle * radians
  const toeHairline = [of.toeLength * Math.cos(toe), of.toeLength * Math.sin(toe)] as const
  const heelHairline = [
    of.bearingLength + of.heelLength * Math.cos(heel),
    of.heelLength * Math.sin(heel),
  ] as const
  return {
    toeHairline,
    heelGround: [of.bearingLength, 0],
    heelHairline,
    coronetAngle: degrees * Math.atan2(toeHairline[1] - heelHairline[1], heelHairline[0] - toeHairline[0]),
  }
}

/**
 * Standard deviation of the coronet angle that follows from those of the five readings, degrees: first-order
 * propagation through `capsuleSide`.
 */
export function coronetAngleSd(of: CapsuleReadings, sds: CapsuleReadings): number {
  const toe = of.toeAngle * radians
  const heel = of.heelAngle * radians
  const { toeHairline, heelHairline } = capsuleSide(of)
  const across = heelHairline[0] - toeHairline[0]
  const down = toeHairline[1] - heelHairline[1]
  const square = across ** 2 + down ** 2
  // d(angle) = (across d(down) - down d(across)) / square, in radians.
  const turn = (downBy: number, acrossBy: number) => (across * downBy - down * acrossBy) / square
  return Math.hypot(
    // A degree of error in an angle moves its hairline point by length x radians; the two factors of 180 cancel.
    turn(of.toeLength * Math.cos(toe), of.toeLength * Math.sin(toe)) * sds.toeAngle,
    turn(-of.heelLength * Math.cos(heel), -of.heelLength * Math.sin(heel)) * sds.heelAngle,
    turn(Math.sin(toe), -Math.cos(toe)) * sds.toeLength * degrees,
    turn(-Math.sin(heel), Math.cos(heel)) * sds.heelLength * degrees,
    turn(0, 1) * sds.bearingLength * degrees,
  )
}

/**
 * What is left when the ground plane is lowered by `toe` mm at the toe and `heel` mm at the heel (measured straight
 * up from the old ground): the plane turns by atan((toe - heel) / bearing length), and each wall ends where the new
 * plane cuts it. Lowering the toe makes the angles steeper, lowering the heel makes them flatter.
 */
export function lowered(of: CapsuleReadings, toe: number, heel: number): CapsuleReadings {
  const slope = (toe - heel) / of.bearingLength
  const turn = degrees * Math.atan(slope)
  /** Length of wall between the old ground and the new, along the wall. */
  const taken = (by: number, angle: number) =>
    by / (Math.sin(angle * radians) + slope * Math.cos(angle * radians))
  const toeTaken = taken(toe, of.toeAngle)
  const heelTaken = taken(heel, of.heelAngle)
  const from = [
    toeTaken * Math.cos(of.toeAngle * radians),
    toeTaken * Math.sin(of.toeAngle * radians),
  ] as const
  const to = [
    of.bearingLength + heelTaken * Math.cos(of.heelAngle * radians),
    heelTaken * Math.sin(of.heelAngle * radians),
  ] as const
  return {
    toeAngle: of.toeAngle + turn,
    toeLength: of.toeLength - toeTaken,
    heelAngle: of.heelAngle + turn,
    heelLength: of.heelLength - heelTaken,
    bearingLength: Math.hypot(to[0] - from[0], to[1] - from[1]),
  }
}
