/** The command line: the table of commands, which is also its help, and one of them run. */
import { Command, CommanderError, Option } from 'commander'
import { Stopped, UserError } from '../build/disk/errors.ts'
import { packageRoot, packageVersion } from '../build/program.ts'
import { add } from './add.ts'
import { build } from './build.ts'
import { card } from './card.ts'
import { check } from './check.ts'
import { collect } from './collect.ts'
import { type CommandEntry, exit, type Options, type World, WrongUse } from './command.ts'
import { draft } from './draft.ts'
import { exportCasebook } from './export.ts'
import { importTable } from './import.ts'
import { lsp } from './lsp.ts'
import { mark } from './mark.ts'
import { preview } from './preview.ts'
import { review } from './review.ts'

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

/**
 * Runs one command; faults that a person can mend are told in plain words.
 * @returns the exit status
 */
export async function runCommandLine(args: readonly string[], world: World): Promise<number> {
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
