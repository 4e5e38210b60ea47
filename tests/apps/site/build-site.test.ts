import { readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import {
  build,
  contents,
  horseText,
  lasting,
  type Place,
  place,
  plainEdition,
  plainWith,
  threeHorses,
  times,
  visitText,
} from '../../build/kit.ts'

let at: Place
beforeEach(() => {
  at = place(threeHorses)
})
afterEach(() => at.done())

/** Paths whose file is another than before. */
const rewritten = (before: Record<string, number>, after: Record<string, number>) =>
  Object.keys(after).filter((path) => before[path] !== after[path])

describe('a build', () => {
  it('makes every page and lists each as its own', async () => {
    const built = await build(at)
    const site = contents(at.site)
    expect(Object.keys(site)).toEqual([
      '.made.json',
      'practice/alder/2026-03-02.html',
      'practice/alder/2026-04-06.html',
      'practice/alder/index.html',
      'practice/assets/growdown.css',
      'practice/bramble/2026-03-02.html',
      'practice/bramble/2026-04-06.html',
      'practice/bramble/index.html',
      'practice/clover/2026-03-02.html',
      'practice/clover/2026-04-06.html',
      'practice/clover/index.html',
      'practice/index.html',
    ])
    const listed = Object.keys(JSON.parse(site['.made.json'] ?? '').files)
    expect(listed).toEqual(Object.keys(site).filter((path) => path !== '.made.json'))
    expect(built.published).toMatchObject({ written: 11, removed: 0, total: 11, left: [] })
    expect(built.horses).toEqual({ made: 3, unchanged: 0, broken: 0 })
  })

  it('writes nothing at all when nothing changed', async () => {
    await build(at)
    const before = lasting(at.root)
    const built = await build(at)
    expect(lasting(at.root)).toEqual(before)
    expect(built.published?.written).toBe(0)
    expect(built.horses).toEqual({ made: 0, unchanged: 3, broken: 0 })
  })

  it('makes only the horse whose visit changed, and the front page', async () => {
    await build(at)
    const before = times(at.site)
    at.write('bramble/2026-04-06.md', visitText('2026-04-06', 91))
    const built = await build(at)
    expect(rewritten(before, times(at.site))).toEqual([
      '.made.json',
      'practice/bramble/2026-04-06.html',
      'practice/bramble/index.html',
    ])
    expect(built.horses).toEqual({ made: 1, unchanged: 2, broken: 0 })
    at.write('bramble/2026-05-11.md', visitText('2026-05-11', 90))
    await build(at)
    expect(contents(at.site)['practice/index.html']).toContain('"lastVisit":"2026-05-11"')
  })

  it('looks at the content when only the time of a file changed', async () => {
    await build(at)
    const before = times(at.site)
    utimesSync(join(at.casebook, 'alder/horse.md'), new Date(), new Date())
    const built = await build(at)
    expect(built.horses.made).toBe(0)
    expect(times(at.site)).toEqual(before)
  })

  it('notices a change that left size and time as they were', async () => {
    const old = new Date('2026-01-01')
    const file = join(at.casebook, 'alder/horse.md')
    utimesSync(file, old, old)
    await build(at)
    writeFileSync(file, horseText('ALDER'))
    utimesSync(file, old, old)
    expect((await build(at)).horses.made).toBe(1)
  })

  it('does not trust the time of a file that was saved just before it was read', async () => {
    await build(at, { now: () => Date.now() })
    const state = join(at.root, '.growdown/site/state.json')
    const before = readFileSync(state, 'utf8')
    await build(at, { now: () => Date.now() + 10_000 })
    expect(readFileSync(state, 'utf8')).not.toBe(before)
  })

  it('makes a page again that was deleted', async () => {
    await build(at)
    const before = contents(at.site)
    rmSync(join(at.site, 'practice/alder/index.html'))
    const built = await build(at)
    expect(contents(at.site)).toEqual(before)
    expect(built.published?.written).toBe(1)
  })

  it('needs no memory: with the work folder deleted it writes nothing that stands already', async () => {
    await build(at)
    const before = times(at.site)
    rmSync(join(at.root, '.growdown'), { recursive: true })
    const built = await build(at)
    expect(times(at.site)).toEqual(before)
    expect(built.horses.made).toBe(3)
  })

  it('forgets what a damaged memory says, and what another program remembered', async () => {
    await build(at)
    writeFileSync(join(at.root, '.growdown/site/state.json'), '{"program": "test"')
    expect((await build(at)).horses.made).toBe(3)
    expect((await build(at, { program: 'next version' })).horses.made).toBe(3)
  })

  it('makes all again on another day', async () => {
    await build(at)
    expect((await build(at, { asOf: '2026-06-02' })).horses.made).toBe(3)
  })

  it('keeps its work folder out of git', async () => {
    await build(at)
    expect(readFileSync(join(at.root, '.growdown/.gitignore'), 'utf8')).toBe('*\n')
  })

  it('makes a horse again whose file was saved while it was made', async () => {
    const editions = plainWith(async (horse, tools) => {
      const made = await plainEdition.ofHorse(horse, tools)
      if (horse.horse.id === 'alder') at.write('alder/horse.md', horseText('Alder the Second'))
      return made
    })
    at.write('alder/horse.md', horseText('Alder the First'))
    await build(at, { editions })
    expect((await build(at)).horses.made).toBe(1)
    at.write('alder/horse.md', horseText('Alder the First'))
    // Saved when all is surveyed and nothing is read yet.
    const report = ({ step }: { readonly step: string }) => {
      if (step === 'making') at.write('alder/horse.md', horseText('Alder the Second'))
    }
    await build(at, { report })
    expect((await build(at)).horses.made).toBe(1)
    const built = await build(at)
    expect(contents(at.site)['practice/alder/index.html']).toContain('Alder the Second')
    expect(built.diagnostics).toEqual([])
  })
})

describe('a horse that goes', () => {
  it('takes its pages with it and leaves what is not the tool’s', async () => {
    await build(at)
    writeFileSync(join(at.site, 'practice/clover/my-notes.txt'), 'mine')
    at.remove('bramble')
    at.remove('clover')
    const built = await build(at)
    const left = Object.keys(contents(at.site)).filter((path) => /bramble|clover/.test(path))
    expect(left).toEqual(['practice/clover/my-notes.txt'])
    expect(built.published?.removed).toBe(6)
    expect(readFileSync(join(at.root, '.growdown/site/state.json'), 'utf8')).not.toContain('bramble')
  })
})

describe('a horse with errors', () => {
  const bad = visitText('2026-04-06', 90).replace('90', 'ninety')

  it('keeps its last pages while all others are made, and says how many problems there are', async () => {
    await build(at)
    const before = contents(at.site)
    at.write('alder/2026-04-06.md', bad)
    at.write('bramble/2026-04-06.md', visitText('2026-04-06', 91))
    const built = await build(at)
    const after = contents(at.site)
    expect(after['practice/alder/index.html']).toBe(before['practice/alder/index.html'])
    expect(after['practice/alder/2026-04-06.html']).toBe(before['practice/alder/2026-04-06.html'])
    expect(after['practice/bramble/index.html']).not.toBe(before['practice/bramble/index.html'])
    expect(after['practice/index.html']).toContain('"broken":[{"id":"alder","problems":1}]')
    expect(built.horses).toEqual({ made: 1, unchanged: 1, broken: 1 })
    expect(built.diagnostics.map(({ file, level }) => [file, level])).toEqual([
      ['alder/2026-04-06.md', 'error'],
    ])
  })

  it('keeps them through builds without change and with the memory gone', async () => {
    await build(at)
    at.write('alder/2026-04-06.md', bad)
    await build(at)
    const before = contents(at.site)
    const again = await build(at)
    expect(again.diagnostics).toHaveLength(1)
    rmSync(join(at.root, '.growdown'), { recursive: true })
    await build(at)
    expect(contents(at.site)).toEqual(before)
    expect(Object.keys(before)).toContain('practice/alder/index.html')
  })
})

describe('a casebook without practice.md', () => {
  it('publishes nothing and still tells every problem of every file', async () => {
    await build(at)
    const before = contents(at.site)
    at.remove('practice.md')
    at.write('alder/2026-04-06.md', visitText('2026-04-06', 90).replace('date', 'dote'))
    const built = await build(at)
    expect(built.published).toBeNull()
    expect(new Set(built.diagnostics.map(({ file }) => file))).toEqual(
      new Set(['practice.md', 'alder/2026-04-06.md']),
    )
    expect(contents(at.site)).toEqual(before)
  })
})

describe('two pages that want one place', () => {
  const with2 = (path: string) =>
    plainWith(async (horse, tools) => {
      const made = await plainEdition.ofHorse(horse, tools)
      if (horse.horse.id === 'clover') tools.put({ path, text: '' })
      return made
    })

  it('are refused by both their names', async () => {
    await expect(build(at, { editions: with2('alder/index.html') })).rejects.toThrow(
      'Two pages want the same place: practice/alder/index.html (alder) and practice/alder/index.html (clover).',
    )
  })

  it('are refused where only upper and lower case differ', async () => {
    await expect(build(at, { editions: with2('Alder/INDEX.html') })).rejects.toThrow(
      'practice/alder/index.html (alder) and practice/Alder/INDEX.html (clover)',
    )
  })

  it('are refused when a path leads out of the site', async () => {
    await expect(build(at, { editions: with2('../../x.html') })).rejects.toThrow(
      'the pages of clover could not be made: a page cannot stand at "practice/../../x.html"',
    )
  })
})
