/** The part of heic-decode that is used here; its published types are of an older version. */
declare module 'heic-decode' {
  interface Picture {
    readonly width: number
    readonly height: number
    decode(): Promise<{ readonly data: Uint8ClampedArray }>
  }
  const decode: {
    all(of: { readonly buffer: Uint8Array }): Promise<readonly Picture[] & { dispose(): void }>
  }
  export default decode
}
