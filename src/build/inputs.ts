/** The input files of a build, each known by its content; one that is as it was is not read again. */
import type { CasebookFolder, FolderEntry } from '../casebook/folder.ts'
import { contentHash } from './disk/content-hash.ts'
import { UserError } from './disk/errors.ts'

/** An input file as last read. */
export interface KnownInput {
  readonly size: number
  readonly modified: number
  readonly hash: string
}

/** By path. */
export type KnownInputs = Readonly<Record<string, KnownInput>>

/** The input files as a build left them. */
export interface SurveyedInputs {
  /** When they were listed, milliseconds. */
  readonly listedAt: number
  readonly inputs: KnownInputs
}

/** A file saved again within this time of being read can keep its time of change on some disks. */
const unsureWithin = 2_000
/** A larger file goes by its size and time: no case file is that long, and a picture that large is refused. */
const readInFullUpTo = 64 * 1024 * 1024

/** The files of a folder; one whose size and time are as they were is not read again. */
export function knownInputs(folder: CasebookFolder, before: SurveyedInputs): KnownInputs {
  const files: Record<string, KnownInput> = {}
  for (const entry of folder.list()) {
    if (entry.kind !== 'file') continue
    const { path, size, modified } = entry
    const known = before.inputs[path]
    const isSure = modified < before.listedAt - unsureWithin
    const isSame = known !== undefined && known.size === size && known.modified === modified && isSure
    files[path] = isSame ? known : { size, modified, hash: hashOf(folder, entry) }
  }
  return files
}

function hashOf(folder: CasebookFolder, { path, size, modified }: FolderEntry): string {
  if (size > readInFullUpTo) return `size ${size}, changed ${modified}`
  try {
    return contentHash(folder.read(path))
  } catch (error) {
    if (!(error instanceof UserError)) throw error
    return 'cannot be read'
  }
}

/** Whether every file is as it was, so that nothing needs to be remembered anew. */
export const isSameInputs = (now: KnownInputs, before: KnownInputs): boolean =>
  Object.keys(before).length === Object.keys(now).length &&
  Object.entries(now).every(([path, file]) => before[path] === file)
