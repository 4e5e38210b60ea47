/** One line on a terminal that says how far long work is. In a pipe it stays quiet. */
import type { Progress } from '../build/builder.ts'
import { clearLine, type World } from './command.ts'

export interface ProgressLine {
  show(progress: Progress): void
  /** Takes the line away, before anything else is written. */
  clear(): void
}

/** Lines are drawn at most this often, milliseconds. */
const between = 100
/** Before this many milliseconds a guess of the time left is worth nothing. */
const guessAfter = 2_000

export function progressLine(world: World): ProgressLine {
  if (!world.stderr.isTerminal) return { show: () => {}, clear: () => {} }
  const began = world.now()
  let makingSince = began
  let drawn = 0
  return {
    show: (progress) => {
      const now = world.now()
      if (progress.step === 'making' && progress.done === 0) makingSince = now
      if (now - drawn < between) return
      drawn = now
      world.stderr.write(clearLine + progressText(progress, now - makingSince))
    },
    clear: () => {
      if (drawn > 0) world.stderr.write(clearLine)
    },
  }
}

/** `Making horses: 120 of 1000, about 2 minutes left`; `spent` is the time since the first, milliseconds. */
export function progressText(progress: Progress, spent: number): string {
  if (progress.step === 'reading') return 'Reading through the casebook ...'
  if (progress.step === 'publishing') return `Publishing ${progress.files} files ...`
  const { done, total } = progress
  if (progress.step === 'protecting') return `Searching and locking: ${done} of ${total}`
  const text = `Making horses: ${done} of ${total}`
  if (done === 0 || spent < guessAfter) return text
  return `${text}, about ${timeLeft((spent / done) * (total - done))} left`
}

function timeLeft(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000)
  if (seconds < 90) return seconds === 1 ? '1 second' : `${seconds} seconds`
  return `${Math.round(seconds / 60)} minutes`
}
