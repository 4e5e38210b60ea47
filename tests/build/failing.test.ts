/** Builds that fail or are killed: the site is the old one or the new one, never a mixture that stays. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { commit } from '../../src/build/disk/commit.ts'
import { asUserError, Stopped, UserError } from '../../src/build/disk/errors.ts'
import { disk, type Files } from '../../src/build/disk/files.ts'
import { build, contents, horseText, type Place, place, threeHorses, visitText } from './kit.ts'

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

type Deed = 'write' | 'move' | 'remove' | 'makeFolder' | 'removeTree' | 'mustBeWritable' | 'writeNew'

/** A disk on which the n-th action of a kind fails, and with `Killed` everything after it too. */
function failingAt(action: Deed, count: number, error: () => unknown): Files & { failed: boolean } {
  const state = { left: count, dead: false }
  const guarded =
    <A extends unknown[], R>(name: string, run: (...args: A) => R) =>
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
  const files = {
    ...disk,
    failed: false,
    write: guarded('write', disk.write),
    writeNew: guarded('writeNew', disk.writeNew),
    move: guarded('move', disk.move),
    remove: guarded('remove', disk.remove),
    makeFolder: guarded('makeFolder', disk.makeFolder),
    removeTree: guarded('removeTree', disk.removeTree),
    mustBeWritable: guarded('mustBeWritable', disk.mustBeWritable),
  }
  return files
}

const systemFault = (code: string) => Object.assign(new Error(code), { code })

describe('a disk that fills up', () => {
  it('leaves the last good site at whichever file it is full, and says so', async () => {
    await build(at)
    const before = contents(at.site)
    change()
    let fails = 0
    for (let published = false; !published; fails += 1) {
      const files = failingAt('write', fails, () => asUserError(systemFault('ENOSPC'), 'a page', 'written'))
      const fault = await build(at, { files }).catch((error: unknown) => error)
      published = !(fault instanceof Error)
      if (published) continue
      expect(String(fault)).toBe('UserError: a page could not be written: the disk is full')
      expect(contents(at.site)).toEqual(before)
    }
    expect(fails).toBeGreaterThan(5)
    const fresh = place({})
    await build({ ...fresh, casebook: at.casebook })
    expect(contents(at.site)).toEqual(contents(fresh.site))
    fresh.done()
  })

  it('leaves no empty folders of pages that were not published', async () => {
    await build(at)
    change()
    const files = failingAt('mustBeWritable', 0, () =>
      asUserError(systemFault('EROFS'), at.site, 'written to'),
    )
    await expect(build(at, { files })).rejects.toThrow(
      `${at.site} could not be written to: the disk is read-only`,
    )
    expect(disk.stat(join(at.site, 'practice/dock'))).toBeNull()
  })
})

describe('a build that is killed', () => {
  const deeds: readonly Deed[] = ['write', 'move', 'remove', 'makeFolder', 'removeTree']

  it.each(deeds)('at any %s is put right by the next one', async (action) => {
    await build(at)
    const before = contents(at.site)
    change()
    const fresh = place({})
    await build({ ...fresh, casebook: at.casebook })
    const after = contents(fresh.site)
    fresh.done()

    let kills = 0
    for (let alive = false; !alive; kills += 1) {
      const trial = place({})
      disk.makeFolder(trial.site)
      for (const [path, text] of Object.entries(before)) disk.write(join(trial.site, path), text)
      const files = failingAt(action, kills, () => new Killed())
      alive = await build({ ...trial, casebook: at.casebook }, { files }).then(
        () => true,
        () => false,
      )
      // The lock of the killed build names a process that is no more.
      const lock = join(trial.root, '.growdown/site/lock')
      if (!alive && disk.stat(dirname(lock)) !== null)
        writeFileSync(lock, JSON.stringify({ pid: 2 ** 22 + 7, host: hostname() }))
      await build({ ...trial, casebook: at.casebook })
      expect(contents(trial.site)).toEqual(after)
      expect(Object.keys(contents(join(trial.root, '.growdown'))).sort()).toEqual([
        '.gitignore',
        'site/state.json',
      ])
      trial.done()
    }
    expect(kills).toBeGreaterThan(1)
  })

  it('in the middle of publishing is carried to its end first, even when the casebook can no longer be read', async () => {
    await build(at)
    change()
    const files = failingAt('move', 3, () => new Killed())
    await expect(build(at, { files })).rejects.toThrow(Killed)
    const lock = join(at.root, '.growdown/site/lock')
    writeFileSync(lock, JSON.stringify({ pid: 2 ** 22 + 7, host: hostname() }))
    at.remove('practice.md')
    await build(at)
    const site = contents(at.site)
    expect(Object.keys(site).filter((path) => path.includes('clover'))).toEqual([])
    expect(site['practice/dock/index.html']).toContain('"dock"')
    expect(site['practice/alder/index.html']).toContain('88')
  })
})

describe('publishing that the disk stops part-way', () => {
  it('says that the next build takes it to its end, and it does', async () => {
    await build(at)
    change()
    const files = failingAt('move', 3, () => asUserError(systemFault('EIO'), 'a page', 'replaced'))
    await expect(build(at, { files })).rejects.toThrow(
      'a page could not be replaced: the disk reports a fault. Publishing stopped part-way; the next build takes it to its end.',
    )
    await build(at)
    expect(contents(at.site)['practice/dock/index.html']).toContain('"dock"')
  })
})

describe('a folder that is new to the site', () => {
  const staging = () => ({ site: at.site, folder: join(at.root, 'work/staging') })
  const staged = (...paths: readonly string[]) => {
    for (const path of paths) disk.write(join(staging().folder, path), path)
  }

  it('comes in one step with all that is staged in it', () => {
    staged('practice/elm/index.html', 'practice/elm/photos/a.jpg', '.made.json')
    const moved: string[] = []
    const move = (from: string, to: string) => {
      moved.push(to)
      disk.move(from, to)
    }
    const files = { ...disk, move }
    const moves = ['practice/elm/index.html', 'practice/elm/photos/a.jpg', '.made.json']
    commit(files, join(at.root, 'work'), staging(), { moves, removes: [] })
    expect(Object.keys(contents(at.site)).sort()).toEqual([...moves].sort())
    expect(moved.filter((path) => path.startsWith(at.site))).toEqual([
      join(at.site, 'practice'),
      join(at.site, '.made.json'),
    ])
  })

  it('brings nothing that is not to be published', () => {
    staged('practice/elm/index.html', 'practice/elm/left-over.html', 'practice/oak/index.html')
    const moves = ['practice/elm/index.html', 'practice/oak/index.html']
    commit(disk, join(at.root, 'work'), staging(), { moves, removes: [] })
    expect(Object.keys(contents(at.site)).sort()).toEqual(moves)
  })
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
    expect(disk.stat(join(at.root, '.growdown/site/lock'))).toBeNull()
    expect(disk.stat(join(at.root, '.growdown/site/staging'))).toBeNull()
  })
})

describe('two builds at once', () => {
  const lock = () => join(at.root, '.growdown/site/lock')
  const held = (pid: number, host: string) => {
    mkdirSync(join(at.root, '.growdown/site'), { recursive: true })
    writeFileSync(lock(), JSON.stringify({ pid, host }))
  }

  it('are refused while the other lives', async () => {
    held(process.pid, hostname())
    await expect(build(at)).rejects.toThrow(
      `Another build (process ${process.pid} on ${hostname()}) is writing this site. ` +
        `Wait until it is done; if there is none, delete ${lock()} and build again.`,
    )
    expect(disk.stat(at.site)).toBeNull()
    expect(disk.stat(lock())).not.toBeNull()
  })

  it('are refused when the other is on another machine, since it cannot be asked', async () => {
    held(1, 'some-other-machine')
    await expect(build(at)).rejects.toThrow(UserError)
  })

  it('go on when the other is dead or its lock says nothing', async () => {
    held(2 ** 22 + 7, hostname())
    await build(at)
    expect(disk.stat(lock())).toBeNull()
    writeFileSync(lock(), '')
    await build(at)
    expect(disk.stat(lock())).toBeNull()
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
