/** What a command is: a line of the table in command-line.ts, which is also its help. */
import type { PlainDate } from '../hoof/dates.ts'

export interface CommandEntry {
  /** `build [folder]`. */
  readonly usage: string
  /** What it does, in one sentence. */
  readonly does: string
  readonly options: readonly OptionEntry[]
  /** @returns the exit status */
  run(args: readonly (string | undefined)[], options: Options, world: World): Promise<number>
}

export interface OptionEntry {
  /** `--out <folder>`. */
  readonly flags: string
  readonly does: string
  /** The only values allowed. */
  readonly choices?: readonly string[]
  readonly default?: string
}

/** Values by the option's name as written, `as-of`; absent when not given. */
export type Options = ReadonlyMap<string, string | boolean>

/** What a command sees of the world outside. */
export interface World {
  readonly cwd: string
  readonly stdout: Writer
  readonly stderr: Writer
  /**
   * Keys as the person presses them, one at a time and without Enter; from a pipe every sign of it. Ends with the input, and
   * where the person asks to stop.
   */
  keys(): AsyncIterable<string>
  /** The calendar date where the person is. */
  today(): PlainDate
  /** Milliseconds. */
  now(): number
  /** Aborted when the person asks to stop. */
  readonly signal: AbortSignal
}

export interface Writer {
  /** What would steer the terminal is shown, `\u001b`, wherever in the text it stands; `clearLine` may begin it. */
  write(text: string): void
  /** Whether a person reads it as it comes. */
  readonly isTerminal: boolean
}

/** The one way in which a command steers the terminal itself: what it writes next takes the place of its last line. */
export const clearLine = '\r\u001b[K'

/** 0 clean or warnings only, 1 problems in case files or nothing published, 2 wrong use, 130 stopped. */
export const exit = { clean: 0, problems: 1, wrongUse: 2, stopped: 130 } as const

/** The command was used wrongly; its message says how to use it rightly. */
export class WrongUse extends Error {
  override readonly name = 'WrongUse'
}
