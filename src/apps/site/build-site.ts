/** The whole build: survey the casebook, make what changed, protect what leaves, publish all or nothing, remember. */
import { type Builder, openBuilder } from '../../build/builder.ts'
import type { Files } from '../../build/disk/files.ts'
import { diskFolder, knownFolder } from '../../build/disk/source-folder.ts'
import { DamagedFragment } from '../../build/fragments.ts'
import type { KnownInputs } from '../../build/inputs.ts'
import type { Published } from '../../build/publish.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Practice } from '../../casebook/model.ts'
import { namesakes } from '../../casebook/namesakes.ts'
import type { Addresses } from '../../editions/edition.ts'
import { editions as everyEdition } from '../../editions/index.ts'
import { practiceScope } from '../../identity/approvals.ts'
import type { Exception } from '../../identity/identifiers.ts'
import { leakGuard } from '../../leaks/guard.ts'
import { pictureKeys } from '../../pictures/process.ts'
import { pictureStore } from '../../pictures/store.ts'
import type { HorseRecord } from './horse-job.ts'
import type { SiteContext, SiteOptions } from './options.ts'
import { allHorses, editionUnits, horsePool, horseUnits, sitePaths } from './site-units.ts'
import { surveyCasebook } from './survey.ts'

export interface Built {
  readonly diagnostics: readonly Diagnostic[]
  /** Null when nothing could be published, since practice.md cannot be used. */
  readonly published: Published | null
  /** Names that were searched for in some forms only. */
  readonly exceptions: readonly Exception[]
  /** Cases of which something waits for approval, and how much; `practice.md` for what belongs to the practice. */
  readonly waiting: readonly { readonly id: string; readonly count: number }[]
  /** Horses without errors, and those with. */
  readonly horses: { readonly made: number; readonly unchanged: number; readonly broken: number }
}

/**
 * Builds a site from a casebook. A horse with errors keeps its last pages, every other one is built.
 * @throws UserError when nothing could be published, with the reason; Stopped when asked to stop
 */
export async function buildSite(options: SiteOptions, context: SiteContext): Promise<Built> {
  for (;;) {
    try {
      return await buildOnce(options, context)
    } catch (error) {
      // Whatever was damaged is gone now, so this ends.
      if (!(error instanceof DamagedFragment)) throw error
    }
  }
}

async function buildOnce(options: SiteOptions, context: SiteContext): Promise<Built> {
  const { casebook, site, editions } = options
  const builder = openBuilder(site, casebook, context)
  try {
    context.report({ step: 'reading' })
    const listedAt = context.now()
    const survey = await surveyCasebook(folderOf(options, context), builder, options)
    const { practice } = survey
    if (practice === null) return await unpublished(options)

    const paths = sitePaths(casebook, builder)
    const pool = horsePool(context, editions, paths)
    const horses = await builder.buildInPool(horseUnits(survey, practice, options, builder.before), pool)
    const records = horses.map(({ notes }) => notes)
    const warnings: Diagnostic[] = []
    const exceptions = await buildEditions(options, context, builder, {
      practice,
      records,
      report: (warning) => warnings.push(warning),
    })

    const broken = records.filter(({ isBroken }) => isBroken).map(({ id }) => id)
    const published = await builder.publish(practice.name, isLeftAlone(options, broken))
    sweepPictures(context.files, paths.pictures, survey.inputs)
    builder.remember(survey.inputs, listedAt)
    const made = horses.filter(({ notes, isNew }) => isNew && !notes.isBroken).length
    return {
      diagnostics: [
        ...survey.diagnostics,
        ...namesakes(records.filter(({ isBroken }) => !isBroken).map(({ identity }) => identity)),
        ...records.flatMap(({ diagnostics }) => diagnostics),
        ...warnings,
      ],
      published,
      exceptions,
      waiting: waitingIn(records),
      horses: { made, unchanged: records.length - broken.length - made, broken: broken.length },
    }
  } finally {
    builder.close()
  }
}

/** The practice's own is the same for every case. */
function waitingIn(records: readonly HorseRecord[]): Built['waiting'] {
  const ofPractice = Math.max(0, ...records.map(({ waiting }) => waiting.ofPractice))
  const own = records.map(({ id, waiting }) => ({ id, count: waiting.own }))
  return [{ id: practiceScope, count: ofPractice }, ...own].filter(({ count }) => count > 0)
}

/** The casebook as it lies on the disk, or as a process that stays knows it. */
const folderOf = ({ casebook }: SiteOptions, { listing }: SiteContext) =>
  listing ? knownFolder(casebook, listing.list()) : diskFolder(casebook)

/** Without practice.md no page can be made; every problem is reported all the same. */
async function unpublished({ casebook, asOf }: SiteOptions): Promise<Built> {
  const { readCasebook } = await import('../../casebook/read.ts')
  const { diagnostics } = readCasebook(diskFolder(casebook), asOf)
  return {
    diagnostics,
    published: null,
    exceptions: [],
    waiting: [],
    horses: { made: 0, unchanged: 0, broken: 0 },
  }
}

interface MadeHorses {
  readonly practice: Practice
  readonly records: readonly HorseRecord[]
  report(warning: Diagnostic): void
}

/**
 * Pages over all horses, then what protects them.
 * @returns names that were searched for in some forms only
 * @throws UserError that names all that would have become public
 */
async function buildEditions(
  options: SiteOptions,
  { program, openTools }: SiteContext,
  builder: Builder,
  { practice, records, report }: MadeHorses,
): Promise<readonly Exception[]> {
  const { casebook, asOf, editions } = options
  const common = { practice, asOf, addresses: await addressesOf(options, practice, records) }
  for (const edition of editions) {
    const all = allHorses(edition, records, common)
    await builder.build(editionUnits(edition, all, program, openTools))
    const together = await edition.together?.(all, { edition, program, builder, report, open: openTools })
    await builder.build(together ?? [])
  }

  const leaving = editions.filter(({ protection }) => protection !== null)
  if (leaving.length === 0) return []
  const identities = records.map(({ identity }) => identity)
  const guard = leakGuard(program, practice, identities, async () => {
    const { own, assets } = await openTools()
    const texts = leaving.map((edition) => assets(edition.assets))
    return {
      own,
      ownTexts: texts.flatMap(({ style, scripts }) => [style, ...scripts.map(({ text }) => text)]),
    }
  })
  for (const edition of leaving) {
    const all = allHorses(edition, records, common)
    const tools = { edition, casebook, guard, builder, report, open: openTools }
    const units = await edition.protection?.units(all, tools)
    await builder.build(units ?? [], 'protecting')
  }
  guard.refuseLeaks()
  const [exceptions] = await builder.build([guard.exceptions])
  return exceptions?.notes ?? []
}

/** Also of editions that are not built now: their pages may be there. */
async function addressesOf(
  { casebook, editions }: SiteOptions,
  practice: Practice,
  records: readonly HorseRecord[],
): Promise<Readonly<Record<string, Addresses>>> {
  const found: Record<string, Addresses> = {}
  for (const edition of new Set([...editions, ...everyEdition])) {
    if (found[edition.name] !== undefined || edition.addresses === undefined) continue
    const kept = records.flatMap((record) => record.kept[edition.name] ?? [])
    found[edition.name] = await edition.addresses(
      practice,
      casebook,
      editions.includes(edition) ? kept : null,
    )
  }
  return found
}

/** Files of editions that are not built now, and of horses with errors where their last pages stay. */
const isLeftAlone =
  ({ editions }: SiteOptions, broken: readonly string[]) =>
  (path: string): boolean => {
    const edition = editions.find(({ folder }) => path.startsWith(`${folder}/`))
    if (edition === undefined) return true
    return edition.keepsBroken && broken.some((id) => path.startsWith(`${edition.folder}/${id}/`))
  }

/** Keeps every picture that the casebook holds, named by its visits or not. */
function sweepPictures(files: Files, folder: string, inputs: KnownInputs): void {
  if (files.names(folder).length === 0) return
  const mayBePictures = Object.entries(inputs).filter(([path]) => !path.endsWith('.md'))
  pictureStore(files, folder).sweep(pictureKeys(mayBePictures.map(([path, { hash }]) => [path, hash])))
}
