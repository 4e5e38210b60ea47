import { existsSync, readFileSync, statSync } from 'node:fs'
import { basename, dirname, join, relative, resolve } from 'node:path'
import { casebookAround } from '../apps/casebook-around.ts'
import type { MarkPage } from '../apps/mark/server.ts'
import type { MarkTarget } from '../apps/mark/write.ts'
import type { Horse, Photo, Practice, Visit } from '../casebook/model.ts'
import type { Landmarks, PhotoView } from '../hoof/landmarks.ts'
import type { MarkSubject } from '../pages/mark/mark-page.ts'
import { isMarkedView, type MarkedView, markedViews } from '../pages/mark/mark-task.ts'
import { portOf, textOf } from './arguments.ts'
import { type CommandEntry, exit, type Options, type World, WrongUse } from './command.ts'
import { printAll } from './report.ts'

export const mark: CommandEntry = {
  usage: 'mark <photo>',
  does: 'Opens a page on this machine alone on which points are marked on a picture, so that it measures.',
  options: [
    {
      flags: '--visit <visit>',
      does: 'the visit whose entry is meant, where several name the picture: 2026-03-14',
    },
    {
      flags: '--view <view>',
      does: 'the view that is meant, where no entry says it or several do',
      choices: markedViews,
    },
    { flags: '--port <number>', does: 'port on this machine; 0 takes any that is free', default: '0' },
  ],
  run: async ([photo = ''], options, world) => {
    const port = portOf(options)
    const page = await markPageOf(photo, options, world)
    if (page === null) return exit.problems
    const { serveMarking } = await import('../apps/mark/server.ts')
    const server = await serveMarking(page, port)
    world.stdout.write(`Open ${server.url}\nOnly this machine can open it. Ctrl-C ends.\n`)
    await new Promise<void>((done) => {
      if (world.signal.aborted) done()
      world.signal.addEventListener('abort', () => done(), { once: true })
    })
    await server.close()
    return exit.clean
  },
}

/**
 * The marking page of a picture, a path from where the person is.
 * @returns null where something must be put right first, which has been said
 */
export async function markPageOf(photo: string, options: Options, world: World): Promise<MarkPage | null> {
  const place = placeOf(photo, world)
  const known = await readHorseOf(place, world)
  if (known === null) return null
  const { view, entry } = chooseEntry(known.horse, place, options)
  const { uprightPicture } = await import('../pictures/process.ts')
  const picture = await uprightPicture(place.file, readFileSync(place.path))
  if ('refusal' in picture) {
    const { refusalText } = await import('../pictures/refusal.ts')
    world.stderr.write(`${refusalText(picture, place.file)}\n`)
    return null
  }
  const { jpeg, ...shown } = picture
  const page = await pageOf({ file: place.file, view, entry, ...shown }, known.practice)
  const { writeLandmarks } = await import('../apps/mark/write.ts')
  const target = entry && targetOf(place, known.practice, entry, world)
  const write = target && ((landmarks: Landmarks) => writeLandmarks(target, landmarks))
  return { ...page, picture: jpeg, write }
}

interface Place {
  readonly path: string
  readonly casebook: string
  readonly horse: string
  /** Path in the horse's folder, forward slashes. */
  readonly file: string
}

/** The picture, and the horse in whose folder it lies. */
function placeOf(photo: string, world: World): Place {
  const around = casebookAround(world.cwd)
  const paths = [world.cwd, ...(around ? [around] : [])].map((folder) => resolve(folder, photo))
  const path = paths.find((one) => existsSync(one)) ?? resolve(world.cwd, photo)
  if (!existsSync(path) || !statSync(path).isFile()) throw new WrongUse(`There is no picture ${photo}.`)
  for (let folder = dirname(path); folder !== dirname(folder); folder = dirname(folder)) {
    if (!existsSync(join(folder, 'horse.md'))) continue
    const file = relative(folder, path).replaceAll('\\', '/')
    return { path, casebook: dirname(folder), horse: basename(folder), file }
  }
  throw new WrongUse(`${photo} lies in no horse's folder. Copy it to the folder photos of a horse first.`)
}

async function readHorseOf(
  { casebook, horse: id }: Place,
  world: World,
): Promise<{ practice: Practice; horse: Horse } | null> {
  const { diskFolder } = await import('../build/disk/source-folder.ts')
  const { readPractice, readHorse } = await import('../casebook/read.ts')
  const folder = diskFolder(casebook)
  const { practice, diagnostics } = readPractice(folder, world.today())
  if (practice === null) {
    world.stderr.write(printAll(diagnostics))
    return null
  }
  const read = readHorse(folder, id, practice, world.today())
  if (read.horse !== null) return { practice, horse: read.horse }
  world.stderr.write(printAll(read.diagnostics.filter(({ level }) => level === 'error')))
  world.stderr.write(`The files of ${id} must be put right first, so that its entries can be read.\n`)
  return null
}

interface Chosen {
  readonly view: MarkedView
  readonly entry: Entry | null
}

interface Entry {
  readonly photo: Photo
  readonly visit: Visit
  /** Which of the entries of the visit that name the picture. */
  readonly nth: number
}

/** The one entry that names the picture, as narrowed by the options; or none, and a view. */
function chooseEntry(horse: Horse, { file }: Place, options: Options): Chosen {
  const [visitId, viewId] = [textOf(options, 'visit'), textOf(options, 'view')]
  const wanted = markedViews.find((view) => view === viewId) ?? null
  const naming: readonly Entry[] = horse.visits.flatMap((visit) =>
    visit.photos.filter((photo) => photo.file === file).map((photo, nth) => ({ photo, visit, nth })),
  )
  if (naming.length === 0) return { view: wanted ?? 'lateral', entry: null }
  const meant = naming.filter(
    ({ photo, visit }) =>
      (visitId === null || visit.id === visitId) && (wanted === null || photo.view === wanted),
  )
  const [entry, second] = meant
  if (entry === undefined || second !== undefined) {
    const list = naming.map(({ photo, visit }) => `--visit ${visit.id} --view ${photo.view}`)
    const why = entry === undefined ? 'No entry of this picture fits' : 'Several entries name this picture'
    throw new WrongUse(`${why}. There are:\n  ${list.join('\n  ')}`)
  }
  return { view: viewOf(entry.photo.view, entry.visit), entry }
}

function viewOf(view: PhotoView, visit: Visit): MarkedView {
  if (isMarkedView(view)) return view
  throw new WrongUse(
    `The entry in ${visit.file} has the view ${view}, which is not measured. Write there one of: ${markedViews.join(', ')}.`,
  )
}

function targetOf(place: Place, practice: Practice, { visit, nth }: Entry, world: World): MarkTarget {
  const { casebook, horse, file } = place
  return { casebook, horse, practice, visit, entry: { file, nth }, asOf: world.today() }
}

async function pageOf(subject: MarkSubject, practice: Practice) {
  const { createRenderer } = await import('../render/renderer.ts')
  const { assetTexts } = await import('../build/assets.ts')
  const { commonStyles, packageRoot, templates } = await import('../build/program.ts')
  const { markPage } = await import('../pages/mark/mark-page.ts')
  const { formatter } = await import('../pages/shared/format.ts')
  const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
  const words = wordsFor(practiceLanguage)
  const root = packageRoot()
  const { style, scripts } = assetTexts(root, { styles: [...commonStyles, 'mark'], scripts: ['mark'] })
  return {
    page: await createRenderer(templates(root), words).render(
      markPage(subject, formatter(practice.units, words)),
    ),
    style,
    script: scripts.map(({ text }) => text).join('\n'),
  }
}
