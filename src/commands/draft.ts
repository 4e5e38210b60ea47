import { readFileSync, statSync } from 'node:fs'
import { basename, extname, resolve } from 'node:path'
import { limits } from '../casebook/limits.ts'
import type { Practice, Visit } from '../casebook/model.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Known, NotesFormat } from '../spoken/index.ts'
import { casebookDoes, casebookFolder, textOf } from './arguments.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { nextLetter, soundPractice, visitDay, writeFiles } from './new-files.ts'

export const draft: CommandEntry = {
  usage: 'draft <horse> <notes>',
  does: 'Writes a draft visit from spoken notes as text (.txt), WebVTT (.vtt) or SubRip (.srt): what is sure as lines, each under the words it came from, what is not as questions, the rest as notes. Never replaces a file.',
  options: [
    { flags: '--casebook <folder>', does: casebookDoes },
    { flags: '--date <date>', does: 'day of the visit, YYYY-MM-DD (default: today)' },
    { flags: '--print', does: 'print the draft and write nothing' },
  ],
  run: async ([id = '', notes = ''], options, world) => {
    const { buildLexicon, draftVisit, understand } = await import('../spoken/index.ts')
    const { diskFolder } = await import('../build/disk/source-folder.ts')
    const { readHorse } = await import('../casebook/read.ts')
    const said = readNotes(notes, world)
    const place = casebookFolder(textOf(options, 'casebook') ?? undefined, world)
    const folder = diskFolder(place)
    const date = visitDay(options, world)
    const practice = await soundPractice(folder, id, world)
    if (practice === null) return exit.problems
    const { horse } = readHorse(folder, id, practice, world.today())
    if (horse === null) {
      world.stderr.write(
        `The files of ${id} hold errors (growdown check): what was open before is not known.\n`,
      )
    }
    const known = await knownBefore(horse?.visits ?? [], practice, date)
    const understood = understand(said.text, known, buildLexicon(Object.keys(practice.terms)), said.format)
    const text = draftVisit(understood, known)
    if (options.get('print') === true) {
      world.stdout.write(text)
      return exit.clean
    }
    refuseTooLong(text)
    const taken = folder.list().some(({ path }) => path === `${id}/${date}.md`)
    const visit = taken ? nextLetter(folder, id, date) : date
    if (taken)
      world.stderr.write(`${id}/${date}.md is there already: the draft is a second visit of that day.\n`)
    const status = await writeFiles(place, [{ path: `${id}/${visit}.md`, text }], world)
    const { questions } = understood
    if (questions.length > 0) world.stdout.write(`To settle: ${questions.length}, at the top of the draft\n`)
    return status
  },
}

/** @throws WrongUse where no reader of case files would take the text */
export function refuseTooLong(text: string): void {
  const { length } = new TextEncoder().encode(text)
  if (length <= limits.fileBytes) return
  throw new WrongUse(
    `The notes are too long for one visit: its file would hold ${length} bytes, and one is read up to ${limits.fileBytes}.`,
  )
}

const formats: Readonly<Record<string, NotesFormat>> = { '.txt': 'text', '.vtt': 'vtt', '.srt': 'srt' }

/** The notes, in the format that their name says. */
export function readNotes(
  name: string,
  world: World,
): { readonly text: string; readonly format: NotesFormat } {
  const path = resolve(world.cwd, name)
  const stat = statSync(path, { throwIfNoEntry: false })
  if (!stat?.isFile()) throw new WrongUse(`There is no file ${name} here. Name the text of the spoken notes.`)
  const format = formats[extname(name).toLowerCase()]
  if (!format) {
    throw new WrongUse(
      `${basename(name)} is no text of spoken notes. Expected a file that ends in .txt, .vtt or .srt.`,
    )
  }
  if (stat.size > limits.fileBytes) {
    throw new WrongUse(
      `${basename(name)} holds ${stat.size} bytes; notes are read up to ${limits.fileBytes}.`,
    )
  }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)), format }
  } catch (error) {
    if (!(error instanceof TypeError)) throw error
    throw new WrongUse(`${basename(name)} is not UTF-8 text. Save it as UTF-8 and try again.`)
  }
}

/** What the visits before that day leave open. */
export async function knownBefore(
  visits: readonly Visit[],
  practice: Practice,
  date: PlainDate,
): Promise<Known> {
  const { openFindings } = await import('../trend/assessment.ts')
  const past = visits.filter((visit) => visit.date <= date)
  const features = past.flatMap(({ growOut }) =>
    growOut.map(({ foot, what, place }) => ({ foot, what, place })),
  )
  return {
    units: practice.units,
    feetOrder: practice.feetOrder,
    date,
    openFindings: openFindings(past).map(({ finding: { foot, what, place } }) => ({ foot, what, place })),
    features: [...new Map(features.map((one) => [`${one.foot} ${one.what} ${one.place}`, one])).values()],
  }
}
