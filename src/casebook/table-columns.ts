/** What the columns of a table hold, by their headings: `horse`, `Date`, `LF toe length (mm)`, `after: heel medial RH`. */
import type { Foot } from '../hoof/feet.ts'
import { type AnyMeasureId, isMeasureId, type MeasureId, measureIds } from '../hoof/measures.ts'
import { unitNamed } from '../hoof/units.ts'
import { footNamed } from './by-foot.ts'
import { placeInWords } from './finding-words.ts'
import { measureNamed, spellingsOf } from './measure-names.ts'
import type { Stage } from './model.ts'
import { nearest, normal, quote } from './words.ts'

const columnNames = {
  horse: ['horse', 'horse id', 'name', 'horse name'],
  visit: ['visit'],
  date: ['date', 'day', 'visit date', 'date of visit'],
  stage: ['stage'],
  foot: ['foot', 'hoof', 'limb'],
  measure: ['measure', 'measurement'],
  value: ['value', 'reading'],
  unit: ['unit', 'units'],
  source: ['source'],
} as const
export type Column = keyof typeof columnNames

/** A column whose cells are readings. What its heading does not say, its lines say. */
export interface ReadingColumn {
  readonly index: number
  readonly measure: MeasureId
  readonly foot: Foot | null
  readonly stage: Stage | null
  readonly unit: string
}

export interface Columns {
  /** Where each known column stands. */
  readonly at: Partial<Record<Column, number>>
  readonly readings: readonly ReadingColumn[]
  /** Headings that were meant for readings and are none, each with why. */
  readonly misread: readonly string[]
  /** Headings that have nothing to do with readings. */
  readonly others: readonly string[]
}

export function columnsOf(headings: readonly string[]): Columns {
  const at: Partial<Record<Column, number>> = {}
  const readings: ReadingColumn[] = []
  const misread: string[] = []
  const others: string[] = []
  for (const [index, heading] of headings.entries()) {
    const column = columnNamed(heading)
    if (column !== null && at[column] === undefined) at[column] = index
    else if (column === null && heading !== '') {
      const read = readHeading(heading)
      if (read === null) others.push(heading)
      else if (typeof read === 'string') misread.push(read)
      else readings.push({ index, ...read })
    }
  }
  return { at, readings, misread, others }
}

const columnNamed = (heading: string): Column | null => {
  const name = normal(heading.replace(/[-.:]+/g, ' '))
  const found = (Object.keys(columnNames) as Column[]).find((column) =>
    (columnNames[column] as readonly string[]).includes(name),
  )
  return found ?? null
}

/** Words of a heading that say nothing. */
const fillers = new Set(['trim', 'trimming', 'the', 'of', 'at', 'arrival', 'on', 'reading'])

/** A heading as a reading; why it is none where it was meant for one; null where it was not. */
function readHeading(heading: string): Omit<ReadingColumn, 'index'> | string | null {
  let words = normal(heading.replace(/[()[\]{}:;,./-]+/g, ' ')).split(' ')
  const units = words.filter((word) => unitNamed(word) !== null)
  // `in mm` is millimetres.
  const unit = units.at(-1) ?? ''
  const stage = words.find((word): word is Stage => word === 'before' || word === 'after') ?? null
  words = words.filter((word) => !units.includes(word) && word !== stage && !fillers.has(word))
  const { foot, rest } = footIn(words)
  const name = rest.join(' ')
  const measure = measureIn(name)
  if (measure !== null) return isMeasureId(measure) ? { measure, foot, stage, unit } : null
  const meant = name === '' ? null : nearest(name, spellingsOf(measureIds))
  if (meant === null && foot === null) return null
  return `the column ${quote(heading)} names no known measure${meant === null ? '' : `, perhaps ${meant}`}`
}

/** The foot that one or two words name, and the words that are left. */
function footIn(words: readonly string[]): { readonly foot: Foot | null; readonly rest: readonly string[] } {
  for (const length of [2, 1]) {
    for (let from = 0; from + length <= words.length; from++) {
      const foot = footNamed(words.slice(from, from + length).join(' '))
      if (foot) return { foot, rest: [...words.slice(0, from), ...words.slice(from + length)] }
    }
  }
  return { foot: null, rest: words }
}

const sorted = (name: string): string => name.split(' ').sort().join(' ')
const bySortedName = new Map(spellingsOf(measureIds).map((name) => [sorted(name), measureNamed(name)]))

/** The measure by its name, its words in whatever order; `inner heel` is heel medial. */
const measureIn = (name: string): AnyMeasureId | null =>
  measureNamed(name) ?? bySortedName.get(sorted(placeInWords(name))) ?? null
