/** The service worker's file: the bundled program with the list of files that it keeps on the phone. */

import { readFileSync } from 'node:fs'
import { posix } from 'node:path'
import type { Output } from '../../build/disk/staging.ts'
import { browserFile } from '../../build/program.ts'
import { controlsShown } from '../../casebook/control-characters.ts'

/**
 * Each file goes by its content. A host to which not everything has been uploaded yet gives other bytes than the list
 * says; then nothing is taken, and the phone asks again later.
 * @param folder in which the page stands
 */
export function workerScript(files: readonly Pick<Output, 'path' | 'hash'>[], folder: string): string {
  const kept = files.map(({ path, hash }) => ({
    url: posix.relative(folder, path),
    revision: hash,
    integrity: `sha256-${Buffer.from(hash, 'base64url').toString('base64')}`,
  }))
  return `self.keptFiles=${JSON.stringify(kept)};\n${controlsShown(readFileSync(browserFile('yard-worker.js'), 'utf8'))}`
}
