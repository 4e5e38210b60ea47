/** The focal length that a camera notes in its picture, as it would be on film of 35 mm; zooming changes it. */

const [exifPointer, focalIn35mm] = [0x8769, 0xa405]

/** @param exif as a JPEG carries it @returns millimetres; null where it is not noted, or is no likely one */
export function focalNoted(exif: Uint8Array | undefined): number | null {
  if (exif === undefined) return null
  try {
    // Some carry the name of the block before it.
    const from = exif[0] === 0x45 ? 6 : 0
    const view = new DataView(exif.buffer, exif.byteOffset + from, exif.byteLength - from)
    const isLittle = view.getUint16(0) === 0x4949
    const inner = entryAt(view, view.getUint32(4, isLittle), exifPointer, isLittle)
    if (inner === null) return null
    const place = entryAt(view, view.getUint32(inner, isLittle), focalIn35mm, isLittle)
    const focal = place === null ? 0 : view.getUint16(place, isLittle)
    return focal >= 10 && focal <= 300 ? focal : null
  } catch (error) {
    // A block that ends too early, or points out of itself.
    if (error instanceof RangeError) return null
    throw error
  }
}

/** Where the value of a tag stands in a directory (TIFF 6.0, section 2). */
function entryAt(view: DataView, directory: number, tag: number, isLittle: boolean): number | null {
  const count = view.getUint16(directory, isLittle)
  for (let i = 0; i < count; i++) {
    const at = directory + 2 + 12 * i
    if (view.getUint16(at, isLittle) === tag) return at + 8
  }
  return null
}
