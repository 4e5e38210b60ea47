import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { growdown, growdownWithKeys } from './run.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-review-'))
  cpSync(resolve('tests/casebooks/good-plain'), join(folder, 'cases'), { recursive: true })
  const teaching =
    'Mrs Ines Sand saw Juno go better. Nobody else was\nthere. The horn is dry.\nOn 2026-03-01 Whimsy stood beside Juno.'
  mkdirSync(file('whimsy'))
  writeFileSync(file('whimsy/horse.md'), '---\nname: Whimsy\nowner: abel\n---\n')
  const visit = file('juno/2026-02-16.md')
  writeFileSync(visit, readFileSync(visit, 'utf8').replace('Shown in the portfolio.', teaching))
})
afterEach(() => rmSync(folder, { recursive: true }))

const file = (path: string) => join(folder, 'cases', path)
const asOf = ['--as-of', '2026-04-01']
const review = (...args: readonly string[]) => growdown(folder, 'review', 'cases', ...asOf, ...args)
const answering = (keys: string, ...args: readonly string[]) =>
  growdownWithKeys(keys, folder, 'review', 'cases', ...asOf, ...args)
const build = () => growdown(folder, 'build', 'cases', '--edition', 'portfolio', ...asOf)
const approved = () =>
  existsSync(file('approvals.txt'))
    ? readFileSync(file('approvals.txt'), 'utf8')
        .split('\n')
        .filter((line) => line !== '' && !line.startsWith('#'))
    : []

it('shows what leaves beside the original, what looks like a name first, and where it stands', async () => {
  const { out, status } = await answering('ssssssssss')
  const screens = out.split(/\njuno, \d+ of 9: /).slice(1)
  expect(screens).toHaveLength(9)
  expect(screens[0]).toBe(`Teaching text
  written    On 2026-03-01 Whimsy stood beside Juno.
  leaves as  In week 6 »Whimsy« stood beside The grey cob.
  LOOK       name: "Whimsy"
  stands in  juno/2026-02-16.md:42
y approve   s skip   e edit   a approve all the rest of this case   q stop
`)
  expect(status).toBe(0)
  expect(approved()).toEqual([])
})

it('takes its answers from a pipe', () => {
  const { stdout } = spawnSync(process.execPath, [resolve('dist/cli.js'), 'review', 'cases', ...asOf], {
    cwd: folder,
    encoding: 'utf8',
    input: 'sy',
  })
  expect(stdout).toContain('Approved 1, skipped 1, 7 not looked at.')
})

it('keeps each answer at once: yes, the rest of the case but for what looks like a name, stop', async () => {
  expect((await answering('sy')).out).toContain('Approved 1, skipped 1, 7 not looked at.')
  expect(approved()).toHaveLength(1)
  // Signs that mean nothing are not answers; what was approved is not asked again.
  expect((await answering('\nx?\n s\nq')).out).toContain('Approved 0, skipped 1, 7 not looked at.')
  expect((await answering('sa')).out).toContain('Approved 7, skipped 1, 0 not looked at.')
  expect(approved()).toHaveLength(8)
  expect((await answering('y')).out).toContain('juno, 1 of 1: Teaching text')
  expect((await answering('')).out).toBe('Nothing waits: all that leaves has been approved.\n')
})

it('says where to edit, and asks about a changed sentence alone', async () => {
  await review('--approve-all')
  const visit = file('juno/2026-02-16.md')
  writeFileSync(visit, readFileSync(visit, 'utf8').replace('The horn is dry.', 'The horn is hard.'))
  const { out } = await answering('e')
  expect(out).toContain('juno, 1 of 1: Teaching text\n  leaves as  The horn is hard.\n')
  expect(out).toMatch(/Change it in cases\/juno\/2026-02-16\.md:\d+; it is asked about again then\./)
  expect(approved()).toHaveLength(9)
})

it('lists what waits, with status 1 while anything does, and takes an approval back', async () => {
  // A name that another horse has is refused by the search too, whoever approved it.
  rmSync(file('whimsy'), { recursive: true })
  const waiting = await review('--list')
  expect(waiting.status).toBe(1)
  expect(waiting.out).toContain(
    'juno (The grey cob): 9 sentences\n  juno/horse.md:15  Name of the case: The grey cob\n',
  )
  expect(waiting.out).toContain('The horn is dry.')
  expect(waiting.out).toMatch(/9 sentences to approve\.\n$/)
  expect(await build()).toMatchObject({ status: 0 })
  expect((await build()).out).toContain(
    'stay out: practice.md 1, juno 8.\nRead and approve: growdown review cases\n',
  )
  expect(existsSync(join(folder, 'site/portfolio/the-grey-cob'))).toBe(false)

  expect((await review('--approve-all')).out).toBe(
    'Approved unread: 9 sentences of 1 case. The next build publishes them as they are.\n',
  )
  expect(await review('--list')).toMatchObject({ status: 0, out: 'Nothing to approve.\n' })
  expect((await review('--approve-all', '--list')).status).toBe(2)
  expect((await build()).out).not.toContain('Waiting')
  expect(existsSync(join(folder, 'site/portfolio/the-grey-cob'))).toBe(true)

  expect((await answering('yt', '--all')).out).toContain('(approved)')
  expect(approved()).toHaveLength(8)
  expect((await review('--list', '--all')).out).toMatch(/approved, [\s\S]*1 sentence to approve\.\n$/)
})
