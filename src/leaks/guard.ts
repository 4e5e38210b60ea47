/** The search over one build: what it finds is gathered by the folder that is held back for it. */
import { cacheKey } from '../build/cache-key.ts'
import { once } from '../build/once.ts'
import type { Unit } from '../build/unit.ts'
import { withoutControls } from '../casebook/control-characters.ts'
import type { Practice } from '../casebook/model.ts'
import type { OwnWords } from '../identity/common-words.ts'
import type { FormerNames } from '../identity/former-names.ts'
import type { Exception, HorseIdentity } from '../identity/identifiers.ts'
import type { LeakHit, ScanFile } from './search.ts'
import { type CaseText, type SourceLine, sourceLine, textRound } from './source-line.ts'

export interface LeakGuard {
  /** Names the program and all that is searched for. */
  readonly key: string
  /** The names that are searched for in some forms only, as a unit of the build. */
  readonly exceptions: Unit<readonly Exception[]>
  /**
   * Whether nothing was found in a file. What was found is remembered.
   * @param folder within the site, that is held back where anything is found
   */
  isClean(file: ScanFile, folder: string): Promise<boolean>
  /** What was found so far. */
  refusals(): readonly Refusal[]
}

/** A folder that stays as it was, since something in it would have become public. */
export interface Refusal {
  readonly folder: string
  /** Whose page it is, by owner id; null for what anyone may read. */
  readonly owner: string | null
  readonly hits: readonly LocatedHit[]
}

export interface LocatedHit extends LeakHit {
  /** The line of the casebook that it came from; null where none reads like it. */
  readonly source: SourceLine | null
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
  former: FormerNames,
  open: () => Promise<ProgramTexts>,
  texts: () => readonly CaseText[],
): LeakGuard {
  const { name, owners, people, contacts, portfolio } = practice
  const key = cacheKey(program, name, owners, people, contacts, portfolio.hidesPractice, horses, former)
  // Both bring word lists along, which a build that publishes nothing does without.
  const listOf = async (known: Pick<Practice, 'owners' | 'people' | 'contacts'> & Partial<Practice>) => {
    const { identifiersOf } = await import('../identity/identifiers.ts')
    return identifiersOf(horses, known, (await open()).own)
  }
  const list = once(() => listOf(practice))
  const search = once(async () => {
    const { own, ownTexts } = await open()
    const { leakSearch } = await import('./search.ts')
    const names = spellings(withoutControls(name))
    const known = await listOf({ owners, people, contacts })
    return leakSearch({ list: known, horses, former, own, ownTexts: [...ownTexts, ...names] })
  })
  const searchForPractice = once(async () => {
    const { leakSearch } = await import('./search.ts')
    return leakSearch({ ...(await open()), list: await list(), horses, former })
  })
  /** Whoever opens a locked page knows the practice; its name is hidden in the portfolio alone. */
  const searchOf = ({ reader, sealed }: ScanFile) =>
    portfolio.hidesPractice && reader.kind === 'everyone' && sealed === undefined
      ? searchForPractice()
      : search()
  const found = new Map<string, Refusal>()
  let known: readonly CaseText[] | null = null
  const caseTexts = () => {
    known ??= texts()
    return known
  }
  const located = (hit: LeakHit, bytes: Uint8Array): LocatedHit => {
    if (hit.line === null || hit.column === null) return { ...hit, source: null }
    const { text, at } = textRound(new TextDecoder().decode(bytes), hit.line, hit.column)
    return { ...hit, source: sourceLine(text, at, caseTexts()) }
  }
  return {
    key,
    exceptions: {
      name: 'search: names in some forms only',
      key,
      make: async () => (await list()).exceptions,
    },
    isClean: async (file, folder) => {
      const hits = (await searchOf(file)).scan(file)
      if (hits.length === 0) return true
      const owner = file.reader.kind === 'owner' ? file.reader.owner : null
      const before = found.get(folder) ?? { folder, owner, hits: [] }
      found.set(folder, { ...before, hits: [...before.hits, ...hits.map((hit) => located(hit, file.bytes))] })
      return false
    },
    refusals: () => [...found.values()],
  }
}

/** The practice's name may show; in a page its signs may be written as entities. */
const spellings = (name: string): string[] => [
  name,
  name.replaceAll('&', '&amp;').replaceAll("'", '&#x27;').replaceAll('"', '&quot;'),
]
