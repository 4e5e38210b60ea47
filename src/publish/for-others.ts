/** What one horse gives to the editions that leave the practitioner's machine, and what must not leave with them. */
import type { CasebookFolder, FolderEntry } from '../casebook/folder.ts'
import { parseDate } from '../hoof/dates.ts'
import type { OwnWords } from '../identity/common-words.ts'
import { type HorseIdentity, identityOf } from '../identity/identifiers.ts'
import type { CaseSummary } from '../pages/portfolio/view.ts'
import type { HorseInput } from '../pages/practice/index.ts'
import type { Renderer } from '../render/renderer.ts'
import { ownerPartOf, type PictureBytes } from './locked/owner-part.ts'
import type { Edition, MadeFile } from './made.ts'
import { type PictureFile, portfolioCase } from './portfolio-case.ts'

/** Kept between builds, so small. */
export interface ForOthers {
  /** By what anyone could know the horse: known even where its files hold errors, as far as they can be read. */
  readonly identity: HorseIdentity
  /** Its part of its owner's page, kept in the work folder by this name; null without consent. */
  readonly part: KeptPart | null
  /** Its case in the portfolio; null without consent. */
  readonly case: CaseSummary | null
}

export interface KeptPart {
  readonly owner: string
  readonly anchor: string
  readonly name: string
  /** Name of the kept part, from its content. */
  readonly kept: string
}

export interface OthersTools {
  readonly renderer: Renderer
  readonly own: OwnWords
  readonly fileOf: PictureFile
  readonly bytesOf: PictureBytes
  /** Puts text away in the work folder and gives its name. */
  readonly keep: (text: string) => string
}

/** The horse's part of its owner's page and its case, each where asked for and agreed to; files by path within the portfolio. */
export async function forOthersOf(
  input: HorseInput,
  editions: readonly Edition[],
  tools: OthersTools,
): Promise<{ readonly forOthers: ForOthers; readonly files: readonly MadeFile[] }> {
  const identity = identityOf(input.horse)
  const made = editions.includes('owner') ? await ownerPartOf(input, tools.renderer, tools.bytesOf) : null
  const shown = editions.includes('portfolio')
    ? await portfolioCase(input, tools.own, tools.renderer, tools.fileOf)
    : null
  const part = made && {
    owner: made.owner,
    anchor: made.part.anchor,
    name: made.part.name,
    kept: tools.keep(made.part.html),
  }
  return { forOthers: { identity, part, case: shown?.summary ?? null }, files: shown?.files ?? [] }
}

/**
 * What can be told of a horse whose files hold errors: names and dates from the lines as they stand, so that the
 * search of finished pages still knows them. It never leads to a page.
 */
export function looseIdentity(folder: CasebookFolder, id: string): HorseIdentity {
  const own = folder.list().filter(({ path, kind }) => kind === 'file' && path.startsWith(`${id}/`))
  const text = textOf(folder, `${id}/horse.md`)
  const value = (key: string) => new RegExp(`^${key}\\s*:[ \\t]*(.+)$`, 'im').exec(text)?.[1]?.trim() ?? ''
  return {
    id,
    name: bare(value('name')) || id,
    owner: bare(value('owner')) || null,
    privateWords: listed(text, 'private words'),
    vet: looseContact(text),
    files: own.filter(isPicture).map(({ path }) => path.slice(path.lastIndexOf('/') + 1)),
    dates: own
      .flatMap(({ path }) => /(\d{4}-\d\d-\d\d)[^/]*\.md$/.exec(path)?.[1] ?? [])
      .filter((date) => parseDate(date) !== null),
  }
}

/** From `vet: {name: ..., phone: ...}`, on one line or several. */
function looseContact(text: string): HorseIdentity['vet'] {
  const block = /^vet\s*:(.*(?:\n[ \t]+.*)*)/im.exec(text)?.[1] ?? ''
  const value = (key: string) =>
    bare(new RegExp(`\\b${key}\\s*:[ \\t]*([^,}\\n]+)`, 'i').exec(block)?.[1] ?? '') || null
  return { name: value('name'), phone: value('phone') }
}

const isPicture = ({ path }: FolderEntry) => /\.(?:jpe?g|png|webp|avif|heic|tiff?|gif)$/i.test(path)

const bare = (text: string) =>
  text
    .replace(/\s+#.*$/, '')
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
