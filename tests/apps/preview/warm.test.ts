/** Builds again and again in one process that keeps what it knows of casebook and site. */
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Warm, warmOver } from '../../../src/apps/preview/warm.ts'
import { warmUp } from '../../../src/apps/preview/warm-up.ts'
import type { SiteContext } from '../../../src/apps/site/options.ts'
import type { Files } from '../../../src/build/disk/files.ts'
import { disk } from '../../../src/build/disk/real-disk.ts'
import type { Edition } from '../../../src/editions/edition.ts'
import {
  asOf,
  build,
  contents,
  context,
  freshPages,
  horseText,
  lasting,
  type Place,
  pages,
  place,
  plainEdition,
  plainWith,
  summaryOf,
  threeHorses,
  times,
  visitText,
} from '../../build/kit.ts'

let at: Place
/** Paths that were looked at since the last reset. */
let looks: string[]
let files: Files
let warm: Warm

beforeEach(() => {
  at = place(threeHorses)
  looks = []
  files = {
    ...disk,
    stat: (path) => {
      looks.push(path)
      return disk.stat(path)
    },
  }
  warm = warmOver(files, at.casebook, at.site)
})
afterEach(() => at.done())

const { openTools } = context()

const again = (changes: Partial<SiteContext & { editions: readonly Edition[] }> = {}) =>
  build(at, { files, ...warm, openTools, ...changes })

function save(path: string, text: string): void {
  at.write(path, text)
  warm.invalidate(path)
}

const looked = () => [...warm.recheck()].filter((isGone) => isGone).length

describe('a process that builds again and again', () => {
  it('looks at no page of a horse that did not change, and gives what a fresh build gives', async () => {
    await again()
    looks = []
    save('bramble/2026-04-06.md', visitText('2026-04-06', 91))
    const built = await again()
    expect(built.horses).toEqual({ made: 1, unchanged: 2, broken: 0 })
    expect(looks.filter((path) => /(?:alder|clover)\//.test(path))).toEqual([])
    expect(pages(at.site)).toEqual(await freshPages(at))
  })

  it('writes nothing when nothing changed', async () => {
    await again()
    warm.flush()
    const before = lasting(at.root)
    expect((await again()).published).toMatchObject({ written: 0, removed: 0 })
    warm.flush()
    expect(lasting(at.root)).toEqual(before)
  })

  it('leaves to a later process what it needs', async () => {
    await again()
    save('dock/horse.md', horseText('dock'))
    await again()
    warm.flush()
    const built = await build(at)
    expect(built.horses.made).toBe(0)
    expect(built.published?.written).toBe(0)
  })

  it('mends a page that was damaged outside once it has looked again', async () => {
    await again()
    const before = contents(at.site)
    writeFileSync(join(at.site, 'practice/alder/index.html'), '')
    rmSync(join(at.site, 'practice/assets/growdown.css'))
    expect(looked()).toBe(2)
    expect((await again()).published?.written).toBe(2)
    expect(contents(at.site)).toEqual(before)
    expect(looked()).toBe(0)
  })

  it('looks at everything after the site was deleted', async () => {
    await again()
    const before = contents(at.site)
    rmSync(at.site, { recursive: true })
    await again()
    expect(contents(at.site)).toEqual(before)
  })

  it('looks at everything after another process built here', async () => {
    await again()
    at.write('alder/2026-04-06.md', visitText('2026-04-06', 80))
    await build(at)
    at.write('alder/2026-04-06.md', visitText('2026-04-06', 94))
    warm.invalidate('')
    await again()
    expect(pages(at.site)).toEqual(await freshPages(at))
  })

  it('looks at everything after a build that failed', async () => {
    await again()
    save('alder/2026-04-06.md', visitText('2026-04-06', 80))
    const editions = plainWith(async ({ horse }, { put }) => {
      put({ path: '../../outside.html', text: '' })
      return summaryOf(horse.id, horse.name)
    })
    await expect(again({ editions })).rejects.toThrow('the pages of alder could not be made: a page cannot')
    rmSync(join(at.site, 'practice/clover/index.html'))
    await again()
    expect(pages(at.site)).toEqual(await freshPages(at))
  })
})

describe('a rehearsal', () => {
  const warmedUp = (
    editions: readonly Edition[],
    isWanted: () => boolean,
    changes: Partial<SiteContext> = {},
  ) =>
    warmUp(
      { casebook: at.casebook, site: at.site, asOf, editions },
      context({ ...warm, openTools, ...changes }),
      isWanted,
    )

  it('makes horses and the pages over all of them, and touches nothing', async () => {
    await again()
    const before = times(at.root)
    const made: string[] = []
    const noting: Edition = {
      ...plainEdition,
      ofHorse: (horse, tools) => {
        made.push(horse.horse.id)
        return plainEdition.ofHorse(horse, tools)
      },
      pages: async (all) => {
        made.push(`${all.kept.length} horses`)
        return []
      },
    }
    await warmedUp([noting], () => true)
    expect(made).toEqual(['alder', 'bramble', 'clover', '3 horses'])
    expect(times(at.root)).toEqual(before)
  })

  it('puts nothing into the site or beside it, even where a page would be another', async () => {
    await again()
    const before = times(at.root)
    const other = plainWith((horse, tools) =>
      plainEdition.ofHorse(horse, { ...tools, put: ({ path }) => tools.put({ path, text: 'another' }) }),
    )
    await warmedUp(other, () => true)
    expect(times(at.root)).toEqual(before)
  })

  it('stops when it is not wanted any more, and makes nothing of a casebook that cannot be used', async () => {
    await again()
    const unwanted = plainWith(() => Promise.reject(new Error('not wanted')))
    await warmedUp(unwanted, () => false)
    at.remove('practice.md')
    warm = warmOver(files, at.casebook, at.site)
    await again()
    await warmedUp(unwanted, () => true, { program: 'new' })
  })
})
