/**
 * What came from a phone, read back: `.zip`, `.txt`, `.md` and `.jpg` in any mixture and under any names. A file is known
 * by what it holds, a picture by its SHA-256.
 */
import { unzipSync } from 'fflate'
import { limits } from '../casebook/limits.ts'
import type { YardOrigin } from '../casebook/model.ts'
import { originIn } from '../casebook/yard-key.ts'
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { type LabelledPicture, readLabel, sha256Of } from './label.ts'

type Bytes = Uint8Array<ArrayBuffer>

export interface CameFile {
  readonly name: string
  readonly bytes: Bytes
}

export interface Parcel {
  readonly visits: readonly ArrivedVisit[]
  /** By SHA-256. */
  readonly pictures: ReadonlyMap<string, ArrivedPicture>
  readonly refused: readonly Refused[]
}

export interface ArrivedVisit {
  /** The file it came in, as a person would find it: `visits.zip, juno/2026-11-27.md`. */
  readonly from: string
  /** Id of the horse; null where nothing says. */
  readonly horse: string | null
  readonly date: PlainDate
  readonly origin: YardOrigin | null
  /** The case file, without the label of its way. */
  readonly text: string
  readonly pictures: readonly LabelledPicture[]
  /** Unit and order of feet of the practice that wrote it; null where it does not say. */
  readonly writtenBy: string | null
  /** False where a part of it was lost or changed on the way; null where it does not say. */
  readonly isWhole: boolean | null
}

export interface ArrivedPicture {
  readonly from: string
  readonly bytes: Bytes
}

export interface Refused {
  readonly from: string
  readonly why:
    | 'unknown kind'
    | 'no case file'
    | 'no date'
    | 'not text'
    | 'damaged'
    | 'too many files'
    | 'too large'
    | 'leads elsewhere'
}

export async function unpack(files: readonly CameFile[]): Promise<Parcel> {
  const refused: Refused[] = []
  const single = files.flatMap((file): readonly CameFile[] => {
    if (!isZip(file.bytes)) return [file]
    const within = unzipped(file)
    if ('why' in within) refused.push(within)
    return 'why' in within ? [] : within.files
  })
  const visits: ArrivedVisit[] = []
  const pictures = new Map<string, ArrivedPicture>()
  for (const file of single) {
    if (isJpeg(file.bytes)) pictures.set(await sha256Of(file.bytes), { from: file.name, bytes: file.bytes })
    else {
      const visit = await visitIn(file)
      if ('why' in visit) refused.push(visit)
      else visits.push(visit)
    }
  }
  return { visits, pictures, refused }
}

const startsWith = (bytes: Uint8Array, ...first: readonly number[]): boolean =>
  first.every((byte, index) => bytes[index] === byte)
const isZip = (bytes: Uint8Array) => startsWith(bytes, 0x50, 0x4b, 0x03, 0x04)
const isJpeg = (bytes: Uint8Array) => startsWith(bytes, 0xff, 0xd8, 0xff)

/** A file that may be nobody's work is not half unpacked: one entry that is wrong refuses it whole. */
class Hostile extends Error {
  constructor(readonly why: Refused['why']) {
    super(why)
  }
}

function unzipped({ name, bytes }: CameFile): { readonly files: readonly CameFile[] } | Refused {
  let count = 0
  let total = 0
  try {
    const entries = unzipSync(bytes, {
      filter: (entry) => {
        count += 1
        total += entry.originalSize
        if (count > limits.parcelFiles) throw new Hostile('too many files')
        if (entry.originalSize > limits.pictureBytes || total > limits.parcelBytes)
          throw new Hostile('too large')
        if (isOutside(entry.name)) throw new Hostile('leads elsewhere')
        return !isBeside(entry.name)
      },
    })
    return {
      files: Object.entries(entries).map(([path, content]) => ({
        name: `${name}, ${path}`,
        bytes: content as Bytes,
      })),
    }
  } catch (error) {
    return { from: name, why: error instanceof Hostile ? error.why : 'damaged' }
  }
}

const isOutside = (path: string): boolean =>
  /^[/\\]|^[a-z]:|\\|\0/i.test(path) || path.split('/').includes('..')

/** Folders, and what systems put beside files when a person packs them again. */
const isBeside = (path: string): boolean => path.endsWith('/') || /(?:^|\/)(?:\.|__)/.test(path)

async function visitIn({ name, bytes }: CameFile): Promise<ArrivedVisit | Refused> {
  if (bytes.length > limits.fileBytes)
    return { from: name, why: isText(bytes) ? 'too large' : 'unknown kind' }
  const written = textIn(bytes)
  if (written === null) return { from: name, why: 'not text' }
  const label = await readLabel(written)
  const block = /^---[^\S\n]*\n([\s\S]*?)^---[^\S\n]*$/m.exec(label.text)
  if (block?.index !== 0) return { from: name, why: 'no case file' }
  const keyed = (key: string) =>
    new RegExp(`^${key}:[^\\S\\n]*(.*?)(?:[^\\S\\n]+#.*)?$`, 'm').exec(block[1] ?? '')?.[1] ?? ''
  const way = /(?:^|[/ ])([a-z0-9]+(?:-[a-z0-9]+)*)\/(\d{4}-\d{2}-\d{2})(?:-[b-z])?\.md$/.exec(name)
  const date = parseDate(keyed('date').trim()) ?? parseDate(way?.[2] ?? '')
  if (date === null) return { from: name, why: 'no date' }
  return {
    from: name,
    horse: label.horse ?? way?.[1] ?? null,
    date,
    origin: originIn(keyed('yard')),
    text: label.text,
    pictures: label.pictures,
    writtenBy: label.writtenBy,
    isWhole: label.isWhole,
  }
}

const isText = (bytes: Uint8Array): boolean => !bytes.subarray(0, 1000).includes(0)

/** UTF-8; null for anything else. */
function textIn(bytes: Uint8Array): string | null {
  if (!isText(bytes)) return null
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
}
