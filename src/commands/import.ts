import { statSync } from 'node:fs'
import { basename, join, relative, resolve } from 'node:path'
import type { ImportPlan } from '../apps/import/import-files.ts'
import type { TableRemark } from '../casebook/table.ts'
import type { DateOrder } from '../casebook/table-dates.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { casebookDoes, casebookFolder, textOf, utf8Text } from './arguments.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { counted } from './report.ts'

const orders: readonly DateOrder[] = ['dd/mm', 'mm/dd']

export const importTable: CommandEntry = {
  usage: 'import <table.csv>',
  does: 'Turns a table into case files: a reading a line, or a visit and horse a line with columns such as "LF toe length (mm)". All of it or nothing. Replaces only what an import of the table wrote and nobody has changed.',
  options: [
    { flags: '--casebook <folder>', does: casebookDoes },
    {
      flags: '--dates <order>',
      does: 'how 3/4/2026 is meant, where the table does not tell',
      choices: orders,
    },
    { flags: '--partial', does: 'write what was understood, although not all was' },
  ],
  run: async ([name = ''], options, world) => {
    const { carryOut, planImport } = await import('../apps/import/import-files.ts')
    const { diskFolder } = await import('../build/disk/source-folder.ts')
    const { readTable } = await import('../casebook/table.ts')
    const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
    const { importedFiles } = await import('../pages/starter/imported.ts')
    const place = casebookFolder(textOf(options, 'casebook') ?? undefined, world)
    const order = orders.find((one) => one === textOf(options, 'dates')) ?? null
    const table = readTable(await tableText(name, world), await practiceUnits(place, world), order)
    const unread = table.remarks.filter(({ kind }) => kind === 'not understood')
    for (const { line, message } of unread) world.stderr.write(`${name}:${line}: ${message}\n`)
    for (const [reason, count] of countedReasons(table.remarks)) {
      world.stderr.write(`${counted(count, 'line')} left out: ${reason}\n`)
    }

    const files = importedFiles(table.readings, wordsFor(practiceLanguage).starter)
    const plan = planImport(place, diskFolder(place), files, basename(name))
    const shown = (path: string) => relative(world.cwd, join(place, path)) || path
    for (const { path, why } of plan.keep) world.stderr.write(`${shown(path)} ${why}: left as it is.\n`)
    for (const path of plan.gone) {
      world.stderr.write(
        `${shown(path)} was imported from this table, which no longer has it: delete it if it was mended away.\n`,
      )
    }
    const isWhole = unread.length === 0 && plan.keep.length === 0
    const isDone = isWhole || options.get('partial') === true
    if (isDone) {
      carryOut(place, plan)
      for (const { path } of plan.add) world.stdout.write(`${shown(path)} written\n`)
      for (const { path } of plan.replace) world.stdout.write(`${shown(path)} written anew\n`)
    }
    const leftOut = table.remarks.length - unread.length
    world.stdout.write(`${summary(table.readings.length, unread.length, leftOut, plan, isDone)}\n`)
    if (!isDone)
      world.stderr.write(
        'Nothing was written. Mend what is named above and import again, or add --partial to write the rest.\n',
      )
    return isWhole && plan.gone.length === 0 ? exit.clean : exit.problems
  },
}

function summary(
  understood: number,
  unread: number,
  leftOut: number,
  plan: ImportPlan,
  isDone: boolean,
): string {
  const parts = [
    `${counted(understood, 'reading')} understood`,
    `${counted(unread, 'line')} not understood`,
    `${leftOut} left out`,
    `${counted(isDone ? plan.add.length : 0, 'file')} written`,
    `${isDone ? plan.replace.length : 0} written anew`,
    `${plan.same.length} already so`,
    `${plan.keep.length} left as they were`,
  ]
  return parts.join(', ')
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
  return utf8Text(file, `${name} is not UTF-8 text. Save it again as "CSV UTF-8".`)
}

/** Unit of a length without one: the practice's, or millimetres where there is no practice yet. */
async function practiceUnits(place: string, world: World): Promise<LengthUnit> {
  const { diskFolder } = await import('../build/disk/source-folder.ts')
  const { readPractice } = await import('../casebook/read.ts')
  return readPractice(diskFolder(place), world.today()).practice?.units ?? 'mm'
}
