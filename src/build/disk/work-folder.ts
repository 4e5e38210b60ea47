/** The tool's own folder beside the site: the lock, what is staged, the journal, what is remembered. */
import { basename, dirname, join } from 'node:path'
import { takeLock } from './build-lock.ts'
import { recover, throwAway } from './commit.ts'
import type { Files } from './files.ts'
import type { Staging } from './staging.ts'

export interface WorkFolder {
  readonly folder: string
  readonly staging: Staging
  /** Throws away what is still staged and lets the next build in. */
  close(): void
}

/**
 * Where the work for a site is done: `.growdown/<name of the site>` beside it, so that a finished file is put
 * into place by renaming. Only a site that is a disk of its own carries it inside.
 */
export function workFolderOf(files: Files, site: string): string {
  const parent = dirname(site)
  const own = files.stat(site)
  const inside = own !== null && own.device !== files.stat(parent)?.device
  return join(inside ? site : parent, '.growdown', basename(site))
}

/**
 * Takes the lock and puts right what a killed build left.
 * @throws UserError while another build holds the lock, or when the disk refuses
 */
export function openWorkFolder(files: Files, site: string): WorkFolder {
  const folder = workFolderOf(files, site)
  const staging = { site, folder: join(folder, 'staging') }
  files.makeFolder(folder)
  files.writeNew(join(dirname(folder), '.gitignore'), '*\n')
  const giveBack = takeLock(files, folder)
  try {
    recover(files, folder, staging)
  } catch (error) {
    giveBack()
    throw error
  }
  return {
    folder,
    staging,
    close: () => {
      try {
        throwAway(files, folder, staging)
      } finally {
        giveBack()
      }
    },
  }
}
