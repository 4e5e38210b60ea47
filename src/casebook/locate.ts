/** Which file of a casebook's folder is what, by its path alone. Links are named, never followed. */
import { parseDate } from '../hoof/dates.ts'
import type { FolderEntry } from './folder.ts'
import { idLike } from './practice-file.ts'
import { likelyDate } from './readers.ts'
import { type Report, reportOn } from './report.ts'
import { quote } from './words.ts'

/** A visit's file name: its date, and a letter from b for a further visit that day. */
const visitName = /^(\d{4}-\d{2}-\d{2})(?:-[b-z])?\.md$/
const isMarkdown = /\.(?:md|markdown)$/i
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
  /** Sorted. */
  readonly horseIds: readonly string[]
  /** Of files that lie in no known place, and of links. */
  readonly reports: readonly Report[]
}

/** The casebook's parts, and what lies where nothing is looked for. Hidden files and folders are left alone. */
export function locate(entries: readonly FolderEntry[]): Located {
  const ids = new Set<string>()
  const reports: Report[] = []
  let practice: FolderEntry | null = null
  for (const entry of entries) {
    const parts = entry.path.split('/')
    if (parts.some((part) => part.startsWith('.'))) continue
    const [folder = '', name = ''] = parts
    if (entry.path === 'practice.md') practice = entry
    else if (parts.length === 2 && (name === 'horse.md' || visitName.test(name)) && horseId.test(folder))
      ids.add(folder)
    else if (entry.kind === 'link') {
      if (mayHoldCases(parts)) reports.push(linkReport(entry.path))
    } else if (isMarkdown.test(entry.path)) reports.push(strayReport(entry.path, parts))
  }
  return { practice, horseIds: [...ids].sort(), reports }
}

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
      fix: 'replace the link by a copy',
    },
  )
  return report
}

/** A Markdown file in no known place, with the place where it could go. */
function strayReport(path: string, parts: readonly string[]): Report {
  const report = reportOn(path, '')
  const [folder = '', name = ''] = parts
  if (parts.length === 2 && !horseId.test(folder) && (name === 'horse.md' || visitName.test(name))) {
    report.error('horse-folder', null, `${quote(folder)} cannot be the name of a horse's folder.`, {
      expected: 'lower-case letters, digits and hyphens',
      fix: `rename the folder to ${idLike(folder)}`,
    })
    return report
  }
  report.warning(
    'stray-file',
    null,
    `${quote(path)} lies in no place where a case file is looked for, so it is not read.`,
    {
      expected: 'practice.md, <horse>/horse.md, or <horse>/<date>.md for a visit',
      fix: placeFor(parts),
    },
  )
  return report
}

function placeFor(parts: readonly string[]): string {
  const name = parts.at(-1) ?? ''
  const stem = name.replace(/\.[^.]*$/, '')
  const lower = `${stem.toLowerCase()}.md`
  const folder = parts.length > 1 ? idLike(parts[0] ?? '') : '<horse>'
  const second = /^(\d{4}-\d{2}-\d{2})[ _(-]*(?:2|a|b|second)\)?$/i.exec(stem)
  const day = likelyDate(stem) ?? (second?.[1] ? parseDate(second[1]) : null)
  if (second?.[1] && day) return `${folder}/${day}-b.md`
  if (day) return `${folder}/${day}.md`
  if (lower === 'practice.md') return 'practice.md'
  if (lower === 'horse.md') return `${folder}/horse.md`
  return parts.length > 1
    ? `name it by the date of a visit, ${folder}/2026-03-14.md, or put its text into ${folder}/horse.md`
    : 'put its text into practice.md, or into the folder of a horse'
}
