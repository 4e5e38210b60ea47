/** Pictures with things planted in them, and a store in memory. */
import { crc32 } from 'node:zlib'
import type { CasebookFolder } from '../../src/casebook/folder.ts'
import type { Horse } from '../../src/casebook/model.ts'
import type { KeptPicture, PictureStore } from '../../src/pictures/store.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { readVisitBlock } from '../casebook/read-one.ts'

export interface Stocked {
  readonly horse: Horse
  readonly folder: CasebookFolder
  /** Paths that were read. */
  readonly reads: string[]
}

/** Juno with one visit that names these pictures, in their order. */
export function junoWith(pictures: Readonly<Record<string, Uint8Array>>): Stocked {
  const block = `photos:\n${Object.keys(pictures)
    .map((name) => `  - {file: photos/${name}, foot: LF, view: lateral}`)
    .join('\n')}`
  const files = Object.fromEntries(
    Object.entries(pictures).map(([name, bytes]) => [`juno/photos/${name}`, bytes]),
  )
  const { horse } = readVisitBlock(block, { files })
  if (horse === null) throw new Error('the visit cannot be read')
  const all = memoryFolder({ ...files, 'juno/2026-01-12.md': `---\n${block}\n---\n` })
  const reads: string[] = []
  const folder = {
    list: all.list,
    read: (path: string) => {
      reads.push(path)
      return all.read(path)
    },
  }
  return { horse, folder, reads }
}

export interface MemoryStore extends PictureStore {
  readonly files: ReadonlyMap<string, Uint8Array>
  readonly records: ReadonlyMap<string, KeptPicture>
}

export function memoryStore(): MemoryStore {
  const files = new Map<string, Uint8Array>()
  const records = new Map<string, KeptPicture>()
  return {
    files,
    records,
    find: (key) => records.get(key) ?? null,
    keep: (key, picture, bytes) => {
      records.set(key, picture)
      for (const [name, data] of bytes) files.set(name, data)
    },
    place: (name) => `store/${name}`,
    read: (name) => files.get(name) ?? null,
    sweep: () => {},
  }
}

/** A JPEG with a segment after its start. */
export function withSegment(jpeg: Uint8Array, marker: number, payload: string | Uint8Array): Buffer {
  const data = Buffer.from(payload)
  const head = Buffer.from([0xff, marker, (data.length + 2) >> 8, (data.length + 2) & 255])
  return Buffer.concat([jpeg.subarray(0, 2), head, data, jpeg.subarray(2)])
}

/** A PNG with a chunk after its header. */
export function withChunk(png: Uint8Array, type: string, payload: string | Uint8Array): Buffer {
  const afterHeader = 8 + 25
  return Buffer.concat([png.subarray(0, afterHeader), chunk(type, payload), png.subarray(afterHeader)])
}

function chunk(type: string, payload: string | Uint8Array): Buffer {
  const data = Buffer.concat([Buffer.from(type, 'latin1'), Buffer.from(payload)])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length - 4)
  const sum = Buffer.alloc(4)
  sum.writeUInt32BE(crc32(data))
  return Buffer.concat([length, data, sum])
}

/** A PNG that says it is very large and holds next to nothing. */
export function pixelBomb(width: number, height: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 2, 0, 0, 0], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const nearlyNothing = Buffer.from('789c6300010000050001', 'hex')
  return Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', nearlyNothing), chunk('IEND', '')])
}

/** Names of the segments of a JPEG before its picture data, `APP1`, `DQT`. */
export function segmentsOf(jpeg: Uint8Array): readonly string[] {
  const names: string[] = []
  for (let at = 2; at < jpeg.length; ) {
    const marker = jpeg[at + 1] ?? 0
    if (marker === 0xda) break
    names.push(marker >= 0xe0 && marker <= 0xef ? `APP${marker - 0xe0}` : marker.toString(16))
    at += 2 + ((jpeg[at + 2] ?? 0) << 8) + (jpeg[at + 3] ?? 0)
  }
  return names
}

/** Names of the chunks of a WebP. */
export function chunksOf(webp: Uint8Array): readonly string[] {
  const bytes = Buffer.from(webp)
  const names: string[] = []
  for (let at = 12; at + 8 <= bytes.length; ) {
    names.push(bytes.toString('latin1', at, at + 4))
    const size = bytes.readUInt32LE(at + 4)
    at += 8 + size + (size % 2)
  }
  return names
}
