/**
 * What a build remembers for the next one. It may be deleted at any time: then all is made again.
 * It holds only what stands in the casebook now, so it cannot grow without end.
 */
import { join } from 'node:path'
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { PracticeRead } from '../casebook/read.ts'
import type { Exception } from '../identity/identifiers.ts'
import type { HorseSummary } from '../pages/shared/summary.ts'
import type { Files } from './disk/files.ts'
import { Trouble } from './disk/trouble.ts'
import type { ForOthers } from './for-others.ts'
import type { LockMemory } from './locked/lock.ts'

/** A file of the casebook as last read. */
export interface KnownFile {
  readonly size: number
  readonly modified: number
  readonly hash: string
}

export type KnownFiles = Readonly<Record<string, KnownFile>>

/** A file of the site as last written. */
export interface Output {
  /** Within the site, forward slashes. */
  readonly path: string
  readonly hash: string
  readonly size: number
  readonly modified: number
}

/** Something that was made from inputs; the same key means the same outputs. */
export interface Piece {
  readonly key: string
  readonly outputs: readonly Output[]
}

export interface HorsePiece extends Piece {
  readonly diagnostics: readonly Diagnostic[]
  readonly summary: HorseSummary | null
  readonly forOthers: ForOthers | null
}

export interface SharedPiece extends Piece {
  /** How an owner's page is locked, so that an unchanged one is not locked again. */
  readonly locked?: LockMemory
  /** Names that the search looks for in some forms only. */
  readonly exceptions?: readonly Exception[]
  /** Files that were searched for names and are clean. */
  readonly clean?: readonly string[]
}

export interface State {
  /** Which program made it; another one trusts nothing of it. */
  readonly program: string
  /** When the casebook was listed, milliseconds. */
  readonly listedAt: number
  readonly files: KnownFiles
  readonly practice: { readonly key: string; readonly read: PracticeRead } | null
  readonly horses: Readonly<Record<string, HorsePiece>>
  /** Pages over all horses and what they need: by name of the piece. */
  readonly shared: Readonly<Record<string, SharedPiece>>
}

const noState = (program: string): State => ({
  program,
  listedAt: 0,
  files: {},
  practice: null,
  horses: {},
  shared: {},
})

/** Where a build remembers for the next one. */
export interface Memory {
  /** The state that this very program left, or an empty one. */
  load(program: string): State
  /** Puts the state in place whole. Where the disk refuses, the next build only has more to do. */
  save(state: State): void
}

/** Remembers on the disk, in the work folder. */
export function diskMemory(files: Files, workFolder: string): Memory {
  const path = join(workFolder, 'state.json')
  return {
    load: (program) => {
      const bytes = files.read(path)
      if (bytes === null) return noState(program)
      try {
        const state: State = JSON.parse(new TextDecoder().decode(bytes))
        return state.program === program ? state : noState(program)
      } catch {
        return noState(program)
      }
    },
    save: (state) => {
      try {
        files.write(`${path}.new`, JSON.stringify(state))
        files.move(`${path}.new`, path)
      } catch (error) {
        if (!(error instanceof Trouble)) throw error
      }
    },
  }
}

/**
 * Remembers in a warm process, over a memory on the disk that it reads once and writes when told to. Should the
 * process end before that, the disk knows an older state than the site shows, and the next build makes the difference.
 */
export function warmMemory(): { over(disk: Memory): Memory; settle(): void } {
  let state: State | null = null
  let settle = () => {}
  return {
    over: (disk) => ({
      load: (program) => {
        state ??= disk.load(program)
        return state
      },
      save: (next) => {
        state = next
        settle = () => disk.save(next)
      },
    }),
    settle: () => {
      settle()
      settle = () => {}
    },
  }
}
