/** The whole build: survey the casebook, make what changed, protect what leaves, publish what is clean, remember. */
import { type Builder, openBuilder } from '../../build/builder.ts'
import type { Files } from '../../build/disk/files.ts'
import { diskFolder, knownFolder } from '../../build/disk/source-folder.ts'
import { DamagedFragment } from '../../build/fragments.ts'
import type { KnownInputs } from '../../build/inputs.ts'
import type { Published } from '../../build/publish.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Practice } from '../../casebook/model.ts'
import { namesakes } from '../../casebook/namesakes.ts'
import { type Addresses, type Edition, isForOthers } from '../../editions/edition.ts'
import { editions as everyEdition } from '../../editions/index.ts'
import { practiceScope } from '../../identity/approvals.ts'
import type { Exception } from '../../identity/identifiers.ts'
import type { Refusal } from '../../leaks/guard.ts'
import { pictureKeys } from '../../pictures/process.ts'
import { pictureStore } from '../../pictures/store.ts'
import { consentsOf, restsOn, unaskedEditions, type Withdrawn } from './consents.ts'
import { buildEditions } from './edition-pages.ts'
import type { HorseRecord, SitePaths } from './horse-job.ts'
import { type HostChanges, hostChanges } from './host-changes.ts'
import type { SiteContext, SiteOptions } from './options.ts'
import { horsePool, horseUnits, lessonsUnit, readUnits, sitePaths } from './site-units.ts'
import { type Survey, surveyCasebook } from './survey.ts'

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
  /** What is held back, since something in it would have become public. */
  readonly refusals: readonly Refusal[]
  /** What rested on a consent that has ended, and so went or was made anew. */
  readonly withdrawn: readonly Withdrawn[]
  /** Of each folder for others that was built: what to upload, what to delete. */
  readonly hosts: readonly HostChanges[]
  /** Editions that nobody asked for, built since a consent has ended. */
  readonly alsoBuilt: readonly Edition[]
}

/**
 * Builds a site from a casebook. A horse with errors keeps its last pages, every other one is built; a folder in which
 * something would have become public stays as it was; what rests on a consent that has ended goes, whatever the
 * editions.
 * @throws UserError when nothing could be published, with the reason; Stopped when asked to stop
 */
export async function buildSite(options: SiteOptions, context: SiteContext): Promise<Built> {
  let alsoBuilt: readonly Edition[] = []
  for (;;) {
    try {
      const { built, unasked } = await buildOnce(withEditions(options, alsoBuilt), context)
      if (built !== null) return { ...built, alsoBuilt }
      alsoBuilt = unasked
    } catch (error) {
      // Whatever was damaged is gone now, so this ends.
      if (!(error instanceof DamagedFragment)) throw error
    }
  }
}

const withEditions = (options: SiteOptions, more: readonly Edition[]): SiteOptions => ({
  ...options,
  editions: [...options.editions, ...more],
})

type Outcome =
  | { readonly built: Omit<Built, 'alsoBuilt'>; readonly unasked?: undefined }
  | { readonly built: null; readonly unasked: readonly Edition[] }

async function buildOnce(options: SiteOptions, context: SiteContext): Promise<Outcome> {
  const { casebook, site, editions, every = everyEdition } = options
  const builder = openBuilder(site, casebook, context)
  try {
    context.report({ step: 'reading' })
    const listedAt = context.now()
    const folder = folderOf(options, context)
    const survey = await surveyCasebook(folder, builder, options, context.known)
    const { practice } = survey
    if (practice === null) return { built: await unpublished(options) }

    const paths = sitePaths(casebook, builder)
    const { horses, lessons } = await horsesOf(survey, practice, options, context, builder, paths)
    const records = horses.map(({ notes }) => notes)
    const consents = consentsOf(records)
    const unasked = unaskedEditions({ editions, every }, builder.standing, consents)
    if (unasked.length > 0) return { built: null, unasked }

    const warnings: Diagnostic[] = []
    const report = (warning: Diagnostic) => warnings.push(warning)
    const addresses = await addressesOf({ ...options, every }, practice, records)
    const made = await buildEditions(options, context, builder, {
      practice,
      lessons,
      records,
      consents,
      addresses,
      folder,
      report,
    })
    const isKnown = builder.standing.restsOn !== null || made.refusals.length === 0
    const leaving = editions.filter(({ protection }) => protection !== null)
    const published = await builder.publish({
      name: practice.name,
      fateOf: made.fateOf,
      restsOn: isKnown ? restsOn(leaving, records, addresses) : null,
      // A host tells by size and time whether a phone has the newest page, and all pages for one phone are of one size.
      sharedTime: {
        folders: leaving.filter(isForOthers).map(({ folder }) => folder),
        day: Date.parse(`${options.asOf}T00:00:00Z`),
      },
    })
    builder.afterwards(() => sweepPictures(context.files, paths.pictures, survey.inputs))
    builder.remember(survey.inputs, listedAt)
    const broken = records.filter(({ isBroken }) => isBroken).length
    const fresh = horses.filter(({ notes, isNew }) => isNew && !notes.isBroken).length
    const built = {
      diagnostics: [
        ...survey.diagnostics,
        ...namesakes(records.filter(({ isBroken }) => !isBroken).map(({ identity }) => identity)),
        ...records.flatMap(({ diagnostics }) => diagnostics),
        ...warnings,
      ],
      published,
      exceptions: made.exceptions,
      waiting: waitingIn(records),
      horses: { made: fresh, unchanged: records.length - broken - fresh, broken },
      refusals: made.refusals,
      withdrawn: made.withdrawn,
      hosts: hostChanges(
        leaving.map(({ folder }) => folder),
        published.paths,
      ),
    }
    return { built }
  } finally {
    builder.close()
  }
}

/** Two rounds: every horse is read, and all teach together; then each is made. */
async function horsesOf(
  survey: Survey,
  practice: Practice,
  options: SiteOptions,
  context: SiteContext,
  builder: Builder,
  paths: SitePaths,
) {
  const pool = horsePool(context, options.editions, paths)
  try {
    const read = await builder.buildInPool(readUnits(survey, practice, options), pool.read)
    const reads = read.map(({ notes }) => notes)
    const teachings = reads.flatMap(({ teaching }) => teaching ?? [])
    const [learned] = await builder.build([lessonsUnit(teachings, context.program, builder.fragment)])
    if (learned === undefined) throw new Error('nothing was learned')
    const lessons = learned.notes
    const units = horseUnits(survey, reads, practice, lessons.learned, options, builder.before)
    return { horses: await builder.buildInPool(units, pool.pages), lessons }
  } finally {
    await pool.close()
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
async function unpublished({ casebook, asOf }: SiteOptions): Promise<Omit<Built, 'alsoBuilt'>> {
  const { readCasebook } = await import('../../casebook/read.ts')
  const { diagnostics } = readCasebook(diskFolder(casebook), asOf)
  return {
    diagnostics,
    published: null,
    exceptions: [],
    waiting: [],
    horses: { made: 0, unchanged: 0, broken: 0 },
    refusals: [],
    withdrawn: [],
    hosts: [],
  }
}

/** Also of editions that are not built now: their pages may be there. */
async function addressesOf(
  { casebook, editions, every }: SiteOptions & { readonly every: readonly Edition[] },
  practice: Practice,
  records: readonly HorseRecord[],
): Promise<Readonly<Record<string, Addresses>>> {
  const found: Record<string, Addresses> = {}
  for (const edition of new Set([...editions, ...every])) {
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

/** Keeps every picture that the casebook holds, named by its visits or not. */
function sweepPictures(files: Files, folder: string, inputs: KnownInputs): void {
  if (files.names(folder).length === 0) return
  const mayBePictures = Object.entries(inputs).filter(([path]) => !path.endsWith('.md'))
  pictureStore(files, folder).sweep(pictureKeys(mayBePictures.map(([path, { hash }]) => [path, hash])))
}
