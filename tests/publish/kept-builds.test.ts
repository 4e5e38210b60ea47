/** Builds again and again in one process that keeps what it knows of casebook and site. */
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { disk, type Files } from '../../src/publish/disk/files.ts'
import type { BuildWorld } from '../../src/publish/order.ts'
import { keptListing } from '../../src/publish/preview/kept-listing.ts'
import { rehearse } from '../../src/publish/preview/rehearsal.ts'
import { keptStanding } from '../../src/publish/standing.ts'
import { warmMemory } from '../../src/publish/state.ts'
import {
  asOf,
  build,
  contents,
  horseText,
  type Place,
  place,
  plainHorse,
  plainMakers,
  threeHorses,
  times,
  visitText,
  world,
} from './kit.ts'

let at: Place
/** Paths that were looked at since the last reset. */
let looks: string[]
let files: Files
let kept: ReturnType<typeof keep>

function keep() {
  return { memory: warmMemory(), listing: keptListing(at.casebook), standing: keptStanding(files, at.site) }
}

beforeEach(() => {
  at = place(threeHorses)
  looks = []
  files = {
    ...disk,
    look: (path) => {
      looks.push(path)
      return disk.look(path)
    },
  }
  kept = keep()
})
afterEach(() => at.done())

const again = (changes: Partial<BuildWorld> = {}) => build(at, { files, ...kept, ...changes })

function save(path: string, text: string): void {
  at.write(path, text)
  kept.listing.doubt(path)
}

const looked = () => [...kept.standing.lookAgain()].filter((isGone) => isGone).length

async function fresh(): Promise<Record<string, string>> {
  const other = place({})
  await build({ ...other, casebook: at.casebook })
  const site = contents(other.site)
  other.done()
  return site
}

describe('a process that builds again and again', () => {
  it('looks at no page of a horse that did not change, and gives what a fresh build gives', async () => {
    await again()
    looks = []
    save('bramble/2026-04-06.md', visitText('2026-04-06', 91))
    const built = await again()
    expect(built.horses).toEqual({ made: 1, unchanged: 2, broken: 0 })
    expect(looks.filter((path) => /alder|clover/.test(path))).toEqual([])
    expect(contents(at.site)).toEqual(await fresh())
  })

  it('writes nothing when nothing changed', async () => {
    await again()
    kept.memory.settle()
    const before = times(at.root)
    expect((await again()).published).toMatchObject({ written: 0, removed: 0 })
    kept.memory.settle()
    expect(times(at.root)).toEqual(before)
  })

  it('leaves to a later process what it needs', async () => {
    await again()
    save('dock/horse.md', horseText('dock'))
    await again()
    kept.memory.settle()
    const built = await build(at)
    expect(built.horses.made).toBe(0)
    expect(built.published?.written).toBe(0)
  })

  it('mends a page that was damaged outside once it has looked again', async () => {
    await again()
    const before = contents(at.site)
    writeFileSync(join(at.site, 'practice/alder/index.html'), 'edited')
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
    kept.listing.doubt('')
    await again()
    expect(contents(at.site)).toEqual(await fresh())
  })

  it('looks at everything after a build that failed', async () => {
    await again()
    save('alder/2026-04-06.md', visitText('2026-04-06', 80))
    const makers = plainMakers(disk, () => Promise.reject(new Error('fault')))
    await expect(again({ makers })).rejects.toThrow('the pages of alder could not be made: fault')
    rmSync(join(at.site, 'practice/clover/index.html'))
    await again()
    expect(contents(at.site)).toEqual(await fresh())
  })
})

describe('a rehearsal', () => {
  const order = () => ({ casebook: at.casebook, site: at.site, asOf, editions: ['practice'] as const })

  it('makes horses and the pages over all of them, and touches nothing', async () => {
    await again()
    const before = times(at.root)
    const made: string[] = []
    const makers = plainMakers(disk, (job, tools) => {
      made.push(job.id)
      return plainHorse(job, tools)
    })
    const overAll: BuildWorld['makers']['overAll'] = (edition, all) => {
      made.push(`${edition}: ${all.summaries.length} horses`)
      return Promise.resolve([])
    }
    await rehearse(order(), world({ ...kept, makers: { ...makers, overAll } }), () => true)
    expect(made).toEqual(['alder', 'bramble', 'clover', 'practice: 3 horses'])
    expect(times(at.root)).toEqual(before)
  })

  it('puts nothing into the site or beside it, even where a page would be another', async () => {
    await again()
    const before = times(at.root)
    const other = plainMakers(disk, (job, tools) =>
      plainHorse(job, { ...tools, put: ({ path }) => tools.put({ path, text: 'another' }) }),
    )
    await rehearse(order(), world({ ...kept, makers: other }), () => true)
    expect(times(at.root)).toEqual(before)
  })

  it('stops when it is not wanted any more, and makes nothing of a casebook that cannot be used', async () => {
    await again()
    const makers = plainMakers(disk, () => Promise.reject(new Error('not wanted')))
    await rehearse(order(), world({ ...kept, makers }), () => false)
    at.remove('practice.md')
    kept = keep()
    await again()
    await rehearse(order(), world({ ...kept, makers, program: 'new' }), () => true)
  })
})
