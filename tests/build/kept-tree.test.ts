/** The tree that was live stays, for the next build to link less: whatever becomes of it, the site is the right one. */
import { existsSync, lstatSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Files } from '../../src/build/disk/files.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import { build, contents, freshPages, type Place, pages, place, threeHorses, visitText } from './kit.ts'

let at: Place
const kept = (path = '') => join(at.root, '.growdown', 'site', 'kept', 'practice', path)
const live = (path = '') => join(at.site, 'practice', path)

let toe = 80
/** Changes one visit, so that there is something to publish. */
async function publish(files: Files = slowly): Promise<void> {
  toe += 1
  at.write('alder/2026-04-06.md', visitText('2026-04-06', toe))
  await build(at, { files })
}

/** Each page is put in its place a while after the folders were filled, so that their times tell that they are done. */
const slowly: Files = {
  ...disk,
  move: (from, to) => {
    if (to.includes('alder')) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 40)
    disk.move(from, to)
  },
}

beforeEach(async () => {
  at = place(threeHorses)
  await build(at)
  await publish()
  await publish()
})
afterEach(() => at.done())

it('holds links to what is the same now, and nothing else', () => {
  const [old, now] = [contents(kept()), contents(live())]
  expect(Object.keys(old)).toContain('bramble/index.html')
  for (const path of Object.keys(old)) {
    expect([path, lstatSync(kept(path)).ino]).toEqual([path, lstatSync(live(path)).ino])
    expect(old[path]).toBe(now[path])
  }
})

it('links nothing anew in a folder that nobody touched', async () => {
  const before = lstatSync(kept('bramble')).mtimeMs
  expect(before).toBeCloseTo(lstatSync(live('bramble')).mtimeMs, 2)
  const linked: string[] = []
  const link: Files['link'] = (from, to) => {
    linked.push(from)
    return disk.link(from, to)
  }
  await publish({ ...slowly, link })
  expect(linked.length).toBeGreaterThan(0)
  expect(linked.filter((path) => /bramble|clover/.test(path))).toEqual([])
  expect(pages(at.site)).toEqual(await freshPages(at))
})

const touched: Readonly<Record<string, () => void>> = {
  'a page taken out of it': () => rmSync(kept('bramble/index.html')),
  'a page put into it': () => writeFileSync(kept('bramble/theirs.html'), 'theirs'),
  'a page of it replaced': () => {
    writeFileSync(kept('bramble/new'), 'other')
    renameSync(kept('bramble/new'), kept('bramble/index.html'))
  },
  'a folder taken out of it': () => rmSync(kept('bramble'), { recursive: true }),
  'a folder put into it': () => {
    mkdirSync(kept('theirs'))
    writeFileSync(kept('theirs/index.html'), 'theirs')
  },
  'all of it taken away': () => rmSync(kept(), { recursive: true }),
}

it.each(Object.keys(touched))('is no more than a help: %s', async (what) => {
  touched[what]?.()
  await publish()
  expect(pages(at.site)).toEqual(await freshPages(at))
})

it('minds what others put into the site, and what they take out', async () => {
  writeFileSync(live('bramble/theirs.txt'), 'theirs')
  rmSync(live('clover/index.html'))
  await publish()
  const wanted = await freshPages(at)
  expect(pages(at.site)).toEqual({ ...wanted, 'practice/bramble/theirs.txt': 'theirs' })
  rmSync(live('bramble/theirs.txt'))
  await publish()
  expect(pages(at.site)).toEqual(await freshPages(at))
})

it('holds nothing of a horse that is gone', async () => {
  at.remove('clover')
  await build(at)
  expect(existsSync(kept('clover/index.html'))).toBe(false)
  expect(Object.keys(contents(join(at.root, '.growdown'))).filter((path) => path.includes('clover'))).toEqual(
    [],
  )
  await publish()
  expect(pages(at.site)).toEqual(await freshPages(at))
})
