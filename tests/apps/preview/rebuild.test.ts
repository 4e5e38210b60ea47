/** The warm builder of the preview, with the real pages. */
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openRebuilder, type Rebuilder } from '../../../src/apps/preview/rebuild.ts'

describe('the builder of the preview', () => {
  let folder: string
  let builder: Rebuilder
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
    cpSync(resolve('tests/casebooks/good-plain'), join(folder, 'cases'), { recursive: true })
    builder = openRebuilder({
      casebook: join(folder, 'cases'),
      site: join(folder, 'site'),
      threads: 1,
      today: () => '2026-06-01',
      now: () => Date.now(),
      signal: new AbortController().signal,
    })
  })
  afterEach(() => {
    builder.close()
    rmSync(folder, { recursive: true })
  })

  const juno = () => join(folder, 'cases/juno/horse.md')
  const save = (name: string) =>
    writeFileSync(juno(), readFileSync(juno(), 'utf8').replace(/^name: .*/m, `name: ${name}`))
  const page = () => readFileSync(join(folder, 'site/practice/juno/index.html'), 'utf8')

  it('shows a saved file that it is told of, and finds one that it is not told of', async () => {
    expect(await builder.build([])).toMatchObject({ problems: [], changed: true })
    await builder.warmUp()
    save('Damson')
    expect(await builder.build([juno()])).toMatchObject({ problems: [], changed: true })
    expect(page()).toContain('Damson')

    const found = vi.fn()
    builder.keepChecking(found)
    save('Elderberry')
    await vi.waitFor(() => expect(found).toHaveBeenCalled(), { timeout: 20_000 })
    expect(await builder.build([join(folder, 'cases')])).toMatchObject({ problems: [], changed: true })
    expect(page()).toContain('Elderberry')
    expect(await builder.build([])).toMatchObject({ problems: [], changed: false })
  })

  it('tells problems, and the reason when nothing can be built', async () => {
    writeFileSync(join(folder, 'cases/juno/2026-05-01.md'), '---\nbefore:\n  toe angel: 44\n---\n')
    appendFileSync(join(folder, 'cases/juno/2026-02-16.md'), '\n## For the owners\n')
    const { problems } = await builder.build([])
    expect(problems).toEqual([
      {
        level: 'error',
        place: 'juno/2026-05-01.md:3:3',
        message: '"toe angel" is not a measure.',
        expected: 'a measure of the page Measures and sources, such as toe length or heel medial',
        fix: null,
        advice: null,
      },
      {
        level: 'warning',
        place: 'juno/2026-02-16.md:42:1',
        message: 'The heading "for the owners" opens no section for others, so what follows stays private.',
        expected: '## For the owner',
        fix: '## For the owner',
        advice: null,
      },
    ])
    rmSync(join(folder, 'cases'), { recursive: true })
    expect((await builder.build([join(folder, 'cases')])).problems).toEqual([
      {
        level: 'error',
        place: 'build',
        message: `${join(folder, 'cases')} could not be read: it is not there`,
        expected: null,
        fix: null,
        advice: null,
      },
    ])
  })
})
