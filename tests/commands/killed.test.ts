/** Whole builds as processes of their own that are killed, interrupted, or run out of disk. */
import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process'
import { existsSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { setImmediate, setTimeout } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { asOf, contents, horseText, type Place, place, practiceText, visitText } from '../build/kit.ts'
import { runs } from '../runs.ts'
import { growdown } from './run.ts'

const program = resolve('dist/cli.js')
const ids = ['alder', 'bramble', 'clover', 'dock', 'elder', 'fern'] as const

/** Two states of one casebook: every horse differs, one is only in the first and one only in the second. */
function state(toe: number, missing: string): Record<string, string> {
  const horses = ids.filter((id) => id !== missing)
  const files = horses.flatMap((id, index) => [
    [`${id}/horse.md`, horseText(id)],
    [`${id}/2026-03-02.md`, visitText('2026-03-02', toe + index)],
    [`${id}/2026-04-06.md`, visitText('2026-04-06', toe - 2 + index)],
  ])
  return { 'practice.md': practiceText, ...Object.fromEntries(files) }
}

const states = [state(96, 'fern'), state(93, 'alder')] as const

/** The same numbers in each run, so that a failing moment can be tried again. */
function dice(seed: number): () => number {
  let at = seed
  return () => {
    at = (at * 1_103_515_245 + 12_345) % 2 ** 31
    return at / 2 ** 31
  }
}

let at: Place
/** The site that each state gives when nothing goes wrong, and how long a whole build takes, milliseconds. */
const whole: { site: Record<string, string>; time: number }[] = []

function put(which: 0 | 1): void {
  for (const id of ids) rmSync(join(at.casebook, id), { recursive: true, force: true })
  for (const [path, text] of Object.entries(states[which])) at.write(path, text)
}

const start = (): ChildProcess =>
  spawn(process.execPath, [program, 'build', 'cases', '--as-of', asOf], {
    cwd: at.root,
    stdio: ['ignore', 'ignore', 'pipe'],
  })

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
    const began = performance.now()
    expect(growdown(at.root, 'build', 'cases', '--as-of', asOf).status).toBe(0)
    whole.push({ site: contents(at.site), time: performance.now() - began })
  }
}, 60_000)
afterAll(() => at.done())

describe('a build that is killed', () => {
  const site = (which: 0 | 1) => whole[which]?.site

  /** Builds the other state, kills it at a moment, and puts right what is left. */
  async function trial(from: 0 | 1, moment: () => Promise<void>): Promise<void> {
    const to = from === 0 ? 1 : 0
    put(from)
    expect(growdown(at.root, 'build', 'cases', '--as-of', asOf).status).toBe(0)
    put(to)
    const child = start()
    const end = ended(child)
    await moment()
    child.kill('SIGKILL')
    await end
    const journal = join(at.root, '.growdown/site/journal.json')
    if (!existsSync(journal)) expect([site(from), site(to)]).toContainEqual(contents(at.site))
    const next = growdown(at.root, 'build', 'cases', '--as-of', asOf)
    expect([next.status, next.err]).toEqual([0, ''])
    expect(contents(at.site)).toEqual(site(to))
  }

  it('at any moment leaves a whole site, and the next build is clean', async () => {
    const roll = dice(20260601)
    const longest = Math.max(...whole.map(({ time }) => time))
    for (let run = 0; run < runs(4, 60); run += 1) {
      const wait = roll() * longest
      await trial(run % 2 === 0 ? 0 : 1, () => setTimeout(wait))
    }
  }, 900_000)

  it('while it publishes is carried to its end by the next build', async () => {
    const journal = join(at.root, '.growdown/site/journal.json')
    for (const from of [0, 1, 0] as const) {
      await trial(from, async () => {
        const until = performance.now() + 20_000
        while (!existsSync(journal) && performance.now() < until) await setImmediate()
      })
    }
  }, 120_000)
})

describe('Ctrl-C', () => {
  it('leaves the site as it was, says so, and hinders no later build', async () => {
    put(0)
    growdown(at.root, 'build', 'cases', '--as-of', asOf)
    put(1)
    const child = start()
    const end = ended(child)
    const staging = join(at.root, '.growdown/site/staging')
    const until = performance.now() + 20_000
    while (!existsSync(staging) && performance.now() < until) await setImmediate()
    child.kill('SIGINT')
    const { status, err } = await end
    expect([status, err]).toEqual([130, 'Stopped. Nothing was published, the site is as it was.\n'])
    expect(contents(at.site)).toEqual(whole[0]?.site)
    expect(existsSync(join(at.root, '.growdown/site/lock'))).toBe(false)
    expect(growdown(at.root, 'build', 'cases', '--as-of', asOf).status).toBe(0)
    expect(contents(at.site)).toEqual(whole[1]?.site)
  }, 60_000)
})

/** Runs a shell script in a name space of its own, where it may mount a small disk at `$1`. */
const ownDisk = (script: string, ...args: readonly string[]) =>
  spawnSync('unshare', ['-rm', 'sh', '-c', script, 'sh', ...args], { encoding: 'utf8' })

const canMount =
  process.platform === 'linux' && ownDisk('mount -t tmpfs -o size=64k tmpfs "$1"', '/tmp').status === 0

// Where small disks cannot be mounted, failing.test.ts lets every single write fail instead.
describe.runIf(canMount)('a real disk of a few megabytes', () => {
  const script = (change: string) => `
    set -e
    cp -r "$1/cases" "$1/kept"
    mount -t tmpfs -o size=8m tmpfs "$1/disk"
    cp -r "$1/kept" "$1/disk/cases"
    cd "$1/disk"
    "$2" "$3" build --as-of ${asOf} >&2
    (cd site && find . -type f | sort | xargs sha256sum) > "$1/before"
    sed -i 's/^  toe length: .*/  toe length: [91, 90, 85, 84]/' cases/*/2026-04-06.md
    ${change}
    "$2" "$3" build --as-of ${asOf} && status=0 || status=$?
    (cd site && find . -type f | sort | xargs sha256sum) > "$1/after"
    cmp "$1/before" "$1/after" && echo "status $status, site as it was"`

  const run = (change: string) => {
    const folder = place(states[0])
    execFileSync('mkdir', [join(folder.root, 'disk')])
    const { stdout, stderr } = ownDisk(script(change), folder.root, process.execPath, program)
    folder.done()
    return { stdout, stderr }
  }

  it('that is full leaves the last good site, and says so', () => {
    const { stdout, stderr } = run('head -c 20m /dev/zero > filler 2>/dev/null || true')
    expect(stdout).toBe('status 1, site as it was\n')
    expect(stderr).toMatch(/could not be (written|made): the disk is full/)
  })

  it('that is read-only leaves the last good site, and says so', () => {
    const { stdout, stderr } = run('mount -o remount,ro tmpfs "$1/disk"')
    expect(stdout).toBe('status 1, site as it was\n')
    expect(stderr).toContain('the disk is read-only')
  })
})
