/** The page locks itself once it has been out of sight for long: a phone is put down, and picked up by someone else. */

/** Minutes out of sight. */
export const hiddenMinutes = 15

/**
 * @param lock where all is kept that was written
 * @returns ends the watch
 */
export function lockWhenHidden(lock: () => Promise<void>): () => void {
  let hiddenAt: number | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  const isLong = () => hiddenAt !== null && Date.now() - hiddenAt >= hiddenMinutes * 60_000
  const look = () => {
    if (isLong()) void lock()
  }
  const change = () => {
    clearTimeout(timer)
    if (document.hidden) {
      hiddenAt = Date.now()
      timer = setTimeout(look, hiddenMinutes * 60_000)
    } else {
      // A phone that sleeps runs no timers.
      look()
      hiddenAt = null
    }
  }
  document.addEventListener('visibilitychange', change)
  return () => {
    clearTimeout(timer)
    document.removeEventListener('visibilitychange', change)
  }
}
