/**
 * One build at a time for one site, whatever happens to the one that has the lock. The short run lets ten meet
 * twice, a long one twenty.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join, resolve } from 'node:path'
import { build as bundle } from 'esbuild'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Files } from '../../src/build/disk/files.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import { makeLockFile } from '../../src/build/disk/system-lock.ts'
import { runs } from '../runs.ts'
import { build, contents, horseText, type Place, pages, place, threeHorses } from './kit.ts'

let at: Place
beforeEach(() => {
  at = place(threeHorses)
})
afterEach(() => at.done())

const lock = () => join(at.root, '.growdown/site/lock')

const ended = (child: ChildProcess): Promise<{ status: number | null; err: string }> => {
  let err = ''
  child.stderr?.on('data', (text) => {
    err += text
  })
  return new Promise((done) => child.on('close', (status) => done({ status, err })))
}

const many = runs(10, 20)

describe('many builds at once', () => {
  const program = resolve('dist/cli.js')
  const asOf = '2026-06-01'
  const start = () =>
    spawn(process.execPath, [program, 'build', 'cases', '--as-of', asOf], {
      cwd: at.root,
      stdio: ['ignore', 'ignore', 'pipe'],
    })

  it('hold the lock one after the other, and each that had to wait says who has it', async () => {
    for (let round = 0; round < runs(2, 6); round++) {
      at.write('alder/horse.md', horseText(`Alder ${round}`))
      const all = await Promise.all(Array.from({ length: many }, () => ended(start())))
      expect(all.filter(({ status }) => status === 0).length).toBeGreaterThan(0)
      for (const { status, err } of all) {
        if (status === 0) expect(err).toBe('')
        else
          expect(err).toMatch(
            /^Another build(?: \(process \d+ on .+\))? is writing this site\. Wait until it is done\.\n$/,
          )
      }
      const fresh = place({})
      const { status } = await ended(
        spawn(process.execPath, [program, 'build', at.casebook, '--out', fresh.site, '--as-of', asOf], {
          stdio: ['ignore', 'ignore', 'pipe'],
        }),
      )
      expect(status).toBe(0)
      expect(pages(at.site)).toEqual(pages(fresh.site))
      fresh.done()
    }
  }, 180_000)

  it('are never two inside, also where many of them die there', async () => {
    const log = join(at.root, 'log')
    const contender = join('dist', `lock-contender-${process.pid}.mjs`)
    await bundle({
      entryPoints: ['tests/build/lock-contender.ts'],
      bundle: true,
      platform: 'node',
      format: 'esm',
      external: ['fs-native-extensions'],
      outfile: contender,
    })
    const contend = () =>
      ended(
        spawn(process.execPath, [contender, join(at.root, 'lock'), log, String(runs(1500, 4000))], {
          stdio: ['ignore', 'ignore', 'pipe'],
        }),
      )
    await Promise.all(Array.from({ length: many }, contend))
    disk.remove(contender)

    const lines = readFileSync(log, 'utf8').trim().split('\n')
    let [inside, died] = ['', 0]
    for (const [index, line] of lines.entries()) {
      const [what, pid = ''] = line.split(' ')
      if (what === 'out') {
        expect(pid).toBe(inside)
        inside = ''
        continue
      }
      // The one before is out, or has died inside: then it is never heard of again.
      if (inside !== '') {
        died += 1
        expect(lines.slice(index).filter((later) => later.endsWith(` ${inside}`))).toEqual([])
      }
      inside = pid
    }
    expect(lines.length).toBeGreaterThan(100)
    expect(died).toBeGreaterThan(0)
  }, 60_000)
})

describe('a build while another has the lock', () => {
  it('is refused, and told who has it', async () => {
    disk.makeFolder(join(at.root, '.growdown/site'))
    const held = disk.lock(lock(), JSON.stringify({ pid: process.pid, host: hostname() }))
    if ('by' in held) throw new Error('the lock was not free')
    await expect(build(at)).rejects.toThrow(
      `Another build (process ${process.pid} on ${hostname()}) is writing this site. Wait until it is done.`,
    )
    expect(disk.stat(at.site)).toBeNull()
    held.giveBack()
    await build(at)
    expect(readFileSync(lock(), 'utf8')).toBe('')
  })

  it('goes on whatever an earlier one left in the lock', async () => {
    for (const left of ['', 'nothing', JSON.stringify({ pid: 2 ** 22 + 7, host: hostname() })]) {
      disk.write(lock(), left)
      await build(at)
    }
    expect(Object.keys(contents(at.site))).toContain('practice/index.html')
  })
})

describe('a disk or system without such a lock', () => {
  const left = () => `${lock()}.held`
  const files: Files = { ...disk, lock: (path, holder) => makeLockFile(`${path}.held`, holder) }

  it('has a file that only one can make, and a person deletes what a killed build left', async () => {
    disk.write(left(), '')
    await expect(build(at, { files })).rejects.toThrow(
      `Another build is writing this site. Wait until it is done; if there is none, delete ${left()} and build again.`,
    )
    disk.remove(left())
    await build(at, { files })
    expect(disk.stat(left())).toBeNull()
  })
})
