/** From the phone to the casebook, and back. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openAdding } from '../../src/build/disk/add-together.ts'
import type { Files } from '../../src/build/disk/files.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import { feet } from '../../src/hoof/feet.ts'
import type { YardDraft } from '../../src/yard/draft.ts'
import { type OutFile, sha256Of, sharedFiles, zipOf } from '../../src/yard/parcel.ts'
import { draftOf, horseText, practiceText, visitText } from '../yard/kit.ts'
import { growdown } from './run.ts'

const practice = { feetOrder: feet, units: 'mm' } as const
const picture = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])
const sha256 = await sha256Of(picture)
const pictures = () => picture
const photo = '2026-06-20-lf-side-3f9a.jpg'

const draft = (of: Partial<YardDraft> = {}): YardDraft =>
  draftOf({
    readings: [{ stage: 'before', foot: 'LF', measure: 'toe-length', text: '91', heard: null }],
    photos: [{ name: photo, sha256, foot: 'LF', view: 'other', stage: null, landmarks: null }],
    ...of,
  })

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  mkdirSync(join(folder, 'cases/juno'), { recursive: true })
  writeFileSync(join(folder, 'cases/practice.md'), practiceText)
  writeFileSync(join(folder, 'cases/juno/horse.md'), horseText)
  writeFileSync(join(folder, 'cases/juno/2026-05-10.md'), visitText('2026-05-10'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const at = (path: string) => join(folder, 'cases', path)
const text = (path: string) => readFileSync(at(path), 'utf8')
const names = () => readdirSync(at(''), { recursive: true, encoding: 'utf8' }).sort()

function collecting(files: readonly OutFile[], ...options: string[]) {
  for (const { name, bytes } of files) writeFileSync(join(folder, name), bytes)
  return growdown(folder, 'collect', ...files.map(({ name }) => name), ...options)
}
const packed = async (...drafts: YardDraft[]) => [await zipOf(drafts, practice, pictures)]

describe('growdown collect', () => {
  it('puts a visit and its picture in their places, from one file', async () => {
    const done = await collecting(await packed(draft()))
    expect([done.status, done.out]).toEqual([
      0,
      'cases/juno/2026-06-20.md and 1 picture written, from juno-2026-06-20-3f9a.zip, juno/2026-06-20.md\n1 visit taken over, 0 already there, 0 to settle\n',
    ])
    expect(text('juno/2026-06-20.md')).toBe(
      `---\ndate: 2026-06-20\nyard: 3f9ab2c4d5e6-1\nbefore:\n  toe length: {LF: 91}\nphotos:\n  - {file: photos/${photo}, foot: LF, view: other}\n---\n`,
    )
    expect(readFileSync(at(`juno/photos/${photo}`))).toEqual(Buffer.from(picture))
    expect((await growdown(folder, 'check', '--as-of', '2026-06-20')).out).toMatch(/^0 problems, 0 warnings/m)
  })

  it('does the same with what a share sheet sent, whatever it is called by then', async () => {
    const shared = await sharedFiles(draft(), practice, pictures)
    const renamed = shared.map((file, index) => ({
      ...file,
      name: index === 0 ? 'juno (1).txt' : 'IMG_1.jpg',
    }))
    expect((await collecting(renamed)).status).toBe(0)
    expect(names()).toContain(join('juno', 'photos', photo))
  })

  it('knows what it has taken over, and adds a picture that came late', async () => {
    const [visit, shown] = await sharedFiles(draft(), practice, pictures)
    const first = await collecting([visit as OutFile])
    expect(first.status).toBe(1)
    expect(first.err).toContain('There is no picture')
    expect(text('juno/2026-06-20.md')).toContain('draft: yes')
    const again = await collecting([visit as OutFile, shown as OutFile])
    expect([again.status, again.out]).toEqual([
      0,
      'juno-2026-06-20-3f9a.txt: taken over already, in cases/juno/2026-06-20.md; 1 picture added that was missing\n0 visits taken over, 1 already there, 0 to settle\n',
    ])
    const before = names()
    expect((await collecting([visit as OutFile, shown as OutFile])).status).toBe(0)
    expect(names()).toEqual(before)
  })

  it('says in which lines a later version differs, and writes nothing over', async () => {
    await collecting(await packed(draft()))
    const before = text('juno/2026-06-20.md')
    const later = await collecting(await packed(draft({ version: 2, note: 'Quiet.' })))
    expect(later.status).toBe(1)
    expect(later.err).toContain(
      'is version 2 of a visit that stands in cases/juno/2026-06-20.md in version 1',
    )
    expect(later.err).toMatch(/^ {2}line 9 new: Quiet\.$/m)
    expect(later.err).toContain('set its line to yard: 3f9ab2c4d5e6-2')
    expect(text('juno/2026-06-20.md')).toBe(before)
    writeFileSync(at('juno/2026-06-20.md'), before.replace('5e6-1', '5e6-2'))
    expect((await collecting(await packed(draft({ version: 2 })))).out).toContain('taken over already')
  })

  it('gives a picture whose name another has the next letter, in the visit as well', async () => {
    const other = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 9])
    const hash = await sha256Of(other)
    const photos = [{ ...(draft().photos[0] as YardDraft['photos'][number]), sha256: hash }]
    const second = draft({ id: 'b'.repeat(12), photos })
    const bytesOf = (wanted: string) => (wanted === hash ? other : picture)
    const parcels = await Promise.all([draft(), second].map((one) => zipOf([one], practice, bytesOf)))
    const done = await collecting(parcels.map((one, index) => ({ ...one, name: `${index}.zip` })))
    expect(done.status).toBe(0)
    expect(readFileSync(at(`juno/photos/${photo}`))).toEqual(Buffer.from(picture))
    expect(readFileSync(at('juno/photos/2026-06-20-lf-side-3f9a-b.jpg'))).toEqual(Buffer.from(other))
    expect(text('juno/2026-06-20-b.md')).toContain('photos/2026-06-20-lf-side-3f9a-b.jpg')
  })

  it('takes what came whole where the same came twice', async () => {
    const [visit, shown] = await sharedFiles(
      draft({ note: 'Quiet. Stood well on the lawn.' }),
      practice,
      pictures,
    )
    const cut = { ...(visit as OutFile), name: 'a.txt', bytes: (visit as OutFile).bytes.slice(0, -20) }
    const done = await collecting([cut, visit as OutFile, shown as OutFile])
    expect([done.status, done.out]).toEqual([0, expect.stringContaining('1 visit taken over')])
  })

  it('gives another visit of the day the next letter', async () => {
    writeFileSync(at('juno/2026-06-20.md'), visitText('2026-06-20'))
    const done = await collecting(await packed(draft()))
    expect(done.err).toContain('cases/juno/2026-06-20-b.md is a further visit of that day')
    expect(text('juno/2026-06-20.md')).toBe(visitText('2026-06-20'))
  })

  it('takes over what holds an error, as a draft, and names it', async () => {
    const wrong = draft({
      readings: [{ stage: 'before', foot: 'LF', measure: 'toe-length', text: '98 kg', heard: null }],
    })
    const done = await collecting(await packed(wrong))
    expect(done.status).toBe(1)
    expect(done.err).toContain('cases/juno/2026-06-20.md is kept a draft')
    expect(text('juno/2026-06-20.md')).toMatch(/^---\ndraft: yes\ndate/)
  })

  it('keeps a draft what was changed on its way', async () => {
    const [visit, shown] = await sharedFiles(draft(), practice, pictures)
    const bytes = new TextEncoder().encode(new TextDecoder().decode(visit?.bytes).replace('LF: 91', 'LF: 89'))
    const done = await collecting([{ ...(visit as OutFile), bytes }, shown as OutFile])
    expect(done.err).toContain('did not come as it left the phone')
    expect(text('juno/2026-06-20.md')).toContain('draft: yes')
  })

  it('keeps a draft what was written with other units or another order of the feet', async () => {
    writeFileSync(at('practice.md'), practiceText.replace('owners:', 'units: cm\nowners:'))
    const done = await collecting(await packed(draft()))
    expect(done.status).toBe(1)
    expect(done.err).toContain('than practice.md has now (mm, LF RF LH RH)')
    expect(text('juno/2026-06-20.md')).toContain('draft: yes')
  })

  it('names a horse that is not there, the likely one, and takes the rest over', async () => {
    const done = await collecting(await packed(draft({ id: 'a'.repeat(12), horse: 'jnuo' }), draft()))
    expect(done.status).toBe(1)
    expect(done.err).toContain('there is no horse jnuo. Where juno is meant, collect again with --horse juno')
    expect(existsSync(at('jnuo'))).toBe(false)
    const again = await collecting(
      await packed(draft({ id: 'a'.repeat(12), horse: 'jnuo' })),
      '--horse',
      'juno',
    )
    expect([again.status, again.out]).toEqual([0, expect.stringContaining('juno/2026-06-20-b.md')])
  })

  it('names what is no parcel, and a picture that no visit has', async () => {
    const stray: OutFile = { name: 'IMG_2.jpg', type: 'image/jpeg', bytes: picture.slice(0, 5) }
    const letter: OutFile = {
      name: 'letter.txt',
      type: 'text/plain',
      bytes: new TextEncoder().encode('Dear all'),
    }
    const done = await collecting([stray, letter])
    expect(done.status).toBe(1)
    expect(done.err).toContain('letter.txt was not taken over: it is text, but no visit')
    expect(done.err).toContain('IMG_2.jpg was not taken over: no visit of this parcel names it')
    expect((await growdown(folder, 'collect')).status).toBe(2)
    expect((await growdown(folder, 'collect', 'nothing.zip')).err).toContain(
      'There is no file nothing.zip here.',
    )
  })
})

describe('growdown collect --undo', () => {
  it('leaves the casebook as it was', async () => {
    const before = names()
    await collecting(await packed(draft()))
    const undone = await growdown(folder, 'collect', '--undo')
    expect(undone.status).toBe(0)
    expect(names()).toEqual(before)
    expect((await growdown(folder, 'collect', '--undo')).err).toContain('There is nothing to take back.')
  })

  it('leaves a visit that was changed since, and its pictures', async () => {
    await collecting(await packed(draft()))
    writeFileSync(at('juno/2026-06-20.md'), text('juno/2026-06-20.md').replace('91', '92'))
    const undone = await growdown(folder, 'collect', '--undo')
    expect(undone.status).toBe(1)
    expect(undone.err).toContain('cases/juno/2026-06-20.md was changed since')
    expect(undone.err).toContain(`cases/juno/photos/${photo} was changed since`)
    expect(names()).toContain(join('juno', 'photos', photo))
  })
})

describe('adding files that is stopped or fails', () => {
  const bytes = (words: string) => new TextEncoder().encode(words)
  const added = [
    { path: 'juno/photos/a.jpg', bytes: bytes('picture'), needs: [] },
    { path: 'juno/2026-06-20.md', bytes: bytes('visit'), needs: ['juno/photos/a.jpg'] },
    { path: 'new/2026-06-20.md', bytes: bytes('another'), needs: [] },
  ]
  const deeds = ['write', 'writePrivate', 'makeFolder', 'link', 'copyNew', 'move', 'removeTree'] as const
  class Killed extends Error {}

  /** A disk whose n-th deed is the last one before the program is gone; half of a copy may be done by then. */
  function dyingAt(count: number, on: Files): { files: Files; died: () => boolean } {
    let left = count
    const dying = Object.fromEntries(
      deeds.map((deed) => [
        deed,
        (...given: string[]) => {
          left -= 1
          if (left === 0 && deed === 'copyNew')
            writeFileSync(given[1] ?? '', readFileSync(given[0] ?? '').subarray(0, 2))
          if (left <= 0) throw new Killed()
          return (on[deed] as (...args: string[]) => unknown)(...given)
        },
      ]),
    )
    const still = (run: (path: string) => unknown) => (path: string) => {
      if (left <= 0) throw new Killed()
      return run(path)
    }
    const files = {
      ...on,
      ...dying,
      remove: still(on.remove),
      removeIfEmpty: still(on.removeIfEmpty),
    } as Files
    return { files, died: () => left <= 0 }
  }

  it.each([
    ['a disk as usual', disk],
    ['a disk without links', { ...disk, link: () => false }],
  ])('at any moment is taken back by the next, on %s', (_, on) => {
    const before = names()
    let moments = 0
    for (let count = 1; ; count++) {
      const { files, died } = dyingAt(count, on)
      try {
        const adding = openAdding(files, at(''))
        try {
          adding.add(added)
        } finally {
          adding.close()
        }
      } catch (error) {
        if (!(error instanceof Killed)) throw error
      }
      const next = openAdding(disk, at(''))
      const isDone = existsSync(at('new/2026-06-20.md'))
      if (isDone) expect(next.takeBack()?.removed).toHaveLength(3)
      next.close()
      expect(names()).toEqual(before)
      if (!died()) break
      moments = count
    }
    expect(moments).toBeGreaterThan(8)
  })

  it('replaces nothing that came to be there meanwhile', () => {
    const adding = openAdding(disk, at(''))
    writeFileSync(at('juno/2026-06-20.md'), 'mine')
    expect(() => adding.add(added)).toThrow('came to be there meanwhile')
    adding.close()
    expect(text('juno/2026-06-20.md')).toBe('mine')
    expect(existsSync(at('juno/photos/a.jpg'))).toBe(false)
  })

  it('lets nobody in meanwhile', async () => {
    const adding = openAdding(disk, at(''))
    const other = await growdown(folder, 'collect', '--undo')
    adding.close()
    expect([other.status, other.err]).toEqual([1, expect.stringContaining('Another growdown adds files')])
  })
})
