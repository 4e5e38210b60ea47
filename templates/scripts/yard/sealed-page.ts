/** What stands encrypted in the page: the index at once, a horse's part when it is asked for. */
import type { YardHorsePart } from '../../../src/yard/payload.ts'
import {
  bytesAt,
  firstName,
  firstPlace,
  indexName,
  indexPlace,
  nonceSize,
  partName,
  type SealedIndex,
  type SealedPlace,
} from '../../../src/yard/sealed.ts'

export interface SealedPage {
  readonly index: SealedIndex['index']
  /** Null where the page has none of that horse; rejects where it did not arrive whole. */
  part(horse: string): Promise<YardHorsePart | null>
}

/**
 * @param text in base64
 * @param key of 32 bytes in base64, as the passphrase gave it
 * @throws where the page did not arrive whole
 */
export async function openSealed(text: string, key: string): Promise<SealedPage> {
  const raw = Uint8Array.from(atob(key), (sign) => sign.charCodeAt(0))
  const imported = await crypto.subtle.importKey('raw', raw, 'AES-GCM', false, ['decrypt'])
  const piece = async (name: string, place: SealedPlace): Promise<Uint8Array<ArrayBuffer>> => {
    const bytes = bytesAt(text, place)
    const how = {
      name: 'AES-GCM',
      iv: bytes.subarray(0, nonceSize),
      additionalData: new TextEncoder().encode(name),
    }
    return new Uint8Array(await crypto.subtle.decrypt(how, imported, bytes.subarray(nonceSize)))
  }
  const length = await piece(firstName, firstPlace)
  const place = indexPlace(new DataView(length.buffer).getUint32(0, true))
  const { index, parts, partsSize }: SealedIndex = JSON.parse(await unpacked(await piece(indexName, place)))
  const start = place.at + place.size
  if (Math.floor(text.length / 4) * 3 < start + partsSize - 2)
    throw new Error('the page did not arrive whole')
  return {
    index,
    part: async (horse) => {
      const found = parts[horse]
      if (found === undefined) return null
      return JSON.parse(await unpacked(await piece(partName(horse), { ...found, at: start + found.at })))
    },
  }
}

const unpacked = (bytes: Uint8Array<ArrayBuffer>): Promise<string> =>
  new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).text()
