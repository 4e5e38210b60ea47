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
  const { name, owners, contacts, portfolio } = practice
  const key = cacheKey(program, name, owners, contacts, portfolio.hidesPractice, horses)
  // Both bring word lists along, which a build that publishes nothing does without.
  const listOf = async (known: Pick<Practice, 'owners' | 'contacts'> & Partial<Practice>) => {
    const { identifiersOf } = await import('../identity/identifiers.ts')
    return identifiersOf(horses, known, (await open()).own)
  }
  const list = once(() => listOf(practice))
  const search = once(async () => {
    const { own, ownTexts } = await open()
    const { leakSearch } = await import('./search.ts')
    const names = spellings(withoutControls(name))
    const known = await listOf({ owners, contacts })
    return leakSearch({ list: known, horses, own, ownTexts: [...ownTexts, ...names] })
  })
  const searchForPractice = once(async () => {
    const { leakSearch } = await import('./search.ts')
    return leakSearch({ ...(await open()), list: await list(), horses })
  })
  /** Whoever opens a locked page knows the practice; its name is hidden in the portfolio alone. */
  const searchOf = ({ reader, sealed }: ScanFile) =>
    portfolio.hidesPractice && reader.kind === 'everyone' && sealed === undefined
      ? searchForPractice()
      : search()
  const hits: LeakHit[] = []
  return {
    key,
    exceptions: {
      name: 'search: names in some forms only',
      key,
      make: async () => (await list()).exceptions,
    },
    isClean: async (file) => {
      const found = (await searchOf(file)).scan(file)
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
