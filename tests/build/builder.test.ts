/** The builder by itself, with units of no edition at all. */
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openBuilder } from '../../src/build/builder.ts'
import { inThisThread } from '../../src/build/pool.ts'
import type { Fate } from '../../src/build/publish.ts'
import { type Unit, unitMaker } from '../../src/build/unit.ts'
import { contents, context, type Place, place } from './kit.ts'

let at: Place
/** Names of the units that were made. */
let made: string[]
/** Files that were left as they are. */
let left: readonly string[]
beforeEach(() => {
  at = place({})
  made = []
})
afterEach(() => at.done())

const unit = (name: string, key: string, more: Partial<Unit<string>> = {}): Unit<string> => ({
  name,
  key,
  make: async ({ put }) => {
    made.push(name)
    put({ path: `pages/${name}.txt`, text: key })
    return `${name} ${key}`
  },
  ...more,
})

/** Builds and publishes; gives the notes of the units. */
async function build(units: readonly Unit<string>[], isLeftAlone = (_path: string) => false) {
  made = []
  const builder = openBuilder(at.site, at.casebook, context())
  try {
    const results = await builder.build(units)
    const fateOf = (path: string) => (isLeftAlone(path) ? 'kept' : 'made')
    left = (await builder.publish({ name: 'Reed Bank', fateOf })).left
    builder.remember({}, 0)
    return results.map(({ notes }) => notes)
  } finally {
    builder.close()
  }
}

const site = () => {
  const { '.made.json': _, ...files } = contents(at.site)
  return Object.fromEntries(Object.entries(files).map(([path, text]) => [path.replace('pages/', ''), text]))
}

describe('a unit', () => {
  it('is made once for a key, and its notes are kept with its files', async () => {
    expect(await build([unit('a', '1'), unit('b', '1')])).toEqual(['a 1', 'b 1'])
    expect(await build([unit('a', '1'), unit('b', '2')])).toEqual(['a 1', 'b 2'])
    expect(made).toEqual(['b'])
    expect(site()).toEqual({ 'a.txt': '1', 'b.txt': '2' })
  })

  it('is made again when a file of it is gone or empty', async () => {
    await build([unit('a', '1'), unit('b', '1'), unit('c', '1')])
    rmSync(join(at.site, 'pages/a.txt'))
    writeFileSync(join(at.site, 'pages/b.txt'), '')
    await build([unit('a', '1'), unit('b', '1'), unit('c', '1')])
    expect(made).toEqual(['a', 'b'])
    expect(site()).toEqual({ 'a.txt': '1', 'b.txt': '1', 'c.txt': '1' })
  })

  it('leaves a file that was edited, and names it until it is moved away', async () => {
    await build([unit('a', '1'), unit('b', '1')])
    const place = join(at.site, 'pages/b.txt')
    writeFileSync(place, 'edited')
    for (const units of [
      [unit('a', '2'), unit('b', '1')],
      [unit('a', '3'), unit('b', '3')],
      [unit('a', '3')],
    ]) {
      await build(units)
      expect(left).toEqual([place])
      expect(site()['b.txt']).toBe('edited')
    }
    expect(site()['a.txt']).toBe('3')
    rmSync(place)
    await build([unit('a', '3'), unit('b', '3')])
    expect([left, site()]).toEqual([[], { 'a.txt': '3', 'b.txt': '3' }])
  })

  it('is made again when what it noted is not true any more', async () => {
    await build([unit('a', '1')])
    await build([unit('a', '1', { isCurrent: (notes) => notes === 'a 1' })])
    expect(made).toEqual([])
    await build([unit('a', '1', { isCurrent: (notes) => notes !== 'a 1' })])
    expect(made).toEqual(['a'])
  })

  it('is made again when it says that it is stale, or a text that it keeps is gone', async () => {
    const stale = unit('a', '1', {
      make: async ({ markStale }) => {
        markStale()
        return 'stale'
      },
    })
    await build([stale])
    await build([unit('a', '1')])
    expect(made).toEqual(['a'])
    const keeping = unit('a', '2', {
      make: async ({ keep }) => {
        made.push('a')
        return keep('a long text')
      },
    })
    const [name = ''] = await build([keeping])
    await build([keeping])
    expect(made).toEqual([])
    rmSync(join(at.root, '.growdown/site/fragments', name))
    await build([keeping])
    expect(made).toEqual(['a'])
  })

  it('takes its files with it, but for those that are left alone', async () => {
    await build([unit('a', '1'), unit('b', '1'), unit('c', '1')])
    await build([unit('a', '1')], (path) => path === 'pages/b.txt')
    expect(site()).toEqual({ 'a.txt': '1', 'b.txt': '1' })
  })

  it('is told what it was before, and reads what is staged or published', async () => {
    await build([unit('a', '1'), unit('b', '1')])
    const builder = openBuilder(at.site, at.casebook, context())
    await builder.build([unit('a', '1'), unit('b', '2')])
    const text = (path: string) => Buffer.from(builder.read(path) ?? '').toString()
    expect([text('pages/a.txt'), text('pages/b.txt'), builder.read('pages/c.txt')]).toEqual(['1', '2', null])
    expect(builder.outputs().map(({ path }) => path)).toEqual(['pages/a.txt', 'pages/b.txt'])
    const before: unknown[] = []
    const asking = unit('b', '3', { make: async (_, last) => `${before.push(last?.notes)}` })
    await builder.build([asking])
    expect(before).toEqual(['b 1'])
    builder.close()
    expect(site()).toEqual({ 'a.txt': '1', 'b.txt': '1' })
  })

  it('may be made by a pool, from a job that is plain data', async () => {
    const builder = openBuilder(at.site, at.casebook, context())
    const makeUnit = unitMaker(context().files, builder.paths)
    const pool = inThisThread((job: number) =>
      makeUnit(`n${job}`, async ({ put }) => {
        put({ path: `pages/n${job}.txt`, text: String(job * job) })
        return job * job
      }),
    )
    const results = await builder.buildInPool(
      [4, 2, 3].map((job) => ({ name: `n${job}`, key: 'k', job: () => job })),
      pool,
    )
    expect(results.map(({ notes }) => notes)).toEqual([16, 4, 9])
    await builder.publish({ name: 'Reed Bank', fateOf: () => 'made' })
    builder.close()
    expect(site()).toEqual({ 'n2.txt': '4', 'n3.txt': '9', 'n4.txt': '16' })
  })
})

describe('what is held back', () => {
  /** Builds with a fate for some places; gives what is remembered of them. */
  async function held(units: readonly Unit<string>[], fates: Readonly<Record<string, Fate>> = {}) {
    const builder = openBuilder(at.site, at.casebook, context())
    try {
      const before = builder.before.units
      await builder.build(units)
      await builder.publish({ name: 'Reed Bank', fateOf: (path) => fates[path] ?? 'made' })
      builder.remember({}, 0)
      return Object.fromEntries(Object.entries(before).map(([name, { notes }]) => [name, notes]))
    } finally {
      builder.close()
    }
  }

  it('stays as it was, is remembered as it was, and comes with the next build', async () => {
    await held([unit('a', '1'), unit('b', '1')])
    await held([unit('a', '2'), unit('b', '2')], { 'pages/a.txt': 'kept' })
    expect(site()).toEqual({ 'a.txt': '1', 'b.txt': '2' })
    expect(await held([unit('a', '2'), unit('b', '2')])).toEqual({ a: 'a 1', b: 'b 2' })
    expect(site()).toEqual({ 'a.txt': '2', 'b.txt': '2' })
  })

  it('is not published where nothing was before', async () => {
    await held([unit('a', '1')], { 'pages/a.txt': 'kept' })
    expect(site()).toEqual({})
  })

  it('goes where it must not stay, and comes again with the next build', async () => {
    await held([unit('a', '1'), unit('b', '1')])
    await held([unit('a', '1'), unit('b', '1')], { 'pages/a.txt': 'removed' })
    expect(site()).toEqual({ 'b.txt': '1' })
    await held([unit('a', '1'), unit('b', '1')])
    expect(site()).toEqual({ 'a.txt': '1', 'b.txt': '1' })
  })

  it('can be said by the unit, which is then remembered as it was and made again', async () => {
    const holding = unit('a', '2', {
      make: async ({ holdBack }) => {
        made.push('a')
        holdBack()
        return 'nothing'
      },
    })
    const stays = { 'pages/a.txt': 'kept' } as const
    await held([unit('a', '1')])
    await held([holding], stays)
    expect(await held([holding], stays)).toEqual({ a: 'a 1' })
    expect(made.filter((name) => name === 'a').length).toBe(3)
    expect(site()).toEqual({ 'a.txt': '1' })
  })

  it('is not taken for what a later try has made of the same place', async () => {
    await held([unit('a', '1')])
    const builder = openBuilder(at.site, at.casebook, context())
    await builder.build([unit('a', '2')])
    await builder.build([unit('a', '1')])
    await builder.publish({ name: 'Reed Bank', fateOf: () => 'made' })
    builder.close()
    expect(site()).toEqual({ 'a.txt': '1' })
  })
})
