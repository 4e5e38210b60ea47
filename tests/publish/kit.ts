/** A small casebook on the disk and makers of plain pages, for tests of publishing alone. */
import { lstatSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { readHorse } from '../../src/casebook/read.ts'
import type { HorseSummary } from '../../src/pages/shared/summary.ts'
import { disk, type Files } from '../../src/publish/disk/files.ts'
import type { MadeHorse } from '../../src/publish/made.ts'
import type { BuildOrder, BuildWorld, Makers } from '../../src/publish/order.ts'
import { inThisThread } from '../../src/publish/pool.ts'
import { type Built, buildSite } from '../../src/publish/site.ts'
import { type MakeHorse, stagingWorker } from '../../src/publish/staged-horse.ts'

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
  visits: 0,
  lastVisit: null,
  due: null,
  overdueDays: null,
  state: '',
  tags: [],
  cautions: [],
  changes: [],
  backtest: { made: 0, held: 0 },
})

/** A page that shows all that was read of a horse. */
export const plainHorse: MakeHorse = async (job, { folder, put }): Promise<MadeHorse> => {
  const { horse, diagnostics } = readHorse(folder, job.id, job.practice, job.asOf)
  if (horse === null) return { id: job.id, diagnostics, summary: null, forOthers: null }
  const page = (name: string, content: unknown) =>
    put({ path: `practice/${job.id}/${name}.html`, text: JSON.stringify(content) })
  page('index', horse)
  for (const visit of horse.visits) page(visit.id, visit)
  return {
    id: job.id,
    diagnostics,
    summary: {
      ...summaryOf(job.id, horse.name),
      owner: horse.owner,
      visits: horse.visits.length,
      lastVisit: horse.visits.at(-1)?.date ?? null,
    },
    forOthers: null,
  }
}

export const plainMakers = (files: Files, make: MakeHorse = plainHorse): Makers => ({
  horses: (bench) => inThisThread(stagingWorker(files, bench, make)),
  overAll: async (_, all) => [{ path: 'practice/index.html', text: JSON.stringify(all) }],
  others: () => Promise.reject(new Error('plain makers make the practice edition alone')),
  assets: () => [{ path: 'practice/assets/growdown.css', text: 'p { margin: 0 }' }],
})

/** A clock far ahead of every file, so that a file counts as long saved. */
const later = () => Date.now() + 60_000

export function world(changes: Partial<BuildWorld> = {}): BuildWorld {
  const files = changes.files ?? disk
  return {
    files,
    makers: plainMakers(files),
    program: 'test',
    now: later,
    report: () => {},
    signal: new AbortController().signal,
    ...changes,
  }
}

export function build(at: Place, changes: Partial<BuildWorld & BuildOrder> = {}): Promise<Built> {
  const order: BuildOrder = { casebook: at.casebook, site: at.site, asOf, editions: ['practice'], ...changes }
  return buildSite(order, world(changes))
}

/** Every file below a folder: path to content. */
export function contents(folder: string): Record<string, string> {
  return eachFile(folder, (file) => readFileSync(file, 'utf8'))
}

/** Every file below a folder: path to the time of its last change. */
export function times(folder: string): Record<string, number> {
  return eachFile(folder, (file) => lstatSync(file).mtimeMs)
}

function eachFile<T>(folder: string, of: (file: string) => T): Record<string, T> {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()
  return Object.fromEntries(
    paths
      .filter((path) => lstatSync(join(folder, path)).isFile())
      .map((path) => [path, of(join(folder, path))]),
  )
}
