import { Ajv2020 } from 'ajv/dist/2020.js'
import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { readTable } from '../../src/casebook/table.ts'
import { exportOf, exportSchema, exportShape, readingColumns, readingRows } from '../../src/pages/export.ts'
import { csvText } from '../../src/pages/shared/csv.ts'
import { assess } from '../../src/trend/assess.ts'
import { lessonsOf } from '../../src/trend/model/practice.ts'
import { formatIn } from '../english.ts'
import { buildHorse, practice } from '../trend/build-horse.ts'
import { sampleAsOf, sampleHorse } from '../trend/sample-horse.ts'

const f = formatIn('mm')
const sample = assess(sampleHorse, practice(), sampleAsOf)
const bare = buildHorse({
  id: 'bare',
  visits: [
    {
      date: '2026-03-14',
      before: { 'toe-angle': 44, 'heel-medial': 36, 'heel-lateral': 30 },
      growOut: ['LF ring, coronet, 3'],
      findings: ['LF drainage, toe, 1'],
    },
    { date: '2026-03-14', id: '2026-03-14-b', before: { width: 120 } },
  ],
})
const lessons = lessonsOf([sampleHorse], sampleAsOf)
const result = exportOf([sample, assess(bare, practice(), '2026-03-20')], lessons, '2026-09-10', f)
const [full, few] = result.horses

describe('the export', () => {
  it('has the documented shape', () => {
    expect(exportShape.parse(result)).toEqual(result)
    expect(Object.keys(result)).toEqual(['format', 'version', 'asOf', 'learned', 'horses'])
    expect(Object.keys(full ?? {})).toEqual([
      'id',
      'name',
      'visits',
      'readings',
      'trends',
      'growth',
      'growOut',
      'problems',
      'plans',
      'heldFeet',
      'checks',
      'cautions',
    ])
    expect(Object.keys(full?.readings[0] ?? {})).toEqual([
      'date',
      'stage',
      'foot',
      'measure',
      'value',
      'unit',
      'source',
    ])
    expect(Object.keys(full?.trends[0] ?? {})).toEqual([
      'foot',
      'measure',
      'family',
      'stage',
      'n',
      'leftOut',
      'first',
      'last',
      'change',
      'level',
      'levelLow',
      'levelHigh',
      'slopePerMonth',
      'slopeLow',
      'slopeHigh',
      'smallestRealChange',
      'targetLow',
      'targetHigh',
      'verdict',
      'position',
      'clear',
      'forecast',
    ])
  })

  it('holds what the practice has taught, beside the literature', () => {
    const toe = result.learned.find(({ measure, foot }) => measure === 'toe-angle' && foot === 'one')
    expect(toe).toMatchObject({ family: 'gauge', literature: 1.4 })
    expect(toe?.e).toBeCloseTo(1.4 * (lessons.lessons['gauge toe-angle']?.e ?? 0), 12)
    expect(toe?.readings).toBeGreaterThan(8)
  })

  it('holds all feet together beside each', () => {
    const feet = full?.trends.filter(({ measure }) => measure === 'toe-length').map(({ foot }) => foot)
    expect(feet).toContain('all')
  })

  it('passes its own JSON Schema, by an independent validator, and survives a trip through text', () => {
    const schema = exportSchema()
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema)
    const again: unknown = JSON.parse(JSON.stringify(result))
    expect(validate(again), JSON.stringify(validate.errors)).toBe(true)
    expect(again).toEqual(result)
    expect(validate({ ...result, version: 1 })).toBe(false)
    expect(validate({ ...result, horses: [{ ...full, trends: [{}] }] })).toBe(false)
  })

  it('gives null, and no number, where there is nothing to give', () => {
    expect(few?.trends.find(({ measure }) => measure === 'toe-angle')).toEqual({
      foot: 'LF',
      measure: 'toe-angle',
      family: 'gauge',
      stage: 'before',
      n: 1,
      leftOut: [],
      first: { date: '2026-03-14', stage: 'before', value: 44 },
      last: { date: '2026-03-14', stage: 'before', value: 44 },
      change: null,
      level: null,
      levelLow: null,
      levelHigh: null,
      slopePerMonth: null,
      slopeLow: null,
      slopeHigh: null,
      smallestRealChange: null,
      targetLow: null,
      targetHigh: null,
      verdict: 'too early to tell',
      position: 'no target',
      clear: false,
      forecast: null,
    })
    expect(few?.growOut).toMatchObject([{ wallLength: null, date: null, state: 'wall length unknown' }])
    expect(few?.plans).toEqual([])
    expect(few?.heldFeet).toEqual(['LF'])
  })

  it('names the unit and the source of each reading', () => {
    const units = new Map(full?.readings.map(({ measure, unit }) => [measure, unit]))
    expect(units.get('toe-length')).toBe('mm')
    expect(units.get('toe-angle')).toBe('deg')
    expect(units.get('heel-balance')).toBe('mm')
    expect(units.get('frog-ratio')).toBe('ratio')
    expect(units.get('load-index')).toBe('lb/in2')
    expect(new Set(full?.readings.map(({ source }) => source))).toEqual(new Set(['entered', 'derived']))
  })

  it('rounds nothing', () => {
    const trend = full?.trends.find(({ foot, measure }) => foot === 'LF' && measure === 'toe-angle')
    const fit = sample.trends.find(({ foot, measure }) => foot === 'LF' && measure === 'toe-angle')?.fit
    expect(trend?.slopePerMonth).toBe(fit?.slopePerMonth)
    expect(String(trend?.slopePerMonth).length).toBeGreaterThan(10)
  })

  it('lists the cautions that stand, with their words', () => {
    expect(few?.cautions).toEqual([
      {
        code: 'drainage',
        level: 'stop',
        foot: 'LF',
        feet: ['LF'],
        since: '2026-03-14',
        date: '2026-03-14',
        silentVisits: 1,
        holdsPlan: true,
        message:
          'Fluid comes from the foot (toe). Do not plug it and do not trim this foot. Ask a vet before any more work.',
      },
    ])
    const past = sample.cautions.filter(({ standing }) => !standing)
    expect(past.length).toBeGreaterThan(0)
    expect(full?.cautions).toHaveLength(sample.cautions.length - past.length)
  })

  it('gives visits as dates, a day with two visits twice', () =>
    expect(few?.visits).toEqual(['2026-03-14', '2026-03-14']))
})

describe('the table of readings', () => {
  it('has a row a reading, and tells two visits of a day apart', () => {
    const rows = readingRows([assess(bare, practice(), '2026-03-20')])
    expect(readingColumns).toEqual([
      'horse',
      'visit',
      'date',
      'stage',
      'foot',
      'measure',
      'value',
      'unit',
      'source',
    ])
    expect(rows).toContainEqual([
      'bare',
      '2026-03-14',
      '2026-03-14',
      'before',
      'LF',
      'toe-angle',
      44,
      'deg',
      'entered',
    ])
    expect(rows).toContainEqual([
      'bare',
      '2026-03-14',
      '2026-03-14',
      'before',
      'LF',
      'heel-balance',
      6,
      'mm',
      'derived',
    ])
    expect(rows).toContainEqual([
      'bare',
      '2026-03-14-b',
      '2026-03-14',
      'before',
      'LF',
      'width',
      120,
      'mm',
      'entered',
    ])
  })
})

describe('the readings as CSV', () => {
  it('come back through the reader of tables as they went, the derived ones left out', () => {
    const rows = readingRows([sample, assess(bare, practice(), '2026-03-20')])
    const { readings, remarks } = readTable(csvText(readingColumns, rows), 'mm')
    const entered = rows.filter((row) => row[8] === 'entered')
    expect(readings.length).toBeGreaterThan(50)
    expect(
      readings.map(({ horse, visit, date, stage, foot, measure, value }) => [
        ...[horse, visit, date, stage, foot, measure, value],
      ]),
    ).toEqual(entered.map((row) => row.slice(0, 7)))
    expect(new Set(remarks.map(({ kind }) => kind))).toEqual(new Set(['left out']))
  })

  /** The cells that the page "CSV Injection" of OWASP warns of (from memory), and those of full width. */
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\uff1d1', '\uff0b1', '\uff0d1', '\uff201'])(
    'run no formula: %j',
    (text) => {
      const [row] = parse(csvText([text], [[text]])).slice(1) as string[][]
      expect(row).toEqual([`'${text}`])
    },
  )

  it('keep numbers as numbers, and a text whole where a semicolon parts cells', () => {
    const text = csvText(
      ['a;b', 'n'],
      [
        ['x;=1+1', -12.5],
        ['\u0000\u001b=1+1', 1e-7],
        ['a"b\nc', 0],
      ],
    )
    expect(text).toBe(`"a;b",n\n"x;=1+1",-12.5\n'=1+1,1e-7\n"a""b\nc",0\n`)
  })
})
