import type { Assessment } from '../trend/assessment.ts'
import type { PracticeLessons } from '../trend/model/practice.ts'
import { asOfDay, asOfOption, casebookFolder } from './arguments.ts'
import { type CommandEntry, exit, type World } from './command.ts'
import { countText, printAll, problemsIn } from './report.ts'

export const exportCasebook: CommandEntry = {
  usage: 'export [folder]',
  does: 'Prints all that was read and worked out: json as the pages use it, csv of the readings, or the schema of the json.',
  options: [
    {
      flags: '--format <format>',
      does: 'what to print',
      choices: ['json', 'csv', 'schema'],
      default: 'json',
    },
    asOfOption,
  ],
  run: async ([folder], options, world) => {
    const format = options.get('format')
    if (format === 'schema') {
      const { exportSchema } = await import('../pages/export.ts')
      world.stdout.write(`${JSON.stringify(exportSchema(), null, 2)}\n`)
      return exit.clean
    }
    const asOf = asOfDay(options, world)
    const { diskFolder } = await import('../build/disk/source-folder.ts')
    const { readCasebook } = await import('../casebook/read.ts')
    const { assess } = await import('../trend/assess.ts')
    const { lessonsOf } = await import('../trend/model/practice.ts')
    const { withCards } = await import('../pictures/cards.ts')
    const { cardsIn } = await import('../pictures/process.ts')
    const source = diskFolder(casebookFolder(folder, world))
    const { casebook, diagnostics } = readCasebook(source, asOf)
    if (diagnostics.length > 0) world.stderr.write(`${printAll(diagnostics)}${countText(diagnostics)}\n`)
    if (casebook === null) return exit.problems
    const { practice, horses } = casebook
    const lessons = lessonsOf(horses, asOf)
    const assessments: Assessment[] = []
    for (const horse of horses) {
      const measured = withCards(horse, await cardsIn(horse, source))
      assessments.push(assess(measured, practice, asOf, lessons.learned))
    }
    await (format === 'csv' ? printCsv(assessments, world) : printJson(assessments, lessons, asOf, world))
    return problemsIn(diagnostics) > 0 ? exit.problems : exit.clean
  },
}

async function printJson(
  assessments: readonly Assessment[],
  lessons: PracticeLessons,
  asOf: string,
  world: World,
): Promise<void> {
  const { exportOf } = await import('../pages/export.ts')
  const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
  const { formatter } = await import('../pages/shared/format.ts')
  // The messages are words and name lengths in millimetres, as the values beside them are.
  const format = formatter('mm', wordsFor(practiceLanguage))
  world.stdout.write(`${JSON.stringify(exportOf(assessments, lessons, asOf, format), null, 2)}\n`)
}

async function printCsv(assessments: readonly Assessment[], world: World): Promise<void> {
  const { csvText } = await import('../pages/shared/csv.ts')
  const { readingColumns, readingRows } = await import('../pages/export.ts')
  world.stdout.write(csvText(readingColumns, readingRows(assessments)))
}
