import { spawnSync } from 'node:child_process'
import { resolve } from 'node:path'

export interface Ran {
  readonly status: number | null
  readonly out: string
  readonly err: string
}

const program = resolve('dist/cli.js')

/** Runs the program as a person does, in a folder. */
export function growdown(cwd: string, ...args: readonly string[]): Ran {
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
