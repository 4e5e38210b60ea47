/** The journey of one horse from its files to finished pages. */
import type { CasebookFolder } from '../casebook/folder.ts'
import type { Practice } from '../casebook/model.ts'
import { readHorse } from '../casebook/read.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { OwnWords } from '../identity/common-words.ts'
import { summarise } from '../pages/practice/index.ts'
import type { Formatter } from '../pages/shared/format.ts'
import type { Renderer } from '../render/renderer.ts'
import { assess } from '../trend/assess.ts'
import { editionFolders } from './edition-folders.ts'
import { editions } from './editions.ts'
import { forOthersOf, looseIdentity } from './for-others.ts'
import type { Edition, MadeFile, MadeHorse } from './made.ts'
import { processPictures } from './pictures/pictures.ts'
import { bytesIn, fileIn, type PictureStore } from './pictures/store.ts'

export interface HorseJob {
  readonly id: string
  readonly practice: Practice
  readonly asOf: PlainDate
  readonly editions: readonly Edition[]
}

export interface HorseTools {
  readonly folder: CasebookFolder
  readonly renderer: Renderer
  /** The words and numbers of the pages, by the practice's unit of length. */
  readonly formatIn: (units: LengthUnit) => Formatter
  /** The tool's own words, for telling names that are everyday words. */
  readonly own: OwnWords
  /** Processed pictures, kept between builds. */
  readonly store: PictureStore
  /** Puts text away between builds and gives its name. */
  readonly keep: (text: string) => string
  /** Takes each file as soon as it is made: a horse's pages together are too much to hold on to. */
  readonly put: (file: MadeFile) => void
}

/** Read, assess, present, render. Needs nothing of other horses. */
export async function makeHorse(job: HorseJob, tools: HorseTools): Promise<MadeHorse> {
  const { horse, diagnostics } = readHorse(tools.folder, job.id, job.practice, job.asOf)
  if (horse === null) {
    const forOthers = { identity: looseIdentity(tools.folder, job.id), part: null, case: null }
    return { id: job.id, diagnostics, summary: null, forOthers }
  }

  const assessment = assess(horse, job.practice, job.asOf)
  const format = tools.formatIn(job.practice.units)
  const processed = await processPictures(horse, tools.folder, tools.store)
  const input = { horse, assessment, practice: job.practice, pictures: processed.pictures, format }
  const putIn = (folder: string, file: MadeFile) => tools.put({ ...file, path: `${folder}/${file.path}` })
  if (job.editions.includes('practice')) {
    for (const file of processed.files) putIn(editionFolders.practice.folder, file)
  }
  for (const name of job.editions) {
    const { folder } = editionFolders[name]
    for (const view of editions[name]?.ofHorse(input) ?? []) {
      putIn(folder, { path: view.path, text: await tools.renderer.render(view) })
    }
  }
  const others = await forOthersOf(input, job.editions, {
    ...tools,
    fileOf: fileIn(tools.store),
    bytesOf: bytesIn(tools.store),
  })
  for (const file of others.files) putIn(editionFolders.portfolio.folder, file)
  return {
    id: job.id,
    diagnostics: [...diagnostics, ...processed.diagnostics],
    summary: summarise(input),
    forOthers: others.forOthers,
  }
}
