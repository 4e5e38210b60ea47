/** Error and coverage of many readings of one measure. */
import { type Landmarks, measureLandmarks, type PhotoView, shownHalf } from '../../../src/hoof/landmarks.ts'
import type { AnyMeasureId } from '../../../src/hoof/measures.ts'
import type { Truth } from './foot.ts'

export interface Row {
  readonly measure: AnyMeasureId
  readonly n: number
  /** Root mean square and mean of the errors. */
  readonly rms: number
  readonly mean: number
  /** Share of the true values within the range that is shown. */
  readonly covered: number
  /** Mean half width of that range. */
  readonly half: number
}

export interface Read {
  readonly landmarks: Landmarks
  readonly view: PhotoView
  readonly truth: Truth
}

export function tableOf(reads: readonly Read[]): readonly Row[] {
  const errors = new Map<AnyMeasureId, { error: number; half: number }[]>()
  for (const { landmarks, view, truth } of reads)
    for (const { measure, value, sd } of measureLandmarks(landmarks, view)) {
      const true_ = truth[measure]
      if (true_ === undefined) continue
      errors.set(measure, [...(errors.get(measure) ?? []), { error: value - true_, half: shownHalf(sd) }])
    }
  return [...errors].map(([measure, all]) => {
    const mean = (of: (one: { error: number; half: number }) => number) =>
      all.reduce((sum, one) => sum + of(one), 0) / all.length
    return {
      measure,
      n: all.length,
      rms: Math.sqrt(mean(({ error }) => error ** 2)),
      mean: mean(({ error }) => error),
      covered: mean(({ error, half }) => (Math.abs(error) <= half ? 1 : 0)),
      half: mean(({ half }) => half),
    }
  })
}

export const printed = (title: string, rows: readonly Row[]): string =>
  [
    title,
    'measure            n    rms   mean  covered  shown ±',
    ...rows.map(
      ({ measure, n, rms, mean, covered, half }) =>
        `${measure.padEnd(16)} ${String(n).padStart(4)} ${rms.toFixed(2).padStart(6)} ${mean.toFixed(2).padStart(6)} ${(100 * covered).toFixed(0).padStart(6)} % ${half.toFixed(2).padStart(7)}`,
    ),
  ].join('\n')
