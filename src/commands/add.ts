import { mkdirSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import type { CasebookFolder } from '../casebook/folder.ts'
import type { Practice } from '../casebook/model.ts'
import { parseDate } from '../hoof/dates.ts'
import type { StarterFile } from '../pages/starter/casebook.ts'
import { casebookDoes, casebookFolder, textOf } from './arguments.ts'
import { type CommandEntry, exit, type Options, type World, WrongUse } from './command.ts'
import { printAll } from './report.ts'

export const add: CommandEntry = {
  usage: 'add <what> [name]',
  does: 'Starts a file to fill in: "add casebook <folder>", "add horse <id>" or "add visit <horse>". Never replaces one.',
  options: [
    { flags: '--casebook <folder>', does: casebookDoes },
    { flags: '--date <date>', does: 'day of the visit, YYYY-MM-DD (default: today)' },
    { flags: '--second', does: 'a second visit on that day' },
  ],
  run: async ([what, name], options, world) => {
    if (name === undefined) throw new WrongUse(`Say which: growdown add ${what ?? 'visit'} <name>`)
    if (what === 'casebook') return addCasebook(name, world)
    if (what === 'horse') return addHorse(name, options, world)
    if (what === 'visit') return addVisit(name, options, world)
    throw new WrongUse(`"${what}" cannot be added. Expected casebook, horse or visit.`)
  },
}

async function addCasebook(name: string, world: World): Promise<number> {
  const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
  const { startCasebook } = await import('../pages/starter/casebook.ts')
  const place = resolve(world.cwd, name)
  mkdirSync(place, { recursive: true })
  const status = await write(place, startCasebook('mm', wordsFor(practiceLanguage).starter), world)
  const way = relative(world.cwd, place)
  world.stdout.write(
    `What to do next is in ${join(way, 'guide.txt')}; ${way === '' ? 'its commands are for this folder' : `first: cd ${way}`}\n`,
  )
  return status
}

async function addHorse(id: string, options: Options, world: World): Promise<number> {
  const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
  const { startHorse } = await import('../pages/starter/horse.ts')
  if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id)) {
    const { horseId } = await import('../casebook/table.ts')
    const fit = horseId(id)
    const hint = fit === '' ? '' : ` Perhaps: growdown add horse ${fit}`
    throw new WrongUse(
      `"${id}" cannot be a folder's name here: lower-case letters, digits and hyphens only.${hint}`,
    )
  }
  const place = casebookFolder(textOf(options, 'casebook') ?? undefined, world)
  const text = startHorse(null, visitDay(options, world), wordsFor(practiceLanguage).starter)
  return write(place, [{ path: `${id}/horse.md`, text }], world)
}

async function addVisit(id: string, options: Options, world: World): Promise<number> {
  const { diskFolder } = await import('../build/disk/source-folder.ts')
  const { formatter } = await import('../pages/shared/format.ts')
  const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
  const { startVisit } = await import('../pages/starter/visit.ts')
  const { assess } = await import('../trend/assess.ts')
  const { readHorse } = await import('../casebook/read.ts')
  const place = casebookFolder(textOf(options, 'casebook') ?? undefined, world)
  const folder = diskFolder(place)
  const date = visitDay(options, world)
  const practice = await soundPractice(folder, id, world)
  if (practice === null) return exit.problems
  const { horse, diagnostics } = readHorse(folder, id, practice, world.today())
  if (horse === null) {
    world.stderr.write(printAll(diagnostics.filter(({ level }) => level === 'error')))
    world.stderr.write(
      `The files of ${id} must be put right first: the new visit is written from the last one.\n`,
    )
    return exit.problems
  }
  const visit = options.get('second') === true ? nextLetter(folder, id, date) : date
  const format = formatter(practice.units, wordsFor(practiceLanguage))
  const text = startVisit(horse, assess(horse, practice, date), practice, date, format)
  return write(place, [{ path: `${id}/${visit}.md`, text }], world)
}

/** The practice, once it can be used and has this horse; else what is wrong has been said. */
async function soundPractice(folder: CasebookFolder, id: string, world: World): Promise<Practice | null> {
  const { readPractice } = await import('../casebook/read.ts')
  const { practice, diagnostics, horseIds } = readPractice(folder, world.today())
  if (practice === null) {
    world.stderr.write(printAll(diagnostics))
    return null
  }
  if (!horseIds.includes(id)) {
    throw new WrongUse(
      `There is no horse ${id}. Start it: growdown add horse ${id}. Known: ${horseIds.join(', ') || 'none'}`,
    )
  }
  return practice
}

/** `2026-03-14-b`, or the next letter that is free. */
function nextLetter(folder: CasebookFolder, id: string, date: string): string {
  const taken = new Set(folder.list().map(({ path }) => path))
  for (const letter of 'bcdefghijklmnopqrstuvwxyz') {
    if (!taken.has(`${id}/${date}-${letter}.md`)) return `${date}-${letter}`
  }
  throw new WrongUse(`${id} has more visits on ${date} than there are letters.`)
}

function visitDay(options: Options, world: World): string {
  const text = textOf(options, 'date')
  if (text === null) return world.today()
  const date = parseDate(text)
  if (date === null) throw new WrongUse(`--date ${text} is no calendar date. Write it as 2026-03-14.`)
  return date
}

async function write(place: string, files: readonly StarterFile[], world: World): Promise<number> {
  const { addFiles } = await import('../build/disk/add-files.ts')
  const { written, kept } = addFiles(place, files)
  const shown = (path: string) => relative(world.cwd, join(place, path)) || path
  for (const path of written) world.stdout.write(`${shown(path)} written\n`)
  for (const path of kept) world.stderr.write(`${shown(path)} is there already and was left as it is.\n`)
  return kept.length > 0 && written.length === 0 ? exit.problems : exit.clean
}
