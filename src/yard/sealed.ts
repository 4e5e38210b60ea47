/**
 * How the locked part of the yard page is laid out, so that what is not asked for is not opened. The passphrase opens a
 * small age file that holds a key; everything else is one text in base64: pieces one after the other, each encrypted with
 * that key by AES-256-GCM under its own name (12 bytes of nonce before it, 16 of tag behind), the first of a fixed length
 * and telling how long the index is. Where a piece ends cannot be seen from outside, so neither can how many horses there
 * are.
 */
import type { YardIndex } from './payload.ts'

/** Where a piece stands, in bytes of the decoded text. */
export interface SealedPlace {
  readonly at: number
  readonly size: number
}

/** What stands in the index piece, as gzipped JSON. */
export interface SealedIndex {
  readonly index: YardIndex
  /** Each horse's part, gzipped JSON, by the horse's id; counted from the end of the index. */
  readonly parts: Readonly<Record<string, SealedPlace>>
  /** Bytes of all parts: a text that ends before them did not arrive whole. */
  readonly partsSize: number
}

export const nonceSize = 12
export const tagSize = 16
const around = nonceSize + tagSize

/** How long a piece of so many bytes is once it is encrypted. */
export const sealedSize = (plain: number): number => plain + around

/** The first piece: four bytes, the length of the index piece, least byte first. */
export const firstPlace: SealedPlace = { at: 0, size: sealedSize(4) }

export const indexPlace = (size: number): SealedPlace => ({ at: firstPlace.size, size })

/** Under which names the first two are encrypted; a horse's part under `horse <id>`. */
export const firstName = 'length'
export const indexName = 'index'
export const partName = (horse: string): string => `horse ${horse}`

/** The bytes of a piece, without decoding the others. */
export function bytesAt(text: string, { at, size }: SealedPlace): Uint8Array<ArrayBuffer> {
  const first = Math.floor(at / 3)
  const decoded = atob(text.slice(first * 4, Math.ceil((at + size) / 3) * 4))
  const skipped = at - first * 3
  return Uint8Array.from({ length: size }, (_, index) => decoded.charCodeAt(skipped + index))
}
