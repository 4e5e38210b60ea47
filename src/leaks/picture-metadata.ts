/**
 * What a picture file carries beside its picture. Finished pictures may carry nothing but what is needed to draw
 * them: any block for metadata counts as a leak, whatever it says.
 * Block names: JPEG (ITU-T T.81), PNG (W3C), WebP (RFC 9649), AVIF (ISO/IEC 14496-12), from memory.
 */

export interface PictureBlock {
  readonly name: string
  readonly offset: number
  readonly bytes: Uint8Array
}

export interface PictureParts {
  readonly type: 'jpeg' | 'png' | 'webp' | 'avif' | 'gif'
  /** Blocks that hold metadata: EXIF, XMP, IPTC, comments, text. */
  readonly metadata: readonly PictureBlock[]
}

const ascii = (bytes: Uint8Array, from: number, to: number) =>
  Buffer.from(bytes.subarray(from, to)).toString('latin1')
const view = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)

/** The parts of a picture by its first bytes, whatever it is called; null for anything else. */
export function pictureParts(bytes: Uint8Array): PictureParts | null {
  if (bytes.length < 12) return null
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return { type: 'jpeg', metadata: jpegMetadata(bytes) }
  if (ascii(bytes, 1, 4) === 'PNG') return { type: 'png', metadata: pngMetadata(bytes) }
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') {
    return { type: 'webp', metadata: webpMetadata(bytes) }
  }
  if (ascii(bytes, 4, 8) === 'ftyp') return { type: 'avif', metadata: avifMetadata(bytes) }
  if (ascii(bytes, 0, 4) === 'GIF8') return { type: 'gif', metadata: [] }
  return null
}

const block = (name: string, bytes: Uint8Array, from: number, to: number): PictureBlock => ({
  name,
  offset: from,
  bytes: bytes.subarray(from, to),
})

/** APP1 (EXIF, XMP), APP3 to APP13 (IPTC and others), APP15 and comments; APP0, APP2 (colour profile) and APP14 draw. */
function jpegMetadata(bytes: Uint8Array): PictureBlock[] {
  const found: PictureBlock[] = []
  const data = view(bytes)
  let at = 2
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xda || marker === 0xd9) break
    const end = at + 2 + data.getUint16(at + 2)
    const app = marker - 0xe0
    if (marker === 0xfe) found.push(block('comment', bytes, at, end))
    else if (app >= 0 && app <= 15 && app !== 0 && app !== 2 && app !== 14) {
      found.push(block(app === 1 ? 'EXIF or XMP' : `APP${app}`, bytes, at, end))
    }
    at = end
  }
  return [...found, ...trailing(bytes, lastIndexOfPair(bytes, 0xff, 0xd9) + 2)]
}

const lastIndexOfPair = (bytes: Uint8Array, a: number, b: number): number => {
  for (let i = bytes.length - 2; i >= 0; i--) if (bytes[i] === a && bytes[i + 1] === b) return i
  return bytes.length - 2
}

/** Bytes after the picture's end. */
const trailing = (bytes: Uint8Array, end: number): PictureBlock[] =>
  end < bytes.length ? [block('bytes after the picture', bytes, end, bytes.length)] : []

function pngMetadata(bytes: Uint8Array): PictureBlock[] {
  const found: PictureBlock[] = []
  const data = view(bytes)
  let at = 8
  while (at + 12 <= bytes.length) {
    const end = at + 12 + data.getUint32(at)
    const name = ascii(bytes, at + 4, at + 8)
    if (['tEXt', 'zTXt', 'iTXt', 'eXIf', 'tIME'].includes(name)) found.push(block(name, bytes, at, end))
    at = end
    if (name === 'IEND') break
  }
  return [...found, ...trailing(bytes, at)]
}

function webpMetadata(bytes: Uint8Array): PictureBlock[] {
  const found: PictureBlock[] = []
  const data = view(bytes)
  let at = 12
  while (at + 8 <= bytes.length) {
    const size = data.getUint32(at + 4, true)
    const end = at + 8 + size + (size % 2)
    const name = ascii(bytes, at, at + 4)
    if (!['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ANIM', 'ANMF', 'ICCP'].includes(name)) {
      found.push(block(name.trim(), bytes, at, end))
    }
    at = end
  }
  return [...found, ...trailing(bytes, Math.min(at, 8 + data.getUint32(4, true)))]
}

/** Items of type `Exif` or `mime` (XMP) are named in the item list of the `meta` box. */
function avifMetadata(bytes: Uint8Array): PictureBlock[] {
  const text = ascii(bytes, 0, Math.min(bytes.length, 16_384))
  return [...text.matchAll(/infe[\s\S]{4}[\s\S]{4}(Exif|mime)/g)].map((match) =>
    block(match[1] === 'Exif' ? 'EXIF' : 'XMP', bytes, match.index, bytes.length),
  )
}
