/**
 * Builds that fail or are killed: the site is the old one or the new one, never a mixture that stays. The short run kills
 * at every action on a disk as usual, and at every second one on the others.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { asUserError, Stopped } from '../../src/build/disk/errors.ts'
import type { Files } from '../../src/build/disk/files.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import { isLong } from '../runs.ts'
import {
  build,
  contents,
  freshPages,
  horseText,
  type Place,
  pages,
  place,
  threeHorses,
  visitText,
} from './kit.ts'

let at: Place
beforeEach(() => {
  at = place(threeHorses)
})
afterEach(() => at.done())

/** Changes one visit, adds a horse and takes one away: files to replace, to add and to remove. */
function change(): void {
  at.write('alder/2026-04-06.md', visitText('2026-04-06', 88))
  at.write('dock/horse.md', horseText('dock'))
  at.write('dock/2026-05-04.md', visitText('2026-05-04', 101))
  at.remove('clover')
}

class Killed extends Error {}

const deeds = [
  'write',
  'writePrivate',
  'move',
  'link',
  'exchange',
  'moveFolder',
  'remove',
  'removeIfEmpty',
  'makeFolder',
  'makePrivateFolder',
  'setMode',
  'removeTree',
  'mustBeWritable',
] as const
type Deed = (typeof deeds)[number]

/** A disk on which the n-th action of a kind fails, and with `Killed` everything after it too. */
function failingAt(
  action: Deed,
  count: number,
  error: () => unknown,
  on: Files = disk,
): Files & { failed: boolean } {
  const state = { left: count, dead: false }
  const guard =
    <A extends unknown[], R>(name: Deed, run: (...args: A) => R) =>
    (...args: A): R => {
      if (state.dead) throw error()
      if (name === action) {
        state.left -= 1
        if (state.left < 0) {
          files.failed = true
          const fault = error()
          state.dead = fault instanceof Killed
          throw fault
        }
      }
      return run(...args)
    }
  const guarded = Object.fromEntries(
    deeds.map((deed) => [deed, guard(deed, on[deed] as (...args: never[]) => unknown)]),
  )
  const files: Files & { failed: boolean } = { ...on, ...guarded, failed: false }
  return files
}

/** Disks and systems that have less. */
const lesser: Readonly<Record<string, Files>> = {
  'a disk as usual': disk,
  'a system that cannot exchange folders': { ...disk, exchange: () => false },
  'a disk without links': { ...disk, link: () => false },
  'a folder that cannot be moved': {
    ...disk,
    exchange: () => false,
    moveFolder: (from, to) =>
      disk.stat(to) === null && !from.endsWith('practice') ? false : disk.moveFolder(from, to),
  },
}

const systemFault = (code: string) => Object.assign(new Error(code), { code })

describe('a disk that fills up', () => {
  it('leaves the last good site at whichever file it is full, and says so', async () => {
    await build(at)
    const before = pages(at.site)
    change()
    let fails = 0
    for (let published = false; !published; fails += 1) {
      const files = failingAt('write', fails, () => asUserError(systemFault('ENOSPC'), 'a page', 'written'))
      const fault = await build(at, { files }).catch((error: unknown) => error)
      published = !(fault instanceof Error)
      if (published) continue
      expect(String(fault)).toBe('UserError: a page could not be written: the disk is full')
      expect(pages(at.site)).toEqual(before)
    }
    expect(fails).toBeGreaterThan(5)
    const fresh = place({})
    await build({ ...fresh, casebook: at.casebook })
    expect(pages(at.site)).toEqual(pages(fresh.site))
    fresh.done()
  })

  it('leaves no empty folders of pages that were not published', async () => {
    await build(at)
    change()
    const files = failingAt('link', 3, () => asUserError(systemFault('EROFS'), at.site, 'written to'))
    await expect(build(at, { files })).rejects.toThrow(
      `${at.site} could not be written to: the disk is read-only`,
    )
    expect(disk.stat(join(at.site, 'practice/dock'))).toBeNull()
  })
})

describe('a build that is killed', () => {
  const trials = Object.keys(lesser).flatMap((where) => deeds.map((deed) => [deed, where] as const))

  it.each(trials)('at any %s, on %s, is put right by the next one', async (action, where) => {
    const on = lesser[where] ?? disk
    await build(at)
    const before = contents(at.site)
    change()
    const fresh = place({})
    await build({ ...fresh, casebook: at.casebook })
    const [old, now] = [pages(at.site), pages(fresh.site)]
    fresh.done()

    const step = isLong || where === 'a disk as usual' ? 1 : 2
    for (let kills = 0, alive = false; !alive; kills += step) {
      const trial = place({})
      for (const [path, text] of Object.entries(before)) disk.write(join(trial.site, path), text)
      const files = failingAt(action, kills, () => new Killed(), on)
      alive = await build({ ...trial, casebook: at.casebook }, { files }).then(
        () => true,
        () => false,
      )
      expect(alive).toBe(!files.failed)
      // No reader sees a mixture, save where files have to come one by one; for a moment there may be none.
      const seen = pages(trial.site)
      if (where === 'a disk as usual') expect([old, now]).toContainEqual(seen)
      if (where === 'a system that cannot exchange folders') expect([old, now, {}]).toContainEqual(seen)
      await build({ ...trial, casebook: at.casebook }, { files: on })
      expect(pages(trial.site)).toEqual(now)
      expect(contents(trial.site)['.made.json']).not.toContain('[')
      const work = contents(join(trial.root, '.growdown'))
      const links = Object.keys(work).filter((path) => path.startsWith('site/kept/'))
      for (const path of links) expect(work[path]).toBe(now[path.slice('site/kept/'.length)])
      const kept = Object.keys(work).filter((path) => !/^site\/(?:fragments|kept)\//.test(path))
      expect(kept.sort()).toEqual(['.gitignore', 'site/lock', 'site/state.json'])
      trial.done()
    }
  })

  it('while files come one by one is carried to its end first, even when the casebook can no longer be read', async () => {
    const on = lesser['a disk without links'] ?? disk
    // On the same disk: what another kept for the next time would do without links.
    await build(at, { files: on })
    change()
    let moved = 0
    const move: Files['move'] = (from, to) => {
      if (to.startsWith(join(at.site, 'practice')) && ++moved > 2) throw new Killed()
      on.move(from, to)
    }
    await expect(build(at, { files: { ...on, move, removeTree: () => {} } })).rejects.toThrow(Killed)
    at.remove('practice.md')
    await build(at)
    const site = contents(at.site)
    expect(Object.keys(site).filter((path) => path.includes('clover'))).toEqual([])
    expect(site['practice/dock/index.html']).toContain('"dock"')
    expect(site['practice/alder/index.html']).toContain('88')
  })
})

describe('publishing file by file that the disk stops part-way', () => {
  it('says that the next build takes it to its end, and it does', async () => {
    const on = lesser['a disk without links'] ?? disk
    // On the same disk: what another kept for the next time would do without links.
    await build(at, { files: on })
    change()
    let moved = 0
    const move: Files['move'] = (from, to) => {
      if (to.startsWith(join(at.site, 'practice')) && ++moved > 2)
        throw asUserError(systemFault('EIO'), 'a page', 'replaced')
      on.move(from, to)
    }
    await expect(build(at, { files: { ...on, move } })).rejects.toThrow(
      'a page could not be replaced: the disk reports a fault. Publishing stopped part-way; the next build takes it to its end.',
    )
    await build(at)
    expect(contents(at.site)['practice/dock/index.html']).toContain('"dock"')
  })
})

describe('a build that is killed before it has done what it put off', () => {
  /** Builds; all that is put off is lost, but that the system gives back the lock of a process that ended. */
  async function killed(on: Files = disk): Promise<void> {
    const works: (() => void)[] = []
    await build(at, { files: on, later: (work) => void works.push(work) })
    works.at(-1)?.()
  }

  it('shows the new site; once or twice, the next one puts the rest right and takes all pages for its own', async () => {
    for (let times = 1; times <= 2; times++) {
      await build(at)
      for (let toe = 60; toe < 60 + times; toe++) {
        change()
        at.write('bramble/2026-04-06.md', visitText('2026-04-06', toe))
        await killed()
        expect(shown()).toEqual(await freshPages(at))
        at.write('clover/horse.md', horseText('clover'))
      }
      for (const id of ['alder', 'bramble', 'dock']) at.write(`${id}/horse.md`, horseText('Sorrel'))
      expect((await build(at)).published?.left).toEqual([])
      expect(pages(at.site)).toEqual(await freshPages(at))
      expect(contents(at.site)['.made.json']).not.toContain('[')
    }
  })

  it('keeps what someone put there in the last moment', async () => {
    await build(at)
    change()
    await killed({
      ...disk,
      exchange: (next, live) => {
        writeFileSync(join(live, 'alder', 'late.txt'), 'theirs')
        return disk.exchange(next, live)
      },
    })
    await build(at)
    expect(pages(at.site)).toEqual({ ...(await freshPages(at)), 'practice/alder/late.txt': 'theirs' })
  })

  /** Without the tool's own lists. */
  const shown = () =>
    Object.fromEntries(Object.entries(contents(at.site)).filter(([path]) => !path.startsWith('.')))
})

describe('a wish to stop', () => {
  it('leaves the site as it was, and no lock', async () => {
    await build(at)
    const before = contents(at.site)
    change()
    const controller = new AbortController()
    const report = (progress: { step: string; done?: number }) => {
      if (progress.step === 'making' && progress.done === 1) controller.abort()
    }
    await expect(build(at, { signal: controller.signal, report })).rejects.toThrow(Stopped)
    expect(contents(at.site)).toEqual(before)
    expect(contents(join(at.root, '.growdown/site'))).toMatchObject({ lock: '' })
    expect(disk.stat(join(at.root, '.growdown/site/staging'))).toBeNull()
  })
})

describe('the real disk in plain words', () => {
  it('names what could not be done and why', () => {
    const file = join(at.root, 'file')
    writeFileSync(file, '')
    expect(() => disk.write(join(file, 'below'), '')).toThrow(`${join(file, 'below')} could not be written`)
    expect(() => disk.move(join(at.root, 'gone'), file)).toThrow(
      `${file} could not be replaced: it is not there`,
    )
    expect(() => disk.read(at.root)).toThrow(
      `${at.root} could not be read: a folder stands where a file is needed`,
    )
    expect(() => disk.write(join(at.root, 'a'.repeat(300)), '')).toThrow('the name is too long')
    expect(disk.read(join(at.root, 'gone'))).toBeNull()
    expect(disk.removeIfEmpty(at.casebook)).toBe(false)
  })
})
