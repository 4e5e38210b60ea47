/** The search over one build: what it finds in any edition is gathered, and then nothing at all is published. */
import { cacheKey } from '../build/cache-key.ts'
import { UserError } from '../build/disk/errors.ts'
import { once } from '../build/once.ts'
import type { Unit } from '../build/unit.ts'
import { withoutControls } from '../casebook/control-characters.ts'
import type { Practice } from '../casebook/model.ts'
import type { OwnWords } from '../identity/common-words.ts'
import type { Exception, HorseIdentity } from '../identity/identifiers.ts'
import { printLeaks } from './report.ts'
import type { LeakHit, ScanFile } from './search.ts'

export interface LeakGuard {
  /** Names the program and all that is searched for. */
  readonly key: string
  /** The names that are searched for in some forms only, as a unit of the build. */
  readonly exceptions: Unit<readonly Exception[]>
  /** Whether nothing was found in a file. What was found is remembered. */
  isClean(file: ScanFile): Promise<boolean>
  /** @throws UserError that names file and place of everything that would have become public */
  refuseLeaks(): void
}

/** What the search needs to know of the program itself; asked for when there is something to search. */
export interface ProgramTexts {
  /** The tool's own words, for telling names that are everyday words. */
  readonly own: OwnWords
  /** Style sheets and scripts as they stand in pages. */
  readonly ownTexts: readonly string[]
}

export function leakGuard(
  program: string,
  practice: Practice,
  horses: readonly HorseIdentity[],
  open: () => Promise<ProgramTexts>,
): LeakGuard {
  const key = cacheKey(program, practice.name, practice.owners, practice.contacts, horses)
  // Both bring word lists along, which a build that publishes nothing does without.
  const list = once(async () => {
    const { identifiersOf } = await import('../identity/identifiers.ts')
    return identifiersOf(horses, practice, (await open()).own)
  })
  const search = once(async () => {
    const { own, ownTexts } = await open()
    const { leakSearch } = await import('./search.ts')
    return leakSearch({
      list: await list(),
      horses,
      own,
      ownTexts: [...ownTexts, ...spellings(withoutControls(practice.name))],
    })
  })
  const hits: LeakHit[] = []
  return {
    key,
    exceptions: {
      name: 'search: names in some forms only',
      key,
      make: async () => (await list()).exceptions,
    },
    isClean: async (file) => {
      const found = (await search()).scan(file)
      hits.push(...found)
      return found.length === 0
    },
    refuseLeaks: () => {
      if (hits.length > 0) throw new UserError(printLeaks(hits))
    },
  }
}

/** The practice's name may show; in a page its signs may be written as entities. */
const spellings = (name: string): string[] => [
  name,
  name.replaceAll('&', '&amp;').replaceAll("'", '&#x27;').replaceAll('"', '&quot;'),
]
