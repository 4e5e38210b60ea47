/** What the unlocked page hands to each of its screens. */
import type { PlainDate } from '../../../src/hoof/dates.ts'
import type { YardHorsePart, YardIndex } from '../../../src/yard/payload.ts'

export interface OpenedYard {
  readonly index: YardIndex
  /** A horse's part, opened when first asked for; null where the page has none of it. */
  part(horse: string): Promise<YardHorsePart | null>
  /** The day on which it is asked, by the phone's clock: the page may be older. */
  today(): PlainDate
  readonly settings: YardSettings
  /** Why nothing can be written here; null where all is well. A visit is then only read. */
  readonly cannotKeep: CannotKeep | null
  /** While true the page is not exchanged for a newer one. Say it once a draft is open. */
  busy(isWriting: boolean): void
  /**
   * Asks to be heard before the page locks itself, as it does once it was out of sight for long.
   * @param keep whether all that was written is kept now; where not, the page stays open
   * @returns takes the wish back
   */
  beforeLock(keep: () => Promise<boolean>): () => void
}

/** Kept on the phone in the clear: none of it tells of a horse. */
export interface YardSettings {
  readonly hand: 'left' | 'right'
  /** Id of the person who holds the phone; null where the practice names none, or nobody was chosen yet. */
  readonly by: string | null
  /** The phone's own choice of light or dark; or the high contrast for the sun. */
  readonly light: 'phone' | 'light' | 'dark' | 'sun'
}

/** `file`: opened from a file, where drafts would be lost; `storage`: the browser refuses to keep anything. */
export type CannotKeep = 'file' | 'storage'

/**
 * Where screens are, as the part of the address after `#`: `''` the day's list, `horse/<id>`, `write/<draft id>`,
 * `drafts`, `settings`. The phone's back button goes through them.
 */
export const addressOf = {
  list: '#',
  horse: (id: string) => `#horse/${encodeURIComponent(id)}`,
  write: (draft: string) => `#write/${encodeURIComponent(draft)}`,
  drafts: '#drafts',
  settings: '#settings',
} as const

/** What the script that unlocks and the one that comes after it find of each other. */
export interface YardWindow extends Window {
  /** Rules of the style sheet that were made for the dark. */
  darkRules?: Set<CSSMediaRule>
  /** @throws where the page did not arrive whole */
  openYard?: (key: string) => Promise<void>
}
