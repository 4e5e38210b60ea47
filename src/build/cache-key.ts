/** The one way in which a cache key is made. */
import { hash } from 'node:crypto'

/**
 * One key for all that decides what is made: texts as they are, anything else as its JSON. Lengths count, so that no
 * two lists can read alike. Letters, digits, `-` and `_`: upper and lower case differ.
 */
export function cacheKey(...inputs: readonly unknown[]): string {
  let all = ''
  for (const input of inputs) {
    const text = typeof input === 'string' ? input : JSON.stringify(input)
    all += `${text.length}:${text}`
  }
  return hash('sha256', all, 'base64url')
}
