/** Marked points as a case file writes them: one key and one value each, in a fixed order. */
import type { PlacedCard } from '../../hoof/card.ts'
import { type Landmarks, landmarkLines, landmarkPoints, type Point } from '../../hoof/landmarks.ts'
import type { Camera } from '../../hoof/stance.ts'

/** Key as written, `toe at ground`, and value. Pixels go to a tenth: no tap is surer. */
export type LandmarkEntry = readonly [key: string, value: string]

const spoken = (name: string): string => name.replaceAll('-', ' ')
const figure = (amount: number): string => String(Number(amount.toFixed(1)))
const pointText = ([x, y]: Point): string => `[${figure(x)}, ${figure(y)}]`

/** Every key that a photo entry may mark points with, as written. */
export const landmarkKeys: readonly string[] = [
  'scale',
  'card',
  'camera',
  ...[...landmarkLines, ...landmarkPoints].map(spoken),
]

export function landmarkEntries({
  scale,
  card,
  cardTold,
  camera,
  lines,
  points,
}: Landmarks): readonly LandmarkEntry[] {
  const entries: LandmarkEntry[] = []
  if (scale !== null) {
    const parts = [pointText(scale.from), pointText(scale.to), millimetres(scale.length)]
    if (scale.nearer !== undefined) parts.push(nearerText(scale.nearer))
    entries.push(['scale', `[${parts.join(', ')}]`])
  }
  if (card) entries.push(['card', cardText(card)])
  else if (cardTold) entries.push(['card', cardTold === 'none' ? 'none' : nearerText(cardTold.nearer)])
  if (camera !== undefined) entries.push(['camera', cameraText(camera)])
  for (const name of landmarkLines) {
    const line = lines[name]
    if (line) entries.push([name, `[${pointText(line[0])}, ${pointText(line[1])}]`])
  }
  for (const name of landmarkPoints) {
    const point = points[name]
    if (point) entries.push([spoken(name), pointText(point)])
  }
  return entries
}

/** The keys of an entry, one a line, to stand under its dash. */
export const landmarkText = (landmarks: Landmarks, indent: string): string =>
  landmarkEntries(landmarks)
    .map(([key, value]) => `${indent}${key}: ${value}\n`)
    .join('')

export const millimetres = (length: number) => `${Number(length.toFixed(3))} mm`

const nearerText = (by: number) => `${millimetres(Math.abs(by))} ${by < 0 ? 'further' : 'nearer'}`

function cardText({ corners, width, camera, nearer }: PlacedCard): string {
  const parts = [`corners: [${corners.map(pointText).join(', ')}]`, `width: ${millimetres(width)}`]
  if (camera) parts.push(`camera: [${camera.map((n) => Math.round(n)).join(', ')}]`)
  if (nearer !== null) parts.push(`nearer: ${nearerText(nearer)}`)
  return `{${parts.join(', ')}}`
}

function cameraText(camera: Camera): string {
  if (camera === 'block') return 'on a block'
  if (camera === 'yard') return 'by hand'
  if (camera === 'flat') return 'flat'
  return `{height: ${millimetres(camera.height)}, distance: ${millimetres(camera.distance)}}`
}
