/** What is known of a horse whose files hold errors. */
import type { CasebookFolder, FolderEntry } from '../casebook/folder.ts'
import { parseDate } from '../hoof/dates.ts'
import type { HorseIdentity } from '../identity/identifiers.ts'

/**
 * Names and dates from the lines as they are, so that the search of finished pages still knows them. It never leads to a page.
 */
export function identityOfBroken(folder: CasebookFolder, id: string): HorseIdentity {
  const own = folder.list().filter(({ path, kind }) => kind === 'file' && path.startsWith(`${id}/`))
  const text = textOf(folder, `${id}/horse.md`)
  const value = (key: string) => new RegExp(`^${key}\\s*:[ \\t]*(.+)$`, 'im').exec(text)?.[1]?.trim() ?? ''
  return {
    id,
    name: bare(value('name')) || id,
    owner: bare(value('owner')) || null,
    privateWords: listed(text, 'private words'),
    vet: contactIn(text),
    files: own.filter(isPicture).map(({ path }) => path.slice(path.lastIndexOf('/') + 1)),
    dates: own
      .flatMap(({ path }) => /(\d{4}-\d\d-\d\d)[^/]*\.md$/.exec(path)?.[1] ?? [])
      .filter((date) => parseDate(date) !== null),
  }
}

/** From `vet: {name: ..., phone: ...}`, on one line or several. */
function contactIn(text: string): HorseIdentity['vet'] {
  const block = /^vet\s*:(.*(?:\n[ \t]+.*)*)/im.exec(text)?.[1] ?? ''
  const value = (key: string) =>
    bare(new RegExp(`\\b${key}\\s*:[ \\t]*([^,}\\n]+)`, 'i').exec(block)?.[1] ?? '') || null
  return { name: value('name'), phone: value('phone') }
}

const isPicture = ({ path }: FolderEntry) => /\.(?:jpe?g|png|webp|avif|heic|tiff?|gif)$/i.test(path)

const bare = (text: string) =>
  text
    .replace(/(?<!\s)\s+#.*$/, '')
    .replace(/^["'](.*)["']$/, '$1')
    .trim()

/** `[a, b]` on the line, or `- a` on the lines below it. */
function listed(text: string, key: string): string[] {
  const found = new RegExp(`^${key.replace(' ', '[ -]')}\\s*:[ \\t]*(.*)((?:\\n\\s*-.*)*)`, 'im').exec(text)
  const [, line = '', below = ''] = found ?? []
  const words = [
    ...line.replace(/^\[|\]\s*(?:#.*)?$/g, '').split(','),
    ...below.split('\n').map((item) => item.replace(/^\s*-\s*/, '')),
  ]
  return words.map(bare).filter((word) => word !== '')
}

function textOf(folder: CasebookFolder, path: string): string {
  try {
    return new TextDecoder().decode(folder.read(path))
  } catch {
    return ''
  }
}
