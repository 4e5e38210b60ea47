/** A folder directly in the site: each is published whole. It alone may be a link, to a folder anywhere else. */
import { dirname, join } from 'node:path'
import { contentHash } from './content-hash.ts'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { isWithin, realPlace } from './real-place.ts'

export interface TopFolder {
  readonly name: string
  /** Where it truly lies. */
  readonly live: string
  /** Where the next one is put together, on the same disk. */
  readonly next: string
  /** Where the last one is kept, with links to all that is the same now, for the next; null where nothing of ours is to stay. */
  readonly kept: string | null
  /** Where the last one is while the next takes its place, on a disk that cannot exchange the two. */
  readonly aside: string
}

interface Around {
  readonly site: string
  /** The tool's work folder for this site. */
  readonly workFolder: string
  /** What the site is made from. */
  readonly source: string
}

/** The first part of a path within the site; null for a file directly in it. */
export const topOf = (path: string): string | null => {
  const end = path.indexOf('/')
  return end < 0 ? null : path.slice(0, end)
}

/** @throws UserError where it leads nowhere, or to where no pages may be written */
export function topFolder(files: Files, name: string, { site, workFolder, source }: Around): TopFolder {
  const place = join(site, name)
  const seen = files.stat(place)
  const isLink = seen?.kind === 'link'
  const live = isLink ? realPlace(files, place) : place
  const stat = isLink ? files.stat(live) : seen
  if (isLink && stat?.kind !== 'folder') throw new UserError(`${place} is a link that leads to no folder.`)
  if (stat !== null && stat.kind !== 'folder') throw inTheWay(place, stat.kind)
  const isTaken = [source, site, workFolder].some((kept) => isWithin(live, kept) || isWithin(kept, live))
  if (isLink && isTaken) {
    throw new UserError(
      `${place} is a link to ${live}, which holds other things of yours. Let it lead to a folder of its own; nothing was published.`,
    )
  }
  const isAtHome = stat === null || stat.device === files.stat(workFolder)?.device
  // Named by the site, since several may have a folder there.
  const away = join(dirname(live), '.growdown', `for-${contentHash(place).slice(0, 16)}`)
  const isAway = isLink && !isAtHome
  const work = isAway ? away : join(workFolder, 'publishing')
  const kept = isAway ? null : join(workFolder, 'kept', name)
  return { name, live, next: join(work, name), kept, aside: join(work, `${name}.aside`) }
}

export const inTheWay = (place: string, kind: string) =>
  new UserError(
    `${place} is a ${kind === 'other' ? 'special file' : kind} that growdown did not write, and a page is to stand there. ` +
      'Move it away, or build elsewhere with --out; nothing was published.',
  )
