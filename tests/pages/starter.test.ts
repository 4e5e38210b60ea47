import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { withoutControls } from '../../src/casebook/control-characters.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { readTable } from '../../src/casebook/table.ts'
import { csvText } from '../../src/pages/shared/csv.ts'
import { startCasebook } from '../../src/pages/starter/casebook.ts'
import { startHorse } from '../../src/pages/starter/horse.ts'
import { importedFiles } from '../../src/pages/starter/imported.ts'
import { startVisit } from '../../src/pages/starter/visit.ts'
import { assess } from '../../src/trend/assess.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { english, formatIn } from '../english.ts'

const practice = '---\npractice: Sandpiper\nowners:\n  kestrel: {name: Ada Kestrel}\n---\n'
const horse = '---\nname: Juno\nowner: kestrel\nstarted: 2026-01-12\n---\n'
const lastVisit = `---
date: 2026-01-12
footing: soft
before:
  toe length: [98, 96, 92, 91]
  heel medial: {LH: 30, RH: 31}
after:
  toe length: [90, 89, 86, 85]
findings:
  LF:
    - flare, medial quarter, 2
grow-out:
  LF:
    - nail holes, toe, 42 mm
comfort:
  lameness: {LF: 1, by: vet}
  landing: [heel, flat, heel, toe]
  digital pulse: [0, 1, 0, 0]
  surfaces: {sand: easy}
body: {weight: 505 kg, condition: 6}
stance: [toe-out, straight, toe-out, toe-out]
care:
  - Pick out every day
next visit: in 5 weeks
---
`

const files = { 'practice.md': practice, 'juno/horse.md': horse, 'juno/2026-01-12.md': lastVisit }

function newVisit(more: Readonly<Record<string, string>> = {}): string {
  const { casebook } = readCasebook(memoryFolder({ ...files, ...more }), '2026-02-20')
  const juno = casebook?.horses[0]
  if (!casebook || !juno) throw new Error('the sample cannot be read')
  return startVisit(
    juno,
    assess(juno, casebook.practice, '2026-02-20'),
    casebook.practice,
    '2026-02-20',
    formatIn('mm'),
  )
}

describe('a new visit', () => {
  it('asks for what the last visit read, with what it read beside it', () => {
    const text = newVisit()
    expect(text).toContain('  toe length: [_, _, _, _]')
    expect(text).toContain('12 Jan 26, after: LF 90 mm, RF 89 mm, LH 86 mm, RH 85 mm')
    expect(text).toContain('  heel medial: {LH: _, RH: _}')
    expect(text).toContain('  LF: [flare, medial quarter, _]')
    expect(text).toContain('digital pulse: [_, _, _, _]')
    expect(text).toContain('lameness: {LF: _, by: _}')
  })

  it('asks who took the readings where more than one could have', () => {
    const withPeople = (people: string) =>
      newVisit({ 'practice.md': practice.replace('owners:', `people: ${people}\nowners:`) })
    expect(withPeople('[Ilse Brandt, Tom]')).toMatch(/^by: _ +# who took the readings: ilse-brandt, tom$/m)
    for (const text of [withPeople('[Ilse]'), newVisit()]) expect(text).not.toMatch(/^by:/m)
  })

  it('says where a followed feature should be by now', () => {
    // 42 mm in January and 39 days at the prior of 8.5 mm a month: about 53 mm.
    expect(newVisit()).toContain('42 mm on 12 Jan 26, about 53 mm by now')
  })

  it('has its unfilled places named, not called errors of form', () => {
    const { diagnostics } = readCasebook(
      memoryFolder({ ...files, 'juno/2026-02-20.md': newVisit() }),
      '2026-02-20',
    )
    const levels = new Set(diagnostics.map(({ level }) => level))
    expect([...levels]).toEqual(['gap'])
    expect(diagnostics.map(({ message }) => message).join(' ')).toContain('oe length')
    expect(diagnostics.length).toBeGreaterThan(8)
  })

  it('is clean once it is filled in', () => {
    const filled = newVisit()
      .replace('footing: _', 'footing: dry')
      .replace('toe length: [_, _, _, _]', 'toe length: [99, 98, 94, 93]')
      .replace('toe length: [_, _, _, _]', 'toe length: [91, 90, 87, 86]')
      .replace('{LH: _, RH: _}', '{LH: 32, RH: 33}')
      .replace('medial quarter, _', 'medial quarter, 1')
      .replace('toe, _', 'toe, 53')
      .replace('{LF: _, by: _}', '{LF: 0, by: vet}')
      .replace('landing: [_, _, _, _]', 'landing: [heel, heel, heel, flat]')
      .replace('digital pulse: [_, _, _, _]', 'digital pulse: [0, 0, 0, 0]')
      .replace('{sand: _}', '{sand: easy}')
      .replace('{weight: _, condition: _}', '{weight: 500 kg, condition: 5}')
      .replace('stance: [_, _, _, _]', 'stance: [toe-out, straight, straight, straight]')
      .replace('care: _', 'care: Pick out every day')
    const read = readCasebook(memoryFolder({ ...files, 'juno/2026-02-20.md': filled }), '2026-02-20')
    expect(read.diagnostics).toEqual([])
    expect(read.casebook?.horses[0]?.visits).toHaveLength(2)
  })
})

describe('a visit after one that found something dangerous', () => {
  const stop = lastVisit
    .replace('    - flare, medial quarter, 2', '    - flare, medial quarter, 2\n    - drainage, toe, 2')
    .replace('digital pulse: [0, 1, 0, 0]', 'digital pulse: [3, 1, 0, 0]')
  const silent = '---\ndate: 2026-02-16\nafter:\n  toe length: [90, 89, 86, 85]\n---\n'
  const folder = memoryFolder({ ...files, 'juno/2026-01-12.md': stop, 'juno/2026-02-16.md': silent })
  const { casebook } = readCasebook(folder, '2026-03-20')
  const juno = casebook?.horses[0]
  if (!casebook || !juno) throw new Error('no horse')
  const text = startVisit(
    juno,
    assess(juno, casebook.practice, '2026-03-20'),
    casebook.practice,
    '2026-03-20',
    formatIn('mm'),
  )

  it('asks about it first, whatever the visit between them left out', () => {
    expect(text.indexOf('- drainage, toe, _')).toBeGreaterThan(0)
    expect(text.indexOf('- drainage, toe, _')).toBeLessThan(text.indexOf('- flare, medial quarter, _'))
    expect(text).toMatch(/- drainage, toe, _ +# say whether it is gone; 2 on 12 Jan 26/)
    expect(text).toMatch(/digital pulse: \[_, _, _, _\] +# last: LF 3/)
    expect(text).toMatch(/cleared: \{LF: _\} +# only if a vet has cleared it/)
  })
})

describe('a new casebook and a new horse', () => {
  it('hold places to fill in and nothing wrong', () => {
    const made = Object.fromEntries(
      startCasebook('mm', english.starter).map(({ path, text }) => [path, text]),
    )
    const folder = memoryFolder({
      ...made,
      'juno/horse.md': startHorse('Juno', '2026-01-12', english.starter),
    })
    const { diagnostics } = readCasebook(folder, '2026-01-12')
    expect(diagnostics.filter(({ level }) => level === 'error')).toEqual([])
    expect(diagnostics.filter(({ level }) => level === 'gap').length).toBeGreaterThan(5)
  })
})

describe('an imported table', () => {
  it('gives case files that read back as the same readings', () => {
    const table =
      'horse,date,stage,foot,measure,value,unit\nOld Juno,2026-01-12,before,LF,toe length,92.075,mm\nOld Juno,2026-01-12,after,LF,toe angle,48.25,deg\n'
    const { readings } = readTable(table, 'mm')
    const made = Object.fromEntries(
      importedFiles(readings, english.starter).map(({ path, text }) => [path, text]),
    )
    expect(Object.keys(made)).toEqual(['old-juno/2026-01-12.md', 'old-juno/horse.md'])
    const { casebook } = readCasebook(memoryFolder({ 'practice.md': practice, ...made }), '2026-02-01')
    expect(casebook?.horses[0]?.name).toBe('Old Juno')
    expect(casebook?.horses[0]?.visits[0]?.readings).toEqual([
      { stage: 'before', foot: 'LF', measure: 'toe-length', value: 92.075 },
      { stage: 'after', foot: 'LF', measure: 'toe-angle', value: 48.25 },
    ])
  })
})

describe('the remarks of new files', () => {
  it('stand apart, so that no word filled in before them is taken for cut off', () => {
    const filled = (text: string) => text.replace(/\b_(?=\s|$|[,\]}])/gm, 'a word or two')
    const starterPractice =
      startCasebook('mm', english.starter).find(({ path }) => path === 'practice.md')?.text ?? ''
    const texts = {
      'practice.md': filled(starterPractice),
      'juno/horse.md': filled(startHorse(null, '2026-01-12', english.starter)),
      'juno/2026-01-12.md': lastVisit,
      'juno/2026-02-20.md': filled(newVisit()),
    }
    expect(
      Object.values(texts).filter((text) => text.includes('a word or two') && text.includes(' # ')),
    ).toHaveLength(3)
    const codes = readCasebook(memoryFolder(texts), '2026-06-01').diagnostics.map(({ code }) => code)
    expect(codes).toContain('value-form')
    expect(codes).not.toContain('words-cut')
  })
})

describe('hostile text in a file that the program starts', () => {
  const hostile = [
    'a\r\nowner: evil',
    'a\n---\nb',
    '---',
    '...',
    'x # y',
    'x: y',
    ': x',
    '- x',
    '? x',
    '"quoted" and \'single\'',
    "it's",
    'back\\slash \\n',
    '{a: b}',
    '[a, b]',
    '&a *b !c |d >e %f @g `h',
    'true',
    'Null',
    '~',
    '12',
    '1e5',
    '0x1f',
    '1_000',
    '2026-03-14',
    '=1+1',
    '<<',
    'a\u0085b',
    'a\u2028b',
    'esc\u001b[31m nul\u0000 del\u007f csi\u009b',
    '\u202eonuJ\u202c',
    '\u05d9\u05d5\u05e0\u05d5\u200f (12)',
    '\u0645\u06cc\u200c\u062e\u0648',
    'lone \ud800 surrogate',
    '\ufffe\ufeff',
    'é, ñ; ü',
    '{{name}} <b>&amp;</b>',
  ]
  /** A name stands on one line, with single spaces. */
  const oneLine = (text: string) => text.replace(/\s+/g, ' ').trim()
  const nameRead = (text: string) =>
    readCasebook(memoryFolder({ 'practice.md': practice, 'juno/horse.md': text }), '2026-03-14').casebook
      ?.horses[0]?.name

  it.each(hostile)('a name %j reads back', (name) => {
    const text = startHorse(name, '2026-01-12', english.starter)
    expect(nameRead(text)).toBe(oneLine(name))
    expect(text.split('\n')).toHaveLength(
      startHorse('Juno', '2026-01-12', english.starter).split('\n').length,
    )
  })

  it('any name reads back, and brings no line of its own', () => {
    const signs = fc.constantFrom(
      ...':#-?{}[],&*!|>\'"%@`\\ \n\r\t\u0000\u001b\u0085\u2028\u202eaZ09.é_~<='.split(''),
    )
    fc.assert(
      fc.property(fc.array(signs, { minLength: 1, maxLength: 12 }), (parts) => {
        const name = parts.join('')
        fc.pre(!['', '_', '?'].includes(oneLine(name)))
        expect(nameRead(startHorse(name, '2026-01-12', english.starter))).toBe(oneLine(name))
      }),
      { numRuns: 300 },
    )
  })

  // A table is UTF-8, which has no half of a surrogate pair.
  it.each(hostile.filter((name) => !name.includes('\ud800')))(
    'a table that names a horse %j becomes files that read alike',
    (name) => {
      const table = csvText(
        ['horse', 'date', 'stage', 'foot', 'measure', 'value', 'unit'],
        [[`${name} b`, '2026-01-12', 'before', 'LF', 'toe length', 98, 'mm']],
      )
      const { readings, remarks } = readTable(table, 'mm')
      expect(remarks).toEqual([])
      const made = Object.fromEntries(
        importedFiles(readings, english.starter).map(({ path, text }) => [path, text]),
      )
      expect(Object.keys(made)).toHaveLength(2)
      for (const path of Object.keys(made)) expect(path).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*\/[\w-]+\.md$/)
      const { casebook } = readCasebook(memoryFolder({ 'practice.md': practice, ...made }), '2026-03-14')
      expect(casebook?.horses[0]?.name).toBe(oneLine(withoutControls(`${name} b`)))
      expect(casebook?.horses[0]?.visits[0]?.readings[0]?.value).toBe(98)
    },
  )

  it.each(hostile)('a finding, a feature and a footing called %j are asked about again', (name) => {
    const own = `my ${oneLine(name.replaceAll(',', ' '))}`
    const [word, line] = [own, `${own}, toe, `].map((text) => JSON.stringify(text).slice(0, -1))
    const given = {
      'practice.md': `---\npractice: Sandpiper\nterms: {${word}": a word of ours}\n---\n`,
      'juno/horse.md': '---\nname: Juno\nstarted: 2026-01-12\n---\n',
      'juno/2026-01-12.md': `---\nfooting: ${word}"\nfindings: {LF: [${line}2"]}\ngrow-out: {LF: [${line}42 mm"]}\n---\n`,
    }
    const { casebook } = readCasebook(memoryFolder(given), '2026-02-20')
    const juno = casebook?.horses[0]
    if (!casebook || !juno) throw new Error('the sample cannot be read')
    const text = startVisit(
      juno,
      assess(juno, casebook.practice, '2026-02-20'),
      casebook.practice,
      '2026-02-20',
      formatIn('mm'),
    )
    const filled = text.replace(/toe, _(.*)\n/, 'toe, 1$1\n').replace(/toe, _(.*)\n/, 'toe, 50$1\n')
    const read = readCasebook(memoryFolder({ ...given, 'juno/2026-02-20.md': filled }), '2026-02-20')
    expect(read.diagnostics.filter(({ level }) => level === 'error')).toEqual([])
    const [before, after] = read.casebook?.horses[0]?.visits ?? []
    expect(after?.findings[0]).toMatchObject({ what: before?.findings[0]?.what, grade: 1 })
    expect(after?.growOut[0]).toMatchObject({ what: before?.growOut[0]?.what, distance: 50 })
  })
})
