import { hash } from 'node:crypto'

/** SHA-256 of bytes or text, as text that is safe in JSON and in file names. */
export const contentHash = (data: string | Uint8Array): string => hash('sha256', data, 'base64url')
