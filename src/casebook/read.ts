import type { PlainDate } from '../hoof/dates.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { ParseContext } from './fields.ts'
import type { CasebookFolder, FolderEntry } from './folder.ts'
import { type CaseFile, openCaseFile, openText } from './front-matter.ts'
import { type PlacedHorse, readHorseFile } from './horse-file.ts'
import { type KeptReads, readKept } from './kept-reads.ts'
import { dateInName, type HorseEntries, locate, locateHorse } from './locate.ts'
import type { Casebook, Consent, FollowedFeature, Horse, Practice } from './model.ts'
import { namesakes } from './namesakes.ts'
import { checkPlausibility } from './plausibility/index.ts'
import { readPracticeFile, standInPractice } from './practice-file.ts'
import { type Report, reportOn, sortDiagnostics } from './report.ts'
import { renamed } from './stray.ts'
import { withSureFixes } from './sure-fixes.ts'
import { type PlacedVisit, readVisit } from './visit-file.ts'

export interface PracticeRead {
  /** Null when practice.md is missing or cannot be used. */
  readonly practice: Practice | null
  /** Of practice.md and of files that lie in no known place. */
  readonly diagnostics: readonly Diagnostic[]
  /** Ids of the folders that hold a horse, sorted. */
  readonly horseIds: readonly string[]
}

export interface HorseRead {
  /** Null when its files hold an error. */
  readonly horse: Horse | null
  /** As horse.md gives it, also where another file holds an error. */
  readonly name: string | null
  /** Likewise; null where horse.md itself holds an error, so that nobody can be sure of it. */
  readonly consent: OwnersConsent | null
  readonly diagnostics: readonly Diagnostic[]
}

/** What was consented to, and by whose owner. */
export interface OwnersConsent extends Consent {
  readonly owner: string | null
  readonly ownerSince: PlainDate | null
}

/** practice.md, and which horses there are. `asOf` is today. */
export function readPractice(folder: CasebookFolder, _asOf: PlainDate): PracticeRead {
  const { practice: entry, likePractice, horseIds, reports } = locate(folder.list())
  const read = entry ? openPractice(folder, entry) : missingPractice(horseIds.length, likePractice)
  const ofFiles = reports.flatMap((report) => report.diagnostics)
  return {
    practice: read.practice,
    diagnostics: sortDiagnostics([...toldOf(read), ...ofFiles]),
    horseIds,
  }
}

/** A horse while its files are being written. */
export interface LiveHorse extends HorseRead {
  /** As far as its files can be read, also where one holds an error: for an editor to look back on, never for pages. */
  readonly readable: Horse | null
}

/** A file's report, and how the file would be read if it held another text; null for one that is not there. */
interface Told {
  readonly report: Report
  readonly read: ((file: CaseFile) => void) | null
  /** Where its body begins, as far as that is known. */
  readonly bodyStart: number
}

/** What is told of a file; its likely fixes are those that were tried and found right. */
function toldOf({ report, read, bodyStart }: Told): readonly Diagnostic[] {
  if (!read) return report.diagnostics
  const whole = report.textOf({ start: 0, end: Infinity })
  return withSureFixes(report.diagnostics, whole, bodyStart, (text) => {
    const again = openText(report.file, text)
    if (again.file) read(again.file)
    return again.report.diagnostics
  })
}

const bodyStartOf = (file: CaseFile | null): number => file?.bodyStart ?? Infinity

interface OpenedPractice extends Told {
  readonly practice: Practice | null
}

function openPractice(folder: CasebookFolder, entry: FolderEntry): OpenedPractice {
  const { file, report } = openCaseFile(folder, entry)
  const read = file && readPracticeFile(file)
  return {
    practice: read?.usable ? read.practice : null,
    report,
    read: readPracticeFile,
    bodyStart: bodyStartOf(file),
  }
}

function missingPractice(horses: number, likePractice: string | null): OpenedPractice {
  const report = reportOn('practice.md', '')
  report.error('practice-missing', null, 'There is no practice.md in this folder.', {
    expected: 'a file practice.md beside the folders of the horses, with practice: and its name',
    ...(likePractice !== null && { fix: renamed(likePractice, 'practice.md') }),
    advice:
      likePractice !== null
        ? null
        : horses > 0
          ? 'write practice.md'
          : 'give the folder that holds the casebook',
  })
  return { practice: null, report, read: null, bodyStart: Infinity }
}

/** One horse with all its visits. Needs nothing of other horses, so horses can be read apart. */
export function readHorse(
  folder: CasebookFolder,
  id: string,
  practice: Practice,
  asOf: PlainDate,
): HorseRead {
  const { readable: _unsure, ...read } = readLiveHorse(folder, id, practice, asOf, null)
  return read
}

/**
 * The same for an editor, which reads a horse again with each key that is pressed.
 *
 * @param kept what was read before of files that are as they were; null where nothing is to be kept
 */
export function readLiveHorse(
  folder: CasebookFolder,
  id: string,
  practice: Practice,
  asOf: PlainDate,
  kept: KeptReads | null,
): LiveHorse {
  const entries = locateHorse(folder.list(), id)
  const { units, feetOrder, terms, people } = practice
  const context = { units, feetOrder, terms, people }
  const reported: Told[] = []
  const visits = entries.visits
    .map((entry) => openVisit(folder, entry, entries, context, asOf, reported, kept))
    .filter((visit) => visit !== null)
    .sort((a, b) => (a.visit.id < b.visit.id ? -1 : 1))
  const followed = visits.flatMap(({ visit }) => visit.growOut)
  const horse = openHorse(folder, entries, id, practice, context, asOf, followed, reported, kept)
  checkPlausibility(visits, horse, practice.units, asOf)
  if (horse && visits.length === 0 && entries.visits.length === 0) {
    horse.report.warning('no-visits', null, `${horse.horse.name} has no visit yet.`, {
      expected: `a file named by its date, ${id}/${asOf}.md`,
    })
  }
  const told = reported.flatMap((one) => (kept ? kept.told(one.report, () => toldOf(one)) : toldOf(one)))
  const diagnostics = sortDiagnostics(told)
  const readable = horse && { ...horse.horse, visits: visits.map((placed) => placed.visit) }
  return {
    horse: diagnostics.some((one) => one.level === 'error') ? null : readable,
    readable,
    name: horse?.horse.name ?? null,
    consent: horse && consentOf(horse),
    diagnostics,
  }
}

function consentOf({ horse, report }: PlacedHorse): OwnersConsent | null {
  if (report.diagnostics.some(({ level }) => level === 'error')) return null
  const { consent, owner, ownerSince } = horse
  return { ...consent, owner, ownerSince }
}

function openHorse(
  folder: CasebookFolder,
  entries: HorseEntries,
  id: string,
  practice: Practice,
  context: Omit<ParseContext, 'report'>,
  asOf: PlainDate,
  followed: readonly FollowedFeature[],
  reported: Told[],
  kept: KeptReads | null,
): PlacedHorse | null {
  if (!entries.horse) {
    const missing = reportOn(`${id}/horse.md`, '')
    missing.error('horse-missing', null, `The folder ${id} has visits but no horse.md.`, {
      expected: "a file horse.md with the horse's name and owner",
    })
    reported.push({ report: missing, read: null, bodyStart: Infinity })
    return null
  }
  const read = (text: CaseFile) => readHorseFile(text, id, practice, context, asOf, followed)
  const { file, report, placed } = readKept(folder, entries.horse, kept, read, followed)
  const readAlone = (text: CaseFile) => checkPlausibility([], read(text), context.units, asOf)
  reported.push({ report, read: readAlone, bodyStart: bodyStartOf(file) })
  return placed
}

function openVisit(
  folder: CasebookFolder,
  entry: FolderEntry,
  entries: HorseEntries,
  context: Omit<ParseContext, 'report'>,
  asOf: PlainDate,
  reported: Told[],
  kept: KeptReads | null,
): PlacedVisit | null {
  const isDated = dateInName(entry.path) !== null
  const read = (text: CaseFile) => (isDated ? readVisit(text, entries, context) : null)
  const { file, report, placed } = readKept(folder, entry, kept, read)
  const readAlone = (text: CaseFile) => {
    const alone = read(text)
    if (alone) checkPlausibility([alone], null, context.units, asOf)
  }
  reported.push({ report, read: readAlone, bodyStart: bodyStartOf(file) })
  if (!isDated) {
    report.error('visit-name', null, `The file is named by a date that does not exist.`, {
      expected: 'the date of the visit: 2026-03-14.md',
    })
  }
  return placed
}

/** What cannot be judged while practice.md cannot be used: its owners, its terms, its units, its order of feet. */
const needPractice: ReadonlySet<string> = new Set([
  'owner-unknown',
  'finding-unknown',
  'problem-unknown',
  'person-unknown',
  'reading-impossible',
  'reading-unlikely',
  'target-unlikely',
  'limit-impossible',
  'distance-impossible',
  'distance-unlikely',
  'feet-swapped',
  'jump',
])

/** The whole casebook: errors first, then warnings, each by file and line. */
export function readCasebook(
  folder: CasebookFolder,
  asOf: PlainDate,
): { casebook: Casebook | null; diagnostics: readonly Diagnostic[] } {
  const read = readPractice(folder, asOf)
  const { practice, horseIds } = read
  const reads = horseIds.map((id) => ({ id, ...readHorse(folder, id, practice ?? standInPractice, asOf) }))
  const horses = reads.map(({ horse }) => horse).filter((horse) => horse !== null)
  return { casebook: practice && { practice, horses }, diagnostics: wholeDiagnostics(read, reads) }
}

/** What is told of a whole casebook, from what was read of its parts. */
export function wholeDiagnostics(
  { practice, diagnostics }: PracticeRead,
  reads: readonly (HorseRead & { readonly id: string })[],
): readonly Diagnostic[] {
  // Where practice.md has an error and no owner, its owners could not be read: that is told there.
  const ownersUnread = practice?.owners.length === 0 && diagnostics.some(({ level }) => level === 'error')
  const ofHorses = reads
    .flatMap((read) => read.diagnostics)
    .filter((one) => practice !== null || !needPractice.has(one.code))
    .filter((one) => one.code !== 'owner-unknown' || !ownersUnread)
  const named = reads.flatMap(({ id, name }) => (name === null ? [] : [{ id, name }]))
  return sortDiagnostics([...diagnostics, ...ofHorses, ...namesakes(named)])
}
