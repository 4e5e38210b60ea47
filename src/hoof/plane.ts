/** A flat thing seen in perspective: from pixels to its own millimetres, and where the camera stood. */

export type Point = readonly [x: number, y: number]
export type Quad = readonly [Point, Point, Point, Point]

/** A place in space before a plane, millimetres: x to the right and y up in the plane, z out of it. */
export type Place = readonly [x: number, y: number, z: number]

/** Three rows of three. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number]

/** From the unit square (0 0, 1 0, 1 1, 0 1) onto four corners (Heckbert 1989, Fundamentals of texture mapping, 2.2). */
export function ontoQuad([[x0, y0], [x1, y1], [x2, y2], [x3, y3]]: Quad): Homography {
  const [sx, sy] = [x0 - x1 + x2 - x3, y0 - y1 + y2 - y3]
  const [dx1, dy1, dx2, dy2] = [x1 - x2, y1 - y2, x3 - x2, y3 - y2]
  const det = dx1 * dy2 - dx2 * dy1
  const g = (sx * dy2 - dx2 * sy) / det
  const h = (dx1 * sy - sx * dy1) / det
  return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1]
}

export function inverseOf([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ]
}

export function through([a, b, c, d, e, f, g, h, i]: Homography, [x, y]: Point): Point {
  const w = g * x + h * y + i
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w]
}

/** The product: first `second`, then `first`. */
export function after(first: Homography, second: Homography): Homography {
  const cell = (row: number, column: number) =>
    [0, 1, 2].reduce((sum, k) => sum + (first[3 * row + k] ?? 0) * (second[3 * k + column] ?? 0), 0)
  return [
    cell(0, 0),
    cell(0, 1),
    cell(0, 2),
    cell(1, 0),
    cell(1, 1),
    cell(1, 2),
    cell(2, 0),
    cell(2, 1),
    cell(2, 2),
  ]
}

/** The homography that takes points of a plane to points of a picture with the least squared error; null below four pairs. */
export function fitted(pairs: readonly (readonly [from: Point, to: Point])[]): Homography | null {
  if (pairs.length < 4) return null
  const [normal, back] = [normalising(pairs.map(([from]) => from)), normalising(pairs.map(([, to]) => to))]
  const square = Array.from({ length: 8 }, () => new Array<number>(9).fill(0))
  for (const [from, to] of pairs) {
    const [x, y] = through(normal, from)
    const [u, v] = through(back, to)
    for (const row of [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ])
      for (let i = 0; i < 8; i++)
        for (let j = 0; j < 9; j++)
          (square[i] ?? [])[j] = (square[i]?.[j] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0)
  }
  const solved = solve(square)
  if (solved === null) return null
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = solved
  return after(inverseOf(back), after([a, b, c, d, e, f, g, h, 1], normal))
}

/** Moves points about their middle and to a mean distance of 1, without which the squares lose their figures. */
function normalising(points: readonly Point[]): Homography {
  const mean = (i: 0 | 1) => points.reduce((sum, point) => sum + point[i], 0) / points.length
  const [mx, my] = [mean(0), mean(1)]
  const size = points.reduce((sum, [x, y]) => sum + Math.hypot(x - mx, y - my), 0) / points.length
  return [1 / size, 0, -mx / size, 0, 1 / size, -my / size, 0, 0, 1]
}

/** Gauss with pivots; the last column is the right side. */
function solve(rows: number[][]): readonly number[] | null {
  const n = rows.length
  for (let column = 0; column < n; column++) {
    const pivot = rows
      .slice(column)
      .reduce(
        (best, row, i) =>
          Math.abs(row[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0) ? i + column : best,
        column,
      )
    const [a, b] = [rows[column] ?? [], rows[pivot] ?? []]
    if (Math.abs(b[column] ?? 0) < 1e-12) return null
    rows[column] = b
    rows[pivot] = a
    for (const [i, row] of rows.entries()) {
      if (i === column) continue
      const factor = (row[column] ?? 0) / (b[column] ?? 1)
      for (let j = column; j <= n; j++) row[j] = (row[j] ?? 0) - factor * (b[j] ?? 0)
    }
  }
  return rows.map((row, i) => (row[n] ?? 0) / (row[i] ?? 1))
}

/**
 * Where the camera stood before a plane, from the plane's homography into the picture, its middle and its focal length in
 * pixels. Distances go with the focal length: a picture that was cropped or zoomed into says them wrongly in proportion.
 */
export function cameraBefore(plane: Homography, middle: Point, focal: number): Place {
  const [a, b, c, d, e, f, g, h, i] = plane
  // The columns of the homography, as seen by a camera of focal length one: two axes of the plane and its origin.
  const seen = (u: number, v: number, w: number): Place => [
    (u - middle[0] * w) / focal,
    (v - middle[1] * w) / focal,
    w,
  ]
  const [right, up, origin] = [seen(a, d, g), seen(b, e, h), seen(c, f, i)]
  const size = Math.sqrt(Math.hypot(...right) * Math.hypot(...up)) * Math.sign(origin[2])
  const [r, u, t] = [right, up, origin].map((v) => v.map((n) => n / size)) as unknown as [Place, Place, Place]
  const dot = (p: Place, q: Place) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]
  const out: Place = [r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0]]
  return [-dot(r, t), -dot(u, t), Math.abs(dot(out, t))]
}

/** What is seen at a point of the plane and lies so far in front of it, or behind it where that is below zero. */
export function inFront([x, y]: Point, [cx, cy, cz]: Place, by: number): Point {
  const share = (cz - by) / cz
  return [cx + (x - cx) * share, cy + (y - cy) * share]
}

/** What is seen at a point of the plane and lies in another upright plane, turned by so many radians about x = `about`. */
export function onTurned([x, y]: Point, [cx, cy, cz]: Place, about: number, turn: number): Point {
  // Along the line of sight, from the camera at 0 to the plane at 1: where its z is what the turned plane has at its x.
  const slope = Math.tan(turn)
  const t = (cz - (cx - about) * slope) / (cz + (x - cx) * slope)
  const along = cx + (x - cx) * t - about
  return [about + along / Math.cos(turn), cy + (y - cy) * t]
}

/** What most telephones have, as it would be on film of 35 mm, millimetres. */
export const usualFocal = 26

/** The focal length of a whole picture in its pixels, by its diagonal; film is 36 by 24 mm. */
export const focalPixels = (width: number, height: number, focal: number): number =>
  (focal / Math.hypot(36, 24)) * Math.hypot(width, height)
