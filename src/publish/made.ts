import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { HorseSummary } from '../pages/shared/summary.ts'
import type { ForOthers } from './for-others.ts'

export type Edition = 'practice' | 'owner' | 'portfolio'

/** A file ready to be written, at a path within `site/`: `practice/juno/index.html`. Text, or the path of a processed picture in the store to copy from. */
export type MadeFile =
  | { readonly path: string; readonly text: string }
  | { readonly path: string; readonly copyFrom: string }

/** All that one horse gives to a build, besides its files. Travels between threads, so plain data only. */
export interface MadeHorse {
  readonly id: string
  readonly diagnostics: readonly Diagnostic[]
  /** Null when its files hold an error. */
  readonly summary: HorseSummary | null
  /** What the editions that leave this machine need of it; null where it was made without them in mind. */
  readonly forOthers: ForOthers | null
}
