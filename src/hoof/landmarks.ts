import type { AnyMeasureId } from './measures.ts'

export type PhotoView = 'lateral' | 'medial' | 'front' | 'behind' | 'solar' | 'other'

export type Point = readonly [x: number, y: number]

/** Points a person marked on a picture. Names as in the case file, hyphenated; a line is two points. */
export interface Landmarks {
  /** Two points and the true length between them, millimetres. */
  readonly scale: { readonly from: Point; readonly to: Point; readonly length: number } | null
  readonly lines: Partial<Record<LandmarkLine, readonly [Point, Point]>>
  readonly points: Partial<Record<LandmarkPoint, Point>>
}

export type LandmarkLine = 'ground' | 'pastern'
export type LandmarkPoint =
  | 'toe-at-ground'
  | 'toe-at-hairline'
  | 'new-growth-ends'
  | 'heel-at-ground'
  | 'heel-at-hairline'
  | 'frog-tip'
  | 'frog-base'
  | 'toe'
  | 'heel-medial'
  | 'heel-lateral'
  | 'widest-medial'
  | 'widest-lateral'
  | 'breakover'

export interface PhotoReading {
  readonly measure: AnyMeasureId
  readonly value: number
  /** Standard deviation that follows from the uncertainty of the marked points. */
  readonly sd: number
}

/** Every measure that the marked points of one picture allow. */
export function measureLandmarks(_landmarks: Landmarks, _view: PhotoView): readonly PhotoReading[] {
  throw new Error('to be written')
}
