/** A small casebook on the disk and an edition of plain pages, for tests of building alone. */
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { type Built, buildSite } from '../../src/apps/site/build-site.ts'
import type { SiteContext, SiteOptions } from '../../src/apps/site/options.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import type { Edition, PageTools } from '../../src/editions/edition.ts'
import type { HorseSummary } from '../../src/pages/shared/summary.ts'
import { english, formatIn } from '../english.ts'

export const asOf = '2026-06-01'

export const practiceText = '---\npractice: Reed Bank Hooves\nowners:\n  ash: {name: Ash Tern}\n---\n'
export const horseText = (name: string) => `---\nname: ${name}\nowner: ash\n---\n`
export const visitText = (date: string, toe: number) =>
  `---\ndate: ${date}\nbefore:\n  toe length: [${toe}, ${toe - 1}, ${toe - 6}, ${toe - 7}]\n---\n`

/** Three horses with two visits each. */
export const threeHorses: Readonly<Record<string, string>> = {
  'practice.md': practiceText,
  ...Object.fromEntries(
    ['alder', 'bramble', 'clover'].flatMap((id, index) => [
      [`${id}/horse.md`, horseText(id)],
      [`${id}/2026-03-02.md`, visitText('2026-03-02', 96 + index)],
      [`${id}/2026-04-06.md`, visitText('2026-04-06', 94 + index)],
    ]),
  ),
}

export interface Place {
  readonly root: string
  readonly casebook: string
  readonly site: string
  write(path: string, text: string): void
  remove(path: string): void
  done(): void
}

/** A folder of its own with a casebook in it; files are as old as a week, so that none looks just saved. */
export function place(files: Readonly<Record<string, string>>): Place {
  const root = mkdtempSync(join(tmpdir(), 'growdown-site-'))
  const casebook = join(root, 'cases')
  const write = (path: string, text: string) => {
    const file = join(casebook, path)
    mkdirSync(dirname(file), { recursive: true })
    writeFileSync(file, text)
  }
  for (const [path, text] of Object.entries(files)) write(path, text)
  return {
    root,
    casebook,
    site: join(root, 'site'),
    write,
    remove: (path) => rmSync(join(casebook, path), { recursive: true }),
    done: () => rmSync(root, { recursive: true, force: true }),
  }
}

/** What is known of a horse of which there is nothing to tell. */
export const summaryOf = (id: string, name: string): HorseSummary => ({
  id,
  name,
  owner: null,
  ownerId: null,
  lastVisit: null,
  due: null,
  overdueDays: null,
  worst: null,
  problems: '',
  find: [],
  cautions: [],
  news: { findings: [], moves: [], moving: 0 },
  backtest: { made: 0, held: 0, open: 0 },
})

/** Stands where the practice edition does; a page shows all that was read of a horse. */
export const plainEdition: Edition<HorseSummary> = {
  name: 'practice',
  folder: 'practice',
  keepsBroken: true,
  assets: { styles: ['growdown'], scripts: [] },
  protection: null,
  announcement: () => 'Plain pages',
  ofHorse: async ({ horse }, { put }) => {
    const page = (name: string, content: unknown) =>
      put({ path: `${horse.id}/${name}.html`, text: JSON.stringify(content) })
    page('index', horse)
    for (const visit of horse.visits) page(visit.id, visit)
    return {
      ...summaryOf(horse.id, horse.name),
      owner: horse.owner,
      lastVisit: horse.visits.at(-1)?.date ?? null,
    }
  },
  pages: async () => [],
  files: async (all) => [{ path: 'index.html', text: JSON.stringify(all) }],
}

/** The plain edition with another way to make a horse's pages. */
export const plainWith = (ofHorse: Edition<HorseSummary>['ofHorse']): readonly Edition[] => [
  { ...plainEdition, ofHorse },
]

/** Plain pages need no templates. */
const noPageTools = {
  renderer: { render: () => Promise.reject(new Error('plain pages are not rendered')) },
  words: english,
  formatIn,
}
const noTools: PageTools = {
  ...noPageTools,
  forOwners: () => noPageTools,
  own: { single: new Set(), pairs: new Set(), written: new Set() },
  assets: () => ({ style: '', scripts: [] }),
}

/** A clock far ahead of every file, so that a file counts as long saved. */
const later = () => Date.now() + 60_000

export const context = (changes: Partial<SiteContext> = {}): SiteContext => ({
  files: disk,
  threads: 1,
  openTools: async () => noTools,
  program: 'test',
  now: later,
  report: () => {},
  signal: new AbortController().signal,
  ...changes,
})

export function build(at: Place, changes: Partial<SiteContext & SiteOptions> = {}): Promise<Built> {
  const options = { casebook: at.casebook, site: at.site, asOf, editions: [plainEdition], ...changes }
  return buildSite(options, context(changes))
}

/** Every file below a folder: path to content; none where there is no folder. */
export function contents(folder: string): Record<string, string> {
  return eachFile(folder, (file) => readFileSync(file, 'utf8'))
}

/** What readers of a site see: all but the list of the tool's own files. */
export function pages(site: string): Record<string, string> {
  const { '.made.json': _, ...files } = contents(site)
  return files
}

/** What readers of a site see that is built from nothing. */
export async function freshPages({ casebook }: Pick<Place, 'casebook'>): Promise<Record<string, string>> {
  const other = place({})
  await build({ ...other, casebook })
  const made = pages(other.site)
  other.done()
  return made
}

/** Every file below a folder: path to the time of its last change. */
export function times(folder: string): Record<string, number> {
  return eachFile(folder, (file) => lstatSync(file).mtimeMs)
}

/** The same of what lasts: the lock is taken and given back by each build. */
export function lasting(root: string): Record<string, number> {
  const { '.growdown/site/lock': _, ...files } = times(root)
  return files
}

function eachFile<T>(folder: string, of: (file: string) => T): Record<string, T> {
  if (!existsSync(folder)) return {}
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()
  return Object.fromEntries(
    paths
      .filter((path) => lstatSync(join(folder, path)).isFile())
      .map((path) => [path, of(join(folder, path))]),
  )
}
