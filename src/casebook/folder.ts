/** A casebook's folder as the reader sees it; the real one is handed in, tests pass their own. */
export interface CasebookFolder {
  /** Every file below the folder, paths with forward slashes, sorted. Links are listed, never followed. */
  list(): readonly FolderEntry[]
  /** The bytes of a listed file. Throws an Error with a plain message when it cannot be read. */
  read(path: string): Uint8Array
}

export interface FolderEntry {
  readonly path: string
  readonly kind: 'file' | 'link' | 'other'
  readonly size: number
  /** Milliseconds, for caches only. */
  readonly modified: number
}
