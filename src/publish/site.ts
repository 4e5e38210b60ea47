/** The whole build: survey the casebook, make what changed, publish all or nothing, remember. */
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import type { Diagnostic } from '../casebook/diagnostic.ts'
import { namesakes } from '../casebook/namesakes.ts'
import type { Exception } from '../identity/identifiers.ts'
import { diskFolder, knownFolder } from './disk/disk.ts'
import type { Files } from './disk/files.ts'
import { Stopped } from './disk/trouble.ts'
import { openWorkFolder } from './disk/work-folder.ts'
import type { BuildOrder, BuildWorld } from './order.ts'
import { othersPieces, ownerTokens } from './others.ts'
import { overview } from './overview.ts'
import { sweepParts } from './parts.ts'
import { pictureKeys } from './pictures/pictures.ts'
import { pictureStore } from './pictures/store.ts'
import { type HorsePieces, horsePieces, type SharedPieces, sharedPieces } from './pieces.ts'
import { type Published, publish } from './publish.ts'
import type { Bench } from './staged-horse.ts'
import { lookedAt } from './standing.ts'
import { diskMemory, type State } from './state.ts'
import { type Survey, surveyCasebook } from './survey.ts'

export interface Built {
  readonly diagnostics: readonly Diagnostic[]
  /** Null when nothing could be published, since practice.md cannot be used. */
  readonly published: Published | null
  /** Names that were searched for in some forms only. */
  readonly exceptions: readonly Exception[]
  /** Horses without errors, and those with. */
  readonly horses: { readonly made: number; readonly unchanged: number; readonly broken: number }
}

/**
 * Builds a site from a casebook. A horse with errors keeps its last pages, every other one is built.
 * @throws Trouble when nothing could be published, with the reason; Stopped when asked to stop
 */
export async function buildSite(order: BuildOrder, world: BuildWorld): Promise<Built> {
  const work = openWorkFolder(world.files, order.site)
  try {
    world.report({ step: 'reading' })
    const listedAt = world.now()
    const onDisk = diskMemory(world.files, work.folder)
    const memory = world.memory?.over(onDisk) ?? onDisk
    const state = memory.load(world.program)
    const survey = await surveyCasebook(folderOf(order, world), state, { ...order, program: world.program })
    const { practice, diagnostics } = survey.practice.read
    if (practice === null) return await unpublished(order)
    const standing = world.standing?.open() ?? lookedAt(world.files, order.site)
    const parts = join(work.folder, 'parts')
    const pictures = join(work.folder, 'pictures')
    const bench: Bench = { casebook: order.casebook, staging: work.staging, parts, pictures }
    const horses = await horsePieces(order, world, bench, { survey, state, standing, practice })
    const all = overview(practice, horses.pieces, order.asOf, ownerTokens(order, practice, horses))
    const overHorses = await sharedPieces(order, world, bench, { state, standing, all })
    const others = await othersPieces(order, world, bench, {
      state,
      standing,
      practice,
      horses,
      shared: overHorses,
    })
    const shared = joined(overHorses, others)
    await stopIfAsked(world.signal)
    const broken = all.broken.map(({ id }) => id)
    const published = publish(order, world, work, { horses, shared, standing, broken })
    sweepParts(world.files, parts, partsOf(horses))
    sweepPictures(world.files, pictures, survey)
    const next = { program: world.program, listedAt, ...remembered(survey, horses, shared) }
    if (isNews(survey, state, horses, shared)) memory.save(next)
    return {
      diagnostics: [
        ...diagnostics,
        ...namesakes(all.summaries),
        ...horses.pieces.flatMap(([, piece]) => piece.diagnostics),
      ],
      published,
      exceptions: others.exceptions,
      horses: {
        made: all.summaries.filter(({ id }) => horses.made.has(id)).length,
        unchanged: all.summaries.filter(({ id }) => !horses.made.has(id)).length,
        broken: all.broken.length,
      },
    }
  } finally {
    work.close()
  }
}

/** The casebook as it lies on the disk, or as a process that stays knows it. */
const folderOf = ({ casebook }: BuildOrder, { listing }: BuildWorld) =>
  listing ? knownFolder(casebook, listing.list()) : diskFolder(casebook)

/** Without practice.md no page can be made; every problem is told all the same. */
async function unpublished({ casebook, asOf }: BuildOrder): Promise<Built> {
  const { readCasebook } = await import('../casebook/read.ts')
  const { diagnostics } = readCasebook(diskFolder(casebook), asOf)
  return { diagnostics, published: null, exceptions: [], horses: { made: 0, unchanged: 0, broken: 0 } }
}

const joined = (a: SharedPieces, b: SharedPieces): SharedPieces => ({
  pieces: [...a.pieces, ...b.pieces],
  waiting: [...a.waiting, ...b.waiting],
  made: a.made + b.made,
})

/** Keeps every picture that the casebook holds, named by its visits or not. */
function sweepPictures(files: Files, folder: string, survey: Survey): void {
  if (files.names(folder).length === 0) return
  const mayBePictures = Object.entries(survey.files).filter(([path]) => !path.endsWith('.md'))
  pictureStore(files, folder).sweep(pictureKeys(mayBePictures.map(([path, { hash }]) => [path, hash])))
}

const partsOf = ({ pieces }: HorsePieces): ReadonlySet<string> =>
  new Set(pieces.flatMap(([, { forOthers }]) => forOthers?.part?.kept ?? []))

/** Hears a wish to stop, which arrives as an event, before the site is touched. */
async function stopIfAsked(signal: AbortSignal): Promise<void> {
  await setImmediate()
  if (signal.aborted) throw new Stopped()
}

const remembered = (survey: Survey, horses: HorsePieces, shared: SharedPieces) => ({
  files: survey.files,
  practice: survey.practice,
  horses: Object.fromEntries(horses.pieces),
  shared: Object.fromEntries(shared.pieces),
})

/** Whether there is anything to remember that the last build did not. */
const isNews = (survey: Survey, state: State, horses: HorsePieces, shared: SharedPieces): boolean =>
  !survey.isAsBefore ||
  horses.made.size > 0 ||
  shared.made > 0 ||
  Object.keys(state.horses).length !== horses.pieces.length
