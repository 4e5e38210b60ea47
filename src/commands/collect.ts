import { readFileSync, statSync } from 'node:fs'
import { basename, join, relative, resolve } from 'node:path'
import type { ChangedLine } from '../apps/collect/changed-lines.ts'
import type { CollectPlan, TakenVisit, ToSettle } from '../apps/collect/plan.ts'
import type { Adding } from '../build/disk/add-together.ts'
import { limits } from '../casebook/limits.ts'
import { yardKeyText } from '../casebook/yard-key.ts'
import type { CameFile, Refused } from '../yard/unpack.ts'
import { casebookDoes, casebookFolder, textOf } from './arguments.ts'
import { type CommandEntry, exit, type World, WrongUse } from './command.ts'
import { counted, printAll } from './report.ts'

export const collect: CommandEntry = {
  usage: 'collect [file...]',
  does: 'Takes over what the yard page gave out: .zip, .txt and pictures, in any mixture and under any names. Puts each visit and its pictures in their places, replaces nothing, and says what was done and what is to settle.',
  options: [
    { flags: '--casebook <folder>', does: casebookDoes },
    { flags: '--horse <id>', does: 'the horse of visits whose own is not in the casebook' },
    { flags: '--undo', does: 'take back what was taken over last, as far as nobody has changed it' },
  ],
  run: async (names, options, world) => {
    const { openAdding } = await import('../build/disk/add-together.ts')
    const { disk } = await import('../build/disk/real-disk.ts')
    const isUndo = options.get('undo') === true
    const given = names.filter((name) => name !== undefined)
    if (isUndo === given.length > 0) {
      throw new WrongUse(
        isUndo
          ? '--undo takes back what was taken over last; it takes no files.'
          : 'Name the files that came from the phone: growdown collect visits.zip',
      )
    }
    const came = readFiles(given, world)
    const place = casebookFolder(textOf(options, 'casebook') ?? undefined, world)
    const adding = openAdding(disk, place)
    try {
      if (adding.unfinished.length > 0)
        world.stderr.write(
          `An earlier collect was stopped before its end: ${adding.unfinished.join(', ')} taken back.\n`,
        )
      return isUndo
        ? undo(adding, place, world)
        : await takeOver(adding, place, came, textOf(options, 'horse'), world)
    } finally {
      adding.close()
    }
  },
}

/** @throws WrongUse for what is no file, or holds more than any phone gives out */
function readFiles(names: readonly string[], world: World): readonly CameFile[] {
  return names.map((name) => {
    const path = resolve(world.cwd, name)
    const stat = statSync(path, { throwIfNoEntry: false })
    if (!stat?.isFile()) throw new WrongUse(`There is no file ${name} here.`)
    if (stat.size > limits.parcelBytes)
      throw new WrongUse(
        `${name} is larger than ${limits.parcelBytes / 1024 ** 2} MiB: give out fewer visits at once.`,
      )
    return { name: basename(name), bytes: new Uint8Array(readFileSync(path)) }
  })
}

function undo(adding: Adding, place: string, world: World): number {
  const taken = adding.takeBack()
  if (taken === null) {
    world.stderr.write('There is nothing to take back.\n')
    return exit.problems
  }
  const shown = shownIn(place, world)
  for (const path of taken.removed) world.stdout.write(`${shown(path)} taken back\n`)
  for (const path of taken.gone) world.stdout.write(`${shown(path)} was gone already\n`)
  for (const path of taken.kept)
    world.stderr.write(`${shown(path)} was changed since, or belongs to a visit that was: left as it is.\n`)
  return taken.kept.length > 0 ? exit.problems : exit.clean
}

const shownIn = (place: string, world: World) => (path: string) =>
  relative(world.cwd, join(place, path)) || path

async function takeOver(
  adding: Adding,
  place: string,
  came: readonly CameFile[],
  instead: string | null,
  world: World,
): Promise<number> {
  const { planCollect } = await import('../apps/collect/plan.ts')
  const { diskFolder } = await import('../build/disk/source-folder.ts')
  const { readPractice } = await import('../casebook/read.ts')
  const { unpack } = await import('../yard/unpack.ts')
  const folder = diskFolder(place)
  const { practice, diagnostics, horseIds } = readPractice(folder, world.today())
  if (practice === null) {
    world.stderr.write(`${printAll(diagnostics)}Nothing was taken over.\n`)
    return exit.problems
  }
  if (instead !== null && !horseIds.includes(instead)) {
    throw new WrongUse(`There is no horse ${instead}. Known: ${horseIds.join(', ') || 'none'}`)
  }
  const parcel = await unpack(came)
  const known = { practice, horseIds, instead, today: world.today() }
  const plan = planCollect(folder, known, parcel)
  if (plan.files.length > 0) adding.add(plan.files)
  const shown = shownIn(place, world)
  for (const visit of plan.taken) sayTaken(visit, shown, world)
  for (const { from, path, pictures } of plan.already) {
    const more = pictures.length > 0 ? `; ${counted(pictures.length, 'picture')} added that was missing` : ''
    world.stdout.write(`${from}: taken over already, in ${shown(path)}${more}\n`)
  }
  for (const one of plan.toSettle) world.stderr.write(`${settleText(one, shown)}\n`)
  for (const { from, why } of parcel.refused)
    world.stderr.write(`${from} was not taken over: ${refusals[why]}\n`)
  for (const from of plan.strayPictures) world.stderr.write(`${from} was not taken over: ${strayPicture}\n`)
  const { taken, already } = plan
  world.stdout.write(
    `${counted(taken.length, 'visit')} taken over, ${already.length} already there, ${leftOver(plan, parcel.refused)} to settle\n`,
  )
  const isClean =
    leftOver(plan, parcel.refused) === 0 &&
    taken.every((one) => one.problems.length === 0 && !one.isChanged && one.writtenBy === null)
  return isClean ? exit.clean : exit.problems
}

const leftOver = ({ toSettle, strayPictures }: CollectPlan, refused: readonly Refused[]): number =>
  toSettle.filter(({ kind }) => kind !== 'newer in the parcel').length + strayPictures.length + refused.length

function sayTaken(visit: TakenVisit, shown: (path: string) => string, world: World): void {
  const { from, path, pictures, isSecond, isChanged, problems, remarks, writtenBy } = visit
  const beside = pictures.length > 0 ? ` and ${counted(pictures.length, 'picture')}` : ''
  world.stdout.write(`${shown(path)}${beside} written, from ${from}\n`)
  if (isSecond)
    world.stderr.write(
      `${shown(path)} is a further visit of that day: one was there already and was left as it is.\n`,
    )
  if (isChanged)
    world.stderr.write(
      `${from} did not come as it left the phone: a part was lost or changed on the way. It is kept a draft; give it out again, or read ${shown(path)} against the phone.\n`,
    )
  if (writtenBy !== null)
    world.stderr.write(
      `${from} was written with other units or another order of the feet than practice.md has now (${writtenBy}). ${shown(path)} is kept a draft: read its numbers against that.\n`,
    )
  if (problems.length > 0)
    world.stderr.write(
      `${printAll(problems)}${shown(path)} is kept a draft (draft: yes). Mend what is named above, then delete that line.\n`,
    )
  if (remarks.length > 0) world.stderr.write(printAll(remarks))
}

const strayPicture =
  'no visit of this parcel names it. Give it together with the text of its visit; where it is a picture of one, a program on the way has changed it: give the visit out as one file.'

const refusals: Readonly<Record<Refused['why'], string>> = {
  'unknown kind': 'it is neither a parcel of the yard page, nor a visit, nor a picture (JPEG).',
  'no case file': 'it is text, but no visit: its first line is not ---.',
  'no date':
    'nothing in it says of which day the visit is. Write a line date: 2026-03-14 below the first ---.',
  'not text': 'it is neither a picture (JPEG) nor text in UTF-8.',
  damaged: 'it came damaged. Give it out again.',
  'too many files': `it holds more than ${limits.parcelFiles} files.`,
  'too large': 'what it holds is larger than any phone gives out.',
  'leads elsewhere': 'a path in it leads out of the folder, which no parcel of the yard page does.',
}

function settleText(one: ToSettle, shown: (path: string) => string): string {
  switch (one.kind) {
    case 'no horse':
      return `${one.from} was not taken over: nothing in it says of which horse it is. Collect again with --horse and its id.`
    case 'unknown horse':
      return `${one.from} was not taken over: there is no horse ${one.horse}. ${
        one.meant === null
          ? `Start it (growdown add horse ${one.horse}) and collect again, or collect again with --horse and the id that it has here.`
          : `Where ${one.meant} is meant, collect again with --horse ${one.meant}; a new horse is started with growdown add horse ${one.horse}.`
      }`
    case 'newer in the parcel':
      return `${one.from} is left out: version ${one.version} of the same visit is in the parcel.`
    case 'later version':
      return [
        `${one.from} is version ${one.version} of a visit that stands in ${shown(one.path)} in version ${one.there}. Nothing was written over. They differ:`,
        ...one.lines.slice(0, mostLines).map(lineText),
        ...(one.lines.length > mostLines ? [`  and ${one.lines.length - mostLines} lines more`] : []),
        `Either move ${shown(one.path)} out of the casebook and collect again; or put what is new into it and set its line to yard: ${yardKeyText(one)}.`,
      ].join('\n')
  }
}

const mostLines = 40
const lineText = ({ line, kind, text }: ChangedLine): string =>
  `  line ${line} ${kind === 'only there' ? 'has' : 'new'}: ${text}`
