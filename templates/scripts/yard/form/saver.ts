/** Keeps a draft at every change: at once, and where one is still being written only the latest after it. */
import { StoreFull } from './drafts.ts'

/** `full`: the phone keeps no more; `failed`: it could not be kept for another reason. */
export type SaveState = 'kept' | 'keeping' | 'full' | 'failed'

export interface Saver<T> {
  save(value: T): void
  /** Once all that was given has been kept, or has failed: whether it is kept. */
  settled(): Promise<boolean>
}

export function saverOf<T>(write: (value: T) => Promise<void>, report: (state: SaveState) => void): Saver<T> {
  let next: { readonly value: T } | null = null
  let running: Promise<void> | null = null
  let isKept = true
  const run = async () => {
    while (next !== null) {
      const { value } = next
      next = null
      try {
        await write(value)
        isKept = true
        if (next === null) report('kept')
      } catch (error) {
        isKept = false
        if (next === null) report(error instanceof StoreFull ? 'full' : 'failed')
      }
    }
    running = null
  }
  return {
    save: (value) => {
      next = { value }
      report('keeping')
      running ??= run()
    },
    settled: async () => {
      await running
      return isKept
    },
  }
}
