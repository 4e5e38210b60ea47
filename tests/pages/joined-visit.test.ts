/** Spoken notes and what a new visit asks for, in one file. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readCasebook } from '../../src/casebook/read.ts'
import { joined } from '../../src/pages/starter/joined.ts'
import { buildLexicon, draftVisit, type Known, understand } from '../../src/spoken/index.ts'
import { assess } from '../../src/trend/assess.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { formatIn } from '../english.ts'

const day = '2026-03-23'
const files = {
  'practice.md': '---\npractice: Sandpiper\nowners:\n  kestrel: {name: Ada Kestrel}\n---\n',
  'juno/horse.md': '---\nname: Juno\nowner: kestrel\nproblems: [RH heel balance, RF thrush]\n---\n',
  'juno/2026-02-16.md': `---
before:
  toe length: [98, 96, 92, 91]
findings:
  LF:
    - flare, medial quarter, 2
    - drainage, toe, 2
grow-out:
  LF:
    - nail holes, toe, 42 mm
    - "my: odd #mark, toe, 20 mm"
comfort:
  lameness: {LF: 2, by: vet}
  landing: [heel, flat, heel, toe]
  hoof testers: {LF: toe 2}
stance: [toe-out, straight, toe-out, toe-out]
---
`,
}
const lexicon = buildLexicon()

function visitFrom(notes: string) {
  const { casebook, diagnostics } = readCasebook(memoryFolder(files), day)
  const [juno] = casebook?.horses ?? []
  if (!casebook || !juno) throw new Error(JSON.stringify(diagnostics))
  const known: Known = {
    units: 'mm',
    feetOrder: casebook.practice.feetOrder,
    date: day,
    openFindings: juno.visits.flatMap(({ findings }) => findings),
    features: juno.visits.flatMap(({ growOut }) => growOut),
  }
  const assessment = assess(juno, casebook.practice, day)
  const heard = understand(notes, known, lexicon)
  const { understood, asked } = joined(
    heard,
    juno,
    juno.visits,
    assessment,
    casebook.practice,
    formatIn('mm'),
  )
  const text = draftVisit(understood, known, asked)
  const read = readCasebook(memoryFolder({ ...files, [`juno/${day}.md`]: text }), day)
  return { text, told: read.diagnostics, visit: read.casebook?.horses[0]?.visits.at(-1) }
}

const errorsIn = (told: ReturnType<typeof visitFrom>['told']) => told.filter(({ level }) => level === 'error')

describe('a new visit from spoken notes', () => {
  it('says what was said and asks for the rest, each once', () => {
    const { text, told, visit } = visitFrom(
      'Left fore before the trim, toe length ninety-eight. Flare at the medial quarter, mild now. All four landing flat. Nail holes at the left fore toe, fifty eight millimetres down.',
    )
    expect(errorsIn(told)).toEqual([])
    expect(text).toContain('  toe length: [98, _, _, _]\n')
    expect(text).toContain('  heel medial: {RH: _}\n')
    expect(text).toContain('    - flare, medial quarter, 1\n')
    expect(text).toMatch(/ {4}# say whether it is gone; 2 on 16 Feb 26\n {4}- drainage, toe, _\n/)
    expect(text).toContain('  RF:\n    - thrush, _, _\n')
    expect(text).toContain('    - nail holes, toe, 58')
    expect(text).toContain('    - "my: odd #mark, toe, _"\n')
    expect(text).toMatch(/^ {2}landing: \[flat, flat, flat, flat\]$/m)
    expect(text).toMatch(/^ {2}lameness: \{LF: _, by: _\} +# last: LF 2$/m)
    expect(text).toMatch(/^ {2}hoof testers: \{LF: _\} +# last: LF toe 2$/m)
    expect(text).toMatch(/^cleared: \{LF: _\} /m)
    expect(text).toMatch(/^next visit: in 5 weeks$/m)
    expect(text.match(/landing:|flare,|drainage,|nail holes,/g)).toHaveLength(4)
    expect(visit?.readings).toEqual([{ stage: 'before', foot: 'LF', measure: 'toe-length', value: 98 }])
  })

  it('asks for everything where nothing was said', () => {
    const { text, told } = visitFrom('')
    expect(errorsIn(told)).toEqual([])
    expect(text).toMatch(/^ {2}toe length: \[_, _, _, _\] +# 16 Feb 26, before: LF 98 mm/m)
    expect(text).toMatch(/^care: _ /m)
  })

  it('passes check but for what it asks, whatever is said', () => {
    const words =
      'left right fore hind all four before after toe length angle heel medial ninety eight forty two and a half flare thrush drainage mild bad gone no not lame two landing heel flat pulse bounding nail holes down millimetres tell Ada to see her in six weeks weight five hundred . , ?'.split(
        ' ',
      )
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words), { maxLength: 60 }), (said) => {
        expect(errorsIn(visitFrom(said.join(' ')).told)).toEqual([])
      }),
      { numRuns: 150 },
    )
  })
})
