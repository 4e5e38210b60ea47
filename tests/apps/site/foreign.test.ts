/** Nothing is deleted or overwritten that the tool did not write, whoever put it there and however. */
import { execFileSync } from 'node:child_process'
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { contentHash } from '../../../src/build/disk/content-hash.ts'
import type { Files } from '../../../src/build/disk/files.ts'
import { disk } from '../../../src/build/disk/real-disk.ts'
import {
  build,
  contents,
  horseText,
  type Place,
  pages,
  place,
  practiceText,
  threeHorses,
} from '../../build/kit.ts'

let at: Place
beforeEach(() => {
  at = place(threeHorses)
})
afterEach(() => at.done())

const inSite = (path: string) => join(at.site, path)
const put = (place: string, text = 'mine') => {
  mkdirSync(dirname(place), { recursive: true })
  writeFileSync(place, text)
}
const rename = () => at.write('alder/horse.md', horseText('Aldous'))

describe('files beside the pages', () => {
  it('stay where they are, with their links, folders and permissions, through every change', async () => {
    put(inSite('README.md'))
    put(inSite('practice/notes.txt'))
    put(inSite('practice/.git/objects/ab'))
    mkdirSync(inSite('practice/empty'))
    symlinkSync('notes.txt', inSite('practice/link'))
    symlinkSync('nowhere', inSite('practice/broken-link'))
    await build(at)
    rename()
    await build(at)
    at.remove('alder')
    await build(at)
    const site = contents(at.site)
    for (const path of ['README.md', 'practice/notes.txt', 'practice/.git/objects/ab'])
      expect(site[path]).toBe('mine')
    expect(readFileSync(inSite('practice/link'), 'utf8')).toBe('mine')
    expect(lstatSync(inSite('practice/broken-link')).isSymbolicLink()).toBe(true)
    expect(existsSync(inSite('practice/empty'))).toBe(true)
  })

  it('keep the permissions of their folder', async () => {
    await build(at)
    execFileSync('chmod', ['751', inSite('practice')])
    rename()
    await build(at)
    expect(lstatSync(inSite('practice')).mode & 0o777).toBe(0o751)
  })

  it('are kept that come while the site is exchanged, also where a page is exchanged', async () => {
    await build(at)
    rename()
    const files: Files = {
      ...disk,
      exchange: (next, live) => {
        put(join(live, 'late.txt'))
        put(join(live, 'alder/late.txt'))
        renameSync(join(live, 'alder/late.txt'), join(live, 'alder/index.html'))
        return disk.exchange(next, live)
      },
    }
    const built = await build(at, { files })
    const site = contents(at.site)
    expect(site['practice/late.txt']).toBe('mine')
    expect(site['practice/alder/index.html']).toContain('Aldous')
    expect(site['practice/alder/index.html.kept-2']).toBe('mine')
    expect(built.published?.left).toEqual([inSite('practice/alder/index.html.kept-2')])
  })
})

describe('a place where a page is to stand', () => {
  it('stops the build where someone else’s file is there, and nothing is published', async () => {
    const mine = inSite('practice/alder/index.html')
    put(mine)
    await expect(build(at)).rejects.toThrow(
      `${mine} is a file that growdown did not write, and a page is to stand there. ` +
        'Move it away, or build elsewhere with --out; nothing was published.',
    )
    expect(contents(at.site)).toEqual({ 'practice/alder/index.html': 'mine' })
  })

  it('stops the build also where only a folder is to stand', async () => {
    put(inSite('practice'))
    await expect(build(at)).rejects.toThrow('practice is a file that growdown did not write')
  })

  it.each(['edited', 'a folder', 'a link', 'a special file'])(
    'is left and named where the page became %s since it was made',
    async (what) => {
      await build(at)
      const page = inSite('practice/alder/index.html')
      const target = join(at.root, 'target.txt')
      put(target)
      rmSync(page)
      if (what === 'edited') put(page, 'edited')
      if (what === 'a folder') put(join(page, 'mine.txt'))
      if (what === 'a link') symlinkSync(target, page)
      if (what === 'a special file') execFileSync('mkfifo', [page])
      rename()
      const kind = lstatSync(page)
      for (const change of [rename, () => at.remove('alder')]) {
        change()
        const built = await build(at)
        expect(built.published?.left).toEqual([page])
        expect(lstatSync(page).mode).toBe(kind.mode)
      }
      expect(readFileSync(target, 'utf8')).toBe('mine')
      if (what === 'edited') expect(readFileSync(page, 'utf8')).toBe('edited')
      if (what === 'a folder') expect(readFileSync(join(page, 'mine.txt'), 'utf8')).toBe('mine')
      if (what === 'a link') expect(lstatSync(page).isSymbolicLink()).toBe(true)
    },
  )

  it('is not reached over a link in the place of a horse’s folder', async () => {
    await build(at)
    const elsewhere = join(at.root, 'elsewhere')
    renameSync(inSite('practice/alder'), elsewhere)
    symlinkSync(elsewhere, inSite('practice/alder'))
    const before = contents(elsewhere)
    rename()
    await expect(build(at)).rejects.toThrow('practice/alder is a link that growdown did not write')
    at.remove('alder')
    await expect(build(at)).rejects.toThrow('practice/alder is a link that growdown did not write')
    expect(contents(elsewhere)).toEqual(before)
  })
})

describe('an edition’s own folder', () => {
  const elsewhere = () => join(at.root, 'elsewhere/pages')

  it('may be a link: it is followed, and stays', async () => {
    mkdirSync(elsewhere(), { recursive: true })
    put(join(elsewhere(), 'mine.txt'))
    mkdirSync(at.site)
    symlinkSync(elsewhere(), inSite('practice'))
    await build(at)
    rename()
    const built = await build(at)
    expect(built.published?.left).toEqual([])
    expect(lstatSync(inSite('practice')).isSymbolicLink()).toBe(true)
    const there = contents(elsewhere())
    expect(there['alder/index.html']).toContain('Aldous')
    expect(there['mine.txt']).toBe('mine')
    expect(Object.keys(contents(dirname(elsewhere()))).filter((path) => !path.startsWith('pages/'))).toEqual(
      [],
    )
  })

  it.each([
    ['the casebook', () => at.casebook],
    ['a folder in the casebook', () => join(at.casebook, 'alder')],
    ['a folder that holds the casebook', () => at.root],
    ['the site itself', () => at.site],
  ])('may not lead to %s', async (_, target) => {
    mkdirSync(at.site)
    symlinkSync(target(), inSite('practice'))
    const before = contents(at.casebook)
    await expect(build(at)).rejects.toThrow('which holds other things of yours')
    expect(contents(at.casebook)).toEqual(before)
  })

  it('may not lead nowhere', async () => {
    mkdirSync(at.site)
    symlinkSync('nowhere', inSite('practice'))
    await expect(build(at)).rejects.toThrow('practice is a link that leads to no folder')
  })
})

describe('what the tool wrote down for itself', () => {
  const list = () => inSite('.made.json')
  const tamper = (change: (files: Record<string, unknown>) => void) => {
    const record = JSON.parse(readFileSync(list(), 'utf8'))
    change(record.files)
    writeFileSync(list(), JSON.stringify(record))
  }

  it.each([
    '../precious.txt',
    'practice/../../precious.txt',
    '/precious.txt',
    'practice\\..\\x',
    '',
    'practice//x',
  ])('leads to no file outside: %j', async (path) => {
    await build(at)
    const precious = join(at.root, 'precious.txt')
    put(precious)
    tamper((files) => {
      files[path] = contentHash('mine')
    })
    rename()
    await expect(build(at)).rejects.toThrow('.made.json cannot be understood')
    expect(readFileSync(precious, 'utf8')).toBe('mine')
  })

  it('cannot make someone else’s file its own: what is removed is compared first', async () => {
    await build(at)
    put(inSite('practice/mine.txt'))
    tamper((files) => {
      files['practice/mine.txt'] = contentHash('other')
    })
    const built = await build(at)
    expect(built.published?.left).toEqual([inSite('practice/mine.txt')])
    expect(readFileSync(inSite('practice/mine.txt'), 'utf8')).toBe('mine')
  })

  it.each(['not json', '[]', '{"files": 3}', '{"files": {"practice/index.html": 7}}', 'null'])(
    'stops the build where it is damaged: %s',
    async (text) => {
      await build(at)
      writeFileSync(list(), text)
      rename()
      await expect(build(at)).rejects.toThrow('.made.json cannot be understood')
    },
  )

  it('is found again page by page where it was deleted', async () => {
    await build(at)
    const before = contents(at.site)
    rmSync(list())
    await build(at)
    expect(contents(at.site)).toEqual(before)
  })

  it.each([
    { name: '..', from: 'staged', puts: [], removes: ['precious.txt'] },
    { name: 'practice', from: 'staged', puts: [], removes: ['../../precious.txt'] },
    { name: 'practice', from: 'staged', puts: ['../../precious.txt'], removes: [] },
    { name: 'practice', from: 'staged', puts: ['mine.txt'], removes: ['mine.txt'] },
  ])('leads a journal to no file of someone else: %j', async (journal) => {
    await build(at)
    const [outside, inside] = [join(at.root, 'precious.txt'), inSite('practice/mine.txt')]
    put(outside)
    put(inside)
    put(join(at.root, '.growdown/site/staging/practice/mine.txt'), 'other')
    const text = JSON.stringify(journal)
    for (const seal of ['', contentHash(`journal${text}`)]) {
      writeFileSync(join(at.root, '.growdown/site/journal'), `${seal}\n${text}`)
      await build(at)
      expect([readFileSync(outside, 'utf8'), readFileSync(inside, 'utf8')]).toEqual(['mine', 'mine'])
    }
  })

  it.each(['', '/site', '/site/fragments', '/site/staging', '/site/pictures', '/site/publishing'])(
    'lies in no folder that is a link: .growdown%s',
    async (name) => {
      await build(at)
      const theirs = join(at.root, 'theirs')
      put(join(theirs, 'precious.txt'))
      const link = join(at.root, '.growdown', name)
      rmSync(link, { recursive: true, force: true })
      symlinkSync(theirs, link)
      rename()
      await expect(build(at)).rejects.toThrow('is a link; growdown keeps its own work there')
      expect(contents(theirs)).toEqual({ 'precious.txt': 'mine' })
    },
  )
})

describe('two casebooks and one site', () => {
  const other = () => {
    const folder = mkdtempSync(join(at.root, 'other-'))
    put(join(folder, 'practice.md'), practiceText.replace('Reed Bank', 'Sedge Row'))
    return folder
  }

  it('are refused, with the way out', async () => {
    await build(at)
    const before = contents(at.site)
    const casebook = other()
    await expect(build(at, { casebook })).rejects.toThrow(
      `${at.site} is made from ${at.casebook} (Reed Bank Hooves), not from ${casebook}, and its pages would go. ` +
        'Build into another folder with --out; or, if this casebook is to take its place, move the built folders ' +
        'and .made.json away first. Nothing was published.',
    )
    expect(contents(at.site)).toEqual(before)
  })

  it('are refused also where the first is not there just now', async () => {
    await build(at)
    const casebook = other()
    renameSync(at.casebook, join(at.root, 'unplugged'))
    await expect(build(at, { casebook })).rejects.toThrow('is made from')
  })

  it('are one where the casebook was moved', async () => {
    await build(at)
    const casebook = join(at.root, 'moved')
    renameSync(at.casebook, casebook)
    const built = await build(at, { casebook })
    expect(built.published).toMatchObject({ removed: 0, left: [] })
    renameSync(casebook, at.casebook)
    await build(at)
  })

  it('are one where it is reached over a link', async () => {
    await build(at)
    symlinkSync(at.casebook, join(at.root, 'link'))
    const built = await build(at, { casebook: join(at.root, 'link') })
    expect(built.published?.written).toBe(0)
  })

  it('are told apart by what a site of an earlier version says after its first build', async () => {
    await build(at)
    const { files } = JSON.parse(readFileSync(inSite('.made.json'), 'utf8'))
    writeFileSync(inSite('.made.json'), JSON.stringify({ version: 1, files }))
    const before = pages(at.site)
    await build(at)
    expect(pages(at.site)).toEqual(before)
    await expect(build(at, { casebook: other() })).rejects.toThrow('is made from')
  })
})
