/** The program as an editor meets it: a process, and JSON-RPC over its standard streams. */
import { cpSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { growdownProcess } from '../../commands/run.ts'
import type { Range } from './client.ts'
import { editor, folder, inEditor, lay, onDisk, openIn, visit } from './kit.ts'

inEditor()

interface Item {
  readonly label: string
  readonly detail?: string
  readonly sortText?: string
  readonly filterText?: string
  readonly textEdit: { readonly range: Range; readonly newText: string }
}

/** A text with its cursor at the bar. */
function cursorIn(marked: string) {
  const [before = '', after = ''] = marked.split('|')
  const lines = before.split('\n')
  return {
    text: before + after,
    position: { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 },
  }
}
async function ask<T>(method: string, path: string, marked: string): Promise<T> {
  const { text, position } = cursorIn(marked)
  editor.open(path, text)
  return editor.request<T>(`textDocument/${method}`, { textDocument: { uri: editor.uri(path) }, position })
}
const complete = (path: string, marked: string) => ask<readonly Item[]>('completion', path, marked)
const labels = (items: readonly Item[]) => items.map(({ label }) => label)
const inOrder = (items: readonly Item[]) =>
  items.toSorted((a, b) => (a.sortText ?? '').localeCompare(b.sortText ?? '')).map(({ label }) => label)
const hover = async (path: string, marked: string) =>
  (await ask<{ contents: { value: string } } | null>('hover', path, marked))?.contents.value ?? null

describe('completion', () => {
  it('offers the keys that are not there yet', async () => {
    await lay('good-plain')
    const items = await complete(visit, '---\ndate: 2026-03-23\nbe|\n---\n')
    expect(labels(items)).toContain('before')
    expect(labels(items)).toContain('grow-out')
    expect(labels(items)).not.toContain('date')
    const before = items.find(({ label }) => label === 'before')
    expect(before?.detail).toBe('readings on arrival, before any trimming')
    expect(before?.textEdit.newText).toBe('before:\n  $0')
    expect(before?.textEdit.range.start).toEqual({ line: 2, character: 0 })
  })

  it('offers measures, with a place for each foot', async () => {
    await lay('good-plain')
    const items = await complete(visit, '---\nbefore:\n  toe length: [98, 96, 95, 96]\n  |\n---\n')
    expect(labels(items)).not.toContain('toe length')
    const angle = items.find(({ label }) => label === 'toe angle')
    expect(angle?.textEdit.newText).toBe('toe angle: [$1, $2, $3, $4]')
    expect(angle?.detail).toBe('front wall to the ground, the lower straight part')
  })

  it('offers units once a number is there', async () => {
    await lay('good-plain')
    expect(labels(await complete(visit, '---\nbefore:\n  toe length: [98, 3 5/8|, 95, 96]\n---\n'))).toEqual([
      '~',
      '3 5/8 mm',
      '3 5/8 cm',
      '3 5/8 in',
    ])
    expect(labels(await complete(visit, '---\nafter:\n  toe angle: {LF: 44|}\n---\n'))).toEqual([
      '~',
      '44 deg',
    ])
  })

  it('offers feet, findings, places and grades, what is open on the foot first', async () => {
    await lay('good-plain')
    expect(labels(await complete(visit, '---\nfindings:\n  LF:\n    - flare, toe, 1\n  |\n---\n'))).toEqual([
      'RF',
      'LH',
      'RH',
    ])
    const what = await complete(visit, '---\nfindings:\n  RH:\n    - |\n---\n')
    expect(inOrder(what)[0]).toBe('chalk toe')
    expect(labels(what)).toEqual(expect.arrayContaining(['thrush', 'white line stretched', 'separation']))
    expect(inOrder(await complete(visit, '---\nfindings:\n  RH:\n    - chalk toe, |\n---\n'))[0]).toBe('toe')
    expect(labels(await complete(visit, '---\nfindings:\n  RH: [chalk toe, toe, |]\n---\n'))).toEqual([
      '0',
      '1',
      '2',
      '3',
    ])
    expect(inOrder(await complete(visit, '---\nfindings:\n  RH: [chalk toe, |]\n---\n'))[0]).toBe('toe')
    expect(labels(await complete(visit, '---\nfindings:\n  RH:\n    - chalk toe, toe, |\n---\n'))).toEqual([
      '0',
      '1',
      '2',
      '3',
    ])
  })

  it('offers the words of scales, in lists, in braces and over a blank', async () => {
    await lay('good-plain')
    expect(labels(await complete(visit, '---\ncomfort:\n  landing: [heel, f|\n---\n'))).toContain('flat')
    expect(labels(await complete(visit, '---\ncomfort:\n  surfaces: {sand: |}\n---\n'))).toContain(
      'unwilling',
    )
    expect(labels(await complete(visit, '---\ncomfort:\n  lameness: {LF: 1, |}\n---\n'))).toEqual([
      'by',
      'RF',
      'LH',
      'RH',
    ])
    const blank = await complete(visit, '---\nstance: [_|, straight, straight, straight]\n---\n')
    expect(blank.find(({ label }) => label === 'toe-out')).toMatchObject({
      filterText: '_toe-out',
      textEdit: { newText: 'toe-out', range: { start: { character: 9 }, end: { character: 10 } } },
    })
  })

  it('offers owners, targets and pictures', async () => {
    await lay('good-plain')
    const owners = await complete('juno/horse.md', '---\nname: Juno\nowner: |\n---\n')
    expect(owners.map(({ label, detail }) => [label, detail])).toEqual([
      ['abel', 'Abel Moor'],
      ['ines', 'Ines Sand'],
    ])
    expect(labels(await complete('juno/horse.md', '---\nname: Juno\ntargets:\n  heel b|\n---\n'))).toContain(
      'heel balance',
    )
    expect(labels(await complete(visit, '---\nphotos:\n  - {file: |}\n---\n'))).toEqual([
      'photos/lf-side.jpg',
    ])
    expect(labels(await complete('practice.md', '---\npractice: P\nunits: |\n---\n'))).toEqual([
      'mm',
      'cm',
      'in',
    ])
  })

  it('offers a whole visit, horse or practice in an empty file, filled in from the last visit', async () => {
    await lay('good-plain')
    const [whole, ...others] = await complete(visit, '|')
    expect(others).toEqual([])
    expect(whole?.label).toBe('visit')
    expect(whole?.textEdit.newText).toMatch(/toe length: \[\$\{\d+:_\}, /)
    const text = (whole?.textEdit.newText ?? '')
      .replaceAll(/\$\{\d+:_\}/g, '_')
      .replaceAll(/\\([\\$}])/g, '$1')
    writeFileSync(join(folder, visit), text)
    expect(growdownProcess(folder, 'check', '--as-of', '2026-06-01').out).toMatch(/^0 problems/m)
    expect(labels(await complete('nova/horse.md', 'ho|'))).toEqual(['horse'])
    expect(labels(await complete('practice.md', '|'))).toEqual(['practice'])
  })

  it('offers the headings that open a section for others', async () => {
    await lay('good-plain')
    expect(labels(await complete(visit, '---\ndate: 2026-03-23\n---\nNotes.\n\n#|\n'))).toEqual([
      '## For the owner',
      '## For teaching',
    ])
  })

  it('gives plain text to an editor that knows no snippets', async () => {
    await lay('good-plain', {})
    const items = await complete(visit, '---\n|\n---\n')
    expect(items.find(({ label }) => label === 'before')?.textEdit.newText).toBe('before: ')
    expect((await complete(visit, '|'))[0]?.textEdit.newText).toContain('toe length: [_')
  })
})

describe('hover', () => {
  it('tells what a measure is, the last reading with its date, the smallest real change and the target', async () => {
    await lay('good-plain')
    const text = await hover(visit, '---\nbefore:\n  toe len|gth: [98, 96, 95, 96]\n---\n')
    expect(text).toContain('**toe length**: front wall at the midline, hairline to ground edge.')
    expect(text).toContain(
      'Scatter of one reading: 2.0 mm. A change matters from 5 mm on. Scatter: common practice, no source.',
    )
    expect(text).toMatch(
      /^- LF: last 93 mm on 16 February 2026, after the trim; smallest real change \d+\.\d mm; target up to 84 mm$/m,
    )
    expect(text).toMatch(/^- RH: last 90 mm/m)
    const cell = await hover(visit, '---\nbefore:\n  toe length: [98, 9|6, 95, 96]\n---\n')
    expect(cell).toContain('- RF: last 92 mm')
    expect(cell).not.toContain('- LF')
  })

  it('gives no target for a foot that waits for a vet', async () => {
    await lay('good-plain')
    const stopped = onDisk('juno/2026-02-16.md').replace('lameness: {LF: 1', 'lameness: {LF: 4')
    writeFileSync(join(folder, 'juno/2026-02-16.md'), stopped)
    const text = await hover(visit, '---\nbefore:\n  toe len|gth: [98, 96, 95, 96]\n---\n')
    expect(text).toMatch(/^- LF: .*; no target while a vet is waited for$/m)
    expect(text).not.toMatch(/^- LF: .*target up to/m)
  })

  it('tells what a finding, a scale and a key mean', async () => {
    await lay('good-plain')
    const finding = await hover(visit, '---\nfindings:\n  LF:\n    - fl|are, medial quarter, 1\n---\n')
    expect(finding).toContain('**flare**: the wall bends outward instead of running straight')
    expect(finding).toContain('- 16 February 2026: medial quarter, 2')
    expect(await hover(visit, '---\nfindings:\n  RH:\n    - chalk to|e, toe, 1\n---\n')).toContain(
      'crumbling horn in the white line at the toe',
    )
    expect(await hover(visit, '---\ncomfort:\n  digital pulse: [0, 1, 0, 3|]\n---\n')).toContain('bounding')
    expect(await hover(visit, '---\nclea|red: {LF: 2026-03-20}\n---\n')).toContain("the day is the vet's")
  })
})

describe('inlay hints', () => {
  const hints = async (path: string, text: string) => {
    editor.open(path, text)
    return editor.request<readonly { label: string; position: Range['start'] }[]>('textDocument/inlayHint', {
      textDocument: { uri: editor.uri(path) },
      range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } },
    })
  }

  it('show the last visit behind each row', async () => {
    await lay('good-plain')
    const text =
      '---\nbefore:\n  toe length: [98, 96, 95, 96]\n  width: [1\nfindings:\n  LF:\n    - flare, medial quarter, 1\ngrow-out:\n  LF: [nail holes, toe, 60 mm]\ncomfort:\n  landing: [heel, flat, heel, toe]\n---\n'
    const shown = await hints(visit, text)
    expect(shown.map(({ label, position }) => [position.line, label])).toEqual([
      [2, '16 Feb 26, after: LF 93 mm, RF 92 mm, LH 89 mm, RH 90 mm'],
      [6, '2 on 16 Feb 26'],
      [8, expect.stringMatching(/^50 mm on 16 Feb 26, about \d+(?:\.5)? mm by now$/)],
      [10, '16 Feb 26: LF heel, RF flat, LH heel, RH toe'],
    ])
    expect(shown[0]?.position.character).toBe('  toe length: [98, 96, 95, 96]'.length)
  })

  it('look back from the visit that is open, not from the newest', async () => {
    await lay('good-plain')
    const shown = await hints('juno/2026-02-16.md', onDisk('juno/2026-02-16.md'))
    expect(shown[0]?.label).toBe('12 Jan 26, after: LF 93 mm, RF 92 mm, LH 89 mm, RH 90 mm')
  })
})

describe('the rest', () => {
  it('lists the parts of a file', async () => {
    await lay('good-plain')
    editor.open(visit, onDisk('juno/2026-02-16.md'))
    const symbols = await editor.request<readonly { name: string; children?: readonly { name: string }[] }[]>(
      'textDocument/documentSymbol',
      { textDocument: { uri: editor.uri(visit) } },
    )
    expect(symbols.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['before', 'findings', 'For the owner']),
    )
    expect(symbols.find(({ name }) => name === 'before')?.children?.map(({ name }) => name)).toEqual([
      'toe length',
      'toe angle',
      'heel medial',
    ])
  })

  it('goes to the horse, to the owners and to a picture', async () => {
    await lay('good-plain')
    const goTo = async (path: string, marked: string) =>
      (await ask<{ uri: string } | null>('definition', path, marked))?.uri
    expect(await goTo(visit, '---\nda|te: 2026-03-23\n---\n')).toBe(editor.uri('juno/horse.md'))
    expect(await goTo('juno/horse.md', '---\nname: Juno\nowner: ab|el\n---\n')).toBe(
      editor.uri('practice.md'),
    )
    expect(await goTo(visit, '---\nphotos:\n  - {file: photos/lf|-side.jpg}\n---\n')).toBe(
      editor.uri('juno/photos/lf-side.jpg'),
    )
  })

  it('goes on where the casebook is gone, or comes back', async () => {
    await lay('good-plain')
    const text = '---\nbefore:\n  heel latral: [30, 31, 36, 32]\n---\n'
    editor.open(visit, text)
    await editor.told(visit, (told) => told.length === 1)
    rmSync(folder, { recursive: true })
    editor.change(visit, `${text}Notes.\n`)
    const at = { textDocument: { uri: editor.uri(visit) }, position: { line: 1, character: 2 } }
    expect(await editor.request('textDocument/hover', at)).toBeNull()
    cpSync(resolve('tests/casebooks/good-plain'), folder, { recursive: true })
    editor.change(visit, text.replace('latral', 'lateral'))
    expect(await editor.told(visit, (told) => told.length === 0)).toEqual([])
  })

  it('ends when the editor does', async () => {
    await lay('good-plain')
    expect(await editor.close()).toBe(0)
    await openIn(folder)
  })
})
