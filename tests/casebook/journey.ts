/** A casebook of one horse on its whole way: read, assessed, made into the pages of every edition, and searched. */

import { lazyPageTools } from '../../src/apps/site/site-units.ts'
import type { MadeFile } from '../../src/build/disk/staging.ts'
import type { Diagnostic } from '../../src/casebook/diagnostic.ts'
import type { CasebookFiles } from '../../src/casebook/memory-folder.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { owner } from '../../src/editions/owner.ts'
import { portfolio } from '../../src/editions/portfolio.ts'
import { practice as practiceEdition } from '../../src/editions/practice.ts'
import { inputsOf } from '../../src/editions/shared-input.ts'
import { identifiersOf, identityOf } from '../../src/identity/identifiers.ts'
import { identityOfBroken } from '../../src/leaks/broken-horse.ts'
import { leakSearch } from '../../src/leaks/search.ts'
import type { PictureStore } from '../../src/pictures/store.ts'
import { assess } from '../../src/trend/assess.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { memoryFolder } from './memory-folder.ts'

export const asOf = '2026-06-01'

/** Nothing was ever processed: the way of pictures does not go by the text of a case file. */
const noPictures: PictureStore = {
  find: () => null,
  keep: () => {},
  place: (name) => name,
  read: () => null,
  sweep: () => {},
}

const open = lazyPageTools()

export interface Journey {
  readonly diagnostics: readonly Diagnostic[]
  /** Texts of the pages and files made, by path. */
  readonly made: ReadonlyMap<string, string>
}

/** Makes all that a build makes of the text of these files, but for locking and pictures. */
export async function journey(files: CasebookFiles): Promise<Journey> {
  const folder = memoryFolder(files)
  const { casebook, diagnostics } = readCasebook(folder, asOf)
  identityOfBroken(folder, 'juno')
  const made = new Map<string, string>()
  if (casebook === null) return { diagnostics, made }
  const { renderer, formatIn, forOwners, own } = await open()
  const { practice, horses } = casebook
  const format = formatIn(practice.units)
  const editions = [practiceEdition, owner, portfolio]
  const kept = new Map<string, unknown[]>(editions.map(({ name }) => [name, []]))
  for (const horse of horses) {
    const assessment = assess(horse, practice, asOf)
    const inputFor = inputsOf({ horse, assessment, practice, pictures: new Map(), format })
    for (const edition of editions) {
      const put = (file: MadeFile) => {
        if ('text' in file) made.set(`${edition.folder}/${file.path}`, file.text)
        return { path: file.path, hash: '', size: 0, modified: 0 }
      }
      const keep = (text: string) => {
        made.set(`${edition.folder}/${horse.id}.html`, text)
        return horse.id
      }
      const shown = await edition.ofHorse(inputFor(edition), {
        put,
        keep,
        renderer,
        forOwners,
        own,
        pictures: noPictures,
        folder: { texts: () => ({}), pictures: [] },
      })
      if (shown !== null) kept.get(edition.name)?.push(shown)
    }
  }
  for (const edition of editions) {
    const of = {
      practice,
      asOf,
      kept: (kept.get(edition.name) ?? []) as never[],
      broken: [],
      addresses: {},
      lessons: untaughtPractice,
    }
    for (const view of await edition.pages(of, format))
      made.set(`${edition.folder}/${view.path}`, await renderer.render(view))
    for (const file of (await edition.files?.(of, format)) ?? [])
      if ('text' in file) made.set(`${edition.folder}/${file.path}`, file.text)
  }
  const identities = horses.map(identityOf)
  const search = leakSearch({
    list: identifiersOf(identities, practice, own),
    horses: identities,
    own,
    ownTexts: [],
  })
  for (const [path, text] of made) {
    const bytes = new TextEncoder().encode(text)
    if (path.startsWith('portfolio/')) search.scan({ path, bytes, reader: { kind: 'everyone' } })
    if (path.startsWith('owners/')) search.scan({ path, bytes, reader: { kind: 'owner', owner: 'abel' } })
  }
  return { diagnostics, made }
}
