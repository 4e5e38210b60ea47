/** At every place of a file that is half written, broken or long, an editor is answered and the program lives. */
import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { completionsAt } from '../../../src/apps/editor/completion.ts'
import { definitionAt } from '../../../src/apps/editor/definition.ts'
import { hintsIn } from '../../../src/apps/editor/hints.ts'
import { hoverAt } from '../../../src/apps/editor/hover.ts'
import { liveCasebook } from '../../../src/apps/editor/live-casebook.ts'
import { outlineOf, pathOf } from '../../../src/apps/editor/outline.ts'
import { placeAt } from '../../../src/apps/editor/place.ts'
import { symbolsOf } from '../../../src/apps/editor/symbols.ts'
import { keepNumbers, writtenFile } from '../../../src/apps/editor/written-file.ts'
import { mutated, randomFrom } from '../../casebook/mutate.ts'

const root = 'tests/casebooks/good-plain'
const today = '2026-06-01'
const whole = readFileSync(`${root}/juno/2026-02-16.md`, 'utf8')
const numbers = keepNumbers()
const casebook = liveCasebook(root, () => today)
const written = (text: string) => writtenFile(casebook, 'juno/2026-03-23.md', text, today, numbers)

/** All that an editor may ask at one place. */
function askAll(text: string, line: number, character: number) {
  const file = written(text)
  const position = { line, character }
  for (const item of completionsAt(file, position, true)) {
    const range = item.textEdit && 'range' in item.textEdit ? item.textEdit.range : null
    expect(range?.start.character).toBeLessThanOrEqual(character)
  }
  hoverAt(file, position)
  definitionAt(file, position, (path) => path)
}

describe('every answer', () => {
  beforeAll(() => void casebook.horse('juno'))

  it('comes at each place of a text that ends there', () => {
    for (let end = 0; end <= whole.length; end += 3) {
      const text = whole.slice(0, end)
      const lines = text.split('\n')
      askAll(text, lines.length - 1, lines.at(-1)?.length ?? 0)
    }
  })

  it('comes for files with something done to them', () => {
    const random = randomFrom(7)
    for (let round = 0; round < 150; round++) {
      const text = new TextDecoder().decode(mutated(new TextEncoder().encode(whole), random))
      const lines = text.split(/\r\n|\r|\n/)
      const line = Math.floor(random() * lines.length)
      askAll(text, line, Math.floor(random() * ((lines[line] ?? '').length + 1)))
      const file = written(text)
      hintsIn(file, { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } })
      for (const { range, selectionRange } of symbolsOf(file.outline)) {
        expect(selectionRange.start.line).toBeGreaterThanOrEqual(range.start.line)
        expect(selectionRange.end.line).toBeLessThanOrEqual(range.end.line)
      }
    }
  })

  it('comes soon for a line of ten thousand brackets', () => {
    const text = `---\nbefore: ${'[{'.repeat(5000)}\n---\n`
    askAll(text, 1, 9000)
  })
})

describe('the place of a cursor', () => {
  const at = (marked: string) => {
    const before = marked.split('|')[0] ?? ''
    const lines = before.split('\n')
    const place = placeAt(outlineOf(marked.replace('|', '')), lines.length - 1, lines.at(-1)?.length ?? 0)
    return place && [place.role, ...place.path]
  }

  it.each([
    ['---\n|\n---\n', ['key']],
    ['---\nbefore:\n  |\n---\n', ['key', 'before']],
    ['---\nbefore:\n  toe length: [9|\n---\n', ['value', 'before', 'toe length', 0]],
    ['---\nbefore:\n  toe length: [98, 97, |]\n---\n', ['value', 'before', 'toe length', 2]],
    ['---\nbefore:\n  heel medial: {LH: 30, R|}\n---\n', ['key', 'before', 'heel medial']],
    ['---\nbefore:\n  heel medial: {LH: 30,\n    RH: 3|}\n---\n', ['value', 'before', 'heel medial', 'RH']],
    ['---\nbefore:\n  width: [1\nafter:\n  |\n---\n', ['key', 'after']],
    ['---\nfindings:\n  LF:\n  - flare, |\n---\n', ['value', 'findings', 'LF', 0]],
    ['---\nfindings:\n  LF:\n    - flare, toe, 2\n|\n---\n', ['key']],
    ['---\nphotos:\n  - {file: a.jpg, foot: |}\n---\n', ['value', 'photos', 0, 'foot']],
    ['---\nphotos:\n  - file: a.jpg\n    foot: |\n---\n', ['value', 'photos', 0, 'foot']],
    ['---\nfooting: "a: b, |c"\n---\n', ['value', 'footing']],
    ['---\ncare:\n  - Pick out # dai|ly\n---\n', null],
    ['---\ndate: 2026-03-23\n---\nNo|tes\n', null],
  ])('%j', (marked, expected) => {
    expect(at(marked)).toEqual(expected)
  })

  it('is told from rows that know what they stand under', () => {
    const { rows } = outlineOf(whole)
    expect(rows.map(pathOf)).toContainEqual(['findings', 'LF', 0])
    expect(rows.map(pathOf)).toContainEqual(['before', 'heel medial'])
  })
})
