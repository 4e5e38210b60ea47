/** What commands that add files to a casebook share. */
import { join, relative } from 'node:path'
import type { CasebookFolder } from '../casebook/folder.ts'
import type { Practice } from '../casebook/model.ts'
import { parseDate } from '../hoof/dates.ts'
import type { StarterFile } from '../pages/starter/casebook.ts'
import { textOf } from './arguments.ts'
import { exit, type Options, type World, WrongUse } from './command.ts'
import { printAll } from './report.ts'

/** The practice, once it can be used and has this horse; else what is wrong has been said. */
export async function soundPractice(
  folder: CasebookFolder,
  id: string,
  world: World,
): Promise<Practice | null> {
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
export function nextLetter(folder: CasebookFolder, id: string, date: string): string {
  const taken = new Set(folder.list().map(({ path }) => path))
  for (const letter of 'bcdefghijklmnopqrstuvwxyz') {
    if (!taken.has(`${id}/${date}-${letter}.md`)) return `${date}-${letter}`
  }
  throw new WrongUse(`${id} has more visits on ${date} than there are letters.`)
}

/** The day that `--date` names, else today. */
export function visitDay(options: Options, world: World): string {
  const text = textOf(options, 'date')
  if (text === null) return world.today()
  const date = parseDate(text)
  if (date === null) throw new WrongUse(`--date ${text} is no calendar date. Write it as 2026-03-14.`)
  return date
}

/** Writes the files that do not stand there yet, and says which. */
export async function writeFiles(
  place: string,
  files: readonly StarterFile[],
  world: World,
): Promise<number> {
  const { addFiles } = await import('../build/disk/add-files.ts')
  const { written, kept } = addFiles(place, files)
  const shown = (path: string) => relative(world.cwd, join(place, path)) || path
  for (const path of written) world.stdout.write(`${shown(path)} written\n`)
  for (const path of kept) world.stderr.write(`${shown(path)} stands already and was left as it is.\n`)
  return kept.length > 0 && written.length === 0 ? exit.problems : exit.clean
}
