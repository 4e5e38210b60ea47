/**
 * A long table of readings, one a line, as spreadsheets and `growdown export --format csv` write it.
 * Columns are found by their headers: horse, date, stage, foot, measure, value, unit; visit and source may be there.
 */
import { CsvError, parse } from 'csv-parse/sync'
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { type Foot, feet, isFoot } from '../hoof/feet.ts'
import { isMeasureId, type MeasureId, measureIds, measures } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { limits } from './limits.ts'
import { measureNamed, spellingsOf } from './measure-names.ts'
import type { Stage } from './model.ts'
import { nearest, quote } from './words.ts'

export interface TableReading {
  readonly line: number
  /** Folder name of the horse. */
  readonly horse: string
  /** As the table names the horse. */
  readonly horseName: string
  /** File name of the visit without ending. */
  readonly visit: string
  readonly date: PlainDate
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: MeasureId
  /** Millimetres or degrees. */
  readonly value: number
}

export interface TableRemark {
  /** Line of the table; 1 is the header. */
  readonly line: number
  /** `left out`: understood, and rightly not a reading to write. */
  readonly kind: 'not understood' | 'left out'
  readonly message: string
}

export interface Table {
  readonly readings: readonly TableReading[]
  readonly remarks: readonly TableRemark[]
}

/** A table above this is refused before it is parsed. */
export const largestTable = limits.tableBytes

const columnNames = {
  horse: ['horse', 'horse id', 'name'],
  visit: ['visit'],
  date: ['date'],
  stage: ['stage'],
  foot: ['foot', 'hoof', 'limb'],
  measure: ['measure', 'measurement'],
  value: ['value', 'reading'],
  unit: ['unit', 'units'],
  source: ['source'],
} as const
type Column = keyof typeof columnNames
const required: readonly Column[] = ['horse', 'date', 'foot', 'measure', 'value']

type Row = Readonly<Record<Column, string>>

/**
 * Reads the text of a table. Decimal comma or point, comma, semicolon or tab between columns, quoted fields and
 * a byte-order mark are all understood. A line that is not understood becomes a remark and nothing else is lost.
 *
 * @param units unit of a length whose line names none
 */
export function readTable(text: string, units: LengthUnit): Table {
  const lines = split(text)
  if ('message' in lines) return { readings: [], remarks: [lines] }
  const header = lines[0]
  if (header === undefined)
    return onlyRemark(1, 'the table is empty: expected a header line and readings below it')
  const columns = findColumns(header.cells)
  const missing = required.filter((column) => columns[column] === undefined)
  if (missing.length > 0) {
    const found = header.cells.slice(0, mostNamed).map(quote).join(', ')
    return onlyRemark(header.line, `the header lacks ${missing.join(', ')}: found ${found}`)
  }
  const readings: TableReading[] = []
  const remarks: TableRemark[] = []
  const seen = new Map<string, number>()
  for (const { line, cells } of lines.slice(1)) {
    const result = readRow(rowOf(cells, columns), line, units)
    if ('message' in result) {
      remarks.push(result)
      continue
    }
    const key = [result.horse, result.visit, result.stage, result.foot, result.measure].join(' ')
    const earlier = seen.get(key)
    if (earlier === undefined) {
      seen.set(key, line)
      readings.push(result)
    } else {
      remarks.push({
        line,
        kind: 'not understood',
        message: `a second value for the same reading: the one in line ${earlier} is kept`,
      })
    }
  }
  return { readings, remarks }
}

/** Columns of a header that are named where one is lacking. */
const mostNamed = 20

const onlyRemark = (line: number, message: string): Table => ({
  readings: [],
  remarks: [{ line, kind: 'not understood', message }],
})

interface Line {
  readonly line: number
  readonly cells: readonly string[]
}

/** The cells of each line, or why the table cannot be taken apart. */
function split(text: string): readonly Line[] | TableRemark {
  const firstLine = text.slice(0, text.search(/[\r\n]|$/))
  const count = (mark: string) => firstLine.split(mark).length
  const delimiter = [';', '\t', ','].reduce((best, mark) => (count(mark) > count(best) ? mark : best))
  try {
    // The types of csv-parse know records without `info` only.
    const records = parse(text, {
      bom: true,
      delimiter,
      info: true,
      max_record_size: limits.rowBytes,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as readonly {
      readonly info: { readonly lines: number }
      readonly record: readonly string[]
    }[]
    return records.map(({ info, record }) => ({ line: info.lines, cells: record.map(asMeant) }))
  } catch (problem) {
    if (!(problem instanceof CsvError)) throw problem
    return { line: Number(problem.lines ?? 1), kind: 'not understood', message: notSplit(problem.code) }
  }
}

/** Why csv-parse gave up. */
function notSplit(code: string): string {
  switch (code) {
    case 'CSV_QUOTE_NOT_CLOSED':
      return 'a quote mark up to here is not closed, so nothing was read: expected a second one'
    case 'CSV_MAX_RECORD_SIZE':
      return `the line is too long, so nothing was read: expected at most ${limits.rowBytes / 1024} KiB; a quote mark that is not closed makes one line of many`
    default:
      return 'words follow a closing quote mark, so nothing was read: expected a comma, or two quote marks for one'
  }
}

/** Without the apostrophe that keeps a spreadsheet from running a cell as a formula, as our own export writes it. */
const asMeant = (cell: string): string => cell.replace(/^'(?=[-=+@\t\r\uff0b\uff0d\uff1d\uff20])/, '').trim()

const plain = (text: string) =>
  text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, ' ')

function findColumns(header: readonly string[]): Partial<Record<Column, number>> {
  const names = header.map(plain)
  const found: Partial<Record<Column, number>> = {}
  for (const column of Object.keys(columnNames) as Column[]) {
    const index = names.findIndex((name) => (columnNames[column] as readonly string[]).includes(name))
    if (index >= 0) found[column] = index
  }
  return found
}

function rowOf(cells: readonly string[], columns: Partial<Record<Column, number>>): Row {
  const cell = (column: Column) => {
    const index = columns[column]
    return index === undefined ? '' : (cells[index] ?? '')
  }
  return {
    horse: cell('horse'),
    visit: cell('visit'),
    date: cell('date'),
    stage: cell('stage'),
    foot: cell('foot'),
    measure: cell('measure'),
    value: cell('value'),
    unit: cell('unit'),
    source: cell('source'),
  }
}

function readRow(row: Row, line: number, units: LengthUnit): TableReading | TableRemark {
  const refuse = (message: string): TableRemark => ({ line, kind: 'not understood', message })
  const leaveOut = (message: string): TableRemark => ({ line, kind: 'left out', message })
  const measure = measureNamed(row.measure)
  if (measure !== null && !isMeasureId(measure))
    return leaveOut(`${plain(row.measure)} follows from other readings and is worked out again`)
  if (row.source === 'photo')
    return leaveOut('read from a photo: it comes again with the photo and its marked points')
  if (measure === null) return refuse(unknown('measure', row.measure, spellingsOf(measureIds)))
  const horse = horseId(row.horse)
  if (row.horse.length > limits.name)
    return refuse(`the horse's name has ${row.horse.length} letters: expected at most ${limits.name}`)
  if (horse === '') return refuse('no horse named: expected its folder name or its name')
  const date = readDate(row.date)
  if (date === null) return refuse(`${quote(row.date)} is not a date: expected 2026-03-14 or 14.03.2026`)
  const visit = row.visit === '' ? date : row.visit
  if (!/^\d{4}-\d{2}-\d{2}(?:-[b-z])?$/.test(visit) || !visit.startsWith(date)) {
    return refuse(`visit ${quote(row.visit)} does not fit its date: expected ${date} or ${date}-b`)
  }
  const foot = row.foot.trim().toUpperCase()
  if (!isFoot(foot)) return refuse(unknown('foot', row.foot, feet))
  const stage = plain(row.stage) || 'before'
  if (stage !== 'before' && stage !== 'after') return refuse(unknown('stage', row.stage, ['before', 'after']))
  if (row.value === '' || row.value === '~') return leaveOut('no value: not read')
  const value = readValue(row.value, row.unit, measures[measure].kind, units)
  if (typeof value === 'string') return refuse(value)
  return { line, horse, horseName: row.horse.trim(), visit, date, stage, foot, measure, value }
}

/** Folder name for a horse's name: `Old Juno` is `old-juno`. */
export const horseId = (name: string): string =>
  name
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')

function readDate(text: string): PlainDate | null {
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text.trim())
  if (!dotted) return parseDate(text.trim())
  const [, day = '', month = '', year = ''] = dotted
  return parseDate(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`)
}

const perUnit: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: 25.4 }

function readValue(text: string, unit: string, kind: 'length' | 'angle', units: LengthUnit): number | string {
  const number = Number(text.trim().replace(/^([-+]?\d+),(\d+)$/, '$1.$2'))
  if (!Number.isFinite(number)) return `${quote(text)} is not a number: expected 98, 98.5 or 98,5`
  const named = plain(unit)
  if (kind === 'angle') {
    return ['', 'deg', 'degree', 'degrees', '°'].includes(named)
      ? number
      : `${quote(unit)} is not a unit of an angle: expected deg`
  }
  if (named === '') return number * perUnit[units]
  if (named === 'mm' || named === 'cm' || named === 'in') return number * perUnit[named]
  return `${quote(unit)} is not a unit of a length: expected mm, cm or in`
}

function unknown(what: string, text: string, known: readonly string[]): string {
  const meant = nearest(text, known)
  return `${quote(text)} is not a known ${what}${meant === null ? '' : `, perhaps ${meant}`}`
}
