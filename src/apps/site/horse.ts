/** The journey of one horse, once read, to finished pages: assess, present, render. Of other horses it needs what they teach. */
import { contentHash } from '../../build/disk/content-hash.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import type { HorseRead } from '../../casebook/read.ts'
import { reportOn } from '../../casebook/report.ts'
import type { Edition, HorseFolder, PageTools } from '../../editions/edition.ts'
import { identityOf } from '../../identity/horse-identity.ts'
import { identityOfBroken } from '../../leaks/broken-horse.ts'
import { refusedCards, withCards } from '../../pictures/cards.ts'
import { processPictures } from '../../pictures/process.ts'
import { assess } from '../../trend/assess.ts'
import type { HorseJob, HorseRecord } from './horse-job.ts'
import { type PagesTools, pagesOfHorse } from './horse-pages.ts'

export async function makeHorse(
  job: HorseJob,
  editions: readonly Edition[],
  { horse: written, consent, diagnostics }: HorseRead,
  folder: CasebookFolder,
  { formatIn, ...tools }: Omit<PagesTools, 'folder'> & Pick<PageTools, 'formatIn'>,
): Promise<HorseRecord> {
  const { id, practice, asOf, learned, files, lastApproved } = job
  if (written === null) {
    const identity = identityOfBroken(folder, id)
    return { ...broken, id, diagnostics, identity, consent, lastApproved }
  }
  const hashes = new Map(files.flatMap(({ path, hash }) => (hash === null ? [] : [[path, hash] as const])))
  const read = new Map(hashes)
  const processed = await processPictures(written, hashing(folder, read), tools.pictures, hashes)
  const horse = withCards(written, processed.cards)
  const assessment = assess(horse, practice, asOf, learned)
  const input = {
    horse,
    assessment,
    practice,
    pictures: processed.pictures,
    format: formatIn(practice.units),
  }
  const hashOf = (file: string) => read.get(`${id}/${file}`) ?? null
  const pages = await pagesOfHorse(input, editions, job, hashOf, {
    ...tools,
    folder: folderOf(job, folder),
  })
  return {
    id,
    diagnostics: [
      ...diagnostics,
      ...processed.diagnostics,
      ...refusedCards(written, processed.cards, folder),
    ],
    identity: identityOf(horse),
    consent,
    isBroken: false,
    ...pages,
  }
}

function folderOf({ id, files }: Pick<HorseJob, 'id' | 'files'>, folder: CasebookFolder): HorseFolder {
  const own = files.filter(({ path, kind }) => kind === 'file' && path.startsWith(`${id}/`))
  const texts = own.filter(({ path }) => path.endsWith('.md'))
  return {
    texts: () =>
      Object.fromEntries(texts.map(({ path }) => [path, new TextDecoder().decode(folder.read(path))])),
    pictures: own.map(({ path }) => path).filter((path) => !path.endsWith('.md')),
  }
}

/** Notes the hash of what is read: a picture may have been saved again since it was surveyed. */
const hashing = (folder: CasebookFolder, hashes: Map<string, string>): CasebookFolder => ({
  list: () => folder.list(),
  read: (path) => {
    const bytes = folder.read(path)
    hashes.set(path, contentHash(bytes))
    return bytes
  },
})

const broken = { isBroken: true, kept: {}, waiting: { own: 0, ofPractice: 0 } } as const

/**
 * A horse of which a fault of this program has ended the work: broken, with a word of what happened. Its last pages in the
 * practice site stay, and every other horse is made.
 */
export function horseAtFault(
  { id, lastApproved }: Pick<HorseJob, 'id' | 'lastApproved'>,
  folder: CasebookFolder,
  fault: string,
): HorseRecord {
  const report = reportOn(`${id}/horse.md`, '')
  report.error('program-fault', null, `The pages of ${id} could not be made: ${oneLine(fault)}.`, {
    advice:
      'take back what was last changed in the files of this horse, or move its visits out one after the other until the rest is made; please report the fault',
  })
  return {
    ...broken,
    id,
    diagnostics: report.diagnostics,
    identity: identityOfBroken(folder, id),
    consent: null,
    lastApproved,
  }
}

/** Most of a fault's words that are told. */
const mostWords = 300

const oneLine = (words: string): string =>
  words.slice(0, mostWords).replace(/\s+/g, ' ').trim().replace(/\.$/, '')
