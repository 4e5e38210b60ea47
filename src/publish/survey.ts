/** What stands in the casebook now, and a key for each horse: the same key means the same pages. */
import type { CasebookFolder, FolderEntry } from '../casebook/folder.ts'
import type { PracticeRead } from '../casebook/read.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { digest, hashOf } from './digest.ts'
import { Trouble } from './disk/trouble.ts'
import type { Edition } from './made.ts'
import type { KnownFile, KnownFiles, State } from './state.ts'

export interface SurveyedHorse {
  readonly id: string
  readonly key: string
  readonly entries: readonly FolderEntry[]
}

export interface Survey {
  readonly files: KnownFiles
  readonly practice: { readonly key: string; readonly read: PracticeRead }
  readonly horses: readonly SurveyedHorse[]
  /** Whether every file is as it was, so that nothing needs to be remembered anew. */
  readonly isAsBefore: boolean
}

/** Beside the casebook's files, all that decides what the pages say. */
export interface Terms {
  readonly program: string
  readonly asOf: PlainDate
  readonly editions: readonly Edition[]
}

/** A file saved again within this time of being read can keep its time of change on some disks. */
const unsureWithin = 2_000
/** A larger file goes by its size and time: no case file is that long, and a picture that large is refused. */
const readInFullUpTo = 64 * 1024 * 1024

export async function surveyCasebook(folder: CasebookFolder, state: State, terms: Terms): Promise<Survey> {
  const entries = folder.list()
  const files = knownFiles(folder, entries, state)
  const practice = await practiceOf(folder, entries, files, state, terms)
  const byFolder = grouped(entries)
  const common = digest([
    terms.program,
    terms.asOf,
    ...terms.editions,
    JSON.stringify(practice.read.practice),
  ])
  const horses = practice.read.horseIds.map((id) => {
    const own = byFolder.get(id) ?? []
    return { id, key: digest([common, id, ...own.flatMap((entry) => nameOf(entry, files))]), entries: own }
  })
  const isAsBefore =
    state.practice?.key === practice.key &&
    Object.keys(state.files).length === Object.keys(files).length &&
    Object.entries(files).every(([path, file]) => state.files[path] === file)
  return { files, practice, horses, isAsBefore }
}

/** Entries by the first folder of their path. */
function grouped(entries: readonly FolderEntry[]): ReadonlyMap<string, readonly FolderEntry[]> {
  const groups = new Map<string, FolderEntry[]>()
  for (const entry of entries) {
    const folder = entry.path.slice(0, entry.path.indexOf('/') + 1).slice(0, -1)
    const group = groups.get(folder)
    if (group) group.push(entry)
    else groups.set(folder, [entry])
  }
  return groups
}

/** A file whose size and time are as they were is not read again. */
function knownFiles(folder: CasebookFolder, entries: readonly FolderEntry[], state: State): KnownFiles {
  const files: Record<string, KnownFile> = {}
  for (const entry of entries) {
    if (entry.kind !== 'file') continue
    const { path, size, modified } = entry
    const before = state.files[path]
    const isSure = modified < state.listedAt - unsureWithin
    const isSame = before !== undefined && before.size === size && before.modified === modified && isSure
    files[path] = isSame ? before : { size, modified, hash: contentOf(folder, entry) }
  }
  return files
}

function contentOf(folder: CasebookFolder, { path, size, modified }: FolderEntry): string {
  if (size > readInFullUpTo) return `size ${size}, changed ${modified}`
  try {
    return hashOf(folder.read(path))
  } catch (error) {
    if (!(error instanceof Trouble)) throw error
    return 'cannot be read'
  }
}

const nameOf = ({ path, kind }: FolderEntry, files: KnownFiles): readonly string[] => [
  path,
  kind,
  files[path]?.hash ?? '',
]

/** practice.md, and which horses there are. Depends on that file, on which files there are, and on today. */
async function practiceOf(
  folder: CasebookFolder,
  entries: readonly FolderEntry[],
  files: KnownFiles,
  state: State,
  terms: Terms,
): Promise<Survey['practice']> {
  const listing = entries.flatMap(({ path, kind }) => [path, kind])
  const key = digest([terms.program, terms.asOf, files['practice.md']?.hash ?? '', ...listing])
  if (state.practice?.key === key) return state.practice
  const { readPractice } = await import('../casebook/read.ts')
  return { key, read: readPractice(folder, terms.asOf) }
}
