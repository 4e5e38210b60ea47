/**
 * A table of readings as spreadsheets write it. The long one has a reading a line, as `growdown export --format csv` writes
 * it: horse, date, stage, foot, measure, value, unit. The wide one has a visit and horse a line, or one of their feet, and a
 * column for each reading: `LF toe length (mm)`. Columns are found by their headings.
 */
import { CsvError, parse } from 'csv-parse/sync'
import type { PlainDate } from '../hoof/dates.ts'
import { type Foot, feet } from '../hoof/feet.ts'
import { isMeasureId, type MeasureId, measureIds, measures } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { footNamed } from './by-foot.ts'
import { limits } from './limits.ts'
import { measureNamed, spellingsOf } from './measure-names.ts'
import type { Stage } from './model.ts'
import { isNotRead, readCell } from './table-cells.ts'
import { type Column, type Columns, columnsOf, type ReadingColumn } from './table-columns.ts'
import { type DateOrder, type DatesOfTable, datesOf } from './table-dates.ts'
import { nearest, normal, quote } from './words.ts'

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
  /** As it is written in a case file, with the unit that it came in. */
  readonly written: string
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

/** What a line says, or, of a wide table, what it and a heading say together. */
type Row = Readonly<Record<Column, string>>

/**
 * Reads the text of a table. Decimal comma or point, comma, semicolon or tab between columns, quoted fields and
 * a byte-order mark are all understood. A line that is not understood becomes a remark and nothing else is lost.
 *
 * @param units unit of a length for which the table names none
 * @param order of day and month, where a person has said it; else the table as a whole tells
 */
export function readTable(text: string, units: LengthUnit, order: DateOrder | null = null): Table {
  const lines = split(text)
  if ('message' in lines) return { readings: [], remarks: [lines] }
  const [header, ...rows] = lines
  if (header === undefined)
    return onlyRemark(1, 'the table is empty: expected a header line and readings below it')
  const columns = columnsOf(header.cells)
  const lacking = lackingIn(columns)
  if (lacking.length > 0) {
    const found = header.cells.slice(0, mostNamed).map(quote).join(', ')
    const wide = lacking.includes('measure') ? ', or columns such as LF toe length' : ''
    return onlyRemark(header.line, `the header lacks ${lacking.join(', ')}${wide}: found ${found}`)
  }
  const dateOf = ({ cells }: Line) => cells[columns.at.date ?? -1] ?? ''
  const context = { units, dates: datesOf(rows.map(dateOf), order) }
  const readings: TableReading[] = []
  const remarks = remarksOnColumns(columns, header.line)
  const seen = new Map<string, number>()
  for (const line of rows) {
    for (const result of readLine(line, columns, context)) {
      if ('message' in result) {
        remarks.push(result)
        continue
      }
      const key = [result.horse, result.visit, result.stage, result.foot, result.measure].join(' ')
      const earlier = seen.get(key)
      if (earlier === undefined) {
        seen.set(key, result.line)
        readings.push(result)
      } else {
        remarks.push({
          line: result.line,
          kind: 'not understood',
          message: `a second value for ${result.foot} ${measures[result.measure].name}, ${result.stage}: the one in line ${earlier} is kept`,
        })
      }
    }
  }
  return { readings, remarks }
}

interface TableContext {
  readonly units: LengthUnit
  readonly dates: DatesOfTable
}

/** Columns of a header that are named where one is lacking. */
const mostNamed = 20

const onlyRemark = (line: number, message: string): Table => ({
  readings: [],
  remarks: [{ line, kind: 'not understood', message }],
})

const isLong = ({ at }: Columns): boolean => at.measure !== undefined && at.value !== undefined

function lackingIn(columns: Columns): readonly Column[] {
  const isWide = !isLong(columns) && columns.readings.length + columns.misread.length > 0
  const isFootInHeadings = isWide && columns.readings.every(({ foot }) => foot !== null)
  const needed: readonly Column[] = [
    'horse',
    'date',
    ...(isFootInHeadings ? [] : ['foot' as const]),
    ...(isWide ? [] : (['measure', 'value'] as const)),
  ]
  return needed.filter((column) => columns.at[column] === undefined)
}

/** Columns of which nothing comes into the case files. */
function remarksOnColumns(columns: Columns, line: number): TableRemark[] {
  if (isLong(columns)) return []
  return [
    ...columns.misread.map((message) => ({ line, kind: 'not understood' as const, message })),
    ...columns.others.map((heading) => ({
      line,
      kind: 'left out' as const,
      message: `the column ${quote(heading)} holds no readings`,
    })),
  ]
}

/** The readings of a line: one of a long table, one for each column of a wide one that has something in it. */
function readLine(
  line: Line,
  columns: Columns,
  context: TableContext,
): readonly (TableReading | TableRemark)[] {
  const row = rowOf(line.cells, columns)
  if (isLong(columns)) return [readRow(row, line.line, context)]
  const cells = columns.readings
    .map((column) => ({ column, cell: line.cells[column.index] ?? '' }))
    .filter(({ cell }) => !isNotRead(cell))
  const read = cells.map(({ column, cell }) => readRow(withColumn(row, column, cell), line.line, context))
  // What is wrong with the horse or the date of a line is wrong with all its cells: told once.
  const told = new Set<string>()
  return read.filter((one) => {
    if (!('message' in one)) return true
    const isNew = !told.has(one.message)
    told.add(one.message)
    return isNew
  })
}

const withColumn = (row: Row, { measure, foot, stage, unit }: ReadingColumn, value: string): Row => ({
  ...row,
  measure,
  value,
  foot: foot ?? row.foot,
  stage: stage ?? row.stage,
  unit: unit === '' ? row.unit : unit,
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

function rowOf(cells: readonly string[], { at }: Columns): Row {
  const cell = (column: Column) => cells[at[column] ?? -1] ?? ''
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

function readRow(row: Row, line: number, { units, dates }: TableContext): TableReading | TableRemark {
  const refuse = (message: string): TableRemark => ({ line, kind: 'not understood', message })
  const leaveOut = (message: string): TableRemark => ({ line, kind: 'left out', message })
  const measure = measureNamed(row.measure)
  if (measure !== null && !isMeasureId(measure))
    return leaveOut(`${normal(row.measure)} follows from other readings and is worked out again`)
  if (row.source === 'photo')
    return leaveOut('read from a photo: it comes again with the photo and its marked points')
  if (measure === null) return refuse(unknown('measure', row.measure, spellingsOf(measureIds)))
  const horse = horseId(row.horse)
  if (row.horse.length > limits.name)
    return refuse(`the horse's name has ${row.horse.length} letters: expected at most ${limits.name}`)
  if (horse === '') return refuse('no horse named: expected its folder name or its name')
  const dated = dates.read(row.date)
  if ('message' in dated) return refuse(dated.message)
  const { date } = dated
  const visit = row.visit === '' ? date : row.visit
  if (!/^\d{4}-\d{2}-\d{2}(?:-[b-z])?$/.test(visit) || !visit.startsWith(date)) {
    return refuse(`visit ${quote(row.visit)} does not fit its date: expected ${date} or ${date}-b`)
  }
  const foot = footNamed(row.foot)
  if (!foot) return refuse(unknown('foot', row.foot, feet))
  const stage = normal(row.stage) || 'before'
  if (stage !== 'before' && stage !== 'after') return refuse(unknown('stage', row.stage, ['before', 'after']))
  if (isNotRead(row.value)) return leaveOut('no value: not read')
  const cell = readCell(row.value, row.unit, measures[measure], units)
  if (typeof cell === 'string') return refuse(`${foot} ${measures[measure].name}: ${cell}`)
  return { line, horse, horseName: row.horse.trim(), visit, date, stage, foot, measure, ...cell }
}

/** Folder name for a horse's name: `Old Juno` is `old-juno`. */
export const horseId = (name: string): string =>
  name
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')

function unknown(what: string, text: string, known: readonly string[]): string {
  const meant = nearest(text, known)
  return `${quote(text)} is not a known ${what}${meant === null ? '' : `, perhaps ${meant}`}`
}
