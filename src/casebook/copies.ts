/**
 * Copies of a casebook's files that programs leave where two machines wrote at once, known by names that nobody gives a
 * file by hand. Nothing in them is read, so what they alone hold is lost until a person puts it where it belongs.
 */
import type { FolderEntry } from './folder.ts'
import { type Report, reportOn } from './report.ts'
import { renamed } from './stray.ts'
import { quote } from './words.ts'

/** Files whose copies matter: those that are read, and those that the program keeps beside them. */
const ownFile =
  /^(?:practice\.md|horse\.md|\d{4}-\d{2}-\d{2}(?:-[b-z])?\.md|passphrases\.yaml|approvals\.txt|former-names\.yaml)$/
const visitFile = /^(\d{4}-\d{2}-\d{2})(?:-[b-z])?\.md$/

interface CopyName {
  /** The name of the file that it is a copy of. */
  readonly of: string
  readonly kind: 'two machines' | 'numbered' | 'merge' | 'open elsewhere'
}

/** What stands before the ending and says that it is a copy. */
const marks: readonly (readonly [RegExp, CopyName['kind']])[] = [
  // `horse (conflicted copy 2026-11-27).md`, `horse (Ilse's conflicted copy).md`
  [/ \((?:[^()]* )?(?:conflicted copy|case conflict)(?: [^()]*)?\)$/i, 'two machines'],
  // `2026-11-20.sync-conflict-20261127-101112-ABCDEFG.md`
  [/\.sync-conflict-\d{8}-\d{6}(?:-\w+)?$/, 'two machines'],
  // `horse_conflict-20261127-101112.md`
  [/_conflict-\d{8}-\d{6}$/, 'two machines'],
  // `horse (1).md`, `horse - Copy (2).md`, `horse copy 2.md`
  [/(?: - Copy(?: \(\d{1,2}\))?| copy(?: \d{1,2})?)$/i, 'numbered'],
  [/ \(\d{1,2}\)$/, 'numbered'],
  // `horse_LOCAL_4711.md`
  [/_(?:BASE|LOCAL|REMOTE|BACKUP)_\d+$/, 'merge'],
]

/** Of which file a name says that it is a copy; null for any other. */
export function copyIn(name: string): CopyName | null {
  const known = (of: string, kind: CopyName['kind']): CopyName | null =>
    ownFile.test(of) ? { of, kind } : null
  if (name.startsWith('~$'))
    return known(name.slice(2).replace(/\.(?:docx?|rtf|odt)$/i, '.md'), 'open elsewhere')
  const merged = /^(.+?)(?:\.orig|\.rej|~HEAD|~[0-9a-f]{7,40}(?: \(.*\))?)$/.exec(name)
  if (merged) return known(merged[1] ?? '', 'merge')
  const copyOf = /^Copy(?: \(\d{1,2}\))? of (.+)$/i.exec(name)
  if (copyOf) return known(copyOf[1] ?? '', 'numbered')
  const [, stem = '', ending = ''] = /^(.*)(\.\w+)$/.exec(name) ?? []
  for (const [mark, kind] of marks) {
    if (mark.test(stem)) return known(stem.replace(mark, '') + ending, kind)
  }
  return null
}

/** The same for a folder: `juno (conflicted copy 2026-11-27)`. */
export function copiedFolder(name: string): string | null {
  const mark = marks.find(([pattern]) => pattern.test(name))?.[0]
  return mark ? name.replace(mark, '') : null
}

/** What is said of a file that is a copy of another; null where it is none. */
export function copyReport({ path, kind }: FolderEntry, taken: ReadonlySet<string>): Report | null {
  const folder = path.slice(0, path.lastIndexOf('/') + 1)
  const copy = kind === 'file' ? copyIn(path.slice(folder.length)) : null
  if (!copy) return null
  const of = `${folder}${copy.of}`
  const isThere = taken.has(of)
  // A file with a number and nothing that it could be a copy of has most likely only the wrong name.
  if (copy.kind === 'numbered' && !isThere) return null
  const report = reportOn(path, '')
  if (copy.kind === 'open elsewhere') {
    report.warning('copy', null, `${quote(path)} says that another program has ${of} open.`, {
      expected: 'a file that one program writes at a time',
      advice: `close it there; where nothing is open, delete ${quote(path)}`,
    })
    return report
  }
  report.warning('copy', null, `${quote(path)} is ${saysOf[copy.kind](of)}; it is not read.`, {
    expected: 'one file, which holds what both hold',
    ...(isThere ? { advice: whatToDo(of, copy.of) } : { fix: renamed(path, of) }),
  })
  return report
}

const saysOf: Readonly<Record<Exclude<CopyName['kind'], 'open elsewhere'>, (of: string) => string>> = {
  'two machines': (of) => `a second version of ${of}, which two machines wrote at once`,
  numbered: (of) => `a copy of ${of}`,
  merge: (of) => `what a merge left of ${of}`,
}

function whatToDo(of: string, name: string): string {
  const [, day] = visitFile.exec(name) ?? []
  const settle = `compare the two, put what is missing into ${of}, then delete the copy`
  return day === undefined
    ? settle
    : `${settle}; if it is another visit of that day, name it ${of.slice(0, -name.length)}${day}-b.md or the next letter that is free`
}
