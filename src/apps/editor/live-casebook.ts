/**
 * One casebook as an editor sees it, read again with each change: the horse whose file is written at once, the others
 * one by one while nothing else is to be done.
 */
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { keptReads } from '../../casebook/kept-reads.ts'
import type { Horse, Practice } from '../../casebook/model.ts'
import { standInPractice } from '../../casebook/practice-file.ts'
import {
  type LiveHorse,
  type PracticeRead,
  readLiveHorse,
  readPractice,
  wholeDiagnostics,
} from '../../casebook/read.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type OpenFiles, openFiles } from './open-files.ts'

export interface LiveCasebook {
  /** An editor holds this text of a file. */
  change(path: string, text: string): void
  close(path: string): void
  /** Something was saved, by whomever. */
  saved(): void
  /** The practice as it stands, or what holds while practice.md cannot be used. */
  practice(): Practice
  /** A horse as far as its files can be read. */
  horse(id: string): Horse | null
  /** Paths of the files in a horse's folder, from there. */
  filesOf(id: string): readonly string[]
  /** What `check` would say now, as far as the horses have been read. */
  diagnostics(): readonly Diagnostic[]
  /** Reads one horse that waits to be read. False when none does. */
  readOneMore(): boolean
}

/** What a horse's files are read with besides themselves. While it is the same, what was read of them is kept. */
interface HorseState {
  setting: string
  kept: ReturnType<typeof keptReads>
  read: LiveHorse | null
}

export function liveCasebook(root: string, today: () => PlainDate): LiveCasebook {
  const files = openFiles(root)
  files.refresh()
  const horses = new Map<string, HorseState>()
  const waiting = new Set<string>()
  let top: { readonly read: PracticeRead; readonly from: readonly unknown[] } | null = null
  let setting = ''

  /** practice.md and the list of horses; where either means something else now, all horses wait to be read. */
  const readTop = (): PracticeRead => {
    const from = [today(), files.names(), practiceBytes(files)]
    if (top && from.every((one, index) => one === top?.from[index])) return top.read
    const read = readPractice(files, today())
    top = { read, from }
    const { practice, horseIds } = read
    const { body: _body, ...used } = practice ?? standInPractice
    const now = JSON.stringify([today(), used])
    for (const id of [...horses.keys()]) if (!horseIds.includes(id)) horses.delete(id)
    for (const id of horseIds) if (now !== setting || !horses.has(id)) waiting.add(id)
    setting = now
    return read
  }
  const readOne = (id: string): LiveHorse | null => {
    const { practice, horseIds } = readTop()
    waiting.delete(id)
    if (!horseIds.includes(id)) return null
    const own = files.below(id)
    const around = JSON.stringify([setting, own.map(({ path, kind }) => [path, kind])])
    const before = horses.get(id)
    const state = before?.setting === around ? before : { setting: around, kept: keptReads(), read: null }
    const folder = { list: () => own, read: files.read }
    state.read = readLiveHorse(folder, id, practice ?? standInPractice, today(), state.kept)
    horses.set(id, state)
    return state.read
  }
  const dirty = (path: string) => {
    const [id = '', ...rest] = path.split('/')
    if (rest.length === 0) return
    files.refresh(id)
    waiting.add(id)
  }
  return {
    change: (path, text) => {
      dirty(path)
      files.hold(path, text)
    },
    close: (path) => {
      files.letGo(path)
      dirty(path)
    },
    saved: () => {
      files.refresh()
      for (const id of readTop().horseIds) waiting.add(id)
    },
    practice: () => readTop().practice ?? standInPractice,
    horse: (id) => {
      readTop()
      return (waiting.has(id) ? readOne(id) : (horses.get(id)?.read ?? null))?.readable ?? null
    },
    filesOf: (id) =>
      files.below(id).flatMap(({ path, kind }) => (kind === 'file' ? [path.slice(id.length + 1)] : [])),
    diagnostics: () => {
      const practice = readTop()
      const reads = practice.horseIds.flatMap((id) => {
        const read = horses.get(id)?.read
        return read ? [{ id, ...read }] : []
      })
      return wholeDiagnostics(practice, reads)
    },
    readOneMore: () => {
      readTop()
      const [id] = waiting
      if (id === undefined) return false
      readOne(id)
      return waiting.size > 0
    },
  }
}

/** The same object for as long as practice.md is as it was. */
function practiceBytes(files: OpenFiles): Uint8Array | null {
  try {
    return files.read('practice.md')
  } catch {
    return null
  }
}
