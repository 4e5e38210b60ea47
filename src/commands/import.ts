import { readFileSync, statSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import type { TableRemark } from '../casebook/table.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { casebookDoes, casebookFolder, textOf } from './arguments.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { counted } from './report.ts'

export const importTable: CommandEntry = {
  usage: 'import <table.csv>',
  does: 'Turns a long table of readings (horse, date, stage, foot, measure, value, unit) into case files. Never replaces one.',
  options: [{ flags: '--casebook <folder>', does: casebookDoes }],
  run: async ([name = ''], options, world) => {
    const { readTable } = await import('../casebook/table.ts')
    const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
    const { importedFiles } = await import('../pages/starter/imported.ts')
    const { addFiles } = await import('../build/disk/add-files.ts')
    const place = casebookFolder(textOf(options, 'casebook') ?? undefined, world)
    const table = readTable(await tableText(name, world), await practiceUnits(place, world))
    const unread = table.remarks.filter(({ kind }) => kind === 'not understood')
    for (const { line, message } of unread) world.stderr.write(`${name}:${line}: ${message}\n`)
    for (const [reason, count] of countedReasons(table.remarks)) {
      world.stderr.write(`${counted(count, 'line')} left out: ${reason}\n`)
    }

    const files = importedFiles(table.readings, wordsFor(practiceLanguage).starter)
    const { written, kept } = addFiles(place, files)
    const visitsKept = kept.filter((path) => !path.endsWith('/horse.md'))
    for (const path of written) world.stdout.write(`${relative(world.cwd, join(place, path))} written\n`)
    for (const path of visitsKept) {
      world.stderr.write(
        `${relative(world.cwd, join(place, path))} is there already and was left as it is.\n`,
      )
    }
    const leftOut = table.remarks.length - unread.length
    const parts = [
      `${counted(table.readings.length, 'reading')} understood`,
      `${counted(unread.length, 'line')} not understood`,
      `${leftOut} left out`,
      `${counted(written.length, 'file')} written`,
      `${visitsKept.length} left as they were`,
    ]
    world.stdout.write(`${parts.join(', ')}\n`)
    return unread.length > 0 || visitsKept.length > 0 ? exit.problems : exit.clean
  },
}

/** Why lines were left out, with how many each. */
function countedReasons(remarks: readonly TableRemark[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const { kind, message } of remarks) {
    if (kind === 'left out') counts.set(message, (counts.get(message) ?? 0) + 1)
  }
  return counts
}

async function tableText(name: string, world: World): Promise<string> {
  const { largestTable } = await import('../casebook/table.ts')
  const file = resolve(world.cwd, name)
  const stat = statSync(file, { throwIfNoEntry: false })
  if (!stat?.isFile()) throw new WrongUse(`There is no file ${name} here.`)
  if (stat.size > largestTable)
    throw new WrongUse(`${name} is larger than ${largestTable / 1024 ** 2} MiB: split it.`)
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(file))
  } catch {
    throw new WrongUse(`${name} is not UTF-8 text. Save it again as "CSV UTF-8".`)
  }
}

/** Unit of a length without one: the practice's, or millimetres where there is no practice yet. */
async function practiceUnits(place: string, world: World): Promise<LengthUnit> {
  const { diskFolder } = await import('../build/disk/source-folder.ts')
  const { readPractice } = await import('../casebook/read.ts')
  return readPractice(diskFolder(place), world.today()).practice?.units ?? 'mm'
}
