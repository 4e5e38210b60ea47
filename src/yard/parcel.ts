/** What leaves the phone, and how it is read back: a visit and its pictures, whatever they are called by then. */
import type { Practice } from '../casebook/model.ts'
import type { YardDraft } from './draft.ts'

/** A file to be given out. */
export interface OutFile {
  readonly name: string
  readonly type: 'text/plain' | 'image/jpeg' | 'application/zip'
  readonly bytes: Uint8Array<ArrayBuffer>
}

/** The bytes of a picture of a draft, by its SHA-256; null where the phone has lost it. */
export type PictureBytes = (sha256: string) => Uint8Array | null

/** For the share sheet: `juno-2026-11-27.txt` and its pictures, `juno-2026-11-27-lf-side-3f9a.jpg`. */
export function sharedFiles(
  _draft: YardDraft,
  _practice: Pick<Practice, 'feetOrder'>,
  _pictures: PictureBytes,
): Promise<readonly OutFile[]> {
  throw new Error('not written yet')
}

/** For a download: one `.zip` with `juno/2026-11-27.md` and `juno/photos/...jpg`, of one draft or several. */
export function zipOf(
  _drafts: readonly YardDraft[],
  _practice: Pick<Practice, 'feetOrder'>,
  _pictures: PictureBytes,
): Promise<OutFile> {
  throw new Error('not written yet')
}

/** SHA-256 in hexadecimal digits, as a photo of a draft has it. */
export async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await globalThis.crypto.subtle.digest('SHA-256', bytes))
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
