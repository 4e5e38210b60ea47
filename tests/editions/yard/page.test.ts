import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { step } from '../../../src/editions/lock/padding.ts'
import { casebook, type Trial, trial } from '../kit.ts'
import { lockedIn, openYard, sealedIn, yardFiles, yardFolder, yardHtml, yardKey } from './kit.ts'

const trials: Trial[] = []
const yardOf = async (files: Readonly<Record<string, string | Uint8Array>> = casebook): Promise<Trial> => {
  const made = trial(files)
  trials.push(made)
  await made.buildUnread(['yard'])
  return made
}
afterEach(() => {
  for (const made of trials.splice(0)) made.done()
})

/** A horse that nobody consented to show, and a visit that is a draft. */
const privately = {
  ...casebook,
  'rook/horse.md': `---\nname: Rook\nkind: cob\nstarted: 2026-01-12\n---\nPRIVATE-ROOK\n`,
  'rook/2026-02-16.md': `---\ndate: 2026-02-16\ndraft: yes\nbefore:\n  toe length: [98, 97, 91, 92]\nnext visit: in 5 weeks\n---\nDRAFT-ROOK\n`,
}

describe('the yard page', () => {
  it('holds every horse, drafts and private notes, with nobody asked', async () => {
    const made = await yardOf(privately)
    const { index, part } = await openYard(yardHtml(made), yardKey(made).passphrase)
    expect(index.horses.map(({ name }) => name)).toEqual(['May', 'Pipkin', 'Rook', 'Zoë'])
    expect(index.asOf).toBe('2026-03-01')
    expect(index.practiceFile).toBe(casebook['practice.md'])
    expect(index.horses.find(({ id }) => id === 'zoe')).toMatchObject({
      owner: 'Ada Kestrel',
      due: '2026-03-23',
      isBroken: false,
    })
    const rook = await part('rook')
    expect(rook?.html).toContain('DRAFT-ROOK')
    expect(rook?.files).toEqual({
      'rook/horse.md': privately['rook/horse.md'],
      'rook/2026-02-16.md': privately['rook/2026-02-16.md'],
    })
    expect(await part('nobody')).toBeNull()
  })

  it('shows nothing of it to whoever finds the folder', async () => {
    const made = await yardOf(privately)
    const files = yardFiles(made)
    const { token, passphrase } = yardKey(made)
    expect([...files.keys()].sort()).toEqual([
      `${token}/icon-192.png`,
      `${token}/icon-512.png`,
      `${token}/index.html`,
      `${token}/manifest.webmanifest`,
      `${token}/worker.js`,
      'robots.txt',
    ])
    const secrets = [
      /Zoë|Pipkin|\bRook\b|rook|Kestrel|kestrel|Fenwick|Thistledown|Hestercombe|Bramble/,
      /PRIVATE|DRAFT-|LETTER|CARE-/,
      new RegExp(passphrase.replaceAll(' ', '.?')),
    ]
    for (const [path, bytes] of files) {
      // Base64 could hide a word in three ways; decoded at each it would show.
      const text = bytes.toString('utf8')
      const sealed = sealedIn(text)
      const decoded = [0, 1, 2, 3].map((skip) => Buffer.from(sealed.slice(skip), 'base64').toString('latin1'))
      for (const one of [text, ...decoded])
        for (const secret of secrets) expect(one, path).not.toMatch(secret)
    }
    const secret = /# Secret of builds: (\S+)/.exec(
      readFileSync(join(made.casebook, 'passphrases.yaml'), 'utf8'),
    )
    expect(secret?.[1]).toMatch(/^\S{16,}$/)
    for (const bytes of files.values()) expect(bytes.toString('latin1')).not.toContain(secret?.[1])
  })

  it('comes in steps of 64 KiB, so that its size tells little, and its pieces have no seams', async () => {
    const one = await yardOf()
    const other = await yardOf(privately)
    for (const made of [one, other]) expect(Buffer.byteLength(yardHtml(made)) % step).toBe(0)
    expect(yardHtml(one).length).toBe(yardHtml(other).length)
    expect(sealedIn(yardHtml(one))).toMatch(/^[A-Za-z0-9+/]+=?=?$/)
  })

  it('does not open with other words, nor with a part taken from elsewhere', async () => {
    const made = await yardOf()
    const html = yardHtml(made)
    await expect(openYard(html, 'not these words at all')).rejects.toThrow('no identity matched')
    const other = await yardOf(privately)
    const mixed = html.replace(sealedIn(html), sealedIn(yardHtml(other)))
    await expect(openYard(mixed, yardKey(made).passphrase)).rejects.toThrow()
  })

  it('notices a text that was cut or changed', async () => {
    const made = await yardOf()
    const html = yardHtml(made)
    const { passphrase } = yardKey(made)
    const sealed = sealedIn(html)
    const withSealed = (text: string) => html.replace(sealed, text)
    await expect(openYard(withSealed(sealed.slice(0, 400)), passphrase)).rejects.toThrow()
    await expect(openYard(withSealed(sealed.slice(0, 4000)), passphrase)).rejects.toThrow(
      'did not arrive whole',
    )
    const changed = sealed.slice(0, 60) + (sealed[60] === 'A' ? 'B' : 'A') + sealed.slice(61)
    await expect(openYard(withSealed(changed), passphrase)).rejects.toThrow()
  })

  it('keeps the key of phones when passphrase or address change, and never the key of the page', async () => {
    const made = await yardOf()
    const before = await openYard(yardHtml(made), yardKey(made).passphrase)
    const old = { ...yardKey(made), locked: lockedIn(yardHtml(made)) }
    const path = join(made.casebook, 'passphrases.yaml')
    const text = readFileSync(path, 'utf8')
    made.write('passphrases.yaml', text.replace(/\n {2}passphrase: .*/, ''))
    await made.buildUnread(['yard'])
    expect(yardKey(made).token).toBe(old.token)
    expect(yardKey(made).passphrase).not.toBe(old.passphrase)
    expect(lockedIn(yardHtml(made))).not.toBe(old.locked)
    const after = await openYard(yardHtml(made), yardKey(made).passphrase)
    expect(after.index.phoneKey).toBe(before.index.phoneKey)
    expect(after.index.practice).toBe(before.index.practice)
    expect(Buffer.from(after.index.phoneKey, 'base64').length).toBe(32)
    await expect(openYard(yardHtml(made), old.passphrase)).rejects.toThrow()
    const mixed = yardHtml(made).replace(lockedIn(yardHtml(made)), old.locked)
    await expect(openYard(mixed, old.passphrase)).rejects.toThrow()

    made.write('passphrases.yaml', readFileSync(path, 'utf8').replace(/\n {2}token: .*/, ''))
    await made.buildUnread(['yard'])
    expect(yardKey(made).token).not.toBe(old.token)
    const moved = await openYard(yardHtml(made), yardKey(made).passphrase)
    expect(moved.index.phoneKey).toBe(before.index.phoneKey)
    expect([...yardFiles(made).keys()].filter((file) => file.startsWith(old.token))).toEqual([])
  })

  it('carries the latest picture of a foot, small, of a horse that is seen within two weeks', async () => {
    const { default: sharp } = await import('sharp')
    const noise = await sharp({
      create: {
        width: 1600,
        height: 1200,
        channels: 3,
        background: '#888',
        noise: { type: 'gaussian', mean: 128, sigma: 60 },
      },
    })
      .jpeg()
      .toBuffer()
    const made = await yardOf({
      ...casebook,
      'zoe/photos/lf.jpg': noise,
      'zoe/2026-02-16.md': String(casebook['zoe/2026-02-16.md']).replace(
        'next visit:',
        'photos:\n  - {file: photos/lf.jpg, foot: LF, view: lateral}\nnext visit:',
      ),
    })
    const shown = async (asOf: string) => {
      await made.buildUnread(['yard'], asOf)
      const { part } = await openYard(yardHtml(made), yardKey(made).passphrase)
      const zoe = await part('zoe')
      expect(zoe?.pictures).toEqual(['zoe/photos/lf.jpg'])
      return [...(zoe?.html ?? '').matchAll(/src="data:image\/webp;base64,([^"]+)"/g)].map(
        ([, data = '']) => data,
      )
    }
    expect(await shown('2026-03-01')).toEqual([])
    const [picture = '', ...others] = await shown('2026-03-10')
    expect(others).toEqual([])
    expect(Buffer.from(picture, 'base64').length).toBeLessThanOrEqual(30_000)
    const { width, format } = await sharp(Buffer.from(picture, 'base64')).metadata()
    expect([format, (width ?? 0) >= 200]).toEqual(['webp', true])
  })

  it('is told which of its drafts stand in the casebook, and in which version', async () => {
    const made = await yardOf({
      ...casebook,
      'zoe/2026-02-16.md': String(casebook['zoe/2026-02-16.md']).replace(
        'date: 2026-02-16\n',
        'date: 2026-02-16\nyard: 3f9ab2c4d5e6-2\n',
      ),
    })
    const { index } = await openYard(yardHtml(made), yardKey(made).passphrase)
    expect(index.arrived).toEqual([{ draft: '3f9ab2c4d5e6', version: 2 }])
  })

  it('lists for the worker what stands beside it, each by its content', async () => {
    const made = await yardOf()
    const script = readFileSync(join(yardFolder(made), 'worker.js'), 'utf8')
    const kept: { url: string; integrity: string }[] = JSON.parse(
      /^self\.keptFiles=(.*);$/m.exec(script)?.[1] ?? '',
    )
    expect(kept.map(({ url }) => url)).toEqual([
      'index.html',
      'manifest.webmanifest',
      'icon-192.png',
      'icon-512.png',
    ])
    const { createHash } = await import('node:crypto')
    for (const { url, integrity } of kept) {
      const bytes = readFileSync(join(yardFolder(made), url))
      expect(integrity).toBe(`sha256-${createHash('sha256').update(bytes).digest('base64')}`)
    }
    const manifest = JSON.parse(readFileSync(join(yardFolder(made), 'manifest.webmanifest'), 'utf8'))
    expect(manifest).toMatchObject({ start_url: './', scope: './', display: 'standalone' })
    for (const { src } of manifest.icons) expect(kept.map(({ url }) => url)).toContain(src)
  })
})

describe('a build again', () => {
  it('makes nothing where nothing changed, and of one changed visit that horse and the page', async () => {
    const made = await yardOf()
    const [page, locked] = [yardHtml(made), lockedIn(yardHtml(made))]
    const again = await made.buildUnread(['yard'])
    expect(again.published?.written).toBe(0)
    expect(yardHtml(made)).toBe(page)
    made.write('zoe/2026-02-16.md', `${casebook['zoe/2026-02-16.md']}\nONE-MORE-LINE\n`)
    const one = await made.buildUnread(['yard'])
    expect(one.horses).toMatchObject({ made: 1, unchanged: 2 })
    expect(one.published?.paths.written.map((path) => path.replace(/.*\//, '')).sort()).toEqual([
      'index.html',
      'worker.js',
    ])
    // The passphrase was not used again: that takes long on purpose.
    expect(lockedIn(yardHtml(made))).toBe(locked)
    const { part } = await openYard(yardHtml(made), yardKey(made).passphrase)
    expect((await part('zoe'))?.html).toContain('ONE-MORE-LINE')
    expect((await part('may'))?.html).not.toContain('ONE-MORE-LINE')
  })

  it('shows a horse with errors as it was last built, and says so; one that never was built by its name', async () => {
    const made = await yardOf()
    made.write(
      'zoe/2026-02-16.md',
      '---\ndate: 2026-02-16\nbefore:\n  toe lenght: [98, 97, 91, 92]\n---\nNEVER\n',
    )
    made.write('heron/horse.md', '---\nname: [\n---\n')
    for (const _ of [1, 2]) {
      await made.buildUnread(['yard'])
      const { index, part } = await openYard(yardHtml(made), yardKey(made).passphrase)
      expect(index.horses.filter(({ isBroken }) => isBroken).map(({ name }) => name)).toEqual([
        'Zoë',
        'heron',
      ])
      expect((await part('zoe'))?.html).toContain('46')
      expect((await part('zoe'))?.html).not.toContain('NEVER')
      expect(await part('heron')).toBeNull()
    }
  })
})

describe('the entry yard of passphrases.yaml', () => {
  it('belongs to no owner: of that id there can be none', async () => {
    const owned = (text: string) => text.replaceAll('kestrel', 'yard')
    const files = Object.fromEntries(
      Object.entries(casebook).map(([path, text]) => [path, owned(String(text))]),
    )
    const made = trial(files)
    trials.push(made)
    made.approveAll()
    const built = await made.buildUnread(['yard', 'owner'])
    const said = built.diagnostics.filter(({ code }) => code === 'owner-id-taken')
    expect(said.length).toBeGreaterThan(0)
    expect(said[0]).toMatchObject({
      level: 'error',
      file: 'practice.md',
      message:
        'an owner cannot have the id yard: passphrases.yaml keeps the passphrase of your own page under it',
    })
    expect([...yardFiles(made).keys()].filter((path) => path.endsWith('index.html'))).toEqual([])
    const keys = readFileSync(join(made.casebook, 'passphrases.yaml'), 'utf8')
    expect(keys).toMatch(/^fenwick:/m)
    expect(keys).not.toMatch(/^yard:/m)
  })

  it('with a passphrase that could be guessed is named, and never said', async () => {
    const made = trial({
      ...casebook,
      'passphrases.yaml':
        'yard:\n  passphrase: sandpiper sandpiper\n  token: "3f9c52e07ab841d6c0e95b7f24a8316d"\n',
    })
    trials.push(made)
    const built = await made.buildUnread(['yard'])
    const said = built.diagnostics.filter(({ code }) => code.startsWith('passphrase'))
    expect(said.map(({ code }) => code)).toContain('passphrase-weak')
    expect(JSON.stringify(built.diagnostics)).not.toContain('sandpiper sandpiper')
  })

  it('that cannot be used leaves the page as it was', async () => {
    const made = await yardOf()
    const page = yardHtml(made)
    const { token } = yardKey(made)
    made.write(
      'passphrases.yaml',
      'yard:\n  passphrase: short\n  token: "3f9c52e07ab841d6c0e95b7f24a8316d"\n',
    )
    made.write('zoe/2026-02-16.md', `${casebook['zoe/2026-02-16.md']}\nONE-MORE-LINE\n`)
    const built = await made.buildUnread(['yard'])
    expect(built.diagnostics.map(({ message }) => message).join()).toContain(
      'the passphrase of yard is shorter than 12 signs',
    )
    expect(readFileSync(join(made.site, 'yard', token, 'index.html'), 'utf8')).toBe(page)
  })
})
