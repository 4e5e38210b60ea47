/** Marked points as a case file writes them: one key and one value each, in a fixed order. */
import { type Landmarks, landmarkLines, landmarkPoints, type Point } from '../../hoof/landmarks.ts'

/** Key as written, `toe at ground`, and value. Pixels go to a tenth: no tap is surer. */
export type LandmarkEntry = readonly [key: string, value: string]

const spoken = (name: string): string => name.replaceAll('-', ' ')
const figure = (amount: number): string => String(Number(amount.toFixed(1)))
const pointText = ([x, y]: Point): string => `[${figure(x)}, ${figure(y)}]`

/** Every key that a photo entry may mark points with, as written. */
export const landmarkKeys: readonly string[] = ['scale', ...landmarkLines, ...landmarkPoints].map(spoken)

export function landmarkEntries({ scale, lines, points }: Landmarks): readonly LandmarkEntry[] {
  const entries: LandmarkEntry[] = []
  if (scale !== null) {
    const length = `${Number(scale.length.toFixed(3))} mm`
    entries.push(['scale', `[${pointText(scale.from)}, ${pointText(scale.to)}, ${length}]`])
  }
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
