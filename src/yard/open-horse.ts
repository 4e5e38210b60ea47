/** A horse of the yard page opened: read once, then asked with each key that is pressed. */
import type { Diagnostic, Edit } from '../casebook/diagnostic.ts'
import type { CasebookFolder, FolderEntry } from '../casebook/folder.ts'
import { type KeptReads, keptReads } from '../casebook/kept-reads.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import type { Horse, Practice } from '../casebook/model.ts'
import { readLiveHorse, readPractice } from '../casebook/read.ts'
import type { PlainDate } from '../hoof/dates.ts'
import { buildLexicon, knownBefore, understand } from '../spoken/index.ts'
import type { Caution } from '../trend/assessment.ts'
import { type Cautions, cautionsOf } from '../trend/cautions/index.ts'
import { levelOrder } from '../trend/cautions/sign.ts'
import { columnsOf } from '../trend/columns.ts'
import { nextVisitOf } from '../trend/next-visit.ts'
import { caseFileOf, type FieldPlace, fieldAt, type YardCaseFile } from './case-file.ts'
import { heardInto } from './dictation.ts'
import type { YardDraft } from './draft.ts'
import type { YardField } from './field.ts'
import { type HorseKnowledge, knownLater } from './knowledge.ts'
import type { YardHorsePart, YardIndex } from './payload.ts'

export interface OpenHorse {
  readonly practice: Practice
  /** As far as its files can be read, without the draft. */
  readonly horse: Horse
  readonly knowledge: HorseKnowledge
  /** The draft as its case file, beside the visits that are there. */
  written(draft: YardDraft): YardCaseFile
  /** The draft judged beside the horse's other files, as the desk will judge it. */
  check(draft: YardDraft): YardChecked
  /** What was dictated, the whole text so far, heard into the draft: its `dictated` becomes the text. */
  hear(draft: YardDraft, text: string): YardDraft
}

export interface YardChecked {
  /** Errors first, then in the order of the file. */
  readonly messages: readonly YardMessage[]
  /** Standing, the gravest first; of one level those that this visit brings first. */
  readonly cautions: readonly YardCaution[]
  /** Feet that get no plan while what was found at them stands. */
  readonly heldFeet: Cautions['heldFeet']
}

/** What the reader of case files says of the draft; in the reader's language, as `check` says it at the desk. */
export interface YardMessage {
  readonly code: string
  /** `gap`: a place that is still to be filled in. */
  readonly level: Diagnostic['level']
  /** Null where it is about the visit as a whole. */
  readonly field: YardField | null
  readonly message: string
  readonly expected: string | null
  /** The likely fix, in words that can be typed; null where nothing is sure. */
  readonly fix: string | null
  /** The same as new texts of fields; empty where it is no change of fields alone. */
  readonly changes: readonly FieldChange[]
  /** What to do where no fix is sure. */
  readonly advice: string | null
}

export interface FieldChange {
  readonly field: YardField
  readonly text: string
}

/** A danger sign; its words are made by `pages/words`, as everywhere. */
export interface YardCaution {
  readonly caution: Caution
  /** Whether this visit brings it, or makes it graver: it did not stand before. */
  readonly isNew: boolean
}

/**
 * Null where practice.md or horse.md cannot be read: nothing can be judged then, and a visit is written all the same.
 * @param today where the phone is
 */
export function openHorse(
  index: Pick<YardIndex, 'practiceFile' | 'asOf'>,
  part: Pick<YardHorsePart, 'id' | 'files' | 'pictures' | 'knowledge'>,
  today: PlainDate,
): OpenHorse | null {
  const { id } = part
  const base = besides(part, index.practiceFile)
  const { practice } = readPractice(base, today)
  const horse = practice && readLiveHorse(base, id, practice, today, null).readable
  if (!practice || !horse) return null
  const kept = new Map<string, KeptReads>()
  const stoodBefore = standingAt(horse, practice, today)
  let lexicon: ReturnType<typeof buildLexicon> | null = null
  const taken = new Set(Object.keys(part.files))
  const written = (draft: YardDraft) => caseFileOf(draft, practice, taken)
  return {
    practice,
    horse,
    knowledge: knownLater(part.knowledge, index.asOf, today),
    written,
    check: (draft) => {
      const file = written(draft)
      const pictures = draft.photos.map(({ name }) => `${id}/photos/${name}`)
      // What was read before is of use while file name and pictures are as they were.
      const of = [file.path, ...pictures].join('\n')
      const reads = kept.get(of) ?? keptReads()
      if (!kept.has(of)) kept.clear()
      kept.set(of, reads)
      const read = readLiveHorse(withDraft(base, file, pictures), id, practice, today, reads)
      // A phone whose day is wrong must not hide what its visit says.
      const day = read.readable?.visits.at(-1)?.date ?? today
      const cautions = standingAt(read.readable ?? horse, practice, day > today ? day : today)
      return {
        messages: read.diagnostics
          .filter((one) => one.file === file.path && one.code !== 'draft')
          .map((one) => messageOf(one, file)),
        cautions: newFirst(cautions.all, stoodBefore.all),
        heldFeet: cautions.heldFeet,
      }
    },
    hear: (draft, text) => {
      lexicon ??= buildLexicon(Object.keys(practice.terms))
      const known = knownBefore(horse.visits, practice, draft.date)
      return heardInto(draft, text, understand(text, known, lexicon, 'text'))
    },
  }
}

/** The casebook as far as the phone has it: practice.md, the horse's files, and where its pictures lie. */
function besides({ files, pictures }: Pick<YardHorsePart, 'files' | 'pictures'>, practiceFile: string) {
  const lain = Object.fromEntries(pictures.map((path) => [path, nothing]))
  return memoryFolder({ ...lain, ...files, 'practice.md': practiceFile })
}

/** Pictures are looked for by name alone. */
const nothing = new Uint8Array(0)

function withDraft(
  base: CasebookFolder,
  { path, text }: YardCaseFile,
  pictures: readonly string[],
): CasebookFolder {
  const bytes = new TextEncoder().encode(text)
  const entryOf = (name: string, size: number): FolderEntry => ({
    path: name,
    kind: 'file',
    size,
    modified: 0,
  })
  const entries = [
    ...base.list(),
    ...pictures.map((name) => entryOf(name, 0)),
    entryOf(path, bytes.length),
  ].sort((a, b) => (a.path < b.path ? -1 : 1))
  return { list: () => entries, read: (name) => (name === path ? bytes : base.read(name)) }
}

function standingAt(horse: Horse, practice: Practice, asOf: PlainDate): Cautions {
  const visits = horse.visits.filter(({ date }) => date <= asOf)
  return cautionsOf(horse, columnsOf(horse, visits), nextVisitOf(visits, practice, asOf), asOf)
}

const subjectOf = ({ code, feet }: Caution): string => `${code} ${feet.join()}`

function newFirst(all: readonly Caution[], before: readonly Caution[]): readonly YardCaution[] {
  const stood = new Set(before.filter(({ standing }) => standing).map(subjectOf))
  return all
    .filter(({ standing }) => standing)
    .map((caution) => ({ caution, isNew: !stood.has(subjectOf(caution)) }))
    .toSorted(
      (a, b) =>
        levelOrder[a.caution.level] - levelOrder[b.caution.level] || Number(b.isNew) - Number(a.isNew),
    )
}

function messageOf(one: Diagnostic, { text, places }: YardCaseFile): YardMessage {
  const { code, level, message, expected, fix, advice, line, column, change } = one
  return {
    code,
    level,
    field: line === null || column === null ? null : fieldAt(places, line, column),
    message,
    expected,
    fix,
    changes: change?.kind === 'edit' ? (changesOf(change.edits, text, places) ?? []) : [],
    advice,
  }
}

/** What the edits make of the fields that they lie in; null where one lies in none. */
function changesOf(
  edits: readonly Edit[],
  text: string,
  places: readonly FieldPlace[],
): readonly FieldChange[] | null {
  const lines = text.split('\n')
  const within = new Map<FieldPlace, Edit[]>()
  for (const edit of edits) {
    const place = places.find(
      (one) =>
        edit.line === one.line &&
        edit.endLine === one.line &&
        edit.column >= one.column &&
        edit.endColumn <= one.endColumn,
    )
    if (place === undefined) return null
    within.set(place, [...(within.get(place) ?? []), edit])
  }
  return [...within].map(([place, own]) => ({
    field: place.field,
    text: typed(
      own
        .toSorted((a, b) => b.column - a.column)
        .reduce(
          (line, edit) => line.slice(0, edit.column - 1) + edit.text + line.slice(edit.endColumn - 1),
          lines[place.line - 1] ?? '',
        )
        .slice(place.column - 1, place.endColumn - 1 + grownBy(own)),
    ),
  }))
}

const grownBy = (edits: readonly Edit[]): number =>
  edits.reduce((sum, edit) => sum + edit.text.length - (edit.endColumn - edit.column), 0)

/** Without the quotes that the file needs and the form does not. */
function typed(written: string): string {
  if (!/^".*"$/.test(written)) return written
  try {
    return String(JSON.parse(written))
  } catch {
    return written
  }
}
