/** What leaves a phone is read back whatever became of it on the way; what is no parcel is refused. */
import { zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { limits } from '../../src/casebook/limits.ts'
import { feet } from '../../src/hoof/feet.ts'
import { caseFileOf } from '../../src/yard/case-file.ts'
import type { YardDraft } from '../../src/yard/draft.ts'
import { type OutFile, sha256Of, sharedFiles, zipOf } from '../../src/yard/parcel.ts'
import { type CameFile, unpack } from '../../src/yard/unpack.ts'
import { draftOf } from './kit.ts'

type Bytes = Uint8Array<ArrayBuffer>
const practice = { feetOrder: feet, units: 'mm' } as const
const bytesOf = (text: string): Bytes => new TextEncoder().encode(text)
const picture = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])
const sha256 = await sha256Of(picture)
const pictures = (wanted: string) => (wanted === sha256 ? picture : null)

const draft: YardDraft = draftOf({
  readings: [{ stage: 'before', foot: 'LF', measure: 'toe-length', text: '98', heard: null }],
  photos: [
    {
      name: '2026-06-20-lf-side-3f9a.jpg',
      sha256,
      foot: 'LF',
      view: 'lateral',
      stage: null,
      landmarks: null,
    },
  ],
  note: 'Quiet.',
})
const { text } = caseFileOf(draft, practice)

const came = (files: readonly OutFile[], rename = (name: string) => name): CameFile[] =>
  files.map(({ name, bytes }) => ({ name: rename(name), bytes }))

const arrived = {
  horse: 'juno',
  date: '2026-06-20',
  origin: { draft: '3f9ab2c4d5e6', version: 1 },
  text,
  pictures: [{ name: '2026-06-20-lf-side-3f9a.jpg', sha256 }],
  writtenBy: 'mm, LF RF LH RH',
  isWhole: true,
}

describe('a visit on its way', () => {
  it('goes as a text and pictures, and comes back under other names', async () => {
    const shared = await sharedFiles(draft, practice, pictures)
    expect(shared.map(({ name, type }) => [name, type])).toEqual([
      ['juno-2026-06-20-3f9a.txt', 'text/plain'],
      ['juno-2026-06-20-lf-side-3f9a.jpg', 'image/jpeg'],
    ])
    const read = await unpack(came(shared, (name) => (name.endsWith('.txt') ? 'juno (1).md' : 'IMG_1')))
    expect(read.refused).toEqual([])
    expect(read.visits).toEqual([{ from: 'juno (1).md', ...arrived }])
    expect([...read.pictures]).toEqual([[sha256, { from: 'IMG_1', bytes: picture }]])
  })

  it('has a name of its own beside another of that horse and day', async () => {
    const second = { ...draft, id: '81ab00c4d5e6' }
    const [visit] = await sharedFiles(second, practice, pictures)
    const whole = await zipOf([second], practice, pictures)
    expect([visit?.name, whole.name]).toEqual(['juno-2026-06-20-81ab.txt', 'juno-2026-06-20-81ab.zip'])
  })

  it('goes as one file with its places in it, several at once', async () => {
    const other = { ...draft, id: 'aaaaaaaaaaaa', note: 'Later that day.', photos: [] }
    const packed = await zipOf([draft, other], practice, pictures)
    expect([packed.name, packed.type]).toEqual(['visits-2026-06-20.zip', 'application/zip'])
    const read = await unpack(came([packed]))
    expect(read.visits.map(({ from }) => from)).toEqual([
      'visits-2026-06-20.zip, juno/2026-06-20.md',
      'visits-2026-06-20.zip, juno/2026-06-20-b.md',
    ])
    expect(read.visits[0]).toMatchObject(arrived)
    expect([...read.pictures.keys()]).toEqual([sha256])
  })

  it('is the same with other ends of lines, a mark of its order, and spaces at the end', async () => {
    const [visit] = came(await sharedFiles(draft, practice, pictures))
    const changed = `\uFEFF${new TextDecoder().decode(visit?.bytes).replaceAll('\n', '\r\n')}\r\n \r\n`
    const read = await unpack([{ name: 'a.txt', bytes: bytesOf(changed) }])
    expect(read.visits[0]?.isWhole).toBe(true)
  })

  it('says so where a part of it was lost or changed', async () => {
    const [visit] = came(await sharedFiles(draft, practice, pictures))
    const whole = new TextDecoder().decode(visit?.bytes)
    const cut = await unpack([{ name: 'a.txt', bytes: bytesOf(whole.slice(0, -5)) }])
    const other = await unpack([{ name: 'a.txt', bytes: bytesOf(whole.replace('98', '89')) }])
    expect(cut.visits[0]?.isWhole).toBe(false)
    expect(other.visits[0]?.isWhole).toBe(false)
  })

  it('that a person wrote has no label, and is known by its place', async () => {
    const bytes = zipSync({ 'juno/2026-06-20.md': bytesOf('---\nbefore: {width: {LF: 98}}\n---\n') })
    const read = await unpack([{ name: 'x.zip', bytes: bytes as Bytes }])
    expect(read.visits[0]).toMatchObject({ horse: 'juno', date: '2026-06-20', origin: null, isWhole: null })
  })
})

describe('what is no parcel', () => {
  const zip = (files: Record<string, Uint8Array>, name = 'x.zip'): CameFile => ({
    name,
    bytes: zipSync(files, { level: 9 }) as Bytes,
  })
  /** The sizes of its entries written larger, as no honest program would. */
  const lying = (file: CameFile, size: number): CameFile => {
    const bytes = file.bytes.slice()
    const view = new DataView(bytes.buffer)
    for (let at = 0; at + 30 < bytes.length; at++)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, size, true)
    return { ...file, bytes }
  }
  const one = { 'juno/2026-06-20.md': bytesOf(text) }
  const many = Object.fromEntries(
    Array.from({ length: limits.parcelFiles + 1 }, (_, index) => [`juno/${index}.md`, bytesOf('x')]),
  )
  const hostile: readonly (readonly [string, CameFile, string])[] = [
    ['an entry above', zip({ '../juno/2026-06-20.md': bytesOf(text) }), 'leads elsewhere'],
    ['an entry from the root', zip({ '/etc/x.md': bytesOf(text) }), 'leads elsewhere'],
    ['an entry on another drive', zip({ 'C:/x.md': bytesOf(text) }), 'leads elsewhere'],
    ['an entry with a backslash', zip({ 'a\\..\\x.md': bytesOf(text) }), 'leads elsewhere'],
    ['too many entries', zip(many), 'too many files'],
    ['one that unpacks too large', zip({ a: new Uint8Array(limits.pictureBytes + 1) }), 'too large'],
    ['a size that is a lie', lying(zip(one), 0xffffffff), 'too large'],
    ['a cut one', { name: 'x.zip', bytes: zip(one).bytes.slice(0, -30) }, 'damaged'],
    ['a program', { name: 'x.txt', bytes: new Uint8Array([0x7f, 0x45, 0x4c, 0x46, 0, 0]) }, 'not text'],
    ['text that is no UTF-8', { name: 'x.txt', bytes: new Uint8Array([0x2d, 0x2d, 0xe9, 0x0a]) }, 'not text'],
    ['a letter', { name: 'x.txt', bytes: bytesOf('Dear all') }, 'no case file'],
    ['no day', { name: 'x.txt', bytes: bytesOf('---\nfooting: wet\n---\n') }, 'no date'],
    ['a huge text', { name: 'x.txt', bytes: bytesOf('x'.repeat(limits.fileBytes + 1)) }, 'too large'],
  ]

  it.each(hostile)('is refused: %s', async (_, file, why) => {
    const read = await unpack([file])
    expect([read.visits, read.refused]).toEqual([[], [{ from: file.name, why }]])
  })

  it('does not keep what is beside it from being read', async () => {
    const beside = zip({
      ...one,
      '__beside/._x': bytesOf('?'),
      '.hidden': bytesOf('?'),
      'juno/': bytesOf(''),
    })
    const read = await unpack([{ name: 'y', bytes: bytesOf('?') }, beside])
    expect(read.visits).toHaveLength(1)
    expect(read.refused).toEqual([{ from: 'y', why: 'no case file' }])
  })
})
