/** Where a path truly leads, links resolved. */
import { basename, dirname, join, relative, resolve } from 'node:path'
import type { Files } from './files.ts'

/** The path without links on its way; of what is not there yet, as far as there is something. */
export function realPlace(files: Pick<Files, 'realPath'>, path: string): string {
  const above = dirname(path)
  return files.realPath(path) ?? (above === path ? path : join(realPlace(files, above), basename(path)))
}

/** Whether a place is a folder or lies in it. */
export function isWithin(place: string, folder: string): boolean {
  const way = relative(folder, place)
  return way === '' || !(/^\.\.(?:[\\/]|$)/.test(way) || resolve(way) === way)
}
