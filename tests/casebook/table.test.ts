import { describe, expect, it } from 'vitest'
import { readCasebook } from '../../src/casebook/read.ts'
import { horseId, readTable } from '../../src/casebook/table.ts'
import { memoryFolder } from './memory-folder.ts'

const header = 'horse,date,stage,foot,measure,value,unit'
const read = (...lines: string[]) => readTable([header, ...lines].join('\n'), 'mm')

describe('readTable', () => {
  it('reads lengths in any unit as millimetres and angles as degrees', () => {
    const { readings, remarks } = read(
      'juno,2026-03-14,before,LF,toe length,9.8,cm',
      'juno,2026-03-14,before,RF,Toe-Length,3.625,in',
      'juno,2026-03-14,after,lh,toe angle,48.5,deg',
    )
    expect(remarks).toEqual([])
    expect(readings.map(({ foot, measure, value }) => [foot, measure, value])).toEqual([
      ['LF', 'toe-length', 98],
      ['RF', 'toe-length', 92.075],
      ['LH', 'toe-angle', 48.5],
    ])
  })

  it('understands a spreadsheet of another country: byte-order mark, semicolons, decimal commas, dotted dates', () => {
    const text = '\ufeffFoot;Horse;Date;Measure;Value\r\nLF;"Old; Juno";14.3.2026;toe length;"98,5"\r\n'
    const { readings, remarks } = readTable(text, 'mm')
    expect(remarks).toEqual([])
    expect(readings).toMatchObject([
      { horse: 'old-juno', horseName: 'Old; Juno', date: '2026-03-14', stage: 'before', value: 98.5 },
    ])
  })

  it('says line by line what it did not understand and keeps the rest', () => {
    const { readings, remarks } = read(
      'juno,2026-03-14,before,LF,toe lenght,98,mm',
      'juno,2026-02-30,before,LF,toe length,98,mm',
      'juno,2026-03-14,before,XF,toe length,98,mm',
      'juno,2026-03-14,before,LF,toe length,long,mm',
      'juno,2026-03-14,before,LF,toe length,98,furlong',
      'juno,2026-03-14,before,LF,toe length,98,mm',
      'juno,2026-03-14,before,LF,toe length,99,mm',
      'juno,2026-03-14,before,LF,heel gap,8,deg',
    )
    expect(readings).toHaveLength(1)
    expect(remarks.map(({ line, message }) => `${line}: ${message}`)).toEqual([
      '2: "toe lenght" is not a known measure, perhaps toe length',
      '3: "2026-02-30" is not a date: expected 2026-03-14 or 14.03.2026',
      '4: "XF" is not a known foot',
      '5: LF toe length: "long" is not a number: expected 98, 98.5, 98,5, 9.8 cm or 3 5/8 in',
      '6: LF toe length: "furlong" is not a unit of a length: expected mm, cm or in',
      '8: a second value for LF toe length, before: the one in line 7 is kept',
      '9: heel gap follows from other readings and is worked out again',
    ])
    expect(remarks.at(-1)?.kind).toBe('left out')
  })

  it('names the columns that a header lacks', () => {
    const { remarks } = readTable('horse,when\njuno,2026-03-14\n', 'mm')
    expect(remarks[0]?.message).toBe(
      'the header lacks date, foot, measure, value, or columns such as LF toe length: found "horse", "when"',
    )
    expect(readTable('', 'mm').remarks[0]?.message).toContain('the table is empty')
  })

  it('takes a cell that was kept from running as a formula as what it says', () => {
    const { readings, remarks } = read(
      "'=Juno,2026-03-14,before,LF,heel medial,'+3.5,mm",
      '"\'\tNell",2026-03-14,before,LF,heel medial,3.5,mm',
      "'Quoted' name,2026-03-14,before,LF,heel medial,3,mm",
    )
    expect(remarks).toEqual([])
    expect(readings.map(({ horseName, value }) => [horseName, value])).toEqual([
      ['=Juno', 3.5],
      ['Nell', 3.5],
      ["'Quoted' name", 3],
    ])
  })

  it('never lets a name lead out of the casebook', () => {
    expect(horseId('../../etc/passwd')).toBe('etc-passwd')
    expect(read('..,2026-03-14,before,LF,toe length,98,mm').remarks[0]?.message).toContain('no horse named')
    expect(
      readTable(`${header},visit\njuno,2026-03-14,before,LF,toe length,98,mm,2026-03-14/../x`, 'mm')
        .remarks[0]?.message,
    ).toContain('does not fit its date')
  })

  it('reads several thousand rows', () => {
    const rows = Array.from(
      { length: 5000 },
      (_, i) => `h${i},2026-03-14,before,LF,toe length,${80 + (i % 30)},mm`,
    )
    expect(read(...rows).readings).toHaveLength(5000)
  })
})

/** A reading as a short text: `LF toe-length before 98 mm`. */
const told = ({ readings }: ReturnType<typeof readTable>) =>
  readings.map(({ foot, measure, stage, written }) => `${foot} ${measure} ${stage} ${written}`)
const messages = ({ remarks }: ReturnType<typeof readTable>) =>
  remarks.map(({ line, kind, message }) => `${line} ${kind}: ${message}`)

describe('a wide table', () => {
  it('has a visit and horse a line, and a column for each reading', () => {
    const table = readTable(
      'Horse,Date,LF toe length (mm),Toe Angle RF,left hind heel medial [cm],after: toe length near fore\nOld Juno,2026-03-14,98,45,"3,1",90\nPip,2026-03-15,,46.5,n/a,~\n',
      'mm',
    )
    expect(table.remarks).toEqual([])
    expect(told(table)).toEqual([
      'LF toe-length before 98 mm',
      'RF toe-angle before 45',
      'LH heel-medial before 3.1 cm',
      'LF toe-length after 90 mm',
      'RF toe-angle before 46.5',
    ])
    expect(table.readings.map(({ horse, visit }) => `${horse}/${visit}`)).toEqual([
      ...Array(4).fill('old-juno/2026-03-14'),
      'pip/2026-03-15',
    ])
  })

  it('may have a foot a line, and a stage', () => {
    const table = readTable(
      'name\tdate\tfoot\tstage\ttoe length in mm\theel inner\tangle of toe\njuno\t2026-03-14\toff fore\tafter\t98\t30\t45\n',
      'mm',
    )
    expect(table.remarks).toEqual([])
    expect(told(table)).toEqual([
      'RF toe-length after 98 mm',
      'RF heel-medial after 30 mm',
      'RF toe-angle after 45',
    ])
  })

  it('says which columns and cells it did not understand, a fault of a line once', () => {
    const table = readTable(
      'horse,date,LF toe lenght,RF toe length,LF toe angle,LF heel gap,farrier,LF sparkle\njuno,2026-03-14,98,long,440,3,Ada,1\njuno,someday,98,97,45,3,Ada,1\n',
      'mm',
    )
    expect(table.readings).toEqual([])
    expect(messages(table)).toEqual([
      '1 not understood: the column "LF toe lenght" names no known measure, perhaps toe length',
      '1 not understood: the column "LF sparkle" names no known measure',
      '1 left out: the column "LF heel gap" holds no readings',
      '1 left out: the column "farrier" holds no readings',
      '2 not understood: RF toe length: "long" is not a number: expected 98, 98.5, 98,5, 9.8 cm or 3 5/8 in',
      '2 not understood: LF toe angle: 440° cannot be',
      '3 not understood: "someday" is not a date: expected 2026-03-14 or 14.03.2026',
    ])
  })

  it('wants a foot from its headings or its lines', () => {
    expect(messages(readTable('horse,date,toe length\njuno,2026-03-14,98\n', 'mm'))).toEqual([
      '1 not understood: the header lacks foot: found "horse", "date", "toe length"',
    ])
  })
})

describe('dates of a table', () => {
  const wide = (order: 'dd/mm' | 'mm/dd' | null, ...dates: string[]) =>
    readTable(['horse,date,LF toe length', ...dates.map((date) => `juno,${date},98`)].join('\n'), 'mm', order)
  const days = (table: ReturnType<typeof readTable>) => table.readings.map(({ date }) => date)

  it('have the day or the month first as the table as a whole tells', () => {
    expect(days(wide(null, '03/04/2026', '25/04/2026'))).toEqual(['2026-04-03', '2026-04-25'])
    expect(days(wide(null, '3/4/26', '4/25/26 0:00'))).toEqual(['2026-03-04', '2026-04-25'])
    expect(days(wide(null, '3-4-2026', '25-4-2026'))).toEqual(['2026-04-03', '2026-04-25'])
  })

  it('are asked about where the table does not tell', () => {
    const table = wide(null, '03/04/2026', '05/06/2026')
    expect(table.readings).toEqual([])
    expect(table.remarks[0]?.message).toBe(
      '"03/04/2026" may be day or month first, and no date of the table tells: say --dates dd/mm or --dates mm/dd',
    )
    expect(days(wide('dd/mm', '03/04/2026', '05/06/2026'))).toEqual(['2026-04-03', '2026-06-05'])
    expect(days(wide('mm/dd', '03/04/2026', '05/06/2026'))).toEqual(['2026-03-04', '2026-05-06'])
  })

  it('are refused where they disagree, among themselves or with what was said', () => {
    expect(wide(null, '25/04/2026', '04/25/2026').remarks[0]?.message).toContain('Write them all alike')
    expect(wide('mm/dd', '25/04/2026').remarks[0]?.message).toBe(
      '"25/04/2026" is not a date with the month first: expected 2026-03-14 or 14.03.2026',
    )
  })

  it('are read in every other way that can mean one day only', () => {
    const written = [
      '2026-3-4',
      '2026/03/05',
      '6.3.2026',
      '7 March 2026',
      '"Mar 8, 2026"',
      '2026-03-09 00:00:00',
    ]
    expect(days(wide(null, ...written))).toEqual([4, 5, 6, 7, 8, 9].map((day) => `2026-03-0${day}`))
  })
})

describe('a number of a table', () => {
  it.each([
    ['3.5', 'in', '3.5 in', 88.9],
    ['3 5/8', 'in', '3 5/8 in', 92.075],
    ['3⅝"', '', '3 5/8 in', 92.075],
    ['98,5', 'mm', '98.5 mm', 98.5],
    ['9.8 cm', 'mm', '9.8 cm', 98],
    ['98', '', '98 mm', 98],
    ['98 and 97', 'mm', '98 mm and 97 mm', 97.5],
    ['9.8 and 9.7 cm', '', '9.8 cm and 9.7 cm', 97.5],
  ])('%j with the unit %j is written as %j', (value, unit, written, mm) => {
    const table = readTable(
      `horse,date,foot,measure,value,unit\njuno,2026-03-14,LF,toe length,"${value.replaceAll('"', '""')}","${unit}"\n`,
      'mm',
    )
    expect(table.remarks).toEqual([])
    expect(table.readings.map((reading) => [reading.written, reading.value])).toEqual([[written, mm]])
    const text = `---\nbefore:\n  toe length: {LF: ${written}}\n---\n`
    const files = { 'practice.md': '---\npractice: P\n---\n', 'juno/horse.md': '---\nname: Juno\n---\n' }
    const { casebook } = readCasebook(memoryFolder({ ...files, 'juno/2026-03-14.md': text }), '2026-06-01')
    expect(casebook?.horses[0]?.visits[0]?.readings[0]?.value).toBe(mm)
  })

  it('is in the unit of the practice where nothing names one', () => {
    expect(
      told(readTable('horse,date,LF toe length,LF toe angle\njuno,2026-03-14,3 5/8,44°\n', 'in')),
    ).toEqual(['LF toe-length before 3 5/8 in', 'LF toe-angle before 44'])
  })
})
