import { describe, expect, it } from 'vitest'
import { measureNamed, spellingsOf } from '../../src/casebook/measure-names.ts'
import { readTable } from '../../src/casebook/table.ts'
import { derivedIds, derivedMeasures, measureIds, measures } from '../../src/hoof/measures.ts'
import { readVisitBlock } from './read-one.ts'

describe('names of measures', () => {
  it.each([...measureIds, ...derivedIds])(
    '%s is read by its id, by its words and by its plain name',
    (id) => {
      const { name } = { ...measures, ...derivedMeasures }[id]
      for (const written of [id, id.replaceAll('-', ' '), id.toUpperCase(), name, name.replaceAll(' ', '-')])
        expect(measureNamed(written), written).toBe(id)
    },
  )

  it('are never those of two measures', () => {
    const spellings = [...measureIds, ...derivedIds].flatMap((id) => spellingsOf([id]))
    expect(new Set(spellings).size).toBe(spellings.length)
  })

  it('that nothing is called are no measure', () => {
    expect(measureNamed('groove')).toBeNull()
    expect(measureNamed('constructor')).toBeNull()
  })

  it('may be old and new in one file, and name one measure twice in no other case', () => {
    const read = readVisitBlock('before:\n  groove apex: {LF: 9}\n  new growth angle: {LF: 52}')
    expect(read.diagnostics).toEqual([])
    expect(read.visit?.readings.map(({ measure }) => measure)).toEqual(['groove-apex', 'new-angle'])
    const twice = readVisitBlock('before:\n  groove apex: {LF: 9}\n  groove depth at frog tip: {LF: 8}')
    expect(twice.diagnostics.map(({ code }) => code)).toEqual(['key-twice'])
  })

  it.each([
    ['groove depth at frog tp', 'groove depth at frog tip'],
    ['grove apex', 'groove apex'],
    ['new growth lenght', 'new growth length'],
    ['new lenght', 'new length'],
  ])('%s was meant to be %s', (written, meant) => {
    const { diagnostics } = readVisitBlock(`before:\n  ${written}: {LF: 20}`)
    expect(diagnostics).toMatchObject([{ code: 'measure-unknown', fix: meant }])
  })

  it('are read in a table too', () => {
    const table = readTable(
      'horse,date,foot,measure,value\njuno,2026-03-14,LF,Groove depth at frog tip,9\njuno,2026-03-14,LF,left-right angle difference,3\n',
      'mm',
    )
    expect(table.readings).toMatchObject([{ measure: 'groove-apex', value: 9 }])
    expect(table.remarks.map(({ message }) => message)).toEqual([
      'left right angle difference follows from other readings and is worked out again',
    ])
  })
})
