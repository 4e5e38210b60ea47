import { vi } from 'vitest'

/** Waits until a check passes; a busy machine may be late. */
export const eventually = (check: () => void): Promise<void> => vi.waitFor(check, { timeout: 20_000 })
