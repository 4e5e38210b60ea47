/** Spoken notes held against what a person would type up from them. */
import { readdirSync, readFileSync } from 'node:fs'
import { loadAll } from 'js-yaml'
import { measureNamed } from '../../src/casebook/measure-names.ts'
import type { Foot } from '../../src/hoof/feet.ts'
import { feet } from '../../src/hoof/feet.ts'
import type { LengthUnit } from '../../src/hoof/units.ts'
import { parseAngle, parseLength } from '../../src/hoof/units.ts'
import { buildLexicon, draftVisit, type Known, understand } from '../../src/spoken/index.ts'

type Lines = Partial<Record<Foot, readonly string[]>>

export interface Note {
  readonly note: string
  readonly said: string
  readonly format?: 'text' | 'vtt' | 'srt'
  readonly date?: string | Date
  readonly practice?: { readonly units: LengthUnit }
  readonly open?: Lines
  readonly features?: Lines
  readonly truth: Readonly<Record<string, unknown>>
}

const folder = 'tests/spoken/notes'

const notesIn = (file: string): readonly Note[] =>
  loadAll(readFileSync(`${folder}/${file}`, 'utf8')) as Note[]

/** The notes of a set; those that the rules are made with stand in several files. */
export const notesOf = (set: 'unseen' | 'later' | 'developing'): readonly Note[] =>
  set === 'developing'
    ? readdirSync(`${folder}/${set}`)
        .sort()
        .flatMap((file) => notesIn(`${set}/${file}`))
    : notesIn(`${set}.yaml`)

const dateText = (date: unknown): string =>
  date instanceof Date ? date.toISOString().slice(0, 10) : String(date ?? '2026-11-27')

const placed = (lines: Lines | undefined) =>
  Object.entries(lines ?? {}).flatMap(([foot, all]) =>
    (all ?? []).map((line) => {
      const [what = '', place = ''] = line.split(',').map((part) => part.trim())
      return { foot: foot as Foot, what: what === 'separation' ? 'wall separation' : what, place }
    }),
  )

export const knownOf = (note: Note): Known => ({
  units: note.practice?.units ?? 'mm',
  feetOrder: feet,
  date: dateText(note.date),
  openFindings: placed(note.open),
  features: placed(note.features),
})

const lexicon = buildLexicon()

export const understandNote = (note: Note) => understand(note.said, knownOf(note), lexicon, note.format)

export const draftOf = (note: Note): string => draftVisit(understandNote(note), knownOf(note))

/** The block of a case file, in the text that a draft is. */
export const blockOf = (text: string): Readonly<Record<string, unknown>> =>
  (loadAll(text.split(/^---$/m)[1] ?? '')[0] ?? {}) as Readonly<Record<string, unknown>>

/** Every reading and finding of a block as one line each, and all else as others. */
export function factsOf(block: Readonly<Record<string, unknown>>, units: LengthUnit) {
  const readings: string[] = []
  for (const stage of ['before', 'after']) {
    for (const [name, row] of Object.entries((block[stage] ?? {}) as Record<string, unknown>)) {
      const measure = measureNamed(name) ?? name
      for (const [foot, value] of cells(row)) {
        const text = String(value)
        if (text === '_' || value === null) continue
        const read = measure.endsWith('angle') ? parseAngle(text) : parseLength(text, units)?.mm
        readings.push(
          `${stage} ${measure} ${foot} ${read === null || read === undefined ? `?${text}` : read.toFixed(2)}`,
        )
      }
    }
  }
  const findings = footLines(block.findings)
  const others: string[] = footLines(block['grow-out']).map((line) => line.replace(/ mm$/, ''))
  const comfort = (block.comfort ?? {}) as Record<string, unknown>
  for (const [scale, row] of Object.entries(comfort)) {
    for (const [key, value] of cells(row)) others.push(`${scale} ${key} ${String(value)}`)
  }
  for (const [key, value] of Object.entries((block.body ?? {}) as Record<string, unknown>))
    others.push(`${key} ${String(value)}`)
  for (const line of (block.care ?? []) as string[]) others.push(`care ${line.toLowerCase()}`)
  if (block['next visit'] !== undefined) {
    const next = block['next visit']
    others.push(`next visit ${next instanceof Date ? dateText(next) : String(next)}`)
  }
  return { readings, findings, others }
}

const cells = (row: unknown): readonly (readonly [string, unknown])[] =>
  Array.isArray(row)
    ? row.map((value, index) => [feet[index] ?? '', value] as const)
    : Object.entries(row as object)

const footLines = (map: unknown): string[] =>
  Object.entries((map ?? {}) as Record<string, readonly string[]>).flatMap(([foot, lines]) =>
    lines.map((line) => `${foot} ${line}`),
  )

export interface Score {
  readonly right: number
  readonly wrong: readonly string[]
  readonly missed: readonly string[]
}

export function compare(found: readonly string[], truth: readonly string[]): Score {
  const left = [...truth]
  const wrong: string[] = []
  let right = 0
  for (const one of found) {
    const at = left.indexOf(one)
    if (at === -1) wrong.push(one)
    else {
      left.splice(at, 1)
      right++
    }
  }
  return { right, wrong, missed: left }
}

export function scoreNote(note: Note) {
  const units = note.practice?.units ?? 'mm'
  const found = factsOf(blockOf(draftOf(note)), units)
  const truth = factsOf(note.truth, units)
  return {
    readings: compare(found.readings, truth.readings),
    findings: compare(found.findings, truth.findings),
    others: compare(found.others, truth.others),
  }
}

export function totals(scores: readonly Score[]) {
  const right = scores.reduce((sum, score) => sum + score.right, 0)
  const wrong = scores.reduce((sum, score) => sum + score.wrong.length, 0)
  const missed = scores.reduce((sum, score) => sum + score.missed.length, 0)
  return {
    right,
    wrong,
    missed,
    precision: right / (right + wrong || 1),
    recall: right / (right + missed || 1),
  }
}
