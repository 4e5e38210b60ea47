/** Points, and outline and ground as they are used, drawn over the picture. */
import { groundLine, type LandmarkPoint, type Landmarks, type Point } from '../../../src/hoof/landmarks.ts'

const svgElement = (name: string, attributes: Readonly<Record<string, string>>): SVGElement => {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value)
  return element
}

export function drawMarks(
  drawn: SVGSVGElement,
  landmarks: Landmarks,
  marks: Readonly<Record<string, Point>>,
  current: string | null,
  placeOf: (at: Point) => Point,
): void {
  const joined = (kind: string, points: readonly Point[], closed = false) =>
    points.length < 2
      ? []
      : [
          svgElement(closed ? 'polygon' : 'polyline', {
            class: `mark-line is-${kind}`,
            points: points
              .map((point) =>
                placeOf(point)
                  .map((n) => n.toFixed(1))
                  .join(','),
              )
              .join(' '),
          }),
        ]
  const { card, scale, lines, points } = landmarks
  const some = (names: readonly LandmarkPoint[]) =>
    names.flatMap((name) => (points[name] ? [points[name]] : []))
  drawn.replaceChildren(
    ...(card ? joined('card', card.corners, true) : []),
    ...joined('ground', groundUsed(landmarks)),
    ...joined(
      'outline',
      some(['toe-at-ground', 'new-growth-ends', 'toe-at-hairline', 'heel-at-hairline', 'heel-at-ground']),
    ),
    ...joined('outline', some(['heel-medial', 'widest-medial', 'toe', 'widest-lateral', 'heel-lateral'])),
    ...joined('outline', some(['frog-tip', 'frog-base'])),
    ...(lines.pastern ? joined('outline', lines.pastern) : []),
    ...(scale && !card ? joined('scale', [scale.from, scale.to]) : []),
    ...Object.entries(marks).flatMap(([id, at]) => {
      if (card && /^(?:scale|ground) /.test(id)) return []
      const [x, y] = placeOf(at)
      const isNow = id === current
      return [
        svgElement('circle', {
          cx: x.toFixed(1),
          cy: y.toFixed(1),
          r: isNow ? '11' : '4',
          class: isNow ? 'is-now' : '',
        }),
      ]
    }),
  )
}

/** What angles are taken against, drawn on well past both ends. */
function groundUsed(landmarks: Landmarks): readonly Point[] {
  const line = groundLine(landmarks)
  if (line === null) return []
  const [[ax, ay], [bx, by]] = line
  return [
    [ax - (bx - ax) / 2, ay - (by - ay) / 2],
    [bx + (bx - ax) / 2, by + (by - ay) / 2],
  ]
}
