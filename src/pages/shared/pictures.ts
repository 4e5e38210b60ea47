/** A processed picture as pages refer to it. */
export interface Picture {
  /** Path within the horse's folder as the visit names it. */
  readonly file: string
  /** Size of the upright original, pixels; landmarks are in these. */
  readonly width: number
  readonly height: number
  /** Largest last; paths relative to the horse's folder within the edition. */
  readonly variants: readonly PictureVariant[]
}

export interface PictureVariant {
  readonly path: string
  readonly type: 'image/avif' | 'image/webp' | 'image/jpeg'
  readonly width: number
  readonly height: number
}

/** By the file's path within the horse's folder; a picture that could not be processed is absent. */
export type Pictures = ReadonlyMap<string, Picture>
