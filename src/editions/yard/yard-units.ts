/** The yard page as a unit of the build: all horses in one locked file, and beside it what lets a phone keep it. */
import { randomUUID } from 'node:crypto'
import { join } from 'node:path'
import type { Assets, AssetTexts } from '../../build/assets.ts'
import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import { readIfThere } from '../../build/disk/whole-file.ts'
import { browserFile } from '../../build/program.ts'
import type { Unit, UnitOutput } from '../../build/unit.ts'
import { withoutControls } from '../../casebook/control-characters.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Practice } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import type { Words } from '../../pages/words/index.ts'
import { yardIcons, yardManifest, yardPage } from '../../pages/yard/page.ts'
import type { Renderer } from '../../render/renderer.ts'
import type { YardHorse, YardIndex } from '../../yard/payload.ts'
import { keepKeys } from '../lock/keep-keys.ts'
import { type Locked, type LockKey, lockPage, markOf } from '../lock/lock.ts'
import { filledUp } from '../lock/padding.ts'
import { openToOthers, weakPassphrase } from '../lock/passphrases.ts'
import { policyOf } from '../lock/policy.ts'
import { ownerOfThatId, practitionersEntry } from '../lock/practitioners-entry.ts'
import { weakPassphrases } from '../lock/weak-passphrases.ts'
import type { YardFragment } from './horse-fragment.ts'
import { type PackedPart, pageKey, phoneKey, phoneName, sealedText } from './sealed-text.ts'
import { workerScript } from './worker-script.ts'

/** What is known of all horses once each is made. */
interface YardHorses {
  readonly practice: Practice
  readonly asOf: PlainDate
  readonly kept: readonly YardFragment[]
  readonly broken: readonly { readonly id: string }[]
}

interface PageTools {
  readonly renderer: Renderer
  readonly words: Words
  assets(of: Assets): AssetTexts
}

interface YardTools {
  readonly edition: { readonly folder: string; readonly assets: Assets }
  /** Names the program that builds. */
  readonly program: string
  readonly casebook: string
  readonly builder: Pick<Builder, 'fragment' | 'build'>
  /** Takes a warning to the person who builds. */
  report(diagnostic: Diagnostic): void
  /** Holds a folder of the site back: it stays as it was. */
  hold(folder: string): void
  open(): Promise<PageTools>
  /** Base-2 logarithm of the work of unlocking; the usual one where undefined. */
  readonly workFactor: number | undefined
}

/** What is remembered of the page. */
interface YardMemory {
  /** The small age file, so that an unchanged passphrase costs nothing. */
  readonly lock: Locked
  /** Name in the fragment cache of the horses as they were: what of a horse with errors goes on being shown. */
  readonly horses: string
}

/**
 * One unit; none where the passphrase cannot be used: then the page stays as it was.
 * @throws UserError when the disk refuses
 */
export async function yardUnits(all: YardHorses, tools: YardTools): Promise<readonly Unit<YardMemory>[]> {
  const { edition, casebook, builder, program, report } = tools
  const isTaken = all.practice.owners.some(({ id }) => id === practitionersEntry)
  if (isTaken) report(ownerOfThatId)
  const { keys, secret, diagnostics, isOpen } = keepKeys(casebook, isTaken ? [] : [practitionersEntry])
  diagnostics.forEach(report)
  const found = keys.get(practitionersEntry)
  if (found === undefined) {
    tools.hold(edition.folder)
    return []
  }
  if (isOpen) report(openToOthers)
  for (const id of await weakPassphrases(edition.folder, keys, secret, builder)) report(weakPassphrase(id))
  const key = { ...found, secret }
  const { practice, asOf, kept, broken } = all
  return [
    {
      name: `${edition.folder}: page`,
      key: cacheKey(program, key.token, practice, asOf, kept, broken),
      // A changed passphrase is no part of the key, which is written down.
      isCurrent: ({ lock }) => lock.mark === markOf(key),
      make: async (output, before) => makePage(all, key, before?.notes ?? null, output, tools),
    },
  ]
}

async function makePage(
  all: YardHorses,
  key: LockKey,
  before: YardMemory | null,
  { put, keep, keepOn }: Pick<UnitOutput, 'put' | 'keep' | 'keepOn'>,
  tools: YardTools,
): Promise<YardMemory> {
  const { edition, builder, casebook, open, workFactor } = tools
  const pageTools = await open()
  const { fragments, rows } = horsesShown(all, before, builder, keepOn)
  const pageKeyBytes = pageKey(key)
  const lock = await lockPage(pageKeyBytes.toString('base64'), key, before?.lock ?? null, workFactor)
  const index: YardIndex = {
    version: 1,
    practice: phoneName(key.secret),
    practiceName: all.practice.name,
    people: all.practice.people,
    asOf: all.asOf,
    practiceFile: readIfThere(join(casebook, 'practice.md')) ?? '',
    horses: rows,
    arrived: fragments.flatMap(({ arrived }) => arrived),
    phoneKey: phoneKey(key.secret).toString('base64'),
    standing: pageTools.words.assessment.always,
    localRules: all.practice.localRules,
  }
  const parts = fragments.map(
    ({ row, part }): PackedPart => ({
      horse: row.id,
      gzipped: Buffer.from(builder.fragment(part), 'base64'),
    }),
  )
  const [head, tail] = await around(all, lock, pageTools, edition.assets)
  const sealed = sealedText(index, parts, pageKeyBytes, Buffer.byteLength(head) + Buffer.byteLength(tail))
  const place = `${edition.folder}/${key.token}`
  const page = put({ path: `${place}/index.html`, text: filledUp(`${head}${sealed}${tail}`) })
  const beside = [
    put({
      path: `${place}/manifest.webmanifest`,
      text: withoutControls(yardManifest(all.practice, pageTools.words)),
    }),
    ...yardIcons.map(({ file }) => put({ path: `${place}/${file}`, copyFrom: browserFile(file) })),
  ]
  put({ path: `${place}/worker.js`, text: workerScript([page, ...beside], place) })
  return { lock, horses: keep(JSON.stringify(fragments)) }
}

/** Horses by name; those with errors as they were last built, where they ever were. */
function horsesShown(
  { kept, broken }: YardHorses,
  before: YardMemory | null,
  builder: Pick<Builder, 'fragment'>,
  keepOn: (name: string) => boolean,
): { readonly fragments: readonly YardFragment[]; readonly rows: readonly YardHorse[] } {
  const earlier: readonly YardFragment[] =
    broken.length === 0 || before === null ? [] : JSON.parse(builder.fragment(before.horses))
  const isBroken = new Set(broken.map(({ id }) => id))
  const last = earlier.filter(({ row, part }) => isBroken.has(row.id) && keepOn(part))
  const unread = broken
    .filter(({ id }) => !last.some(({ row }) => row.id === id))
    .map(({ id }) => ({ id, name: id, owner: null, due: null, flag: null, problems: '' }))
  const fragments = [...kept, ...last]
  const rows = [...fragments.map(({ row }) => row), ...unread]
    .map((row) => ({ ...row, isBroken: isBroken.has(row.id) }))
    .toSorted((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1))
  return { fragments, rows }
}

/** The page before and behind its encrypted text. */
async function around(
  { practice }: YardHorses,
  { armored, checksum }: Locked,
  { renderer, words, assets }: PageTools,
  of: Assets,
): Promise<readonly [string, string]> {
  const { style, scripts } = assets(of)
  const own = scripts.map(({ text }) => text)
  const policy = policyOf(style, own, [
    "img-src 'self' data: blob:",
    "worker-src 'self'",
    "manifest-src 'self'",
  ])
  const mark = randomUUID()
  const view = yardPage(practice, { policy, style, scripts: own, armored, checksum, sealed: mark }, words)
  const [head = '', tail = ''] = (await renderer.render(view)).split(mark)
  return [head, tail]
}
