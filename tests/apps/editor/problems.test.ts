/** Problems as an editor is told of them, beside what `growdown check` says. */
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { check } from '../../../src/commands/check.ts'
import type { Range } from './client.ts'
import { editor, folder, inEditor, lay, onDisk, openIn, visit } from './kit.ts'

inEditor()

/** What `growdown check` of a folder writes. */
async function checked(cwd: string): Promise<string> {
  let said = ''
  const stdout = {
    write: (text: string) => {
      said += text
    },
    isTerminal: false,
  }
  await check.run(
    [undefined],
    new Map([
      ['format', 'json'],
      ['as-of', '2026-06-01'],
    ]),
    {
      cwd,
      stdout,
      stderr: { write: () => {}, isTerminal: false },
      keys: async function* () {},
      today: () => '2026-06-01',
      now: Date.now,
      signal: new AbortController().signal,
    },
  )
  return said
}

/** The text with an editor's edits made, last ones first. */
function applied(
  text: string,
  edits: readonly { readonly range: Range; readonly newText: string }[],
): string {
  const lines = text.split('\n')
  const offset = ({ line, character }: Range['start']) =>
    lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, 0) + character
  return edits
    .toSorted((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (now, { range, newText }) => now.slice(0, offset(range.start)) + newText + now.slice(offset(range.end)),
      text,
    )
}

describe('problems', () => {
  it('are told with each change of what is not saved, in the context of the whole casebook', async () => {
    await lay('good-plain')
    editor.open(visit, '---\nbefore:\n  toe length: [98, 96, 95, 96]\n---\n')
    editor.change(visit, 'toe angle: [44, 45, 48, 83]\n', {
      start: { line: 2, character: 2 },
      end: { line: 3, character: 0 },
    })
    const [jump] = await editor.told(visit, (told) => told.length > 0)
    expect(jump?.message).toContain('83')
    expect(jump?.range).toEqual({ start: { line: 2, character: 26 }, end: { line: 2, character: 28 } })
    editor.change(visit, '---\nbefore:\n  toe angle: [44, 45, 48, 47]\n---\n')
    expect(await editor.told(visit, (told) => told.length === 0)).toEqual([])
  })

  it('stand where what is written in practice.md no longer fits the horses', async () => {
    await lay('good-plain')
    const text = onDisk('practice.md')
    editor.open('practice.md', text)
    editor.change('practice.md', text.replace('abel:', 'abol:'))
    const told = await editor.told('juno/horse.md', (problems) =>
      problems.some(({ code }) => code === 'owner-unknown'),
    )
    expect(told[0]?.message).toContain('"abel" is no owner in practice.md.')
    editor.change('practice.md', text)
    expect(await editor.told('juno/horse.md', (problems) => problems.length === 0)).toEqual([])
  })

  it('are those of check, file by file', async () => {
    const isCasebook = (name: string) => readdirSync(join('tests/casebooks', name)).includes('practice.md')
    for (const casebook of readdirSync('tests/casebooks').filter(isCasebook)) {
      const place = join(folder, casebook)
      cpSync(resolve('tests/casebooks', casebook), place, { recursive: true })
      await openIn(place)
      const all: readonly { file: string; code: string; line: number | null }[] = JSON.parse(
        await checked(place),
      ).diagnostics
      editor.open('practice.md', readFileSync(join(place, 'practice.md'), 'utf8'))
      for (const file of new Set(all.map((one) => one.file))) {
        const expected = all.filter((one) => one.file === file)
        const told = await editor.told(file, (problems) => problems.length === expected.length)
        expect(
          told.map(({ code, range }) => [code, range.start.line]),
          `${casebook} ${file}`,
        ).toEqual(expected.map(({ code, line }) => [code, (line ?? 1) - 1]))
      }
      await editor.close()
    }
    await openIn(folder)
  }, 90_000)

  it('come with the likely fix, which an editor can apply', async () => {
    await lay('good-plain')
    const text = '---\nbefore:\n  heel latral: [30, 31, 36, 32]\n---\n'
    editor.open(visit, text)
    const [wrong] = await editor.told(visit, (told) => told.length > 0)
    expect(wrong?.message).toContain('"heel latral" is not a measure.')
    const actions = await editor.request<
      readonly {
        title: string
        kind: string
        edit: { changes: Record<string, { range: Range; newText: string }[]> }
      }[]
    >('textDocument/codeAction', {
      textDocument: { uri: editor.uri(visit) },
      range: { start: { line: 2, character: 20 }, end: { line: 2, character: 20 } },
      context: { diagnostics: [] },
    })
    expect(actions.map(({ title, kind }) => [title, kind])).toEqual([
      ['Likely fix: heel lateral', 'quickfix'],
    ])
    const mended = applied(text, actions[0]?.edit.changes[editor.uri(visit)] ?? [])
    expect(mended).toContain('  heel lateral: [30, 31, 36, 32]')
    editor.change(visit, mended)
    expect(await editor.told(visit, (told) => told.length === 0)).toEqual([])
  })

  it('of a name of a file come with the name it should have', async () => {
    await lay('good-plain')
    writeFileSync(join(folder, 'juno/2026-3-23.md'), '---\nfooting: soft\n---\n')
    editor.open('juno/2026-3-23.md', '---\nfooting: soft\n---\n')
    await editor.told('juno/2026-3-23.md', (told) => told.length > 0)
    const actions = await editor.request<
      readonly { title: string; edit: { documentChanges: readonly object[] } }[]
    >('textDocument/codeAction', {
      textDocument: { uri: editor.uri('juno/2026-3-23.md') },
      range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
      context: { diagnostics: [] },
    })
    expect(actions[0]?.title).toBe('Rename it to juno/2026-03-23.md')
    expect(actions[0]?.edit.documentChanges).toEqual([
      { kind: 'rename', oldUri: editor.uri('juno/2026-3-23.md'), newUri: editor.uri('juno/2026-03-23.md') },
    ])
  })

  it('are not told of Markdown that lies in no casebook', async () => {
    await openIn(folder)
    writeFileSync(join(folder, 'notes.md'), '---\nbefore: x\n---\n')
    editor.open('notes.md', '---\nbefore: x\n---\n')
    const at = { textDocument: { uri: editor.uri('notes.md') }, position: { line: 1, character: 2 } }
    expect(await editor.request('textDocument/hover', at)).toBeNull()
    expect(await editor.request('textDocument/completion', at)).toBeNull()
    await expect(Promise.race([editor.told('notes.md'), Promise.resolve('nothing')])).resolves.toBe('nothing')
  })
})
