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
import { openFiles } from './open-files.ts'

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
  /** What `check` would say now, as far as the horses have been read; true once all have. */
  diagnostics(): { readonly told: readonly Diagnostic[]; readonly isWhole: boolean }
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
  let whole: PracticeRead | null = null
  let setting = ''

  /** practice.md and the list of horses; where either means something else now, all horses wait to be read. */
  const readTop = (): PracticeRead => {
    if (whole) return whole
    whole = readPractice(files, today())
    const { practice, horseIds } = whole
    const { body: _body, ...used } = practice ?? standInPractice
    const now = JSON.stringify([today(), used])
    for (const id of [...horses.keys()]) if (!horseIds.includes(id)) horses.delete(id)
    for (const id of horseIds) if (now !== setting || !horses.has(id)) waiting.add(id)
    setting = now
    return whole
  }
  const namesIn = (id: string) =>
    files.list().flatMap(({ path, kind }) => (path.startsWith(`${id}/`) ? [`${kind} ${path}`] : []))
  const readOne = (id: string): LiveHorse | null => {
    const { practice, horseIds } = readTop()
    waiting.delete(id)
    if (!horseIds.includes(id)) return null
    const with_ = JSON.stringify([setting, namesIn(id)])
    const before = horses.get(id)
    const state = before?.setting === with_ ? before : { setting: with_, kept: keptReads(), read: null }
    state.read = readLiveHorse(files, id, practice ?? standInPractice, today(), state.kept)
    horses.set(id, state)
    return state.read
  }
  const dirty = (path: string) => {
    const [id = '', ...rest] = path.split('/')
    // Which files there are matters to the list of horses and to stray files, and is cheap to read.
    whole = null
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
      whole = null
      for (const id of readTop().horseIds) waiting.add(id)
    },
    practice: () => readTop().practice ?? standInPractice,
    horse: (id) => {
      readTop()
      return (waiting.has(id) ? readOne(id) : (horses.get(id)?.read ?? null))?.readable ?? null
    },
    filesOf: (id) =>
      files
        .list()
        .flatMap(({ path, kind }) =>
          kind === 'file' && path.startsWith(`${id}/`) ? [path.slice(id.length + 1)] : [],
        ),
    diagnostics: () => {
      const top = readTop()
      const reads = top.horseIds.flatMap((id) => {
        const read = horses.get(id)?.read
        return read ? [{ id, ...read }] : []
      })
      return { told: wholeDiagnostics(top, reads), isWhole: waiting.size === 0 }
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
