/** A unit of a build: a key and a function. The same key means the same files. */
import { UserError } from './disk/errors.ts'
import type { Files } from './disk/files.ts'
import { type MadeFile, type Output, type Staged, type Staging, sharedBuffer, stage } from './disk/staging.ts'
import { hasFragment, keepFragment } from './fragments.ts'

/** A unit as it was built: what is kept of it from one build to the next. */
export interface BuiltUnit<Notes = unknown> {
  readonly key: string
  readonly outputs: readonly Output[]
  /** Names of the texts that it keeps in the fragment cache. */
  readonly fragments: readonly string[]
  /** What it gives besides files: plain data, and small. */
  readonly notes: Notes
}

interface Keyed<Notes> {
  /** Unlike any other unit's, in words that a person may read. */
  readonly name: string
  /** Of all that decides what is made (`cacheKey`). */
  readonly key: string
  /** Whether what was noted is still true, where that cannot be told by the key. */
  isCurrent?(notes: Notes): boolean
}

/** A unit that is made in this thread. */
export interface Unit<Notes = unknown> extends Keyed<Notes> {
  /** @param before the unit as last built, whatever its key; undefined where there was none */
  make(output: UnitOutput, before: BuiltUnit<Notes> | undefined): Promise<Notes>
}

/** A unit whose making is described by plain data, so that a pool may do it in another thread. */
export interface PooledUnit<Job, Notes = unknown> extends Keyed<Notes> {
  /** Asked for where it is to be made. */
  job(): Job
}

/** Where a unit puts what it makes. */
export interface UnitOutput {
  /** Takes each file as soon as it is made: many pages together are too much to hold on to. */
  put(file: MadeFile): Output
  /** Keeps a text from build to build and gives its name. */
  keep(text: string): string
  /** Keeps a text on that an earlier build kept; false where it is gone. */
  keepOn(name: string): boolean
  /** Says that what was read is not what the key names any more: the unit is made again next time. */
  markStale(): void
  /** Says that nothing of it may be published: what was remembered of it before stays, and it is made again next time. */
  holdBack(): void
}

/** A unit just made. Travels between threads, so plain data only. */
export interface MadeUnit<Notes> {
  readonly name: string
  readonly outputs: readonly Staged[]
  readonly fragments: readonly string[]
  readonly isStale: boolean
  readonly isHeldBack: boolean
  readonly notes: Notes
}

/** Where units leave what they make; plain data, so that it can be handed to a thread. */
export interface BuildPaths {
  readonly staging: Staging
  /** Folder of the fragment cache. */
  readonly fragments: string
}

/** Makes one unit after another and writes each file to the staging folder at once. */
export type MakeUnit = <Notes>(
  name: string,
  make: (output: UnitOutput) => Promise<Notes>,
) => Promise<MadeUnit<Notes>>

export function unitMaker(files: Files, { staging, fragments: folder }: BuildPaths): MakeUnit {
  const encode = sharedBuffer()
  return async (name, make) => {
    const outputs: Staged[] = []
    const fragments = new Set<string>()
    let isStale = false
    let isHeldBack = false
    const output: UnitOutput = {
      put: (file) => {
        const staged = stage(files, staging, file, encode)
        outputs.push(staged)
        return staged
      },
      keep: (text) => {
        const kept = keepFragment(files, folder, text)
        fragments.add(kept)
        return kept
      },
      keepOn: (name) => {
        if (!hasFragment(files, folder, name)) return false
        fragments.add(name)
        return true
      },
      markStale: () => {
        isStale = true
      },
      holdBack: () => {
        isHeldBack = true
      },
    }
    try {
      const notes = await make(output)
      return { name, outputs, fragments: [...fragments], isStale, isHeldBack, notes }
    } catch (error) {
      if (error instanceof UserError || !(error instanceof Error)) throw error
      error.message = `the pages of ${name} could not be made: ${error.message}`
      throw error
    }
  }
}
