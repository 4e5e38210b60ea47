/** The tool's own folder beside the site, for the eyes of this account alone: the lock, what is staged, what is remembered. */
import { basename, dirname, join } from 'node:path'
import { takeLock } from './build-lock.ts'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { isBegunInPlace } from './in-place.ts'
import { readSiteRecord, refuseOtherSource, type SiteRecord } from './own-files.ts'
import { recover, type Workplace } from './publication.ts'
import { realPlace } from './real-place.ts'
import { isUnfinished } from './sealed.ts'

export interface WorkFolder {
  readonly at: Workplace
  /** What the site is now. */
  readonly record: SiteRecord
  /** Throws away what is still staged and lets the next build in. */
  close(): void
}

/**
 * Where the work for a site is done: `.growdown/<name of the site>` beside it, so that a finished folder is put
 * into place by renaming. Only a site that is a disk of its own carries it inside.
 * @param site absolute, links resolved
 */
export function workFolderOf(files: Files, site: string): string {
  const parent = dirname(site)
  const own = files.stat(site)
  const inside = own !== null && own.device !== files.stat(parent)?.device
  return join(inside ? site : parent, '.growdown', basename(site))
}

/**
 * Takes the lock and puts right what a killed build left.
 * @param readRecord reads the record of the site, or knows it
 * @throws UserError while another build holds the lock, when the site is made from another source, or
 * when the disk refuses
 */
export function openWorkFolder(
  files: Files,
  named: string,
  madeFrom: string,
  readRecord?: () => SiteRecord,
): WorkFolder {
  const [site, source] = [realPlace(files, named), realPlace(files, madeFrom)]
  const folder = workFolderOf(files, site)
  const staged = join(folder, 'staging')
  makeWorkFolder(files, folder)
  const giveBack = takeLock(files, folder)
  const at = { site, workFolder: folder, source, staged }
  try {
    const record = readRecord?.() ?? readSiteRecord(files, site)
    refuseOtherSource(files, site, record.source, { folder: source, name: null })
    recover(files, at, record.files)
    for (const name of files.names(folder).filter(isUnfinished)) files.remove(join(folder, name))
    return { at, record, close: () => close(files, at, giveBack) }
  } catch (error) {
    giveBack()
    throw error
  }
}

/** Makes a folder of the tool's own, where nothing is someone else's. */
export function makeWorkFolder(files: Files, folder: string): void {
  for (const own of [dirname(folder), folder]) {
    refuseLink(files, own)
    files.makePrivateFolder(own)
  }
  for (const name of files.names(folder)) refuseLink(files, join(folder, name))
  keepOutOfGit(files, dirname(folder))
}

/** What was begun in place is for the next build to carry to its end. */
function close(files: Files, { workFolder, staged }: Workplace, giveBack: () => void): void {
  try {
    if (!isBegunInPlace(files, workFolder)) files.removeTree(staged)
  } finally {
    giveBack()
  }
}

/** What is written and swept there must not be someone else's. */
function refuseLink(files: Files, place: string): void {
  if (files.stat(place)?.kind !== 'link') return
  throw new UserError(
    `${place} is a link; growdown keeps its own work there. Delete the link and build again.`,
  )
}

function keepOutOfGit(files: Files, folder: string): void {
  const [path, text] = [join(folder, '.gitignore'), '*\n']
  const bytes = files.read(path)
  if (bytes === null || new TextDecoder().decode(bytes) !== text) files.writePrivate(path, text)
}
