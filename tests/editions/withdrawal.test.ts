/** A consent that has ended, and a horse that was sold: seen by any build, whatever its editions and whatever else is held back. */
import { existsSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { armor, Decrypter } from 'age-encryption'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { armoredIn } from '../../src/editions/owner/locked-page.ts'
import { casebook, type Trial, trial } from './kit.ts'

const all = ['practice', 'owner', 'portfolio']

let at: Trial
/** Built once; each test begins with what that left. */
let asBuilt: () => void
beforeAll(async () => {
  at = trial()
  await at.build(all)
  asBuilt = at.keep()
}, 60_000)
beforeEach(() => asBuilt())
afterAll(() => at.done())

const edited = (path: string, from: string | RegExp, to: string) =>
  at.write(path, readFileSync(join(at.casebook, path), 'utf8').replace(from, to))
const text = (path: string) => readFileSync(join(at.site, path), 'utf8')
const isThere = (path: string) => existsSync(join(at.site, path))
const keyOf = (owner: string): { passphrase: string; token: string } =>
  parse(readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8'))[owner]
const pageOf = (owner: string) => `owners/${keyOf(owner).token}/index.html`

async function opened(owner: string): Promise<string> {
  const decrypter = new Decrypter()
  decrypter.addPassphrase(keyOf(owner).passphrase)
  return decrypter.decrypt(armor.decode(armoredIn(text(pageOf(owner))) ?? ''), 'text')
}

const paths = (list: readonly { readonly path: string }[] | undefined) => list?.map(({ path }) => path)
/** A name that the rewriting of teaching text does not know, so that the portfolio is refused. */
const slip = () => edited('may/2026-01-12.md', 'May came from', 'Ju&#110;ior Pip&shy;kin came from')

describe('a case whose consent has ended', () => {
  it('goes in a build of the practice alone, which says what to delete', async () => {
    edited('zoe/horse.md', 'portfolio: yes', 'portfolio: no')
    const built = await at.build(['practice'])
    expect(built.withdrawn).toEqual([{ folder: 'portfolio/bramble', ended: ['zoe: portfolio'] }])
    expect(built.alsoBuilt.map(({ name }) => name)).toEqual(['portfolio'])
    expect(isThere('portfolio/bramble')).toBe(false)
    for (const page of ['portfolio/index.html', 'portfolio/summary.html'])
      expect(text(page)).not.toMatch(/bramble/i)
    expect(text('portfolio/index.html')).toContain('fern/index.html')
    const [host] = built.hosts
    expect(paths(host?.remove)).toEqual(['portfolio/bramble/'])
    expect(paths(host?.upload)).toEqual(['portfolio/index.html', 'portfolio/summary.html'])
    // The next one has nothing to do about it.
    const again = await at.build(['practice'])
    expect([again.withdrawn, again.alsoBuilt, again.published?.removed]).toEqual([[], [], 0])
  })

  it.each([
    ['remembers what it published', () => {}],
    ['has lost what it remembered', () => rmSync(join(at.root, '.growdown/site/state.json'))],
  ])('goes though the rest of the portfolio is refused, where the tool %s', async (how, lose) => {
    const before = text('portfolio/fern/index.html')
    lose()
    slip()
    edited('pip/2026-01-12.md', 'Pipkin came', 'NEWSENTENCE. Pipkin came')
    edited('zoe/horse.md', 'portfolio: yes', 'portfolio: no')
    const built = await at.build(all)
    expect(built.refusals.map(({ folder }) => folder)).toEqual(['portfolio'])
    expect(isThere('portfolio/bramble')).toBe(false)
    expect(text('portfolio/fern/index.html')).toBe(before)
    expect(text('portfolio/sorrel/index.html')).not.toContain('NEWSENTENCE')
    // A page over all cases names it no more: it is made anew of what stood there, or goes.
    const isMadeAnew = how === 'remembers what it published'
    expect(isThere('portfolio/index.html')).toBe(isMadeAnew)
    if (isMadeAnew) {
      expect(text('portfolio/index.html')).not.toMatch(/bramble/i)
      expect(text('portfolio/index.html')).toContain('fern/index.html')
    }
    // Mended, all stands again.
    at.write('may/2026-01-12.md', casebook['may/2026-01-12.md'] ?? '')
    expect((await at.build(all)).refusals).toEqual([])
    expect(text('portfolio/sorrel/index.html')).toContain('NEWSENTENCE')
    expect(text('portfolio/index.html')).toContain('sorrel/index.html')
  })

  it('goes with its folder in the casebook', async () => {
    rmSync(join(at.casebook, 'zoe'), { recursive: true })
    await at.build(['practice'])
    expect(isThere('portfolio/bramble')).toBe(false)
    expect(await opened('kestrel')).not.toContain('Zoë')
  })

  it('loses its pictures alone when consent for them ends, and wholly where it cannot be made anew', async () => {
    edited('zoe/horse.md', 'photos: yes', 'photos: no')
    const built = await at.build(['practice'])
    expect(built.withdrawn.map(({ ended }) => ended)).toEqual([['zoe: photos'], ['zoe: photos']])
    expect(isThere('portfolio/bramble')).toBe(true)

    edited('pip/horse.md', 'photos: yes', 'photos: no')
    slip()
    await at.build(['practice'])
    expect([isThere('portfolio/sorrel'), isThere('portfolio/bramble')]).toEqual([false, true])
  })

  it('is not known in a site from before this was written down, so all that others read is built', async () => {
    const record = JSON.parse(text('.made.json'))
    writeFileSync(join(at.site, '.made.json'), JSON.stringify({ ...record, version: 2, restsOn: undefined }))
    edited('zoe/horse.md', 'portfolio: yes', 'portfolio: no')
    expect((await at.build(['practice'])).alsoBuilt.map(({ name }) => name)).toEqual(['owner', 'portfolio'])
    expect(isThere('portfolio/bramble')).toBe(false)
    expect((await at.build(['practice'])).alsoBuilt).toEqual([])
  })

  it('stays in a build of the practice alone while horse.md cannot be read, and goes when it is built', async () => {
    edited('zoe/horse.md', 'portfolio: yes', 'portfolio: ye')
    await at.build(['practice'])
    expect(isThere('portfolio/bramble')).toBe(true)
    slip()
    await at.build(['portfolio'])
    expect(isThere('portfolio/bramble')).toBe(false)
  })
})

describe("an owner's page", () => {
  it('loses a horse in a build of the practice alone, and goes with the last one', async () => {
    edited('zoe/horse.md', 'owner site: yes', 'owner site: no')
    edited('may/horse.md', 'owner site: yes', 'owner site: no')
    const gone = pageOf('fenwick')
    const built = await at.build(['practice'])
    expect(await opened('kestrel')).not.toContain('Zoë')
    expect(await opened('kestrel')).toContain('Pipkin')
    expect(isThere(gone)).toBe(false)
    const [host] = built.hosts
    expect(paths(host?.remove)).toEqual([gone.replace('index.html', '')])
    expect(paths(host?.upload)).toEqual([pageOf('kestrel').replace('index.html', '')])
  })

  it('goes where it cannot be made without the horse', async () => {
    edited('zoe/horse.md', 'owner site: yes', 'owner site: no')
    edited('pip/2026-01-12.md', 'LETTER-PIP', 'She stands beside May, of Orla Fenwick.')
    const built = await at.build(all)
    expect(built.refusals.map(({ owner }) => owner)).toEqual(['kestrel'])
    expect(isThere(pageOf('kestrel'))).toBe(false)
    expect(await opened('fenwick')).toContain('LETTER-MAY')
  })

  it('does not show a horse of an owner whom practice.md does not have, nor does the portfolio', async () => {
    edited('zoe/horse.md', 'owner: kestrel', 'owner: kestrl')
    await at.build(['owner', 'portfolio'])
    expect(await opened('kestrel')).not.toContain('Zoë')
    expect(isThere('portfolio/bramble')).toBe(false)
  })
})

describe('a horse that was sold', () => {
  beforeEach(() => {
    edited('zoe/2026-02-16.md', /$/, '\n## For the owner\n\nLETTER-AFTER to you.\n')
    edited('zoe/horse.md', 'owner: kestrel', 'owner: fenwick\nowner since: 2026-02-01')
  })

  it("is on its new owner's page with its readings, and with letters of the new owner's time alone", async () => {
    await at.build(['practice'])
    expect(await opened('kestrel')).not.toMatch(/Zoë|LETTER-ZOE/)
    const page = await opened('fenwick')
    expect(page).toContain('Zoë')
    expect(page).toContain('LETTER-AFTER')
    expect(page).not.toContain('LETTER-ZOE')
    expect(page).toContain('CARE-ZOE')
    expect(page).toContain('Seen 2 times')
    expect(page).toMatch(
      /This horse has been yours since [^<]*2026\. Letters and photos from before that day are not shown\./,
    )
  })

  it('has nothing to say of the time before where nothing of it is hidden', async () => {
    edited('zoe/horse.md', '2026-02-01', '2026-01-12')
    await at.build(['owner'])
    expect(await opened('fenwick')).not.toContain('has been yours')
    expect(await opened('fenwick')).toContain('LETTER-ZOE')
  })

  it('tells its new owner nothing of what the old one was asked to do', async () => {
    edited('zoe/horse.md', '2026-02-01', '2026-02-20')
    await at.build(['owner'])
    const page = await opened('fenwick')
    expect(page).not.toMatch(/CARE-ZOE|LETTER-ZOE|LETTER-AFTER/)
    expect(page).toContain('CARE-MAY')
  })
})

describe('the folders that others read', () => {
  const filesIn = (folder: string) =>
    readdirSync(join(at.site, folder), { recursive: true, encoding: 'utf8' })
      .map((path) => join(at.site, folder, path))
      .filter((path) => statSync(path).isFile())
  const timesIn = (folder: string) => [...new Set(filesIn(folder).map((path) => statSync(path).mtimeMs))]

  it('carry one time each, another one after each change, and none that tells the hour', async () => {
    const day = Date.parse('2026-03-01T00:00:00Z')
    expect([timesIn('owners'), timesIn('portfolio')]).toEqual([[day], [day]])
    edited('zoe/2026-02-16.md', '[46, 46, 49, 48]', '[47, 46, 49, 48]')
    await at.build(all)
    expect([timesIn('owners'), timesIn('portfolio')]).toEqual([[day + 1000], [day + 1000]])
    expect((await at.build(all)).published).toMatchObject({ written: 0, removed: 0 })
    expect(timesIn('portfolio')).toEqual([day + 1000])
    edited('zoe/2026-02-16.md', '[47, 46, 49, 48]', '[48, 46, 49, 48]')
    await at.build(all, '2026-03-05')
    expect(timesIn('portfolio')).toEqual([Date.parse('2026-03-05T00:00:00Z')])
  })

  it('are mended where a file was exchanged for one of the same size and time', async () => {
    const [one, other] = [pageOf('kestrel'), pageOf('fenwick')].map((path) => join(at.site, path))
    const { size, mtime } = statSync(one ?? '')
    const another = Buffer.concat([readFileSync(other ?? ''), Buffer.alloc(size)]).subarray(0, size)
    writeFileSync(one ?? '', another)
    utimesSync(one ?? '', mtime, mtime)
    const built = await at.build(['owner'])
    // It is not as it was written, so it stays and is named.
    expect(built.published?.left).toEqual([one])
    rmSync(one ?? '')
    await at.build(['owner'])
    expect(await opened('kestrel')).toContain('LETTER-ZOE')
    expect(timesIn('owners').length).toBe(1)
  })

  it('have one time again where it was changed', async () => {
    utimesSync(join(at.site, 'portfolio/index.html'), 1000, 1000)
    await at.build(all)
    expect(timesIn('portfolio').length).toBe(1)
  })

  it('keep their list of own files from other accounts', () => {
    expect(statSync(join(at.site, '.made.json')).mode & 0o777).toBe(0o600)
  })

  it('hold pages of owners in sizes of whole steps alone, however many visits there are', async () => {
    const step = 64 * 1024
    const sizes = new Set<number>()
    for (const visits of [1, 3, 8]) {
      const files: Record<string, string> = { ...casebook }
      for (let month = 3; month < visits + 3 - 2; month++) {
        const date = `2026-${String(month).padStart(2, '0')}-10`
        files[`may/${date}.md`] = (casebook['may/2026-02-16.md'] ?? '')
          .replace('2026-02-16', date)
          .concat(`\n## For the owner\n\n${'A few words about this visit. '.repeat(visits * 5)}\n`)
      }
      if (visits === 1) delete files['may/2026-02-16.md']
      const other = trial(files)
      await other.build(['owner'], '2026-12-01')
      const owners = join(other.site, 'owners')
      const pages = readdirSync(owners).filter((name) => name !== 'robots.txt')
      expect(pages.length).toBe(2)
      for (const token of pages) sizes.add(statSync(join(owners, token, 'index.html')).size)
      other.done()
    }
    expect([...sizes].filter((size) => size % step !== 0)).toEqual([])
    expect(sizes.size).toBeLessThan(4)
  })
})
