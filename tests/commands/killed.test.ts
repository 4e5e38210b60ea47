/**
 * Whole builds as processes of their own that are killed or interrupted, and what a reader sees meanwhile. The short run
 * kills two at moments of the whole build and some until one has been publishing, all without threads, which end with
 * their process; a long run has threads as well.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, lstatSync, mkdirSync, rmSync, watch } from 'node:fs'
import { join, resolve } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { isDeepStrictEqual } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { asOf, contents, horseText, type Place, pages, place, practiceText, visitText } from '../build/kit.ts'
import { isLong, runs } from '../runs.ts'
import { growdownProcess } from './run.ts'

const program = resolve('dist/cli.js')
const ids = ['alder', 'bramble', 'clover', 'dock', 'elder', 'fern'] as const

/** Two states of one casebook: every horse differs, one is only in the first and one only in the second. */
function state(toe: number, missing: string): Record<string, string> {
  const horses = ids.filter((id) => id !== missing)
  const files = horses.flatMap((id, index) => [
    [
      `${id}/horse.md`,
      horseText(id).replace('owner:', `${consent}\nalias: Pebble ${'ABCDEF'[index]}\nowner:`),
    ],
    [`${id}/2026-03-02.md`, visitText('2026-03-02', toe + index)],
    [`${id}/2026-04-06.md`, visitText('2026-04-06', toe - 2 + index)],
  ])
  return { 'practice.md': practiceText, ...Object.fromEntries(files) }
}

const consent = 'consent: {portfolio: yes, given: 2026-01-02}'

const states = [state(96, 'fern'), state(93, 'alder')] as const

const editions = ['practice', 'portfolio'] as const

/** The same numbers in each run, so that a failing moment can be tried again. */
function dice(seed: number): () => number {
  let at = seed
  return () => {
    at = (at * 1_103_515_245 + 12_345) % 2 ** 31
    return at / 2 ** 31
  }
}

let at: Place
/** The pages that each state gives when nothing goes wrong, and how long a whole build takes, milliseconds. */
const whole: { site: Record<string, string>; time: number }[] = []

function put(which: 0 | 1): void {
  for (const id of ids) rmSync(join(at.casebook, id), { recursive: true, force: true })
  for (const [path, text] of Object.entries(states[which])) at.write(path, text)
}

const options = ['build', 'cases', '--edition', 'all', '--as-of', asOf, ...(isLong ? [] : ['--jobs', '1'])]

const start = (): ChildProcess =>
  spawn(process.execPath, [program, ...options], { cwd: at.root, stdio: ['ignore', 'ignore', 'pipe'] })

const workFolder = () => join(at.root, '.growdown/site')

/** Resolves at once when something of this name comes into the work folder, or when the build has ended. */
async function arrival(name: string, end: Promise<unknown>): Promise<void> {
  mkdirSync(workFolder(), { recursive: true })
  const stop = new AbortController()
  const arrived = new Promise<void>((done) => {
    watch(workFolder(), { signal: stop.signal }, (_, file) => {
      if (file === name) done()
    })
  })
  await Promise.race([arrived, end])
  stop.abort()
}

/** The pages of an edition. */
const partOf = (edition: string, site: Record<string, string>) =>
  Object.fromEntries(Object.entries(site).filter(([path]) => path.startsWith(`${edition}/`)))

async function ended(child: ChildProcess): Promise<{ status: number | null; err: string }> {
  let err = ''
  child.stderr?.on('data', (text) => {
    err += text
  })
  const status = await new Promise<number | null>((done) => child.on('close', done))
  return { status, err }
}

beforeAll(() => {
  at = place({})
  for (const which of [0, 1] as const) {
    put(which)
    expect(growdownProcess(at.root, 'review', 'cases', '--approve-all', '--as-of', asOf).status).toBe(0)
    const began = performance.now()
    expect(growdownProcess(at.root, ...options).status).toBe(0)
    whole.push({ site: pages(at.site), time: performance.now() - began })
  }
}, 60_000)
afterAll(() => at.done())

const site = (which: 0 | 1) => whole[which]?.site ?? {}

const other = (state: 0 | 1): 0 | 1 => (state === 0 ? 1 : 0)

/** Whether every edition is the one or the other; which it is. */
function states01(): readonly (0 | 1)[] {
  const now = pages(at.site)
  return editions.map((edition) => {
    const found = ([0, 1] as const).find((which) =>
      isDeepStrictEqual(partOf(edition, now), partOf(edition, site(which))),
    )
    if (found === undefined) throw new Error(`${edition} is a mixture`)
    return found
  })
}

/** Begins to build the state that the site does not show. */
function startOther(): ChildProcess {
  put(other(states01()[0] ?? 0))
  return start()
}

describe('a build that is killed', () => {
  const publishing = () => existsSync(join(workFolder(), 'publishing'))

  /** Builds the other state, kills it at a moment, and puts right what is left; whether it was publishing. */
  async function trial(from: 0 | 1, moment: (end: Promise<unknown>) => Promise<void>): Promise<boolean> {
    const to = other(from)
    // As the trial before left it; the first finds what was built before all.
    expect(states01()).toEqual([from, from])
    put(to)
    const child = start()
    const end = ended(child)
    await moment(end)
    child.kill('SIGKILL')
    await end
    const wasPublishing = publishing()
    states01()
    const next = growdownProcess(at.root, ...options)
    expect([next.status, next.err]).toEqual([0, ''])
    expect(states01()).toEqual([to, to])
    expect(publishing()).toBe(false)
    return wasPublishing
  }

  it('at any moment leaves each edition whole, and the next build is clean', async () => {
    const roll = dice(20260601)
    const longest = Math.max(...whole.map(({ time }) => time))
    for (let run = 0; run < runs(2, 200); run += 1) {
      const wait = roll() * longest
      await trial(states01()[0] ?? 0, () => setTimeout(wait))
    }
  }, 3_600_000)

  it('while it publishes leaves each edition whole as well', async () => {
    const roll = dice(20260602)
    let hits = 0
    for (let run = 0; hits < runs(1, 60); run += 1) {
      // Publishing takes about so many milliseconds.
      const wait = roll() * 5
      const isHit = await trial(states01()[0] ?? 0, async (end) => {
        await arrival('publishing', end)
        for (const moment = performance.now() + wait; performance.now() < moment; );
      })
      if (isHit) hits += 1
      expect(run).toBeLessThan(runs(30, 600))
    }
  }, 3_600_000)
})

describe('a reader', () => {
  it('sees the old edition or the new one at every moment, and never none', async () => {
    for (const _ of states) {
      const child = startOther()
      const end = ended(child)
      let isDone = false
      let pause = 20
      void end.then(() => {
        isDone = true
      })
      // Now and then while pages are made, without a pause from when they are published.
      void arrival('publishing', end).then(() => {
        pause = 0
      })
      const seen = new Set<string>()
      while (!isDone) {
        for (const edition of editions) seen.add(glimpse(edition))
        await setTimeout(pause)
      }
      expect((await end).status).toBe(0)
      for (const edition of editions) seen.add(glimpse(edition))
      expect([...seen].sort()).toEqual(['portfolio 0', 'portfolio 1', 'practice 0', 'practice 1'])
    }
  }, 120_000)

  /** Which state a walk through the folder shows; where it was exchanged meanwhile, another walk is taken. */
  function glimpse(edition: string): string {
    const folder = join(at.site, edition)
    const before = lstatSync(folder).ino
    const found = walked(folder)
    if (lstatSync(folder).ino !== before) return glimpse(edition)
    const isState = (one: 0 | 1) => {
      const files = Object.entries(partOf(edition, site(one)))
      return isDeepStrictEqual(
        found,
        Object.fromEntries(files.map(([path, text]) => [path.slice(edition.length + 1), text])),
      )
    }
    return `${edition} ${([0, 1] as const).find(isState) ?? 'mixed'}`
  }

  function walked(folder: string): Record<string, string> | null {
    try {
      return contents(folder)
    } catch {
      return null
    }
  }
})

describe('Ctrl-C', () => {
  /** Interrupts a build of the other state; on a busy machine it may have published by then, and the next is tried. */
  async function interrupted(tries = 5) {
    const before = states01()
    const child = startOther()
    const end = ended(child)
    await arrival('staging', end)
    child.kill('SIGINT')
    const { status, err } = await end
    if (status === 0 && tries > 1) return interrupted(tries - 1)
    return { before, status, err }
  }

  it('leaves the site as it was, says so, and hinders no later build', async () => {
    const { before, status, err } = await interrupted()
    expect([status, err]).toEqual([130, 'Stopped. Nothing was published, the site is as it was.\n'])
    expect(states01()).toEqual(before)
    expect(growdownProcess(at.root, ...options).status).toBe(0)
    expect(states01()).toEqual(before.map(other))
  }, 60_000)
})
