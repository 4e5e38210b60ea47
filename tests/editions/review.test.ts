import { readdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { approvalsIn } from '../../src/apps/review/approvals-on-disk.ts'
import { casebook, reviewed, type Trial, trial } from './kit.ts'

let at: Trial
beforeEach(() => {
  at = trial()
})
afterEach(() => at.done())

const place = (path: string) => join(at.site, 'portfolio', path)
const page = (path: string) => readFileSync(place(path), 'utf8')
const cases = () =>
  readdirSync(place(''), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && entry.name !== 'assets')
    .map(({ name }) => name)
    .sort()
const edited = (path: string, from: string | RegExp, to: string) =>
  at.write(path, (casebook[path] ?? '').replace(from, to))
const everything = () =>
  readdirSync(place(''), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(?:html|csv)$/.test(path))
    .map(page)
    .join('\n')
const photographed = async (shade: string) => {
  const bytes = await sharp({ create: { width: 900, height: 600, channels: 3, background: shade } })
    .jpeg()
    .toBuffer()
  at.write('zoe/photos/a.jpg', bytes)
  edited(
    'zoe/2026-01-12.md',
    'findings:',
    'photos:\n  - {file: photos/a.jpg, foot: LF, view: lateral, stage: before}\nfindings:',
  )
}

describe('a case that nobody has read', () => {
  it('reaches no page of the portfolio, and the build says how much waits and goes on', async () => {
    const { waiting, published, diagnostics } = await at.buildUnread(['portfolio'])
    expect(cases()).toEqual([])
    expect(everything()).not.toMatch(/Bramble|Sorrel|Fern|came from|Sandpiper|cob/)
    // The practice's name; of each horse the alias, a sentence.
    expect(waiting).toEqual([
      { id: 'practice.md', count: 1 },
      ...['may', 'pip', 'zoe'].map((id) => ({ id, count: 2 })),
    ])
    expect(published).not.toBeNull()
    expect(diagnostics.filter(({ level }) => level === 'error')).toEqual([])
  })

  it('stays out when it comes to a portfolio that stands, with every word of it', async () => {
    await at.build(['portfolio'])
    at.write(
      'rook/horse.md',
      (casebook['zoe/horse.md'] ?? '').replace('Zoë', 'Rook').replace('Bramble', 'Teasel'),
    )
    at.write('rook/2026-01-12.md', (casebook['zoe/2026-01-12.md'] ?? '').replace('Zoë came', 'Rook trotted'))
    expect((await at.buildUnread(['portfolio'])).waiting).toEqual([{ id: 'rook', count: 2 }])
    expect(cases()).toEqual(['bramble', 'fern', 'sorrel'])
    expect(everything()).not.toMatch(/Teasel|trotted/)
    await at.build(['portfolio'])
    expect(cases()).toContain('teasel')
  })

  it('is counted in a build of the practice alone', async () => {
    expect((await at.buildUnread(['practice'])).waiting).toHaveLength(4)
  })
})

describe('a case that was approved and then changed', () => {
  const changed = () =>
    edited('zoe/2026-01-12.md', ' on 2026-01-12.', ' on 2026-01-12. She stood badly at first.')

  it('stays as it was last approved, on its own pages and those over all', async () => {
    await at.build(['portfolio'])
    const [before, index] = [page('bramble/index.html'), page('index.html')]
    changed()
    edited('zoe/2026-02-16.md', 'after:', 'findings:\n  RH:\n    - thrush, frog, 2\nafter:')
    expect((await at.buildUnread(['portfolio'])).waiting).toEqual([{ id: 'zoe', count: 1 }])
    expect([page('bramble/index.html'), page('index.html')]).toEqual([before, index])
    await at.build(['portfolio'])
    expect(page('bramble/index.html')).toContain('She stood badly at first.')
    expect(page('index.html')).toContain('thrush')
  })

  it('stays so through other builds, another day, and builds of other editions', async () => {
    await at.build(['portfolio'])
    const before = page('bramble/index.html')
    changed()
    await at.buildUnread(['practice'])
    await at.buildUnread(['portfolio'], '2026-03-02')
    expect(await at.buildUnread(['portfolio'], '2026-03-02')).toMatchObject({
      horses: { made: 0 },
      published: { written: 0, removed: 0 },
    })
    await at.buildUnread(['owner', 'portfolio'], '2026-03-03')
    expect(page('bramble/index.html')).toBe(before)
  })

  it.each([
    ['what builds remember', () => rmSync(join(at.root, '.growdown'), { recursive: true })],
    ['the site', () => rmSync(at.site, { recursive: true })],
    ['its table of readings', () => rmSync(place('bramble/readings.csv'))],
  ])('stays out once %s is gone', async (_, lose) => {
    await at.build(['portfolio'])
    changed()
    lose()
    await at.buildUnread(['portfolio'])
    expect(cases()).toEqual(['fern', 'sorrel'])
    expect(page('index.html')).not.toContain('Bramble')
  })

  it('is named where a page of it was changed by hand', async () => {
    await at.build(['portfolio'])
    writeFileSync(place('bramble/index.html'), `${page('bramble/index.html')} Zoë`)
    changed()
    const { published } = await at.buildUnread(['portfolio'])
    expect(published?.left.join()).toContain('bramble')
  })

  it('goes at once where a private word was added, or consent withdrawn', async () => {
    await at.build(['portfolio'])
    changed()
    edited('zoe/horse.md', 'private words: [', 'private words: [badly, ')
    edited('may/2026-01-12.md', 'May came', 'She came')
    edited('may/horse.md', 'portfolio: yes', 'portfolio: no')
    expect((await at.buildUnread(['portfolio'])).waiting.map(({ id }) => id)).toEqual(['zoe'])
    expect(cases()).toEqual(['sorrel'])
  })

  it('does not ask again for other space, other line ends, or what the rewriting leaves as it was', async () => {
    await at.build(['portfolio'])
    edited(
      'zoe/2026-01-12.md',
      'came from Thistledown Yard on 2026-01-12.',
      'came\nfrom  Thistledown Yard on 12 January 2026.',
    )
    expect((await at.buildUnread(['portfolio'])).waiting).toEqual([])
  })
})

describe('photographs', () => {
  it('wait each, and again when their bytes change; the case stays as it was', async () => {
    await at.build(['portfolio'])
    const before = page('bramble/index.html')
    await photographed('#804020')
    expect((await at.buildUnread(['portfolio'])).waiting).toEqual([{ id: 'zoe', count: 1 }])
    expect(page('bramble/index.html')).toBe(before)
    await at.build(['portfolio'])
    expect(page('bramble/index.html')).toContain('<img')
    const picture = readFileSync(place('bramble/picture-1-480.webp'))
    await photographed('#208040')
    expect((await at.buildUnread(['portfolio'])).waiting).toEqual([{ id: 'zoe', count: 1 }])
    expect(readFileSync(place('bramble/picture-1-480.webp'))).toEqual(picture)
  })

  it('go with the whole case when their consent is withdrawn while something waits', async () => {
    await photographed('#804020')
    await at.build(['portfolio'])
    at.write('zoe/horse.md', (casebook['zoe/horse.md'] ?? '').replace('photos: yes', 'photos: no'))
    edited('zoe/2026-01-12.md', ' on 2026-01-12.', ' on 2026-01-12. She stood badly at first.')
    await at.buildUnread(['portfolio'])
    expect(cases()).toEqual(['fern', 'sorrel'])
  })
})

describe('approvals', () => {
  it('hold in their own case alone', async () => {
    edited('pip/2026-01-12.md', 'Pipkin came from', 'Nobody knew where the horse came from')
    edited(
      'may/2026-01-12.md',
      'May came from Hestercombe on',
      'Nobody knew where the horse came from Thistledown Yard on',
    )
    await at.approveAll()
    const hashes = [...approvalsIn(at.casebook).byCase.values()].flatMap((of) => [...of])
    expect(new Set(hashes).size).toBe(hashes.length)
  })

  it('are the lines of a file that two people may put together; what is no line is named', async () => {
    await at.approveAll()
    const text = readFileSync(join(at.casebook, 'approvals.txt'), 'utf8')
    const [may, others] = [/^may .*$/gm, /^(?:pip|zoe|practice).*$/gm].map((of) => text.match(of) ?? [])
    at.write(
      'approvals.txt',
      `# mine\r\n<<<<<<< here\r\n${may?.join('\r\n')}\r\n=======\r\n${others?.toReversed().join('\r\n')}\r\n>>>>>>> there\r\nzoe abc\r\n`,
    )
    const { waiting, diagnostics } = await at.buildUnread(['portfolio'])
    expect(waiting).toEqual([])
    expect(diagnostics.filter(({ file }) => file === 'approvals.txt')).toMatchObject([
      { level: 'warning', line: may && others ? may.length + others.length + 5 : 0, sourceLine: 'zoe abc\r' },
    ])
    // The next answer leaves what a person wrote, in one order, without what git left.
    edited('zoe/2026-01-12.md', 'came from', 'is from')
    await at.approveAll()
    const after = readFileSync(join(at.casebook, 'approvals.txt'), 'utf8').trimEnd().split('\n')
    expect(after.slice(0, 2)).toEqual(['# mine', 'zoe abc'])
    expect(after.slice(2)).toEqual(after.slice(2).toSorted())
    expect(after).toHaveLength(2 + (may?.length ?? 0) + (others?.length ?? 0) + 1)
  })

  it('approve nothing through a link, and are not written through one', async () => {
    await at.approveAll()
    renameSync(join(at.casebook, 'approvals.txt'), join(at.root, 'elsewhere'))
    symlinkSync(join(at.root, 'elsewhere'), join(at.casebook, 'approvals.txt'))
    expect((await at.buildUnread(['portfolio'])).waiting).toHaveLength(4)
    await expect(at.approveAll()).rejects.toThrow('approvals.txt could not be read')
  })
})

describe('all that a person wrote', () => {
  /** A word in every field of a case that takes free words; `zq` stands in no word of the program. */
  const planted = `---
name: Zoë
owner: kestrel
kind: zqkind
sex: zqsex
born: 2014
started: 2026-01-12
height: 150 cm
history: [zqhistory]
vet: {name: zqvet, phone: 01632 960111, diagnosis: laminitis zqdiagnosis, date: 2026-01-10}
consent: {owner site: yes, portfolio: yes, photos: yes, given: 2026-01-12}
alias: Zqalias
---
zqown

## For the owner

zqletter

## For teaching

Zqcase tells of it.

### Owner's view

Zqview said so.
`
  const visit = `---
date: 2026-01-12
footing: zqfooting
before:
  toe length:   [98, 96, 90, 91]
findings:
  LF:
    - zqterm, toe, 2, zqremark
grow-out:
  LF:
    - zqfeature, toe, 42 mm
comfort:
  lameness: {LF: 3, by: zqjudge}
  surfaces: {zqsurface: unwilling}
stance: ["toe-out, zqstance", straight, toe-out, toe-out]
photos:
  - {file: photos/a.jpg, foot: LF, view: lateral, caption: zqcaption}
care: [zqcare]
---
zqnote

## For teaching

Zqvisit was the first.
`

  it('and that reaches a page or the table is asked about', async () => {
    edited('practice.md', 'Sandpiper', 'Zqpractice')
    const practice = readFileSync(join(at.casebook, 'practice.md'), 'utf8')
    at.write('practice.md', practice.replace('owners:', 'terms: {zqterm: zqmeaning}\nowners:'))
    await photographed('#804020')
    at.write('zoe/horse.md', planted)
    at.write('zoe/2026-01-12.md', visit)
    at.write(
      'zoe/2026-02-16.md',
      visit.replace('2026-01-12', '2026-02-16').replace('zqterm, toe, 2', 'zqterm, toe, 3'),
    )
    const asked = (await reviewed(at.casebook)).cases
      .flatMap(({ items }) => items)
      .flatMap(({ item }) => ('published' in item ? [item.published] : []))
      .join('\n')
      .toLowerCase()
    const built = await at.build(['portfolio'])
    expect(built.diagnostics.filter(({ level }) => level === 'error')).toEqual([])
    const shown = [...new Set(everything().toLowerCase().match(/zq\w+/g))].sort()
    expect(shown).toEqual(
      ['zqalias', 'zqcase', 'zqfeature', 'zqpractice', 'zqterm', 'zqview', 'zqvisit'].sort(),
    )
    for (const word of shown) expect(asked).toContain(word)
  })
})
