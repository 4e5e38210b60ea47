import { existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { armor, Decrypter } from 'age-encryption'
import exifr from 'exifr'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { armoredIn } from '../../src/editions/owner/locked-page.ts'
import { printRefusal } from '../../src/leaks/report.ts'
import { casebook, type Trial, trial } from './kit.ts'

let at: Trial
beforeEach(() => {
  at = trial()
})
afterEach(() => at.done())

const keys = () =>
  parse(readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8')) as Record<
    string,
    { passphrase: string; token: string }
  >
const keyOf = (owner: string) => keys()[owner] ?? { passphrase: '', token: '' }
const pageOf = (owner: string) =>
  readFileSync(join(at.site, 'owners', keyOf(owner).token, 'index.html'), 'utf8')

/** Opened with the library, with no code of this program's but the words that find the locked part. */
async function opened(owner: string): Promise<string> {
  const decrypter = new Decrypter()
  decrypter.addPassphrase(keyOf(owner).passphrase)
  return decrypter.decrypt(armor.decode(armoredIn(pageOf(owner)) ?? ''), 'text')
}

const filesIn = (folder: string) =>
  readdirSync(join(at.site, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(at.site, folder, path)).isFile())
    .sort()

const edited = (path: string, from: string | RegExp, to: string) =>
  at.write(path, (casebook[path] ?? '').replace(from, to))

describe("owners' pages", () => {
  it('are one page for each owner, behind a token, and a file that sends search engines away', async () => {
    await at.build(['owner'])
    expect(filesIn('owners')).toEqual(
      [...Object.values(keys()).map(({ token }) => `${token}/index.html`), 'robots.txt'].sort(),
    )
    expect(readFileSync(join(at.site, 'owners/robots.txt'), 'utf8')).toBe('User-agent: *\nDisallow: /\n')
    expect(pageOf('kestrel')).toContain('<meta name="robots" content="noindex')
  })

  it("hold the owner's horses, and nothing of another owner's", async () => {
    await at.build(['owner'])
    const [ada, orla] = [await opened('kestrel'), await opened('fenwick')]
    for (const own of ['Zoë', 'Pipkin', 'LETTER-ZOE', 'LETTER-PIP', 'CARE-ZOE', 'CARE-PIP', 'Ada Kestrel']) {
      expect(ada).toContain(own)
      expect(orla).not.toContain(own)
    }
    for (const own of ['LETTER-MAY', 'CARE-MAY', 'Fenwick']) {
      expect(orla).toContain(own)
      expect(ada).not.toContain(own)
    }
    for (const page of [ada, orla]) expect(page).not.toMatch(/PRIVATE|Thistledown|Hestercombe|Bramble/)
  })

  it('show nothing outside the lock but the practice and how to unlock', async () => {
    await at.build(['owner'])
    const outer = pageOf('kestrel').replace(armoredIn(pageOf('kestrel')) ?? '', '')
    const words = outer.replace(/<(style|script)>[\s\S]*?<\/\1>|sha256-[^ "]+|data-checksum="\w+"/g, '')
    expect(words).toContain('Sandpiper Hoof Care')
    expect(words).not.toMatch(/Zo|Pip|Kestrel|kestrel|LETTER|CARE|2026/)
    expect(outer).not.toContain(keyOf('kestrel').passphrase)
  })

  it('leave a passphrase nowhere but in its own file', async () => {
    await at.build()
    const everything = ['site', '.growdown'].flatMap((folder) =>
      readdirSync(join(at.root, folder), { recursive: true, encoding: 'utf8' })
        .map((path) => join(at.root, folder, path))
        .filter((path) => statSync(path).isFile())
        .map((path) => readFileSync(path, 'latin1')),
    )
    expect(everything.length).toBeGreaterThan(6)
    for (const text of everything) {
      for (const { passphrase } of Object.values(keys())) expect(text).not.toContain(passphrase)
    }
  })

  it('are not locked again while nothing changed, and are when words or passphrase change', async () => {
    await at.build(['owner'])
    const before = pageOf('kestrel')
    const other = pageOf('fenwick')
    expect((await at.build(['owner'])).published).toMatchObject({ written: 0, removed: 0 })
    // Another day, the same words.
    expect((await at.build(['owner'], '2026-03-02')).published).toMatchObject({ written: 0, removed: 0 })

    edited('zoe/2026-02-16.md', 'CARE-ZOE', 'NEWCARE')
    await at.build(['owner'])
    expect(pageOf('kestrel')).not.toBe(before)
    expect(await opened('kestrel')).toContain('NEWCARE')
    expect(pageOf('fenwick')).toBe(other)

    const changed = readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8').replace(
      keyOf('fenwick').passphrase,
      'another set of words entirely',
    )
    at.write('passphrases.yaml', changed)
    await at.build(['owner'])
    expect(pageOf('fenwick')).not.toBe(other)
    expect(await opened('fenwick')).toContain('LETTER-MAY')
    expect(readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8')).toBe(changed)
  })

  it('move when a token changes, and the old address goes', async () => {
    await at.build(['owner'])
    const old = keyOf('kestrel').token
    at.write(
      'passphrases.yaml',
      readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8').replace(
        old,
        '3f9c52e07ab841d6c0e95b7f24a8316d',
      ),
    )
    await at.build(['owner'])
    expect(existsSync(join(at.site, 'owners', old))).toBe(false)
    expect(await opened('kestrel')).toContain('LETTER-ZOE')
  })

  it('lose a horse whose consent was withdrawn, and go with the last one', async () => {
    await at.build(['owner'])
    const token = keyOf('fenwick').token
    edited('zoe/horse.md', 'owner site: yes', 'owner site: no')
    edited('may/horse.md', 'owner site: yes', 'owner site: no')
    await at.build(['owner'])
    expect(await opened('kestrel')).not.toContain('Zoë')
    expect(await opened('kestrel')).toContain('Pipkin')
    expect(existsSync(join(at.site, 'owners', token))).toBe(false)
  })

  it('are made again when the kept parts are gone', async () => {
    await at.build(['owner'])
    rmSync(join(at.root, '.growdown/site/fragments'), { recursive: true })
    edited('zoe/2026-02-16.md', 'CARE-ZOE', 'NEWCARE')
    await at.build(['owner'])
    expect(await opened('kestrel')).toContain('LETTER-PIP')
  })

  it("are not published when one would tell of another owner's horse", async () => {
    await at.build(['owner'])
    const before = pageOf('fenwick')
    edited('may/2026-01-12.md', 'LETTER-MAY to you.', 'She stands beside Pipkin.')
    edited('pip/2026-01-12.md', 'LETTER-PIP', 'NEWLETTER')
    const { refusals } = await at.build(['owner'])
    expect(refusals.map((refusal) => printRefusal(refusal))).toEqual([
      expect.stringMatching(
        /^One name, word or date would have been shown to fenwick, whose page is in owners\/[0-9a-f]{32}\/\. It stays as it was last published\.\n\nmay\/2026-01-12\.md:18\n {2}name of a horse of another owner: "Pipkin"\n {2}She stands beside Pipkin\.\n/,
      ),
    ])
    expect(pageOf('fenwick')).toBe(before)
    expect(await opened('kestrel')).toContain('NEWLETTER')
    // As it says: the line is changed, and nothing else needs to be.
    at.write('may/2026-01-12.md', casebook['may/2026-01-12.md'] ?? '')
    expect((await at.build(['owner'])).refusals).toEqual([])
    expect(pageOf('fenwick')).toBe(before)
  })

  it('stay as they were, each by itself, when a passphrase cannot be used', async () => {
    await at.build(['owner'])
    const before = pageOf('kestrel')
    const { passphrase } = keyOf('kestrel')
    const written = readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8')
    at.write('passphrases.yaml', written.replace(passphrase, 'short'))
    edited('pip/2026-01-12.md', 'LETTER-PIP', 'NEWLETTER')
    edited('may/2026-01-12.md', 'LETTER-MAY', 'NEWLETTER')
    const { diagnostics } = await at.build(['practice', 'owner'])
    expect(diagnostics.filter(({ level }) => level === 'error').map(({ message }) => message)).toEqual([
      'the passphrase of kestrel is shorter than 12 signs: whoever has the page could guess it',
    ])
    expect(pageOf('kestrel')).toBe(before)
    expect(await opened('fenwick')).toContain('NEWLETTER')
    expect(existsSync(join(at.site, 'practice/index.html'))).toBe(true)
  })

  it('warn of a passphrase that could be guessed, without saying it', async () => {
    await at.build(['owner'])
    const written = readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8')
    at.write('passphrases.yaml', written.replace(keyOf('kestrel').passphrase, 'Bella2015Bella2015'))
    const weak = async () =>
      (await at.build(['owner'])).diagnostics.filter(({ code }) => code === 'passphrase-weak')
    const [first] = await weak()
    expect(first?.message).toContain('the passphrase of kestrel could be guessed')
    expect(JSON.stringify(first)).not.toContain('Bella')
    expect(await weak()).toEqual([first])
    at.write('passphrases.yaml', written)
    expect(await weak()).toEqual([])
  })
})

describe('pictures', () => {
  /** A picture of its own for each horse, with a name and a place in its metadata as a phone leaves them. */
  async function photographed(id: string, shade: string): Promise<void> {
    const bytes = await sharp({ create: { width: 1000, height: 750, channels: 3, background: shade } })
      .withExif({
        IFD0: { ImageDescription: 'Zoë at Thistledown Yard', Artist: 'Ada Kestrel' },
        IFD3: { GPSLatitude: '51/1 30/1 0/1' },
      })
      .jpeg()
      .toBuffer()
    at.write(`${id}/photos/IMG_4711-${id}.jpg`, bytes)
    edited(
      `${id}/2026-01-12.md`,
      'findings:',
      `photos:\n  - {file: photos/IMG_4711-${id}.jpg, foot: LF, view: lateral, stage: before, caption: PRIVATE-CAPTION}\nfindings:`,
    )
  }
  const carried = (html: string) =>
    [...html.matchAll(/data:image\/[a-z]+;base64,([A-Za-z0-9+/=]+)/g)].map(([, body = '']) => body)

  beforeEach(async () => {
    await photographed('zoe', '#804020')
    await photographed('may', '#208040')
  })

  it("stand in their owner's page, bare, and in no other owner's", async () => {
    await at.build(['owner'])
    const [ada, orla] = [carried(await opened('kestrel')), carried(await opened('fenwick'))]
    expect([ada.length, orla.length]).toEqual([1, 1])
    expect(ada[0]).not.toBe(orla[0])
    const colour = async (body = '') => (await sharp(Buffer.from(body, 'base64')).stats()).dominant
    const [brown, green] = [await colour(ada[0]), await colour(orla[0])]
    expect(brown.r).toBeGreaterThan(brown.g)
    expect(green.g).toBeGreaterThan(green.r)
    for (const body of [...ada, ...orla]) {
      const { exif, xmp, iptc } = await sharp(Buffer.from(body, 'base64')).metadata()
      expect([exif, xmp, iptc]).toEqual([undefined, undefined, undefined])
    }
    expect(await opened('kestrel')).not.toMatch(/IMG_4711|PRIVATE/)
  })

  it('stand in the portfolio under names that tell nothing, bare', async () => {
    await at.build(['portfolio'])
    const pictures = filesIn('portfolio').filter((path) => /\.(?:jpg|webp|avif)$/.test(path))
    expect(pictures.length).toBeGreaterThan(3)
    for (const path of pictures) {
      expect(path).toMatch(/^(?:bramble|fern)\/picture-1-\d+\.(?:jpg|webp|avif)$/)
      expect(
        await exifr.parse(readFileSync(join(at.site, 'portfolio', path))).catch(() => undefined),
      ).toBeUndefined()
    }
    const page = readFileSync(join(at.site, 'portfolio/bramble/index.html'), 'utf8')
    for (const [, src = ''] of page.matchAll(/<img src="([^"]+)"/g))
      expect(pictures).toContain(`bramble/${src}`)
    expect(page).not.toMatch(/IMG_4711|PRIVATE/)
  })

  it('go when consent for pictures is withdrawn', async () => {
    await at.build()
    edited('zoe/horse.md', 'photos: yes', 'photos: no')
    await at.build()
    expect(carried(await opened('kestrel'))).toEqual([])
    expect(filesIn('portfolio').filter((path) => /^bramble\/picture/.test(path))).toEqual([])
    expect(filesIn('portfolio').filter((path) => /^fern\/picture/.test(path)).length).toBeGreaterThan(0)
  })
})

describe('the portfolio', () => {
  it('is a folder for each case under its alias, a list, and a page over all', async () => {
    await at.build(['portfolio'])
    expect(filesIn('portfolio').sort()).toEqual(
      [
        'assets/growdown.css',
        'assets/portfolio.js',
        ...['bramble', 'fern', 'sorrel'].flatMap((slug) => [`${slug}/index.html`, `${slug}/readings.csv`]),
        'index.html',
        'summary.html',
      ].sort(),
    )
    const page = readFileSync(join(at.site, 'portfolio/bramble/index.html'), 'utf8')
    expect(page).toContain('Bramble came from (left out) in week 0.')
    expect(page).not.toMatch(/Zo[eë]|Thistledown|PRIVATE|LETTER|CARE/)
  })

  it('loses a case whose consent was withdrawn', async () => {
    await at.build(['portfolio'])
    edited('zoe/horse.md', 'portfolio: yes', 'portfolio: no')
    await at.build(['portfolio'])
    expect(filesIn('portfolio').filter((path) => path.includes('bramble'))).toEqual([])
    expect(readFileSync(join(at.site, 'portfolio/index.html'), 'utf8')).not.toContain('Bramble')
  })

  it('loses a case whose files hold an error, and its name is searched for all the same', async () => {
    await at.build(['portfolio'])
    at.write(
      'zoe/horse.md',
      '---\nname: "Zoë"\nowner: kestrel\nprivate words:\n  - Quarrymoor\nnonsense: [\n---\n',
    )
    edited('pip/2026-01-12.md', 'Pipkin came', 'Beside zoe of quarrymoor, Pipkin came')
    const { refusals } = await at.build(['portfolio'])
    expect(refusals[0]?.hits.map(({ text }) => text)).toEqual(['zoe', 'quarrymoor'])
    expect(filesIn('portfolio').filter((path) => path.includes('bramble'))).toEqual([])
    at.write('pip/2026-01-12.md', casebook['pip/2026-01-12.md'] ?? '')
    await at.build(['portfolio'])
    expect(filesIn('portfolio').filter((path) => path.includes('bramble'))).toEqual([])
  })

  it('is not published when a name is left, and the last good one stays', async () => {
    await at.build(['portfolio'])
    const before = readFileSync(join(at.site, 'portfolio/fern/index.html'), 'utf8')
    edited('may/2026-01-12.md', 'May came from', 'Ju&#110;ior Pip&shy;kin came from')
    edited('zoe/2026-02-16.md', 'CARE-ZOE', 'NEWCARE')
    const { refusals, published } = await at.build(['practice', 'owner', 'portfolio'])
    expect(refusals.map(({ folder }) => folder)).toEqual(['portfolio'])
    expect(printRefusal(refusals[0] ?? { folder: '', owner: null, hits: [] })).toMatch(
      /\n\nmay\/2026-01-12\.md:22\n {2}name of a horse: "Pip\u00ADkin"\n {2}Ju&#110;ior Pip&shy;kin came from Hestercombe on 2026-01-12\.\n {2}Change that line .*\n {2}It would have stood in portfolio\/fern\/index\.html:\d+:\d+\.$/,
    )
    expect(published?.paths.written.filter((path) => path.startsWith('portfolio/'))).toEqual([])
    expect(await opened('kestrel')).toContain('NEWCARE')
    expect(readFileSync(join(at.site, 'practice/may/index.html'), 'utf8')).toContain('May')
    expect(readFileSync(join(at.site, 'portfolio/fern/index.html'), 'utf8')).toBe(before)
  })

  it('is searched again when a name becomes known that it shows', async () => {
    edited('may/2026-01-12.md', 'May came from', 'A friend of Rowanberry came from')
    await at.build(['portfolio'])
    edited('zoe/horse.md', 'private words: [', 'private words: [Rowanberry, ')
    const { refusals } = await at.build(['portfolio'])
    expect(refusals[0]?.hits.map(({ kind, text }) => [kind, text])).toEqual([['private word', 'Rowanberry']])
  })

  it('refuses two cases of one alias by naming both', async () => {
    edited('pip/horse.md', 'alias: Sorrel', 'alias: Bramble')
    const { diagnostics, published } = await at.build(['practice', 'portfolio'])
    expect(diagnostics.filter(({ level }) => level === 'error').map(({ message }) => message)).toEqual([
      'pip and zoe have the same alias, so the portfolio has one place for both.',
    ])
    const written = published?.paths.written ?? []
    expect(written.filter((path) => path.startsWith('portfolio/'))).toEqual([])
    expect(written).toContain('practice/zoe/index.html')
  })

  it('tells which names it searched in some forms only', async () => {
    const built = await at.build(['portfolio'])
    expect(built.exceptions.map(({ text }) => text)).toEqual(['May', 'may', 'pip', 'yard (Thistledown Yard)'])
    expect((await at.build(['portfolio'])).exceptions).toEqual(built.exceptions)
  })

  it('is byte for byte the same whether built anew or again', async () => {
    await at.build(['portfolio'])
    edited('zoe/2026-02-16.md', '[46, 46, 49, 48]', '[47, 46, 49, 48]')
    await at.build(['portfolio'])
    const again = filesIn('portfolio').map((path) => readFileSync(join(at.site, 'portfolio', path), 'utf8'))
    const fresh = trial({
      ...casebook,
      'zoe/2026-02-16.md': (casebook['zoe/2026-02-16.md'] ?? '').replace(
        '[46, 46, 49, 48]',
        '[47, 46, 49, 48]',
      ),
    })
    await fresh.build(['portfolio'])
    const anew = filesIn('portfolio').map((path) => readFileSync(join(fresh.site, 'portfolio', path), 'utf8'))
    fresh.done()
    expect(anew).toEqual(again)
  })
})

describe("the practice's office page", () => {
  const office = () => readFileSync(join(at.site, 'practice/office.html'), 'utf8')

  it('says whose page stands where, from the first build on, and never a passphrase', async () => {
    await at.build(['practice', 'owner'])
    for (const { token, passphrase } of Object.values(keys())) {
      expect(office()).toContain(`<code>owners/${token}/</code>`)
      expect(office()).not.toContain(passphrase)
    }
    const before = office()
    await at.build(['practice'])
    expect(office()).toBe(before)
  })

  it('says nothing of owners, and makes no passphrase, where no page was built for them', async () => {
    await at.build(['practice'])
    expect(office()).not.toContain('<code>owners/')
    expect(existsSync(join(at.casebook, 'passphrases.yaml'))).toBe(false)
  })
})
