/** Adding files to a casebook: each is created whole or not at all, and none is ever replaced. */
import { lstatSync, mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join, sep } from 'node:path'

export interface NewFile {
  /** Path within the folder, forward slashes. */
  readonly path: string
  readonly text: string
}

export interface Added {
  readonly written: readonly string[]
  /** Stood there already and were left as they are. */
  readonly kept: readonly string[]
}

/**
 * Writes the files that do not exist yet.
 * @throws Error with a plain message where a folder on the way is a link or the disk refuses.
 */
export function addFiles(folder: string, files: readonly NewFile[]): Added {
  const written: string[] = []
  const kept: string[] = []
  for (const file of files) {
    refuseLinks(folder, file.path)
    const target = join(folder, ...file.path.split('/'))
    mkdirSync(dirname(target), { recursive: true })
    try {
      writeFileSync(target, file.text, { flag: 'wx' })
      written.push(file.path)
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
      kept.push(file.path)
    }
  }
  return { written, kept }
}

/** A link inside a casebook could lead a file anywhere, so none is written through. */
export function refuseLinks(folder: string, path: string): void {
  const segments = path.split('/').slice(0, -1)
  segments.forEach((_, index) => {
    const way = join(folder, segments.slice(0, index + 1).join(sep))
    const isLink = lstatSync(way, { throwIfNoEntry: false })?.isSymbolicLink() ?? false
    if (isLink) throw new Error(`${way} is a link: nothing is written through links`)
  })
}
