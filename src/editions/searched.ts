import { cacheKey } from '../build/cache-key.ts'
import { UserError } from '../build/disk/errors.ts'
import type { Output } from '../build/disk/staging.ts'
import type { Unit } from '../build/unit.ts'
import type { Protection } from './edition.ts'

/** What was searched and found clean. */
interface Clean {
  /** Names all that was searched for. */
  readonly search: string
  /** Files by path and hash. */
  readonly files: readonly string[]
}

/** Anyone may read it, so every file is searched; one that was searched for the same names before is not again. */
export const searched: Protection = {
  units: async (_all, { edition, guard, builder }) => {
    const outputs = builder.outputs().filter(({ path }) => path.startsWith(`${edition.folder}/`))
    const names = outputs.map(nameOf)
    const unit: Unit<Clean> = {
      name: `${edition.folder}: search`,
      key: cacheKey(guard.key, names),
      make: async ({ holdBack }, before) => {
        const clean = new Set(before?.notes.search === guard.key ? before.notes.files : [])
        for (const { path } of outputs.filter((output) => !clean.has(nameOf(output)))) {
          const bytes = builder.read(path)
          if (bytes === null) throw new UserError(`${path} is gone. Build again.`)
          if (!(await guard.isClean({ path, bytes, reader: { kind: 'everyone' } }, edition.folder)))
            holdBack()
        }
        return { search: guard.key, files: names }
      },
    }
    return [unit]
  },
}

const nameOf = ({ path, hash }: Output) => `${path} ${hash}`
