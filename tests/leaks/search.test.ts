import exifr from 'exifr'
import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import { type HorseIdentity, identifiersOf } from '../../src/identity/identifiers.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { printExceptions, printRefusal } from '../../src/leaks/report.ts'
import { leakSearch, type ScanFile } from '../../src/leaks/search.ts'
import { english } from '../english.ts'

const { owner: ownerWords, portfolio } = english

const own = ownWords([], [portfolio, ownerWords])
const horse = (
  id: string,
  name: string,
  owner: string,
  more: Partial<HorseIdentity> = {},
): HorseIdentity => ({
  id,
  name,
  owner,
  vet: { name: null, phone: null },
  privateWords: [],
  files: [],
  dates: [],
  ...more,
})

const horses = [
  horse('zoe-7', 'Zoë', 'kestrel', {
    privateWords: ['Thistledown Yard', 'Æsc'],
    files: ['IMG_4711.jpg'],
    dates: ['2026-03-14'],
  }),
  horse('may', 'May', 'fenwick', { dates: ['2026-04-02'] }),
  horse('juno', 'Juno', 'fenwick'),
]
const owners = [
  { id: 'kestrel', name: 'Ada Kestrel', language: null },
  { id: 'fenwick', name: "Orla O'Fenwick", language: null },
]
const list = identifiersOf(
  horses,
  {
    owners,
    people: [{ id: 'tib', name: 'Ilse Brandtholm' }],
    contacts: { practice: '01632 960000', vet: { name: 'Noor Feldarch', phone: '01632 960001' } },
  },
  own,
)
const search = leakSearch({ list, horses, own, ownTexts: ['Kestrel Hoof Care'] })

const file = (text: string | Uint8Array, more: Partial<ScanFile> = {}): ScanFile => ({
  path: 'portfolio/bramble/index.html',
  bytes: typeof text === 'string' ? Buffer.from(text) : text,
  reader: { kind: 'everyone' },
  ...more,
})
const found = (text: string | Uint8Array, more: Partial<ScanFile> = {}) =>
  search.scan(file(text, more)).map((hit) => hit.text)

describe('the search for names in finished pages', () => {
  it('keeps whom to ring out of the portfolio, and leaves it to owners', () => {
    const text = '<p>Ring Noor Feldarch, 01632 960001, or us, 01632 960000.</p>'
    expect(found(text).length).toBeGreaterThanOrEqual(3)
    expect(found(text, { reader: { kind: 'owner', owner: 'kestrel' } })).toEqual([])
  })

  it('keeps the people of the practice out of the portfolio, by name and by what they are called', () => {
    const text = '<p>Measured by Ilse, then by brandtholm; Tib held her. See /portfolio/tib/.</p>'
    expect(found(text)).toEqual(['Ilse', 'brandtholm', 'Tib', 'tib'])
    expect(search.scan(file(text)).map(({ kind, hint }) => [kind, hint.includes('practice.md')])).toEqual(
      Array.from({ length: 4 }, () => ['name of a person of the practice', true]),
    )
    expect(found(text, { reader: { kind: 'owner', owner: 'kestrel' } })).toEqual([])
  })

  it('finds nothing in a clean page', () => {
    expect(found('<p>Bramble stood well on day 35; it may heal.</p>')).toEqual([])
  })

  it('says where, what and what to do', () => {
    const hits = search.scan(file('<html>\n<p>Bramble, that is Juno</p>'))
    const source = { file: 'quill/2026-01-12.md', line: 24, text: 'Bramble, that is Juno' }
    const refusal = { folder: 'portfolio', owner: null }
    expect(printRefusal({ ...refusal, hits: hits.map((hit) => ({ ...hit, source: null })) })).toBe(
      [
        'One name, word or date would have become public in portfolio/. It stays as it was last published.',
        `portfolio/bramble/index.html:2:21\n  name of a horse: "Juno"\n  ${hits[0]?.hint}`,
      ].join('\n\n'),
    )
    const located = { ...refusal, hits: hits.map((hit) => ({ ...hit, source })) }
    expect(
      printRefusal(located, (path) => `cases/${path}`)
        .split('\n')
        .slice(2),
    ).toEqual([
      'cases/quill/2026-01-12.md:24',
      '  name of a horse: "Juno"',
      '  Bramble, that is Juno',
      '  Change that line so that it says the same without it.',
      '  It would have stood in portfolio/bramble/index.html:2:21.',
    ])
  })

  it.each([
    ['case', '<p>zOË</p>', 'zOË'],
    ['no accent', '<p>ZOE</p>', 'ZOE'],
    ['composed otherwise', '<p>Zoe\u0308</p>', 'Zoe\u0308'],
    ['named entity', '<p>Zo&euml;</p>', 'Zoe'],
    ['decimal entity', '<p>&#74;uno</p>', 'Juno'],
    ['hex entity', '<p>&#x4A;un&#x6f;</p>', 'Juno'],
    ['entity without its end', '<p>&#74uno</p>', 'Juno'],
    ['entity in an entity', '<p>&amp;#74;uno</p>', 'Juno'],
    ['ligature entity', '<p>&AElig;sc</p>', 'Æsc'],
    ['soft hyphen', '<p>Ju&shy;no</p>', 'Ju\u00ADno'],
    ['zero width', '<p>Ju\u200Bno</p>', 'Ju\u200Bno'],
    ['direction mark', '<p>Ju\u200Eno</p>', 'Ju\u200Eno'],
    ['direction mark as an entity', '<p>Ju&#x200f;no</p>', 'Ju\u200Fno'],
    ['turn of direction', '<p>Ju\u2066no\u2069</p>', 'Ju\u2066no\u2069'],
    ['split by a tag', '<p>Ju<b>no</b></p>', 'Juno'],
    ['split by a comment', '<p>Ju<!-- x -->no</p>', 'Juno'],
    ['in a comment', '<!-- Juno -->', 'Juno'],
    ['possessive', "<p>Juno's</p>", 'Juno'],
    ['possessive without apostrophe', '<p>Junos</p>', 'Junos'],
    ['attribute', '<img alt="juno, left fore">', 'juno'],
    ['address', '<a href="../juno/index.html">x</a>', 'juno'],
    ['address escaped', '<a href="../%4auno/">x</a>', 'Juno'],
    ['address escaped, several bytes', '<a href="Zo%C3%AB">x</a>', 'Zoë'],
    ['script', '<script>x = "\\u004auno"</script>', 'Juno'],
    ['script, braces', '<script>x = "\\u{4a}uno"</script>', 'Juno'],
    ['json', '{"name":"\\u004auno"}', 'Juno'],
    ['svg', '<svg><text>Juno</text></svg>', 'Juno'],
    ['style', '.juno{color:red}', 'juno'],
    ['owner', '<p>ada kestrel</p>', 'ada kestrel'],
    ['part of an owner', '<p>Ms KESTREL</p>', 'KESTREL'],
    ['owner with apostrophe', '<p>O&#39;Fenwick</p>', 'Fenwick'],
    ['private word over a line', '<p>Thistledown\n   Yard</p>', 'Thistledown\n   Yard'],
    ['private word in one', '<p>thistledown-yard</p>', 'thistledown-yard'],
    ['file name', '<img src="img_4711.jpg">', 'img_4711.jpg'],
    ['file name without ending', '<img src="img-4711-800.webp">', 'img-4711'],
    ['id with digits', '<p id="zoe-7-x">', 'zoe-7'],
    ['date, ISO', '<time datetime="2026-03-14">', '2026-03-14'],
    ['date, written', '<p>14 March 2026</p>', '14 March 2026'],
    ['date, no year', '<p>March 14th</p>', 'March 14th'],
    ['date in entities', '<p>2026&#45;03&#45;14</p>', '2026-03-14'],
    ['date that was foretold', '<p>2027-01-09</p>', '2027-01-09'],
    ['everyday name', '<p>May was lame</p>', 'May'],
    ['everyday id in an address', '<a href="../may/">x</a>', 'may'],
    [
      'text hidden as data',
      `<img src="data:text/plain;base64,${Buffer.from('Juno').toString('base64')}">`,
      'Juno',
    ],
  ])('finds a name: %s', (_form, text, expected) => {
    expect(found(text)).toContain(expected)
  })

  it('leaves everyday words and other words alone', () => {
    expect(found('<p>it may be; maybe; junior; kestrels fly? no; O Fen wick; day 14</p>')).toEqual([
      'kestrels',
    ])
    expect(found('<path d="M20.26,3.14L2026.03 14"/>')).toEqual([])
  })

  it('lists each name that it does not search in every form', () => {
    expect(printExceptions(list.exceptions)).toBe(
      [
        'private word "yard (Thistledown Yard)": part of a longer name, not searched alone',
        'name of a horse "May": everyday word, searched with its capital',
        'folder of a horse "may": searched in paths only',
      ].join('\n'),
    )
  })

  it("leaves out the practice's name where it stands whole", () => {
    expect(found('<p>Kestrel Hoof Care</p>')).toEqual([])
    expect(found('<p>Kestrel, Hoof Care</p>')).toEqual(['Kestrel'])
  })

  it('finds names in the path of a file', () => {
    const [hit] = search.scan(file('x', { path: 'portfolio/juno/index.html' }))
    expect(hit).toMatchObject({ kind: "name of a horse, in the file's own name", line: null })
    expect(found('x', { path: 'portfolio/bramble/2026-03-14.html' })).toEqual(['2026-03-14'])
  })

  it('gives the place in the file as it was, whatever had to be undone before', () => {
    const [hit] = search.scan(file('<p>&amp;&amp;\n&euml;&euml; &#74;uno</p>'))
    expect(hit).toMatchObject({ line: 2, column: 14 })
  })

  it('does not take for a name what stands by chance in a token, a checksum or a hash', () => {
    const more = { path: 'owners/12ada34/index.html', random: ['12ada34', '9ada9999'] }
    const hash = `sha256-1ada2${'A'.repeat(38)}`
    expect(found(`<p data-checksum="9ada9999">${hash}&#x3D; ${hash}=</p>`, more)).toEqual([])
    expect(found('<p data-checksum="9ada9999">Ada</p>', more)).toEqual(['Ada'])
  })

  it('does not read what is sealed', () => {
    const text = '<p>x</p> Juno <p>Juno</p>'
    expect(search.scan(file(text, { sealed: [{ start: 9, end: 13 }] })).map(({ column }) => column)).toEqual([
      18,
    ])
  })
})

describe("the search in an owner's page", () => {
  const reader = { kind: 'owner', owner: 'fenwick' } as const

  it("lets pass what is the owner's own, and dates", () => {
    expect(found("<p>Juno and May, for Orla O'Fenwick, 14 March 2026</p>", { reader })).toEqual([])
  })

  it("finds what is another owner's", () => {
    expect(found('<p>Zoë stands beside Juno at Thistledown Yard</p>', { reader })).toEqual([
      'Zoë',
      'Thistledown Yard',
    ])
    expect(search.scan(file('<p>Zoë</p>', { reader }))[0]).toMatchObject({
      kind: 'name of a horse of another owner',
      horse: 'zoe-7',
    })
  })

  it("lets the month of May stand beside a number in the other owner's page", () => {
    const other = { kind: 'owner', owner: 'kestrel' } as const
    expect(found('<p>14 May 2026, until May 2027</p>', { reader: other })).toEqual([])
    expect(found('<p>Ride with May on Sunday</p>', { reader: other })).toEqual(['May'])
  })
})

describe('the search in pictures', () => {
  let plain: Buffer
  beforeAll(async () => {
    plain = await sharp({ create: { width: 64, height: 48, channels: 3, background: '#886644' } })
      .jpeg()
      .toBuffer()
  })
  const uri = (bytes: Uint8Array, type = 'image/jpeg') =>
    `<img src="data:${type};base64,${Buffer.from(bytes).toString('base64')}">`
  const kinds = (bytes: Uint8Array, path = 'portfolio/bramble/1.jpg') =>
    search.scan(file(bytes, { path })).map((hit) => `${hit.kind}: ${hit.text}`)

  it('finds nothing in bare ones', async () => {
    for (const type of ['jpeg', 'png', 'webp', 'avif'] as const) {
      expect(kinds(await sharp(plain).toFormat(type).toBuffer())).toEqual([])
    }
  })

  it.each(['jpeg', 'png', 'webp', 'avif'] as const)('finds EXIF in %s, and the name in it', async (type) => {
    const tagged = await sharp(plain)
      .withExif({ IFD0: { ImageDescription: 'Juno, Thistledown Yard', Artist: 'Ada Kestrel' } })
      .toFormat(type)
      .toBuffer()
    expect(await exifr.parse(tagged).catch(() => null)).not.toBeUndefined()
    const all = kinds(tagged)
    expect(all.some((one) => one.startsWith(`metadata of a picture: ${type} block`))).toBe(true)
    expect(all).toContain('name of a horse: Juno')
    expect(search.scan(file(uri(tagged, `image/${type}`))).map(({ text }) => text)).toContain('Juno')
  })

  it('finds metadata that holds no name', async () => {
    const tagged = await sharp(plain)
      .withExif({ IFD0: { Software: 'x' } })
      .jpeg()
      .toBuffer()
    expect(kinds(tagged)).toEqual(['metadata of a picture: jpeg block EXIF or XMP'])
  })

  it('finds a comment, and bytes after the end', () => {
    const comment = Buffer.concat([
      plain.subarray(0, 2),
      Buffer.from([0xff, 0xfe, 0, 6]),
      Buffer.from('Juno'),
      plain.subarray(2),
    ])
    expect(kinds(comment)).toEqual(['metadata of a picture: jpeg block comment', 'name of a horse: Juno'])
    expect(kinds(Buffer.concat([plain, Buffer.from(' Juno ')]))).toEqual([
      'metadata of a picture: jpeg block bytes after the picture',
      'name of a horse: Juno',
    ])
  })

  it('finds a long name within the picture itself', () => {
    const at = plain.length - 40
    const marked = Buffer.concat([
      plain.subarray(0, at),
      Buffer.from(' thistledown yard '),
      plain.subarray(at),
    ])
    expect(kinds(marked)).toEqual(['private word: thistledown yard'])
  })

  it('finds names in other binary files, one or two bytes a letter', () => {
    const wide = Buffer.from('\0\0Juno\0', 'utf16le')
    expect(kinds(wide, 'portfolio/x.bin')).toEqual(['name of a horse: Juno'])
    expect(kinds(Buffer.from('\0\0 Juno \0'), 'portfolio/x.bin')).toEqual(['name of a horse: Juno'])
  })

  it('goes by the bytes, not by the name of the file', async () => {
    const tagged = await sharp(plain)
      .withExif({ IFD0: { Artist: 'x' } })
      .jpeg()
      .toBuffer()
    expect(kinds(tagged, 'portfolio/bramble/readings.csv')).toEqual([
      'metadata of a picture: jpeg block EXIF or XMP',
    ])
  })
})
