import { createHash } from 'node:crypto'

/** SHA-256 of bytes or text, as text that is safe in JSON and in file names. */
export const hashOf = (data: string | Uint8Array): string =>
  createHash('sha256').update(data).digest('base64url')

/** One name for a list of texts; their lengths count, so that no two lists can read alike. */
export function digest(parts: readonly string[]): string {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(`${part.length}:${part}`)
  return hash.digest('base64url')
}
