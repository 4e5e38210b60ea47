/** What leaves the phone: a visit and its pictures, as files for the share sheet or as one file. */
import { zipSync } from 'fflate'
import { caseFileOf } from './case-file.ts'
import type { YardDraft } from './draft.ts'
import { type WritingPractice, withLabel } from './label.ts'

/** A file to be given out. */
export interface OutFile {
  readonly name: string
  readonly type: 'text/plain' | 'image/jpeg' | 'application/zip'
  readonly bytes: Bytes
}

type Bytes = Uint8Array<ArrayBuffer>

/** The bytes of a picture of a draft, by its SHA-256; null where the phone has lost it. */
export type PictureBytes = (sha256: string) => Uint8Array | null | Promise<Uint8Array | null>

/** For the share sheet: `juno-2026-11-27-3f9a.txt` and its pictures, `juno-2026-11-27-lf-side-3f9a.jpg`. */
export async function sharedFiles(
  draft: YardDraft,
  practice: WritingPractice,
  pictures: PictureBytes,
): Promise<readonly OutFile[]> {
  const { text } = caseFileOf(draft, practice)
  const visit: OutFile = {
    name: `${nameOf(draft)}.txt`,
    type: 'text/plain',
    bytes: inUtf8(await withLabel(text, draft, practice)),
  }
  const shown = await Promise.all(
    draft.photos.map(async ({ name, sha256 }): Promise<readonly OutFile[]> => {
      const bytes = await pictures(sha256)
      return bytes === null
        ? []
        : [{ name: `${draft.horse}-${name}`, type: 'image/jpeg', bytes: new Uint8Array(bytes) }]
    }),
  )
  return [visit, ...shown.flat()]
}

/** For a download: one `.zip` with `juno/2026-11-27.md` and `juno/photos/...jpg`, of one draft or several. */
export async function zipOf(
  drafts: readonly YardDraft[],
  practice: WritingPractice,
  pictures: PictureBytes,
): Promise<OutFile> {
  const packed = new Map<string, Uint8Array>()
  for (const draft of drafts) {
    const { path, text } = caseFileOf(draft, practice, new Set(packed.keys()))
    packed.set(path, inUtf8(await withLabel(text, draft, practice)))
    for (const { name, sha256 } of draft.photos) {
      const bytes = await pictures(sha256)
      if (bytes !== null) packed.set(`${draft.horse}/photos/${name}`, bytes)
    }
  }
  const [first] = drafts
  const name = drafts.length === 1 && first ? nameOf(first) : `visits-${first?.date ?? ''}`
  return { name: `${name}.zip`, type: 'application/zip', bytes: zipped(packed) }
}

/** Two visits to a horse on one day are two files, wherever they are put. */
const nameOf = ({ horse, date, id }: YardDraft): string => `${horse}-${date}-${id.slice(0, 4)}`

const inUtf8 = (text: string): Bytes => new TextEncoder().encode(text)

/** Pictures are packed as they are: they get no smaller. No thread of its own, which the page's policy would refuse. */
const zipped = (files: ReadonlyMap<string, Uint8Array>): Bytes =>
  zipSync(
    Object.fromEntries(
      [...files].map(([path, bytes]) => [path, [bytes, { level: path.endsWith('.md') ? 6 : 0 }]]),
    ),
  ) as Bytes

export { sha256Of, type WritingPractice } from './label.ts'
