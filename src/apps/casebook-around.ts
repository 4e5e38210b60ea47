/** In which casebook a folder lies. */
import { statSync } from 'node:fs'
import { dirname, join } from 'node:path'

/** The nearest folder, from this one upwards, that holds practice.md; null when there is none. */
export function casebookAround(
  folder: string,
  holdsPractice: (folder: string) => boolean = (place) => isFile(join(place, 'practice.md')),
): string | null {
  for (let place = folder; ; place = dirname(place)) {
    if (holdsPractice(place)) return place
    if (place === dirname(place)) return null
  }
}

export const isFile = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isFile() === true
