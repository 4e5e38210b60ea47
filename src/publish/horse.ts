/** The journey of one horse from its files to finished pages. */
import type { CasebookFolder } from '../casebook/folder.ts'
import type { Practice } from '../casebook/model.ts'
import { readHorse } from '../casebook/read.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { OwnWords } from '../present/identity/common-words.ts'
import { summarise } from '../present/practice/index.ts'
import type { Renderer } from '../render/renderer.ts'
import { assess } from '../trend/assess.ts'
import { editionFolders } from './edition-folders.ts'
import { editions } from './editions.ts'
import { forOthersOf, looseIdentity } from './for-others.ts'
import type { Edition, MadeFile, MadeHorse } from './made.ts'
import { bytesIn, fileIn, type PictureStore } from './picture-store.ts'
import { processPictures } from './pictures.ts'

export interface HorseJob {
  readonly id: string
  readonly practice: Practice
  readonly asOf: PlainDate
  readonly editions: readonly Edition[]
}

export interface HorseTools {
  readonly folder: CasebookFolder
  readonly renderer: Renderer
  /** The tool's own words, for telling names that are everyday words. */
  readonly own: OwnWords
  /** Processed pictures, kept between builds. */
  readonly store: PictureStore
  /** Puts text away between builds and gives its name. */
  readonly keep: (text: string) => string
}

/** Read, assess, present, render. Needs nothing of other horses. */
export async function makeHorse(job: HorseJob, tools: HorseTools): Promise<MadeHorse> {
  const { horse, diagnostics } = readHorse(tools.folder, job.id, job.practice, job.asOf)
  if (horse === null) {
    const forOthers = { identity: looseIdentity(tools.folder, job.id), part: null, case: null }
    return { id: job.id, diagnostics, summary: null, forOthers, files: [] }
  }

  const assessment = assess(horse, job.practice, job.asOf)
  const processed = await processPictures(horse, tools.folder, tools.store)
  const input = { horse, assessment, practice: job.practice, pictures: processed.pictures }
  const files: MadeFile[] = []
  if (job.editions.includes('practice'))
    files.push(...inFolder(editionFolders.practice.folder, processed.files))
  for (const name of job.editions) {
    const { folder } = editionFolders[name]
    for (const view of editions[name]?.ofHorse(input) ?? []) {
      files.push({ path: `${folder}/${view.path}`, text: await tools.renderer.render(view) })
    }
  }
  const others = await forOthersOf(input, job.editions, {
    ...tools,
    fileOf: fileIn(tools.store),
    bytesOf: bytesIn(tools.store),
  })
  return {
    id: job.id,
    diagnostics: [...diagnostics, ...processed.diagnostics],
    summary: summarise(input),
    forOthers: others.forOthers,
    files: [...files, ...others.files],
  }
}

const inFolder = (folder: string, files: readonly MadeFile[]): readonly MadeFile[] =>
  files.map((file) => ({ ...file, path: `${folder}/${file.path}` }))
