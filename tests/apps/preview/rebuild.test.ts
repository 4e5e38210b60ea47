/** The warm builder of the preview, with the real pages. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
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
    writeFileSync(join(folder, 'cases/juno/2026-05-01.md'), '---\ntoe angle: 440\n---\n')
    const { problems } = await builder.build([])
    expect(problems.map(({ place }) => place)).toContain('juno/2026-05-01.md:2')
    rmSync(join(folder, 'cases'), { recursive: true })
    expect((await builder.build([join(folder, 'cases')])).problems).toEqual([
      { place: 'build', text: `${join(folder, 'cases')} could not be read: it is not there` },
    ])
  })
})
