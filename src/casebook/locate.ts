/** Which file of a casebook's folder is what, by its path alone. Links are named, never followed. */
import { parseDate } from '../hoof/dates.ts'
import { copiedFolder, copyReport } from './copies.ts'
import type { FolderEntry } from './folder.ts'
import { idLike } from './practice-file.ts'
import { type Report, reportOn } from './report.ts'
import { strayReport } from './stray.ts'
import { quote } from './words.ts'

/** A visit's file name: its date, and a letter from b for a further visit that day. */
const visitName = /^(\d{4}-\d{2}-\d{2})(?:-[b-z])?\.md$/
const horseId = /^[a-z0-9]+(?:-[a-z0-9]+)*$/

export interface HorseEntries {
  readonly horse: FolderEntry | null
  /** In order of name, which is order of time. */
  readonly visits: readonly FolderEntry[]
  /** Every file below the horse's folder, paths from there. */
  readonly files: ReadonlySet<string>
  readonly links: ReadonlySet<string>
}

/** What belongs to one horse. */
export function locateHorse(entries: readonly FolderEntry[], id: string): HorseEntries {
  const prefix = `${id}/`
  const files = new Set<string>()
  const links = new Set<string>()
  const visits: FolderEntry[] = []
  let horse: FolderEntry | null = null
  for (const entry of entries) {
    if (!entry.path.startsWith(prefix)) continue
    const name = entry.path.slice(prefix.length)
    if (entry.kind === 'link') links.add(name)
    if (entry.kind === 'file') files.add(name)
    if (name === 'horse.md') horse = entry
    else if (visitName.test(name)) visits.push(entry)
  }
  // A second visit's `-b` stands after the first although `-` sorts before `.`.
  visits.sort((a, b) => (a.path.slice(0, -3) < b.path.slice(0, -3) ? -1 : 1))
  return { horse, visits, files, links }
}

/** The date in a visit's file name; null when no such day exists. */
export const dateInName = (path: string): string | null =>
  parseDate(path.slice(path.lastIndexOf('/') + 1).slice(0, 10))

export interface Located {
  readonly practice: FolderEntry | null
  /** The file that is practice.md under another name, where there is none of that name. */
  readonly likePractice: string | null
  /** Sorted. */
  readonly horseIds: readonly string[]
  /** Of files that lie in no known place, and of links. */
  readonly reports: readonly Report[]
}

/** The casebook's parts, and what lies where nothing is looked for. Hidden files and folders are left alone. */
export function locate(entries: readonly FolderEntry[]): Located {
  const ids = new Set<string>()
  const taken = new Set(entries.map((entry) => entry.path))
  const folders = new Set(entries.map((entry) => entry.path.split('/')[0] ?? ''))
  const misnamed = new Set<string>()
  const reports: Report[] = []
  let practice: FolderEntry | null = null
  for (const entry of entries) {
    const parts = entry.path.split('/')
    if (parts.some((part) => part.startsWith('.'))) continue
    const [folder = '', name = ''] = parts
    const isCaseFile = parts.length === 2 && (name === 'horse.md' || visitName.test(name))
    if (entry.path === 'practice.md') practice = entry
    else if (isCaseFile && horseId.test(folder)) ids.add(folder)
    else if (entry.kind === 'link') {
      if (mayHoldCases(parts)) reports.push(linkReport(entry.path))
    } else if (isCaseFile) {
      if (!misnamed.has(folder)) reports.push(folderReport(folder, entry.path, folders))
      misnamed.add(folder)
    } else {
      const report = copyReport(entry, taken) ?? strayReport(entry.path, taken)
      if (report) reports.push(report)
    }
  }
  const likePractice = practice ? null : (entries.find(isLikePractice)?.path ?? null)
  return {
    practice,
    likePractice,
    horseIds: [...ids].sort(),
    reports: reports.filter(({ file }) => file !== likePractice),
  }
}

const isLikePractice = ({ path, kind }: FolderEntry): boolean =>
  kind === 'file' && /^practice(?:\.(?:md|mdown|markdown|txt|text))*$/i.test(path)

/** A link to Markdown, or one without an ending: it may lead to a whole folder. A linked picture is told of where it is named. */
const mayHoldCases = (parts: readonly string[]): boolean =>
  /(?:^[^.]+|\.md|\.markdown)$/i.test(parts.at(-1) ?? '')

function linkReport(path: string): Report {
  const report = reportOn(path, '')
  report.warning(
    'link',
    null,
    `${quote(path)} is a link; links are never followed, so what it points to is not read.`,
    {
      expected: 'files and folders of its own',
      advice: 'replace the link by a copy',
    },
  )
  return report
}

/** A folder of case files whose name can be no horse's. One report for all that lies in it. */
function folderReport(folder: string, first: string, folders: ReadonlySet<string>): Report {
  const report = reportOn(first, '')
  const id = idLike(folder)
  const isFree = !folders.has(id) || id === folder.toLowerCase()
  const original = copiedFolder(folder)
  if (original !== null && folders.has(original)) {
    report.error(
      'copy',
      null,
      `The folder ${quote(folder)} is a copy of ${original}; nothing in it is read.`,
      {
        expected: 'one folder for each horse',
        advice: `compare the two, put what is missing into ${original}, then delete the copy`,
      },
    )
    return report
  }
  report.error('horse-folder', null, `${quote(folder)} cannot be the name of a horse's folder.`, {
    expected: 'lower-case letters, digits and hyphens',
    ...(isFree
      ? { fix: { words: `rename the folder to ${id}`, rename: { from: folder, to: id } } }
      : { advice: `there is a folder ${id} already: put the files together, or give this one another name` }),
  })
  return report
}
