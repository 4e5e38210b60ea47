/** The program run in a folder, as a person does. */
import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'
import type { Writer } from '../../src/commands/command.ts'
import { runCommandLine } from '../../src/commands/command-line.ts'

export interface Ran {
  readonly status: number | null
  readonly out: string
  readonly err: string
}

/** The day that counts as today where nobody says. */
const today = '2026-11-27'

/** Runs the command line in this process, which is sooner than starting one. */
export const growdown = (cwd: string, ...args: readonly string[]): Promise<Ran> =>
  growdownWithKeys('', cwd, ...args)

/** The same with these keys pressed. */
export async function growdownWithKeys(keys: string, cwd: string, ...args: readonly string[]): Promise<Ran> {
  const said = { out: '', err: '' }
  const writer = (stream: keyof typeof said): Writer => ({
    write: (text) => {
      said[stream] += text
    },
    isTerminal: false,
  })
  const status = await runCommandLine(args, {
    cwd,
    stdout: writer('out'),
    stderr: writer('err'),
    keys: async function* () {
      yield* keys
    },
    today: () => today,
    now: Date.now,
    signal: new AbortController().signal,
  })
  return { status, ...said }
}

const program = resolve('dist/cli.js')

/** Runs the program as a process of its own. */
export function growdownProcess(cwd: string, ...args: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd,
    encoding: 'utf8',
    // The whole export of the demo is longer than what a process may say by default.
    maxBuffer: 64 * 1024 * 1024,
  })
  return { status, out: stdout, err: stderr }
}

/** Runs it through npm from elsewhere, as one with a checkout does. */
export function viaNpm(cwd: string, ...args: readonly string[]): Ran {
  const npm = ['--prefix', resolve('.'), 'run', '-s', 'growdown', '--']
  const { status, stdout, stderr } = spawnSync('npm', [...npm, ...args], { cwd, encoding: 'utf8' })
  return { status, out: stdout, err: stderr }
}
