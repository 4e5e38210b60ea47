import { casebookDoes, casebookFolder, textOf } from './arguments.ts'
import { type CommandEntry, exit } from './command.ts'
import { nextLetter, soundPractice, visitDay, writeFiles } from './new-files.ts'
import { hearNotes, readNotes, refuseTooLong } from './spoken-notes.ts'

export const draft: CommandEntry = {
  usage: 'draft <horse> <notes>',
  does: 'Writes a draft visit from spoken notes as text (.txt), WebVTT (.vtt) or SubRip (.srt): what is sure as lines, each under the words it came from, what is not as questions, the rest as notes. Never replaces a file.',
  options: [
    { flags: '--casebook <folder>', does: casebookDoes },
    { flags: '--date <date>', does: 'day of the visit, YYYY-MM-DD (default: today)' },
    { flags: '--print', does: 'print the draft and write nothing' },
  ],
  run: async ([id = '', notes = ''], options, world) => {
    const { draftVisit } = await import('../spoken/index.ts')
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
    const { known, understood } = await hearNotes(said, horse?.visits ?? [], practice, date)
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
