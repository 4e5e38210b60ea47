/**
 * What a build remembers for the next one. It may be deleted at any time: then all is made again.
 * It holds only what the site is made of now, so it cannot grow without end.
 */
import { join } from 'node:path'
import { UserError } from './disk/errors.ts'
import type { Files } from './disk/files.ts'
import { readCached, seal, unseal, writeCached } from './disk/sealed.ts'
import type { SurveyedInputs } from './inputs.ts'
import type { BuiltUnit } from './unit.ts'

export interface BuildState extends SurveyedInputs {
  /** Which program made it; another one trusts nothing of it. */
  readonly program: string
  /** By name. */
  readonly units: Readonly<Record<string, BuiltUnit>>
}

const noState = (program: string): BuildState => ({ program, listedAt: 0, inputs: {}, units: {} })

/** Where a build remembers for the next one. */
export interface Memory {
  /** The state that this very program left, or an empty one. */
  load(program: string): BuildState
  /** Puts the state in place whole. Where the disk refuses, the next build only has more to do. */
  save(state: BuildState): void
}

/** Remembers on the disk, in the work folder. */
export function diskMemory(files: Files, workFolder: string): Memory {
  const name = 'state.json'
  const path = join(workFolder, name)
  return {
    load: (program) => {
      const text = unseal(name, readCached(files, path))
      const state: BuildState | null = text === null ? null : JSON.parse(text)
      return state?.program === program ? state : noState(program)
    },
    save: (state) => {
      try {
        writeCached(files, path, seal(name, JSON.stringify(state)))
      } catch (error) {
        if (!(error instanceof UserError)) throw error
      }
    },
  }
}

/**
 * Remembers in a warm process, over a memory on the disk that it reads once and writes when told to. Should the
 * process end before that, the disk knows an older state than the site shows, and the next build makes the difference.
 */
export function warmMemory(): { over(disk: Memory): Memory; flush(): void } {
  let state: BuildState | null = null
  let flush = () => {}
  return {
    over: (disk) => ({
      load: (program) => {
        state ??= disk.load(program)
        return state
      },
      save: (next) => {
        state = next
        flush = () => disk.save(next)
      },
    }),
    flush: () => {
      flush()
      flush = () => {}
    },
  }
}
