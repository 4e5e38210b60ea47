/** The part of js-aruco2 that is used here; the package carries no types. */
declare module 'js-aruco2' {
  export interface Marker {
    readonly id: number
    /** Upper left, upper right, lower right, lower left, as the marker is printed. */
    readonly corners: readonly { readonly x: number; readonly y: number }[]
  }
  interface Detector {
    detectImage(width: number, height: number, rgba: Uint8ClampedArray): readonly Marker[]
  }
  interface Dictionary {
    /** Row by row, `1` white. */
    readonly codeList: readonly string[]
  }
  export const AR: {
    readonly Detector: new (options: {
      readonly dictionaryName: string
      readonly maxHammingDistance: number
    }) => Detector
    readonly Dictionary: new (name: string) => Dictionary
  }
}

declare module 'js-aruco2/src/dictionaries/apriltag_36h11.js'
