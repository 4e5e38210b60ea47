/**
 * Two things that the operating system guarantees and Node does not offer: a lock that ends with its process, and the
 * exchange of two folders in one step. A maintained package brings them, ready made for Linux (glibc), macOS and
 * Windows; elsewhere there is none, and callers do without.
 */
import { createRequire } from 'node:module'

export interface Native {
  /** Takes an exclusive lock on an open file; false while another process, or another opening, holds it. */
  tryLock(handle: number): boolean
  /**
   * Exchanges two files or folders. On Linux and macOS in one step (`renameat2` with RENAME_EXCHANGE, `renamex_np`);
   * on Windows in three.
   */
  swapSync(a: string, b: string): void
}

/** Null on a system for which the package has nothing. */
export function native(): Native | null {
  const require = createRequire(import.meta.url)
  try {
    return require('fs-native-extensions')
  } catch {
    return null
  }
}
