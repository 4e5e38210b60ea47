/** What is kept on the phone: visits while they are written and after, each with its pictures, one locked record each. */
import type { Landmarks } from '../../../../src/hoof/landmarks.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'

/** A draft with what the phone alone knows of it. */
export interface KeptDraft {
  readonly draft: YardDraft
  /** Points that were marked, by the picture's SHA-256: the draft has them as text alone. */
  readonly marks: Readonly<Record<string, Landmarks>>
  /** When its last giving out was, ISO 8601; null where it never was. */
  readonly givenOn: string | null
  /** When it was thrown away, ISO 8601: it can be brought back for a day. */
  readonly thrownAway: string | null
}

/** A record that this page cannot read; it is kept. */
export interface Unreadable {
  readonly id: string
  /** When it was last written, ISO 8601. */
  readonly written: string
  /** `key`: locked with another key, or altered; `shape`: written by another version of the page. */
  readonly why: 'key' | 'shape'
}

export interface Kept {
  /** The last changed first. */
  readonly drafts: readonly KeptDraft[]
  readonly unreadable: readonly Unreadable[]
}

/** How much more the phone will keep, bytes, as the browser guesses; null where it does not say. */
export type Room = number | null

export interface Drafts {
  all(): Promise<Kept>
  /** Null where there is none that can be read. */
  read(id: string): Promise<KeptDraft | null>
  /** @throws StoreFull */
  write(kept: KeptDraft): Promise<void>
  /** For good, with its pictures. */
  remove(id: string): Promise<void>
  /** Null where the phone has lost it. */
  picture(draft: string, sha256: string): Promise<Uint8Array<ArrayBuffer> | null>
  /** @throws StoreFull */
  keepPicture(draft: string, sha256: string, bytes: Uint8Array<ArrayBuffer>): Promise<void>
  dropPicture(draft: string, sha256: string): Promise<void>
  room(): Promise<Room>
}

/** The phone keeps no more. What was to be kept is still in memory. */
export class StoreFull extends Error {}
