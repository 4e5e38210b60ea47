/** What is in the casebook now, and a key for each horse: the same key means the same pages. */
import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import { UserError } from '../../build/disk/errors.ts'
import { type KnownInputs, knownInputs } from '../../build/inputs.ts'
import type { CasebookFolder, FolderEntry } from '../../casebook/folder.ts'
import type { PracticeRead } from '../../casebook/read.ts'
import { approvalsFile, approvedIn, readApprovals } from '../../identity/approvals.ts'
import type { SiteOptions } from './options.ts'
import type { KnownHorses, SurveyedHorse } from './surveyed-horse.ts'

export interface Survey extends PracticeRead {
  readonly inputs: KnownInputs
  /** By id. */
  readonly horses: readonly SurveyedHorse[]
}

/** The unit of the build that holds what practice.md says and which horses there are. */
export const practiceUnit = 'casebook: practice'

export async function surveyCasebook(
  folder: CasebookFolder,
  builder: Builder,
  { asOf, editions }: Pick<SiteOptions, 'asOf' | 'editions'>,
  known: KnownHorses = new Map(),
): Promise<Survey> {
  const inputs = knownInputs(folder, builder.before)
  const { program } = builder.before
  const entries = folder.list()
  const listing = entries.map(({ path, kind }) => [path, kind])
  const [read] = await builder.build<PracticeRead>([
    {
      name: practiceUnit,
      key: cacheKey(program, asOf, inputs['practice.md']?.hash ?? '', listing),
      make: async () => (await import('../../casebook/read.ts')).readPractice(folder, asOf),
    },
  ])
  if (read === undefined) throw new Error('practice.md was not read')
  const { practice, horseIds } = read.notes
  const common = cacheKey(program, asOf, practice)
  const built = editions.map(({ name }) => name)
  const approvals = readApprovals(approvalsText(folder, inputs))
  const byHorse = byFolder(entries)
  const horses = horseIds.map((id) => {
    const listed = byHorse.get(id) ?? []
    const approved = [...approvedIn(approvals, id)].sort()
    const under = [common, built, approved].join()
    const from = listed.flatMap((entry) => [entry, inputs[entry.path]])
    const before = known.get(id)
    if (before?.under === under && isSameList(before.from, from)) return before.horse
    const own = listed.map((entry) => ({ ...entry, hash: inputs[entry.path]?.hash ?? null }))
    const readKey = cacheKey(
      common,
      id,
      own.map(({ path, kind, hash }) => [path, kind, hash]),
    )
    const horse = { id, approved, readKey, key: cacheKey(readKey, built, approved), files: own }
    known.set(id, { under, from, horse })
    return horse
  })
  for (const id of known.keys()) if (!byHorse.has(id)) known.delete(id)
  const diagnostics = [...read.notes.diagnostics, ...approvals.report.diagnostics]
  return { ...read.notes, diagnostics, inputs, horses }
}

function approvalsText(folder: CasebookFolder, inputs: KnownInputs): string | null {
  if (inputs[approvalsFile] === undefined) return null
  try {
    return new TextDecoder().decode(folder.read(approvalsFile))
  } catch (error) {
    // Without it nothing is approved, and what was published stays.
    if (error instanceof UserError) return null
    throw error
  }
}

const isSameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, index) => one === b[index])

/** Files by the first folder of their path. */
function byFolder(files: readonly FolderEntry[]): ReadonlyMap<string, readonly FolderEntry[]> {
  const groups = new Map<string, FolderEntry[]>()
  for (const file of files) {
    const folder = file.path.slice(0, file.path.indexOf('/') + 1).slice(0, -1)
    const group = groups.get(folder)
    if (group) group.push(file)
    else groups.set(folder, [file])
  }
  return groups
}
