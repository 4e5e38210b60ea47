/** An edition is one file and one line: this one is given beside the real ones, and all that builds takes it as it is. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { buildSite } from '../../src/apps/site/build-site.ts'
import { lazyPageTools } from '../../src/apps/site/site-units.ts'
import type { Edition } from '../../src/editions/edition.ts'
import { editions } from '../../src/editions/index.ts'
import { searched } from '../../src/editions/searched.ts'
import { contents, context, horseText, type Place, place, threeHorses, times, visitText } from './kit.ts'

/** How many times each horse came, for a notice on the yard's door: no names but those that the horses agreed to. */
const toy: Edition<{ readonly nickname: string; readonly visits: number }> = {
  name: 'toy',
  folder: 'door',
  keepsBroken: false,
  assets: { styles: ['growdown'], scripts: [] },
  protection: searched,
  announcement: ({ site }) => `On the door: ${site('door', 'list.txt')}`,
  ofHorse: async ({ horse }, { put }) => {
    const nickname = horse.alias
    if (nickname === null) return null
    put({ path: `${nickname.toLowerCase()}.txt`, text: `${nickname} came ${horse.visits.length} times.` })
    return { nickname, visits: horse.visits.length }
  },
  pages: async () => [],
  files: async ({ kept }) => [
    { path: 'list.txt', text: kept.map(({ nickname, visits }) => `${nickname}: ${visits}\n`).join('') },
  ],
}

let at: Place
beforeEach(() => {
  at = place(threeHorses)
  for (const [id, alias] of [
    ['alder', 'Quill'],
    ['bramble', 'Reed'],
  ] as const) {
    at.write(`${id}/horse.md`, horseText(id).replace('---\n', `---\nalias: ${alias}\n`))
  }
})
afterEach(() => at.done())

const openTools = lazyPageTools()
const build = (wanted: readonly Edition[]) =>
  buildSite(
    { casebook: at.casebook, site: at.site, asOf: '2026-05-31', editions: wanted },
    context({ openTools }),
  )

const door = () => contents(join(at.site, 'door'))

describe('a new edition', () => {
  it('is built beside the others: pages of a horse, pages over all, assets', async () => {
    const built = await build([...editions, toy])
    expect(built.horses).toEqual({ made: 3, unchanged: 0, broken: 0 })
    expect(Object.keys(door())).toEqual(['assets/growdown.css', 'list.txt', 'quill.txt', 'reed.txt'])
    expect(door()['list.txt']).toBe('Quill: 2\nReed: 2\n')
    expect(readFileSync(join(at.site, 'practice/alder/index.html'), 'utf8')).toContain('alder')
    expect(Object.keys(JSON.parse(readFileSync(join(at.site, '.made.json'), 'utf8')).files)).toContain(
      'door/quill.txt',
    )
  })

  it('is kept where nothing changed, and made again where it did', async () => {
    await build([toy])
    const before = times(join(at.site, 'door'))
    expect((await build([toy])).published).toMatchObject({ written: 0, removed: 0 })
    expect(times(join(at.site, 'door'))).toEqual(before)

    at.write('bramble/2026-05-11.md', visitText('2026-05-11', 90))
    expect((await build([toy])).horses).toEqual({ made: 1, unchanged: 2, broken: 0 })
    expect(door()['list.txt']).toBe('Quill: 2\nReed: 3\n')
    // Each of its files has another time, and all have the same: which of them changed is not told.
    const now = times(join(at.site, 'door'))
    expect(Object.keys(now).filter((path) => now[path] === before[path])).toEqual([])
    expect(new Set(Object.values(now)).size).toBe(1)
  })

  it('loses a horse with errors, and is left alone where it is not built', async () => {
    await build([toy])
    at.write('alder/2026-04-06.md', visitText('2026-04-06', 90).replace('90', 'ninety'))
    await build([toy])
    expect(Object.keys(door())).toEqual(['assets/growdown.css', 'list.txt', 'reed.txt'])
    const before = times(join(at.site, 'door'))
    await build(editions)
    expect(times(join(at.site, 'door'))).toEqual(before)
  })

  it('is searched as it asks to be, and with one hit nothing is published', async () => {
    await build([toy])
    const before = contents(at.site)
    at.write('clover/horse.md', horseText('clover').replace('---\n', '---\nalias: Ash Tern\n'))
    const { refusals } = await build([toy])
    expect(refusals.map(({ folder, hits }) => [folder, hits[0]?.text])).toEqual([['door', 'ash tern']])
    expect(contents(at.site)).toEqual(before)
  })
})
