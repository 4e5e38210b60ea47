/** The journey of one horse from its files to finished pages: read, assess, present, render. It needs no other horse. */
import type { UnitOutput } from '../../build/unit.ts'
import type { CasebookFolder } from '../../casebook/folder.ts'
import { readHorse } from '../../casebook/read.ts'
import { reportOn } from '../../casebook/report.ts'
import type { Edition, HorseTools, PageTools } from '../../editions/edition.ts'
import { identityOf } from '../../identity/identifiers.ts'
import { identityOfBroken } from '../../leaks/broken-horse.ts'
import { processPictures } from '../../pictures/process.ts'
import { assess } from '../../trend/assess.ts'
import type { HorseJob, HorseRecord } from './horse-job.ts'

/** @param put takes files at paths within the site */
export async function makeHorse(
  { id, practice, asOf, files }: HorseJob,
  editions: readonly Edition[],
  folder: CasebookFolder,
  { put, formatIn, ...tools }: HorseTools & Pick<PageTools, 'formatIn'>,
): Promise<HorseRecord> {
  const { horse, consent, diagnostics } = readHorse(folder, id, practice, asOf)
  if (horse === null) {
    const identity = identityOfBroken(folder, id)
    return { id, diagnostics, identity, consent, isBroken: true, kept: {} }
  }
  const assessment = assess(horse, practice, asOf)
  const hashes = new Map(files.flatMap(({ path, hash }) => (hash === null ? [] : [[path, hash] as const])))
  const processed = await processPictures(horse, folder, tools.pictures, hashes)
  const input = {
    horse,
    assessment,
    practice,
    pictures: processed.pictures,
    format: formatIn(practice.units),
  }
  const kept: Record<string, unknown> = {}
  for (const edition of editions) {
    const putBelow: UnitOutput['put'] = (file) => put({ ...file, path: `${edition.folder}/${file.path}` })
    const shown = await edition.ofHorse(input, { ...tools, put: putBelow })
    if (shown !== null) kept[edition.name] = shown
  }
  return {
    id,
    diagnostics: [...diagnostics, ...processed.diagnostics],
    identity: identityOf(horse),
    consent,
    isBroken: false,
    kept,
  }
}

/**
 * A horse of which a fault of this program has ended the work: broken, with a word of what happened. Its last pages in the
 * practice site stay, and every other horse is made.
 */
export function horseAtFault(
  { id }: Pick<HorseJob, 'id'>,
  folder: CasebookFolder,
  fault: string,
): HorseRecord {
  const report = reportOn(`${id}/horse.md`, '')
  report.error('program-fault', null, `The pages of ${id} could not be made: ${oneLine(fault)}.`, {
    advice:
      'take back what was last changed in the files of this horse, or move its visits out one after the other until the rest is made; please report the fault',
  })
  return {
    id,
    diagnostics: report.diagnostics,
    identity: identityOfBroken(folder, id),
    consent: null,
    isBroken: true,
    kept: {},
  }
}

/** Most of a fault's words that are told. */
const mostWords = 300

const oneLine = (words: string): string =>
  words.slice(0, mostWords).replace(/\s+/g, ' ').trim().replace(/\.$/, '')
