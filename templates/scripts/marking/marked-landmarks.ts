/** What is marked so far as the case file has it, and what of it cannot be or hardly is. */
import type { PlacedCard } from '../../../src/hoof/card.ts'
import { doubtedLandmarks } from '../../../src/hoof/landmark-guard.ts'
import {
  type LandmarkPoint,
  type Landmarks,
  landmarkPoints,
  measureLandmarks,
  type Point,
} from '../../../src/hoof/landmarks.ts'
import { isMeasureId, measures } from '../../../src/hoof/measures.ts'
import type { Camera } from '../../../src/hoof/stance.ts'
import { parseLength } from '../../../src/hoof/units.ts'
import type { MarkTask } from '../../../src/pages/mark/mark-task.ts'
import type { Marked } from './history.ts'

/** Fills `{...}` in a text. */
export const fill = (text: string, values: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? ''))

/** `30 mm`, or `30 mm further`; null where nothing is written, NaN where it is no length. */
export function nearerWritten(written: string): number | null {
  const text = written.trim()
  if (text === '') return null
  const [, amount = '', way = ''] = /^(.*?)\s*(nearer|further|farther)?$/i.exec(text) ?? []
  const length = parseLength(amount, 'mm')
  if (length === null) return Number.NaN
  return /^f/i.test(way) ? -length.mm : length.mm
}

/** @param used the card, where it is used @param told how the camera stood where that is no choice of the list */
export function landmarksMarked(
  { marks, length: written, camera: chosen, nearer: nearerText, usesCard }: Marked,
  used: PlacedCard | null,
  told: Camera | null,
): Landmarks {
  const line = (name: string): readonly [Point, Point] | null => {
    const [from, to] = [marks[`${name} from`], marks[`${name} to`]]
    return from && to ? [from, to] : null
  }
  const [ground, pastern, scale] = [line('ground'), line('pastern'), line('scale')]
  const length = parseLength(written, 'mm')
  const nearer = nearerWritten(nearerText)
  const toldNearer = nearer !== null && Number.isFinite(nearer) ? nearer : null
  const points: Partial<Record<LandmarkPoint, Point>> = {}
  for (const name of landmarkPoints) {
    const point = marks[name]
    if (point) points[name] = point
  }
  const camera: Camera | null =
    chosen === 'told' ? told : chosen === 'block' || chosen === 'flat' ? chosen : null
  return {
    scale:
      scale && length && length.mm > 0 && used === null
        ? {
            from: scale[0],
            to: scale[1],
            length: length.mm,
            ...(toldNearer !== null && { nearer: toldNearer }),
          }
        : null,
    ...(used && { card: { ...used, nearer: toldNearer } }),
    ...(!usesCard && { cardTold: 'none' as const }),
    ...(camera && { camera }),
    lines: { ...(ground && used === null && { ground }), ...(pastern && { pastern }) },
    points,
  }
}

/** What cannot be or hardly is, of the points and of what they measure. */
export function doubtsOf(marked: Landmarks, { view, foot, says }: MarkTask): readonly string[] {
  const ofPoints = doubtedLandmarks(marked, view, foot).map(({ message }) => message)
  const ofValues = measureLandmarks(marked, view).flatMap(({ measure, value }) => {
    if (!isMeasureId(measure)) return []
    const { name, kind, likely } = measures[measure]
    if (value >= likely[0] && value <= likely[1]) return []
    const unit = kind === 'angle' ? '°' : ' mm'
    return [
      fill(says.unlikely, {
        name,
        value: `${value.toFixed(1)}${unit}`,
        from: likely[0],
        to: `${likely[1]}${unit}`,
      }),
    ]
  })
  return [...ofPoints, ...ofValues]
}
