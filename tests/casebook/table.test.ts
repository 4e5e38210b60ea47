import { describe, expect, it } from 'vitest'
import { horseId, readTable } from '../../src/casebook/table.ts'

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
      ['RF', 'toe-length', 3.625 * 25.4],
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
      '5: "long" is not a number: expected 98, 98.5 or 98,5',
      '6: "furlong" is not a unit of a length: expected mm, cm or in',
      '8: a second value for the same reading: the one in line 7 is kept',
      '9: heel gap follows from other readings and is worked out again',
    ])
    expect(remarks.at(-1)?.kind).toBe('left out')
  })

  it('names the columns that a header lacks', () => {
    const { remarks } = readTable('horse,when\njuno,2026-03-14\n', 'mm')
    expect(remarks[0]?.message).toBe('the header lacks date, foot, measure, value: found "horse", "when"')
    expect(readTable('', 'mm').remarks[0]?.message).toContain('the table is empty')
  })

  it('takes a cell that was kept from running as a formula as what it says', () => {
    const { readings, remarks } = read(
      "'=Juno,2026-03-14,before,LF,heel medial,'-3.5,mm",
      '"\'\tNell",2026-03-14,before,LF,heel medial,-3.5,mm',
      "'Quoted' name,2026-03-14,before,LF,heel medial,3,mm",
    )
    expect(remarks).toEqual([])
    expect(readings.map(({ horseName, value }) => [horseName, value])).toEqual([
      ['=Juno', -3.5],
      ['Nell', -3.5],
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
