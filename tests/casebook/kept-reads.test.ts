/**
 * A horse that is read again and again while one of its files is written says each time what a fresh reading says. The
 * short run writes fifteen times to each horse of every casebook.
 */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import type { CasebookFolder } from '../../src/casebook/folder.ts'
import { keptReads } from '../../src/casebook/kept-reads.ts'
import { standInPractice } from '../../src/casebook/practice-file.ts'
import { readHorse, readLiveHorse, readPractice } from '../../src/casebook/read.ts'
import { runs } from '../runs.ts'
import { diskFolder } from './disk-folder.ts'
import { mutated, randomFrom } from './mutate.ts'

const asOf = '2026-06-01'

/** The folder with another text in one file, and the same bytes for every other each time they are read. */
function writing(folder: CasebookFolder) {
  const bytes = new Map<string, Uint8Array>()
  const read = (path: string) => {
    const known = bytes.get(path) ?? folder.read(path)
    bytes.set(path, known)
    return known
  }
  return {
    folder: { list: folder.list, read },
    write: (path: string, text: Uint8Array) => void bytes.set(path, text),
  }
}

it.each(readdirSync('tests/casebooks'))(
  '%s',
  (name) => {
    const { folder, write } = writing(diskFolder(join('tests/casebooks', name)))
    const { practice, horseIds } = readPractice(folder, asOf)
    const random = randomFrom(19)
    for (const id of horseIds) {
      const kept = keptReads()
      const paths = folder
        .list()
        .flatMap(({ path, kind }) => (kind === 'file' && path.startsWith(`${id}/`) ? [path] : []))
      const live = () => readLiveHorse(folder, id, practice ?? standInPractice, asOf, kept)
      live()
      for (let round = 0; round < runs(15, 200); round++) {
        const path = paths[Math.floor(random() * paths.length)] ?? ''
        write(path, mutated(folder.read(path), random))
        const { readable, ...read } = live()
        expect(read).toEqual(readHorse(folder, id, practice ?? standInPractice, asOf))
        if (read.horse) expect(readable).toEqual(read.horse)
      }
    }
  },
  600_000,
)
