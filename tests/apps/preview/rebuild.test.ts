/** The warm builder of the preview, with the real pages. */
import { appendFileSync, cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openRebuilder, type Rebuilder, type Rebuilding } from '../../../src/apps/preview/rebuild.ts'
import { contents } from '../../build/kit.ts'
import { eventually } from './eventually.ts'

/** Of all that lies in a site. */
const practicePages = (site: Record<string, string>) =>
  Object.fromEntries(Object.entries(site).filter(([path]) => path.startsWith('practice/')))

describe('the builder of the preview', () => {
  let folder: string
  let builder: Rebuilder
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
    cpSync(resolve('tests/casebooks/good-plain'), join(folder, 'cases'), { recursive: true })
    builder = openRebuilder(usual())
  })
  afterEach(() => {
    builder.close()
    rmSync(folder, { recursive: true })
  })

  const usual = (): Rebuilding => ({
    casebook: join(folder, 'cases'),
    site: join(folder, 'site'),
    threads: 1,
    today: () => '2026-06-01',
    now: () => Date.now(),
    signal: new AbortController().signal,
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
    await eventually(() => expect(found).toHaveBeenCalled())
    expect(await builder.build([join(folder, 'cases')])).toMatchObject({ problems: [], changed: true })
    expect(page()).toContain('Elderberry')
    expect(await builder.build([])).toMatchObject({ problems: [], changed: false })
  })

  const visit = () => join(folder, 'cases/juno/2026-02-16.md')
  const dock = () => join(folder, 'cases/dock')
  const practiceFile = () => join(folder, 'cases/practice.md')
  const rename = () =>
    writeFileSync(
      practiceFile(),
      readFileSync(practiceFile(), 'utf8').replace(/^practice: .*/m, 'practice: Sedge'),
    )

  it('shows what a build from nothing gives, as soon as it says so, whatever changed', async () => {
    const changes: readonly (readonly [what: string, change: () => void, path: string])[] = [
      ['nothing', () => {}, juno()],
      ['a visit', () => appendFileSync(visit(), '\nOne more line.\n'), visit()],
      ['a horse came', () => cpSync(join(folder, 'cases/juno'), dock(), { recursive: true }), dock()],
      ['a name', () => save('Damson'), juno()],
      ['the practice', rename, practiceFile()],
      ['a visit went', () => rmSync(visit()), visit()],
      ['a horse went', () => rmSync(dock(), { recursive: true }), dock()],
      ['a horse holds an error', () => save('[Damson'), juno()],
      ['it is mended', () => save('Elderberry'), juno()],
    ]
    let wanted: Record<string, string> = {}
    for (const [what, change, path] of changes) {
      change()
      await builder.build([path])
      // A horse with an error keeps its last pages, which a build from nothing has not got.
      if (what === 'a horse holds an error') continue
      wanted = await fresh()
      expect(practicePages(contents(join(folder, 'site'))), what).toEqual(practicePages(wanted))
      const { has } = builder.served()
      expect(Object.keys(wanted).filter((made) => has(made.replace(/^practice\//, '')))).toEqual(
        Object.keys(practicePages(wanted)),
      )
      expect(has('dock/index.html'), what).toBe(existsSync(dock()))
    }
    builder.close()
    expect(contents(join(folder, 'site'))).toEqual(wanted)
  })

  it('shows what was saved while it was building', async () => {
    await builder.build([])
    appendFileSync(visit(), '\nSaved first.\n')
    const building = builder.build([visit()])
    appendFileSync(visit(), '\nSaved next.\n')
    await building
    save('Elderberry')
    await builder.build([visit(), juno()])
    expect(page()).toContain('Elderberry')
    expect(practicePages(contents(join(folder, 'site')))).toEqual(practicePages(await fresh()))
  })

  /** The site of the casebook as it is, made from nothing. */
  async function fresh(): Promise<Record<string, string>> {
    const root = join(folder, 'fresh')
    rmSync(root, { recursive: true, force: true })
    const other = openRebuilder({ ...usual(), site: join(root, 'site') })
    await other.build([])
    other.close()
    const made = contents(join(root, 'site'))
    const list = '.made.json'
    return { ...made, [list]: (made[list] ?? '').replace('../../cases', '../cases') }
  }

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
