/** A draft as the case file that a person could have written, and where each of its fields stands in it. */
import type { Practice, Stage } from '../casebook/model.ts'
import { yardKeyText } from '../casebook/yard-key.ts'
import type { Foot } from '../hoof/feet.ts'
import { isMeasureId, measureIds, measures } from '../hoof/measures.ts'
import { questionLines } from '../spoken/draft.ts'
import {
  cellScalar,
  type FootItem,
  type FootRow,
  oneLine,
  paragraphs,
  quoted,
  type Sourced,
  scalar,
  textOfLine,
  type VisitContent,
  type VisitLine,
  visitLines,
} from '../spoken/visit-lines.ts'
import type { YardDraft, YardPhoto } from './draft.ts'
import { keyOf, type YardField } from './field.ts'
import { isHeard, notesLeft } from './hearing.ts'

export interface YardCaseFile {
  /** `juno/2026-11-27.md`, or with the next letter that is free. */
  readonly path: string
  readonly text: string
  /** By line and column. */
  readonly places: readonly FieldPlace[]
}

/** A stretch of a line, one-based, the end after its last character, and the field that it came from. */
export interface FieldPlace {
  readonly line: number
  readonly column: number
  readonly endColumn: number
  readonly field: YardField
}

/**
 * Pure, and the same text for the same draft. It stays a draft (`draft: yes`) while the person says that it is not
 * finished or a question is open.
 * @param taken paths of the horse's visits that are there already; another visit of that day gets the next letter
 */
export function caseFileOf(
  draft: YardDraft,
  practice: Pick<Practice, 'feetOrder'>,
  taken: ReadonlySet<string> = new Set(),
): YardCaseFile {
  const lines = visitLines<YardField>(contentOf(draft, practice.feetOrder))
  return {
    path: freePath(draft.horse, draft.date, taken),
    text: lines.map(textOfLine).join('\n'),
    places: lines.flatMap(placesOn),
  }
}

/** `juno/2026-11-27.md`, with the first letter from b on where that is taken. */
export function freePath(horse: string, date: string, taken: ReadonlySet<string>): string {
  const names = [date, ...[...'bcdefghijklmnopqrstuvwxyz'].map((letter) => `${date}-${letter}`)]
  const paths = names.map((name) => `${horse}/${name}.md`)
  return paths.find((path) => !taken.has(path)) ?? `${horse}/${date}.md`
}

/** The field that stands at a place of the text, or the nearest on its line; null where none does. */
export function fieldAt(places: readonly FieldPlace[], line: number, column: number): YardField | null {
  const here = places.filter((place) => place.line === line)
  return (here.findLast((place) => place.column <= column) ?? here[0])?.field ?? null
}

function placesOn(line: VisitLine<YardField>, index: number): readonly FieldPlace[] {
  let column = 1
  return line.flatMap(({ text, of }) => {
    const place = { line: index + 1, column, endColumn: column + text.length }
    column = place.endColumn
    return of === null ? [] : [{ ...place, field: of }]
  })
}

function contentOf(draft: YardDraft, order: readonly Foot[]): VisitContent<YardField> {
  const { comfort, body } = draft
  const isDraft = draft.isUnfinished || draft.questions.length > 0
  return {
    remarks: questionLines(draft.questions).map((text) => plain(text, { part: 'questions', index: 0 })),
    head: [
      { key: 'date', ...plain(cellScalar(draft.date), { part: 'date' }) },
      ...(draft.by === null ? [] : [{ key: 'by', ...plain(scalar(draft.by), { part: 'by' }) }]),
      { key: 'yard', ...plain(yardKeyText({ draft: draft.id, version: draft.version }), { part: 'date' }) },
      ...(isDraft ? [{ key: 'draft', ...plain('yes', { part: 'isUnfinished' }) }] : []),
    ],
    before: { rows: stageRows(draft, 'before', order), asked: [] },
    after: { rows: stageRows(draft, 'after', order), asked: [] },
    findings: draft.findings.map(({ foot, what, place, grade, heard }, index) => ({
      foot,
      text: scalar([what, place, grade].join(', ')),
      words: heard === null ? null : oneLine(heard),
      of: { part: 'findings', index },
    })),
    growOut: draft.features.map(({ foot, what, place, text, heard }, index) => ({
      foot,
      text: scalar([what, place, text].join(', ')),
      words: heard === null ? null : oneLine(heard),
      of: { part: 'features', index },
    })),
    comfort: {
      rows: comfortRows(draft, order),
      surfaces: Object.entries(comfort.surfaces).flatMap(([surface, level]) =>
        level === ''
          ? []
          : [{ key: cellScalar(surface), ...single(draft, level, { part: 'surfaces', surface }) }],
      ),
      asked: [],
    },
    body: (['weight', 'condition', 'crest'] as const).flatMap((key) =>
      body[key] === '' ? [] : [{ key, ...single(draft, body[key], { part: 'body', key }) }],
    ),
    photos: draft.photos.map((photo, index) => ({
      lines: photoLines(photo),
      of: { part: 'photos', index },
    })),
    care: draft.care.map((line, index) => ({
      text: quoted(line),
      words: isHeard(draft, `care ${line}`, line),
      of: { part: 'care', index },
    })),
    asked: [],
    nextVisit: draft.nextVisit === '' ? null : single(draft, draft.nextVisit, { part: 'nextVisit' }),
    notes: noteLines(draft),
  }
}

const plain = (text: string, of: YardField): Sourced<YardField> => ({ text, words: null, of })

/** A field of one value, with the words where dictation gave it. */
const single = (draft: YardDraft, text: string, of: YardField): Sourced<YardField> => ({
  text: cellScalar(text),
  words: isHeard(draft, keyOf(of), text),
  of,
})

/** Rows of a stage in the order of the trade, then what is no measure, which the reader will name. */
function stageRows(draft: YardDraft, stage: Stage, order: readonly Foot[]): readonly FootRow<YardField>[] {
  const here = draft.readings.filter((reading) => reading.stage === stage && reading.text.trim() !== '')
  const unknown = here.map(({ measure }) => measure).filter((id) => !isMeasureId(id))
  return [...measureIds, ...new Set(unknown)].flatMap((id) => {
    const row = here.filter(({ measure }) => measure === id)
    const cells = order.flatMap((foot): readonly FootItem<YardField>[] => {
      const last = row.findLast((reading) => reading.foot === foot)
      if (last === undefined) return []
      return [
        {
          foot,
          text: cellScalar(last.text.trim()),
          words: last.heard === null ? null : oneLine(last.heard),
          of: { part: 'reading', stage, measure: id, foot },
        },
      ]
    })
    if (cells.length === 0) return []
    const name = isMeasureId(id) ? measures[id].name : cellScalar(id)
    return [{ name, of: { part: 'reading', stage, measure: id, foot: null }, cells, beside: [] }]
  })
}

function comfortRows(draft: YardDraft, order: readonly Foot[]): readonly FootRow<YardField>[] {
  return (['lameness', 'landing', 'digital pulse'] as const).flatMap((scale) => {
    const row = draft.comfort[scale]
    const cells = order.flatMap((foot): readonly FootItem<YardField>[] => {
      const text = row[foot] ?? ''
      return text === '' ? [] : [{ foot, ...single(draft, text, { part: 'comfort', scale, foot }) }]
    })
    if (cells.length === 0) return []
    const of: YardField = { part: 'comfort', scale, foot: null }
    const by = scale === 'lameness' ? draft.comfort.lamenessBy : null
    return [{ name: scale, of, cells, beside: by === null ? [] : [{ key: 'by', ...plain(by, of) }] }]
  })
}

/** An entry in braces; one with marked points has a line for each. */
function photoLines({ name, foot, view, stage, landmarks }: YardPhoto): readonly string[] {
  const keys = [
    ['file', cellScalar(`photos/${name}`)],
    ...(foot === null ? [] : [['foot', foot]]),
    ['view', view],
    ...(stage === null ? [] : [['stage', stage]]),
  ].map(([key, value]) => `${key}: ${value}`)
  const points = (landmarks ?? '').split('\n').filter((line) => line.trim() !== '')
  return points.length === 0 ? [`{${keys.join(', ')}}`] : [...keys, ...points.map((line) => line.trimEnd())]
}

/** The person's own words, what of the dictation is not used up, and the letter to the owner. */
function noteLines(draft: YardDraft): readonly Sourced<YardField>[] {
  const own = noHeadings(draft.note)
  const left = paragraphs(notesLeft(draft))
  const letter = noHeadings(draft.forOwner)
  const between = own.length > 0 && left.length > 0 ? [''] : []
  return [
    ...[...own, ...between, ...left].map((line) => plain(line, { part: 'note' })),
    ...(letter.length === 0
      ? []
      : ['', '## For the owner', '', ...letter].map((line) => plain(line, { part: 'forOwner' }))),
  ]
}

/**
 * Lines of a free text. A heading would open a section for others, and a fence or a tag that nobody closes would swallow
 * the one that is meant, so their signs stand as themselves.
 */
const noHeadings = (text: string): readonly string[] =>
  text.trim() === ''
    ? []
    : text
        .trim()
        .split(/\r\n|[\r\n\u2028\u2029]/)
        .map((line) => line.trim().replace(/^([#<~`=-])(?=[#<~`=\s-]|$|\w|[!?/])/, '\\$1'))
