import type { SourceKey } from './sources.ts'

/**
 * How well a figure is evidence:
 * `published`: its source was read and is named;
 * `from memory`: the source is named, its figure was not seen again while writing;
 * `second hand`: published, read in another work that cites it;
 * `common practice`: the trade does it so, no source.
 */
export type Mark = 'published' | 'from memory' | 'second hand' | 'common practice'

export interface Evidence {
  readonly mark: Mark
  /** Absent for common practice. */
  readonly source?: SourceKey
  readonly note?: string
}
