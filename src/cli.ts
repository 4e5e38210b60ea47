#!/usr/bin/env node
/** The program as it is started: the table of commands, and the world handed to them. */
import { Command, CommanderError, Option } from 'commander'
import { Stopped, UserError } from './build/disk/errors.ts'
import { packageRoot, packageVersion } from './build/program.ts'
import { controlsShown } from './casebook/control-characters.ts'
import { add } from './commands/add.ts'
import { build } from './commands/build.ts'
import { card } from './commands/card.ts'
import { check } from './commands/check.ts'
import { collect } from './commands/collect.ts'
import {
  type CommandEntry,
  clearLine,
  exit,
  type Options,
  type World,
  type Writer,
  WrongUse,
} from './commands/command.ts'
import { draft } from './commands/draft.ts'
import { exportCasebook } from './commands/export.ts'
import { importTable } from './commands/import.ts'
import { lsp } from './commands/lsp.ts'
import { mark } from './commands/mark.ts'
import { preview } from './commands/preview.ts'
import { review } from './commands/review.ts'

/** The table of commands, in the order in which help shows them. */
const commands: readonly CommandEntry[] = [
  check,
  build,
  review,
  preview,
  add,
  draft,
  collect,
  mark,
  card,
  importTable,
  exportCasebook,
  lsp,
]

const help = `
A casebook is a folder with practice.md and a folder for each horse. Where a
command takes [folder] and none is named, it is the casebook that you are in,
else the folder "cases" here; which one it is is said.

Exit status: 0 clean, or warnings only; 1 problems in the case files, or nothing
could be published; 2 the command was used wrongly.`

function writer(stream: NodeJS.WriteStream): Writer {
  // A reader that has heard enough, such as `head`, closes the pipe: no fault of anyone's.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
  return {
    write: (text) => {
      const own = text.startsWith(clearLine) ? clearLine : ''
      stream.write(own + controlsShown(text.slice(own.length)))
    },
    isTerminal: stream.isTTY === true,
  }
}

/** The calendar date where the person is. */
function localDate(): string {
  const now = new Date()
  const two = (number: number) => String(number).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** A first wish to stop is passed on; a second one ends the program at once, which harms nothing. */
function wishToStop(): AbortSignal {
  const controller = new AbortController()
  const ask = () => {
    if (controller.signal.aborted) process.exit(exit.stopped)
    controller.abort()
  }
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, ask)
  return controller.signal
}

/** Keys as they are pressed. A terminal is set to hand on each at once, and set back at the end. */
async function* keysOf(stream: NodeJS.ReadStream, signal: AbortSignal): AsyncGenerator<string> {
  const isTerminal = stream.isTTY === true
  const stop = () => void stream.destroy()
  signal.addEventListener('abort', stop, { once: true })
  if (isTerminal) stream.setRawMode(true)
  stream.setEncoding('utf8')
  try {
    for await (const chunk of stream) {
      const text = String(chunk)
      if (!isTerminal) yield* text
      else if (['\u0003', '\u0004'].includes(text.slice(0, 1))) return
      // An arrow is several signs at once; of a key held down the first counts, since the rest answers what nobody has read.
      else if (!text.startsWith('\u001b')) yield text.slice(0, 1)
    }
  } catch (error) {
    if (!signal.aborted) throw error
  } finally {
    signal.removeEventListener('abort', stop)
    if (isTerminal) stream.setRawMode(false)
    stream.destroy()
  }
}

function openWorld(): World {
  const signal = wishToStop()
  return {
    cwd: process.cwd(),
    stdout: writer(process.stdout),
    stderr: writer(process.stderr),
    today: localDate,
    now: Date.now,
    signal,
    keys: () => keysOf(process.stdin, signal),
  }
}

/** The command line as commander reads it. `setStatus` hears the exit status of the command that ran. */
function programOf(world: World, setStatus: (status: number) => void): Command {
  const program = new Command('growdown')
    .description('Hoof rehabilitation case files in Markdown, checked and turned into a site.')
    .version(packageVersion(packageRoot()))
    .addHelpText('after', help)
    .exitOverride()
    .configureOutput({ writeOut: world.stdout.write, writeErr: world.stderr.write })
  for (const entry of commands) {
    const command = program.command(entry.usage).description(entry.does)
    for (const option of entry.options) {
      const made = new Option(option.flags, option.does)
      if (option.choices) made.choices(option.choices)
      if (option.default !== undefined) made.default(option.default)
      command.addOption(made)
    }
    command.action(async (...given: unknown[]) => {
      // Of an argument that may be several there is a list.
      const args = given.slice(0, command.registeredArguments.length).flat()
      setStatus(await entry.run(args.map(asText), optionsOf(command), world))
    })
  }
  return program
}

const asText = (value: unknown) => (typeof value === 'string' ? value : undefined)

/** Options by their name as written on the command line. */
function optionsOf(command: Command): Options {
  const values = command.opts<Record<string, string | boolean | undefined>>()
  return new Map(
    command.options.flatMap((option) => {
      const value = values[option.attributeName()]
      return value === undefined ? [] : [[option.name(), value] as const]
    }),
  )
}

/** Runs one command; faults that a person can mend are told in plain words. */
async function main(args: readonly string[], world: World): Promise<number> {
  let status: number = exit.clean
  try {
    await programOf(world, (value) => {
      status = value
    }).parseAsync(args, { from: 'user' })
    return status
  } catch (error) {
    return reportFault(error, world)
  }
}

function reportFault(error: unknown, world: World): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exit.clean : exit.wrongUse
  if (error instanceof WrongUse) {
    world.stderr.write(`${error.message}\n`)
    return exit.wrongUse
  }
  if (error instanceof Stopped) {
    world.stderr.write(`${error.message}\n`)
    return exit.stopped
  }
  if (error instanceof UserError) {
    world.stderr.write(`${error.message}\n`)
    return exit.problems
  }
  const detail = error instanceof Error ? (error.stack ?? error.message) : String(error)
  world.stderr.write(`A fault in growdown itself, not in your files. Nothing was published.\n${detail}\n`)
  return exit.problems
}

process.exitCode = await main(process.argv.slice(2), openWorld())
