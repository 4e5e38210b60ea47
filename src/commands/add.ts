import { mkdirSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import type { Horse, Practice } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Formatter } from '../pages/shared/format.ts'
import type { Assessment } from '../trend/assessment.ts'
import { casebookDoes, casebookFolder, textOf } from './arguments.ts'
import { type CommandEntry, exit, type Options, type World, WrongUse } from './command.ts'
import { nextLetter, soundPractice, visitDay, writeFiles } from './new-files.ts'
import { printAll } from './report.ts'
import { hearNotes, readNotes, refuseTooLong } from './spoken-notes.ts'

export const add: CommandEntry = {
  usage: 'add <what> [name]',
  does: 'Starts a file to fill in: "add casebook <folder>", "add horse <id>" or "add visit <horse>". Never replaces one.',
  options: [
    { flags: '--casebook <folder>', does: casebookDoes },
    { flags: '--date <date>', does: 'day of the visit, YYYY-MM-DD (default: today)' },
    { flags: '--second', does: 'a second visit on that day' },
    { flags: '--from <notes>', does: 'of a visit: fill in what spoken notes say (.txt, .vtt or .srt)' },
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
  const status = await writeFiles(place, startCasebook('mm', wordsFor(practiceLanguage).starter), world)
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
  return writeFiles(place, [{ path: `${id}/horse.md`, text }], world)
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
  const assessment = assess(horse, practice, date)
  const notes = textOf(options, 'from')
  const text =
    notes === null
      ? startVisit(horse, assessment, practice, date, format)
      : await visitFromNotes(notes, { horse, assessment, practice, date, format }, world)
  return writeFiles(place, [{ path: `${id}/${visit}.md`, text }], world)
}

interface NewVisit {
  readonly horse: Horse
  readonly assessment: Assessment
  readonly practice: Practice
  readonly date: PlainDate
  readonly format: Formatter
}

/** What the notes say, and blanks for what a new visit asks besides. */
async function visitFromNotes(
  name: string,
  { horse, assessment, practice, date, format }: NewVisit,
  world: World,
): Promise<string> {
  const { draftVisit } = await import('../spoken/index.ts')
  const { joined } = await import('../pages/starter/joined.ts')
  const notes = readNotes(name, world)
  const { known, understood: heard } = await hearNotes(notes, horse.visits, practice, date)
  const past = horse.visits.filter((visit) => visit.date <= date)
  const { understood, asked } = joined(heard, horse, past, assessment, practice, format)
  if (heard.questions.length > 0)
    world.stdout.write(`To settle: ${heard.questions.length}, at the top of the visit\n`)
  const text = draftVisit(understood, known, asked)
  refuseTooLong(text)
  return text
}
