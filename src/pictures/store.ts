/**
 * Processed pictures between builds, in the tool's own work folder. A picture is known by its bytes and by how it is
 * processed, so an unchanged one is never processed again. It may be deleted at any time.
 */
import { join } from 'node:path'
import { cacheKey } from '../build/cache-key.ts'
import { contentHash } from '../build/disk/content-hash.ts'
import type { Files } from '../build/disk/files.ts'
import { isUnfinished, readCached, seal, unseal, writeCached } from '../build/disk/sealed.ts'
import type { MadeFile } from '../build/disk/staging.ts'
import type { CardSearch } from '../card/find-card.ts'
import type { Pictures, PictureVariant } from '../pages/shared/pictures.ts'

/** What is kept of a processed picture: all but the file that it was called. */
export interface KeptPicture {
  readonly width: number
  readonly height: number
  readonly variants: readonly KeptVariant[]
  /** What was found of the card, where it was looked for. */
  readonly card?: CardSearch
}

export interface KeptVariant extends Omit<PictureVariant, 'path'> {
  /** File name in the store and in the published folder: of the content, never of the source. */
  readonly name: string
}

/** The record of a picture with the hash of each of its files, by name. */
interface KeptRecord {
  readonly picture: KeptPicture
  readonly hashes: Readonly<Record<string, string>>
}

export interface PictureStore {
  /** Null where this picture was never processed, or something of it is not as it was kept. */
  find(key: string): KeptPicture | null
  /** Puts the sizes away first and the record of them last, so that a record stands for whole files. */
  keep(key: string, picture: KeptPicture, bytes: ReadonlyMap<string, Uint8Array>): void
  /** Where a file of the store lies. */
  place(name: string): string
  read(name: string): Uint8Array | null
  /** Removes all that belongs to none of these keys. */
  sweep(keys: ReadonlySet<string>): void
}

/** The key of a picture: its content's hash and how it is processed. Letters and figures only, safe on every disk. */
export const pictureKey = (contentHash: string, recipe: string): string =>
  Buffer.from(cacheKey(recipe, contentHash), 'base64url').toString('hex').slice(0, 32)

/** A store in a folder of the disk. */
export function pictureStore(files: Files, folder: string): PictureStore {
  const place = (name: string) => join(folder, name)
  const put = (name: string, data: string | Uint8Array) => writeCached(files, place(name), data)
  return {
    place,
    read: (name) => files.read(place(name)),
    find: (key) => {
      const text = unseal(key, readCached(files, place(recordName(key))))
      if (text === null) return null
      const { picture, hashes }: KeptRecord = JSON.parse(text)
      const isWhole = Object.entries(hashes).every(([name, hash]) => {
        const bytes = readCached(files, place(name))
        return bytes !== null && contentHash(bytes) === hash
      })
      return isWhole ? picture : null
    },
    keep: (key, picture, bytes) => {
      for (const [name, data] of bytes) put(name, data)
      const hashes = Object.fromEntries([...bytes].map(([name, data]) => [name, contentHash(data)]))
      put(recordName(key), seal(key, JSON.stringify({ picture, hashes } satisfies KeptRecord)))
    },
    sweep: (keys) => {
      for (const name of files.names(folder)) {
        const key = /^([0-9a-f]{32})[-.]/.exec(name)?.[1]
        if (key !== undefined && (!keys.has(key) || isUnfinished(name))) files.remove(place(name))
      }
    },
  }
}

const recordName = (key: string) => `${key}.json`

const nameIn = ({ path }: PictureVariant) => path.slice(path.lastIndexOf('/') + 1)

/** Where a processed picture lies on this disk, for an edition to copy under a name of its own. */
export const placeOf = (store: PictureStore, variant: PictureVariant): string => store.place(nameIn(variant))

/** The bytes of a processed picture, for pages that carry it inside; null when they are gone. */
export const bytesOf = (store: PictureStore, variant: PictureVariant): Uint8Array | null =>
  store.read(nameIn(variant))

/** A horse's pictures as they are published beside its pages; two names of one picture give the same files. */
export function pictureFiles(horse: string, pictures: Pictures, store: PictureStore): readonly MadeFile[] {
  const variants = [...pictures.values()].flatMap((picture) => picture.variants)
  const files = variants.map((variant) => ({
    path: `${horse}/${variant.path}`,
    copyFrom: placeOf(store, variant),
  }))
  return [...new Map(files.map((file) => [file.path, file])).values()]
}
