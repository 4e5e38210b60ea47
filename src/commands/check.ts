import type { CasebookFolder } from '../casebook/folder.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { asOfDay, asOfOption, casebookFolder } from './arguments.ts'
import { type CommandEntry, exit } from './command.ts'
import { counted, countText, printAll, problemsIn } from './report.ts'

export const check: CommandEntry = {
  usage: 'check [folder]',
  does: 'Reads every case file and names what looks wrong, with file, line and the likely fix. Builds nothing.',
  options: [
    { flags: '--format <format>', does: 'how to print', choices: ['text', 'json'], default: 'text' },
    asOfOption,
  ],
  run: async ([folder], options, world) => {
    const place = casebookFolder(folder, world)
    const { diagnostics, files } = await readAll(place, asOfDay(options, world))
    if (options.get('format') === 'json') {
      const problems = problemsIn(diagnostics)
      const result = { problems, warnings: diagnostics.length - problems, files, diagnostics }
      world.stdout.write(`${JSON.stringify(result, null, 2)}\n`)
    } else {
      world.stdout.write(`${printAll(diagnostics)}${countText(diagnostics)} in ${counted(files, 'file')}\n`)
    }
    return problemsIn(diagnostics) > 0 ? exit.problems : exit.clean
  },
}

async function readAll(place: string, asOf: PlainDate) {
  const { diskFolder } = await import('../build/disk/source-folder.ts')
  const { readCasebook } = await import('../casebook/read.ts')
  const read = new Set<string>()
  const folder = diskFolder(place)
  const counting: CasebookFolder = {
    list: () => folder.list(),
    read: (path) => {
      read.add(path)
      return folder.read(path)
    },
  }
  const { diagnostics } = readCasebook(counting, asOf)
  return { diagnostics, files: read.size }
}
