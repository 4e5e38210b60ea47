/**
 * One modification time for every file of a folder that others read: else the times would tell which pages changed
 * together. It is a new one whenever anything in the folder changes, so that a program that copies by size and time, and
 * a browser that asks a host by them, see each change.
 */
import { UserError } from './errors.ts'
import type { Files } from './files.ts'
import { placeIn } from './staging.ts'

const second = 1000

/** The times of the files of a folder, as they are before a publication. */
export interface Times {
  readonly latest: number | null
  /** Whether all files have one. */
  readonly isOne: boolean
}

export function timesOf(files: Files, site: string, paths: readonly string[]): Times {
  const times = new Set(paths.flatMap((path) => files.stat(placeIn(site, path))?.modified ?? []))
  return { latest: times.size === 0 ? null : Math.max(...times), isOne: times.size <= 1 }
}

/** Not before this day, and a second after all that was: whole seconds, since some disks keep no more. */
export const nextTime = ({ latest }: Times, day: number): number =>
  latest === null ? day : Math.max(day, (Math.floor(latest / second) + 1) * second)

/** All is published by now, so where the disk refuses, the next build tries again. */
export function giveTime(files: Files, site: string, paths: readonly string[], time: number): void {
  try {
    for (const path of paths) files.setModified(placeIn(site, path), time)
  } catch (error) {
    if (!(error instanceof UserError)) throw error
  }
}
