/** What several commands are given: the casebook's folder, the day, a number, a file of text. */
import { readFileSync, statSync } from 'node:fs'
import { basename, join, relative, resolve } from 'node:path'
import { casebookAround, isFile } from '../apps/casebook-around.ts'
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { type OptionEntry, type Options, type World, WrongUse } from './command.ts'

export const asOfOption: OptionEntry = {
  flags: '--as-of <date>',
  does: 'take this day as today, YYYY-MM-DD (default: the calendar date here)',
}

/** What the option `--casebook` does. */
export const casebookDoes = 'where the horses are (default: the casebook you are in, else cases)'

/** The text of an option, or null when it was not given. */
export function textOf(options: Options, name: string): string | null {
  const value = options.get(name)
  return typeof value === 'string' ? value : null
}

/**
 * The text of a file, without a byte-order mark.
 * @throws WrongUse with the refusal when it is not UTF-8
 */
export function utf8Text(path: string, refusal: string): string {
  const bytes = readFileSync(path)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new WrongUse(refusal)
  }
}

/**
 * The day on which the pages are made.
 * @throws WrongUse when the text is no calendar date
 */
export function asOfDay(options: Options, world: World): PlainDate {
  const text = textOf(options, 'as-of')
  if (text === null) return world.today()
  const date = parseDate(text)
  if (date === null) {
    throw new WrongUse(
      `--as-of ${text} is no calendar date. Write it as year, month, day: --as-of 2026-06-01`,
    )
  }
  return date
}

/**
 * The casebook's folder, absolute. Where none is named it is the one that the person is in, else `cases` here, and which
 * it is is said: a new file in the wrong casebook is found late.
 * @throws WrongUse when there is no such folder
 */
export function casebookFolder(named: string | undefined, world: World): string {
  if (named !== undefined) return folderAt(named, world)
  const around = casebookAround(world.cwd)
  const isNearer = around !== null && around !== world.cwd && isFile(join(world.cwd, 'cases', 'practice.md'))
  const folder = around !== null && !isNearer ? around : usualFolder(world)
  const way = relative(world.cwd, folder) || '.'
  world.stderr.write(`Casebook: ${basename(folder)}${way === basename(folder) ? '' : ` (${way})`}\n`)
  return folder
}

function folderAt(name: string, world: World): string {
  const place = resolve(world.cwd, name)
  const stat = statSync(place, { throwIfNoEntry: false })
  if (stat?.isDirectory()) return place
  const why = stat ? `${name} is a file, not a folder.` : `There is no folder ${name} here.`
  throw new WrongUse(
    `${why} Name the folder that holds practice.md, or start one: growdown add casebook ${name}`,
  )
}

function usualFolder(world: World): string {
  const place = join(world.cwd, 'cases')
  if (statSync(place, { throwIfNoEntry: false })?.isDirectory()) return place
  throw new WrongUse(
    'There is no casebook here: no practice.md in this folder or one above it, and no folder cases. Name the folder that holds practice.md, or start one: growdown add casebook cases',
  )
}

/**
 * A whole number from 1 up; null when the option was not given.
 * @throws WrongUse when it is anything else
 */
export function countOf(options: Options, name: string): number | null {
  const text = textOf(options, name)
  if (text === null) return null
  if (!/^[1-9]\d{0,2}$/.test(text)) throw new WrongUse(`--${name} ${text} is no whole number from 1 to 999.`)
  return Number(text)
}

/**
 * The port of a server; 0, which takes any that is free, where none is named.
 * @throws WrongUse when it can be none
 */
export function portOf(options: Options): number {
  const text = textOf(options, 'port') ?? '0'
  const port = Number(text)
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port
  throw new WrongUse(`--port ${text} is no port: 0 to 65535.`)
}
