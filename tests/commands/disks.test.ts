/**
 * Whole builds on real disks that are small, read-only or lie somewhere else. In the short run all editions are built where
 * one of them lies elsewhere; else one alone.
 */
import { execFileSync, spawnSync } from 'node:child_process'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { asOf, type Place, place, threeHorses } from '../build/kit.ts'
import { isLong } from '../runs.ts'

const program = resolve('dist/cli.js')

/** Runs a shell script in a name space of its own, where it may mount a small disk at `$1`. */
const ownDisk = (script: string, ...args: readonly string[]) =>
  spawnSync('unshare', ['-rm', 'bash', '-c', script, 'bash', ...args], { encoding: 'utf8' })

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
    (cd site && find . -type f -path './*/*' | sort | xargs sha256sum) > "$1/before"
    sed -i 's/^  toe length: .*/  toe length: [91, 90, 85, 84]/' cases/*/2026-04-06.md
    ${change}
    "$2" "$3" build --as-of ${asOf} && status=0 || status=$?
    (cd site && find . -type f -path './*/*' | sort | xargs sha256sum) > "$1/after"
    cmp "$1/before" "$1/after" && echo "status $status, site as it was"`

  const run = (change: string) => {
    const folder = place(threeHorses)
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

describe.runIf(canMount)('a site, or an edition of it, on another disk', () => {
  /** Begins every script: goes to a casebook. */
  const start = `
    set -e
    cd "$1"; node="$2"; program="$3"; fresh="$4"; edition="\${5:-all}"
    build() { "$node" "$program" build cases --edition "$edition" --as-of ${asOf}; }
    change() { sed -i 's/^  toe length: .*/  toe length: [91, 90, 85, 84]/' cases/*/2026-04-06.md; }`

  /** Builds, changes every horse, builds again; the pages must be those of a fresh build on one disk. */
  const script = (prepare: string) => `${start}
    mkdir -p site away
    ${prepare}
    build >&2
    echo mine > site/practice/mine.txt
    change
    build >&2
    grep -qx mine site/practice/mine.txt
    rm site/practice/mine.txt
    for one in practice portfolio; do
      [ "$edition" = all ] || [ "$edition" = "$one" ] || continue
      diff -r "site/$one" "$fresh/site/$one" >&2
    done
    find site/practice/ away -name '*growdown*' ! -name growdown.css
    echo done`

  let fresh: Place
  beforeAll(() => {
    fresh = place(threeHorses)
    const { status, stderr } = ownDisk(`${start}; change; build >&2`, fresh.root, process.execPath, program)
    expect([status, stderr]).toEqual([0, expect.not.stringContaining('left as they are')])
  }, 60_000)
  afterAll(() => fresh.done())

  const alone = isLong ? 'all' : 'practice'

  it.each([
    ['the site is a disk of its own', 'mount -t tmpfs tmpfs site', alone],
    ['an edition is a disk of its own', 'mkdir site/practice; mount -t tmpfs tmpfs site/practice', 'all'],
    [
      'an edition is the same disk mounted again',
      'mkdir site/practice; mount --bind away site/practice',
      alone,
    ],
    [
      'an edition is a link to a folder on another disk',
      'mount -t tmpfs tmpfs away; mkdir away/p; ln -s ../away/p site/practice',
      alone,
    ],
    ['an edition is a link to a disk', 'mount -t tmpfs tmpfs away; ln -s ../away site/practice', alone],
    ['the work folder is on another disk', 'mkdir .growdown; mount -t tmpfs tmpfs .growdown', alone],
  ])(
    'is built where %s',
    (_, prepare, edition) => {
      const folder = place(threeHorses)
      const { stdout, stderr } = ownDisk(
        script(prepare),
        folder.root,
        process.execPath,
        program,
        fresh.root,
        edition,
      )
      folder.done()
      expect(stdout).toBe('done\n')
      expect(stderr).not.toContain('left as they are')
    },
    60_000,
  )
})
