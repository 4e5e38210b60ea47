/**
 * Files that hold what a case file should, under a name or in a place where none is looked for: a visit saved as
 * `.txt` or `.docx`, a date written another way, a copy. Each is named with the name it should have, where that is
 * sure and free.
 */
import { idLike } from './practice-file.ts'
import { likelyDate } from './readers.ts'
import { type Fix, type Help, type Report, reportOn } from './report.ts'
import { quote } from './words.ts'

const isMarkdown = /\.(?:md|mdown|markdown)$/i
/** Endings, also doubled as in `.md.txt`, under which text editors and phones save; `2026-03-14,md` is a slip for one. */
const textEnding = /(?:[.,](?:md|mdown|markdown|txt|text))+$/i
const documentEnding = /(?:\.md)?\.(?:docx?|rtf|odt|pages)$/i
/** A date at the start of a file's name, and what follows it. */
const datedStem = /^(\d{4}[-/._ ]\d{1,2}[-/._ ]\d{1,2}|\d{8}|\d{1,2}[-/.]\d{1,2}[-/.]\d{4})(?!\d)(.*)$/

/** What is wrong with a file in no known place; null for one that is nobody's case file. */
export function strayReport(path: string, taken: ReadonlySet<string>): Report | null {
  const parts = path.split('/')
  const name = (parts.at(-1) ?? '').trim()
  const isDocument = documentEnding.test(name)
  const stem = name.replace(isDocument ? documentEnding : textEnding, '').trim()
  const place = placeFor(parts, stem)
  if (!isMarkdown.test(name)) {
    const bare = stem === name && !name.includes('.')
    if (place === null || (stem === name && !bare && !isDocument)) return null
    return tell(path, 'file-ending', `${quote(path)} is not read, since its name does not end in .md.`, {
      expected: 'a plain text file whose name ends in .md',
      ...(isDocument
        ? { advice: `save it as plain text under the name ${place.path}` }
        : helpFor(path, place, taken)),
    })
  }
  return tell(
    path,
    'stray-file',
    `${quote(path)} lies in no place where a case file is looked for, so it is not read.`,
    {
      expected: 'practice.md, <horse>/horse.md, or <horse>/<date>.md for a visit',
      ...(place === null ? { advice: elsewhere(parts) } : helpFor(path, place, taken)),
    },
  )
}

function tell(path: string, code: string, message: string, help: Help): Report {
  const report = reportOn(path, '')
  report.warning(code, null, message, help)
  return report
}

interface Place {
  /** Path within the casebook; `<horse>` stands for a folder that is not known. */
  readonly path: string
  /** Whether the name itself says that this is a copy. */
  readonly isCopy: boolean
}

function placeFor(parts: readonly string[], stem: string): Place | null {
  const folder = parts.length > 1 ? idLike(parts[0] ?? '') : '<horse>'
  const lower = stem.toLowerCase()
  if (lower === 'practice' && parts.length === 1) return { path: 'practice.md', isCopy: false }
  if (lower === 'horse') return { path: `${folder}/horse.md`, isCopy: false }
  const dated = datedStem.exec(stem)
  const day = dated && likelyDate((dated[1] ?? '').replaceAll('_', '-'))
  if (!dated || !day) return null
  const rest = (dated[2] ?? '')
    .replace(/[\s_()-]+/g, ' ')
    .trim()
    .toLowerCase()
  const letter = /^(?:2|b|second)$/.test(rest) ? '-b' : /^(?:3|c|third)$/.test(rest) ? '-c' : ''
  return { path: `${folder}/${day}${letter}.md`, isCopy: /\bcopy\b/.test(rest) }
}

/** A new name where it is sure and free; else what to do. */
function helpFor(path: string, place: Place, taken: ReadonlySet<string>): Help {
  if (place.path.startsWith('<')) return { advice: `move it to ${place.path}` }
  // Some disks do not tell `Horse.md` from `horse.md`: a file is not in its own way.
  const isFree = !taken.has(place.path) || path.toLowerCase() === place.path.toLowerCase()
  if (place.isCopy || !isFree) {
    const second = place.path.replace(/(?:-[b-z])?\.md$/, '-b.md')
    return {
      advice: /\d(?:-[b-z])?\.md$/.test(place.path)
        ? `if it is another visit of that day, rename it to ${second}; else move it out of the casebook`
        : `put what it says into ${place.path}, or move it out of the casebook`,
    }
  }
  return { fix: renamed(path, place.path) }
}

/** A fix that gives a file or a folder another name. */
export const renamed = (from: string, to: string): Fix => ({
  words: `rename it to ${to}`,
  rename: { from, to },
})

const elsewhere = (parts: readonly string[]): string => {
  const folder = parts.length > 1 ? idLike(parts[0] ?? '') : '<horse>'
  return parts.length > 1
    ? `name it by the date of a visit, ${folder}/2026-03-14.md, or put its text into ${folder}/horse.md`
    : 'put its text into practice.md, or into the folder of a horse'
}
