import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { growdown } from './run.ts'

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
  spawnSync(process.execPath, [resolve('dist/cli.js'), 'review', 'cases', ...asOf, ...args], {
    cwd: folder,
    encoding: 'utf8',
    input: keys,
  })
const build = () => growdown(folder, 'build', 'cases', '--edition', 'portfolio', ...asOf)
const approved = () =>
  existsSync(file('approvals.txt'))
    ? readFileSync(file('approvals.txt'), 'utf8')
        .split('\n')
        .filter((line) => line !== '' && !line.startsWith('#'))
    : []

it('shows what leaves beside the original, what looks like a name first, and where it stands', () => {
  const { stdout, status } = answering('ssssssssss')
  const screens = stdout.split(/\njuno, \d+ of 9: /).slice(1)
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

it('keeps each answer at once: yes, the rest of the case but for what looks like a name, stop', () => {
  expect(answering('sy').stdout).toContain('Approved 1, skipped 1, 7 not looked at.')
  expect(approved()).toHaveLength(1)
  // Signs that mean nothing are not answers; what was approved is not asked again.
  expect(answering('\nx?\n s\nq').stdout).toContain('Approved 0, skipped 1, 7 not looked at.')
  expect(answering('sa').stdout).toContain('Approved 7, skipped 1, 0 not looked at.')
  expect(approved()).toHaveLength(8)
  expect(answering('y').stdout).toContain('juno, 1 of 1: Teaching text')
  expect(answering('').stdout).toBe('Nothing waits: all that leaves has been approved.\n')
})

it('says where to edit, and asks about a changed sentence alone', () => {
  review('--approve-all')
  const visit = file('juno/2026-02-16.md')
  writeFileSync(visit, readFileSync(visit, 'utf8').replace('The horn is dry.', 'The horn is hard.'))
  const { stdout } = answering('e')
  expect(stdout).toContain('juno, 1 of 1: Teaching text\n  leaves as  The horn is hard.\n')
  expect(stdout).toMatch(/Change it in cases\/juno\/2026-02-16\.md:\d+; it is asked about again then\./)
  expect(approved()).toHaveLength(9)
})

it('lists what waits, with status 1 while anything does, and takes an approval back', () => {
  // A name that another horse has is refused by the search too, whoever approved it.
  rmSync(file('whimsy'), { recursive: true })
  const waiting = review('--list')
  expect(waiting.status).toBe(1)
  expect(waiting.out).toContain(
    'juno (The grey cob): 9 sentences\n  juno/horse.md:15  Name of the case: The grey cob\n',
  )
  expect(waiting.out).toContain('The horn is dry.')
  expect(waiting.out).toMatch(/9 sentences to approve\.\n$/)
  expect(build()).toMatchObject({ status: 0 })
  expect(build().out).toContain('stay out: practice.md 1, juno 8.\nRead and approve: growdown review cases\n')
  expect(existsSync(join(folder, 'site/portfolio/the-grey-cob'))).toBe(false)

  expect(review('--approve-all').out).toBe(
    'Approved unread: 9 sentences of 1 case. The next build publishes them as they are.\n',
  )
  expect(review('--list')).toMatchObject({ status: 0, out: 'Nothing to approve.\n' })
  expect(review('--approve-all', '--list').status).toBe(2)
  expect(build().out).not.toContain('Waiting')
  expect(existsSync(join(folder, 'site/portfolio/the-grey-cob'))).toBe(true)

  expect(answering('yt', '--all').stdout).toContain('(approved)')
  expect(approved()).toHaveLength(8)
  expect(review('--list', '--all').out).toMatch(/approved, [\s\S]*1 sentence to approve\.\n$/)
})
