/**
 * A foreign set of pictures: whatever telephones, cameras, scanners and messengers make of one, and what becomes of each.
 * `files/halves.heic` is the left half red, the right half blue, a yellow spot at the upper right (heif-enc, libx265).
 */
import { readFileSync } from 'node:fs'
import sharp, { type Sharp } from 'sharp'
import { describe, expect, it } from 'vitest'
import { processPictures, uprightPicture } from '../../src/pictures/process.ts'
import { isLong } from '../runs.ts'
import { junoWith, memoryStore, withSegment } from './kit.ts'

/** Left half red, right half blue, a yellow spot at the upper right. */
const halves = (width = 640, height = 480): Sharp =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 480" width="${width}" height="${height}"><rect width="640" height="480" fill="#00f"/><rect width="320" height="480" fill="#f00"/><circle cx="480" cy="120" r="60" fill="#ff0"/></svg>`,
    ),
  ).flatten({ background: '#fff' })

/** The same seen as a camera stores it that was held so: EXIF orientation 1 to 8. */
async function stored(orientation: number): Promise<Buffer> {
  const upright = halves()
  // What undoes each orientation, by the EXIF standard (CIPA DC-008): rows and columns of the stored picture.
  const turned: Readonly<Record<number, (picture: Sharp) => Sharp>> = {
    1: (picture) => picture,
    2: (picture) => picture.flop(),
    3: (picture) => picture.rotate(180),
    4: (picture) => picture.flip(),
    5: (picture) => picture.flop().rotate(270),
    6: (picture) => picture.rotate(270),
    7: (picture) => picture.flop().rotate(90),
    8: (picture) => picture.rotate(90),
  }
  const pixels = await upright.png().toBuffer()
  const lying = await (turned[orientation] ?? ((picture) => picture))(sharp(pixels)).png().toBuffer()
  return sharp(lying).withMetadata({ orientation }).jpeg({ quality: 95 }).toBuffer()
}

async function becomes(name: string, bytes: Uint8Array) {
  const { horse, folder } = junoWith({ [name]: bytes })
  const store = memoryStore()
  const { pictures, diagnostics } = await processPictures(horse, folder, store)
  return { picture: pictures.get(`photos/${name}`), diagnostics, store }
}

/** Whether every size shows the picture upright, in its colours. */
async function showsHalves(files: ReadonlyMap<string, Uint8Array>): Promise<void> {
  expect(files.size).toBeGreaterThan(0)
  for (const bytes of files.values()) {
    const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true })
    const at = (x: number, y: number) => {
      const from = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * 3
      const colour = [0, 1, 2].map((i) => data[from + i] ?? 0)
      // Printers' colours are duller than a screen's.
      return colour.map((part) => part > 0.7 * Math.max(...colour))
    }
    expect(at(0.25, 0.25), 'red at the left').toEqual([true, false, false])
    expect(at(0.75, 0.75), 'blue at the lower right').toEqual([false, false, true])
    expect(at(0.75, 0.25), 'yellow at the upper right').toEqual([true, true, false])
  }
}

const mp4 = Buffer.concat([
  Buffer.from('\0\0\0\u0018ftypmp42\0\0\0\0mp42isom', 'latin1'),
  Buffer.from('\0\0\0\u0010mdat', 'latin1'),
  Buffer.alloc(40_000, 7),
])

const accepted: readonly (readonly [string, string, () => Promise<Uint8Array>])[] = [
  ...[1, 2, 3, 4, 5, 6, 7, 8].map(
    (orientation) => [`orientation ${orientation}`, 'a.jpg', () => stored(orientation)] as const,
  ),
  ['a progressive JPEG', 'a.jpg', () => halves().jpeg({ progressive: true }).toBuffer()],
  [
    'a JPEG in CMYK, as a printer has it',
    'a.jpg',
    () => halves().toColourspace('cmyk').withIccProfile('cmyk').jpeg({ quality: 95 }).toBuffer(),
  ],
  ['a JPEG with full colour', 'a.jpg', () => halves().jpeg({ chromaSubsampling: '4:4:4' }).toBuffer()],
  ['a name in capitals', 'IMG_0001.JPG', () => halves().jpeg().toBuffer()],
  ['a picture of 16 bits', 'a.png', () => halves().toColourspace('rgb16').png().toBuffer()],
  ['a palette', 'a.png', () => halves().png({ palette: true }).toBuffer()],
  ['a lossless WebP', 'a.webp', () => halves().webp({ lossless: true }).toBuffer()],
  ['an AVIF', 'a.avif', () => halves().avif({ effort: 0, quality: 80 }).toBuffer()],
  ['an HEIC', 'a.heic', async () => readFileSync('tests/pictures/files/halves.heic')],
  ['an HEIC under its other ending', 'a.HEIF', async () => readFileSync('tests/pictures/files/halves.heic')],
  [
    'a motion photo: a film behind the picture',
    'a.jpg',
    async () => Buffer.concat([await halves().jpeg().toBuffer(), mp4]),
  ],
  [
    'a JPEG with a second picture of its brightness behind',
    'a.jpg',
    async () => {
      const main = withSegment(await halves().jpeg().toBuffer(), 0xe2, 'MPF\0II*\0')
      return Buffer.concat([main, await halves(64, 48).greyscale().jpeg().toBuffer()])
    },
  ],
  [
    'metadata of every kind',
    'a.jpg',
    async () => {
      const exif = {
        IFD0: { Artist: 'A. Person', Software: 'x' },
        IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
      }
      let jpeg: Uint8Array = await halves()
        .withExif(exif)
        .withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/"/>')
        .jpeg()
        .toBuffer()
      for (const [marker, text] of [
        [0xed, 'Photoshop 3.0\0'],
        [0xfe, 'a remark'],
        [0xeb, 'JP\0\u0001'],
      ] as const)
        jpeg = withSegment(jpeg, marker, text)
      return jpeg
    },
  ],
]

describe('a foreign picture', () => {
  it.each(accepted)('is used: %s', async (_, name, bytes) => {
    const { picture, diagnostics, store } = await becomes(name, await bytes())
    expect(diagnostics).toEqual([])
    expect(picture).toMatchObject({ width: 640, height: 480 })
    await showsHalves(store.files)
    for (const made of store.files.values()) {
      const { exif, xmp, iptc, icc, orientation } = await sharp(made).metadata()
      expect([exif, xmp, iptc, icc, orientation]).toEqual(Array(5).fill(undefined))
    }
  })

  it('is used: black and white', async () => {
    const { picture, diagnostics } = await becomes('a.jpg', await halves().greyscale().jpeg().toBuffer())
    expect(diagnostics).toEqual([])
    expect(picture).toMatchObject({ width: 640, height: 480 })
  })

  it('is used: of 48 megapixels', async () => {
    // The long run takes the largest that telephones make.
    const [width, height] = isLong ? [8064, 6048] : [8000, 6000]
    const { picture, diagnostics, store } = await becomes(
      'a.jpg',
      await halves(width, height).jpeg().toBuffer(),
    )
    expect(diagnostics).toEqual([])
    expect(picture).toMatchObject({ width, height })
    await showsHalves(store.files)
  })

  it('can be marked where it is an HEIC', async () => {
    const upright = await uprightPicture('a.heic', readFileSync('tests/pictures/files/halves.heic'))
    if ('refusal' in upright) throw new Error(upright.refusal)
    expect(upright).toMatchObject({ width: 640, height: 480 })
    await showsHalves(new Map([['a', upright.jpeg]]))
  })

  const refused: readonly (readonly [string, string, () => Promise<Uint8Array>, string])[] = [
    [
      'torn',
      'a.jpg',
      async () => (await halves().jpeg().toBuffer()).subarray(0, 4000),
      'The picture photos/a.jpg is broken: it ends too early or holds bytes that are no picture.',
    ],
    [
      'a torn HEIC',
      'a.heic',
      async () => readFileSync('tests/pictures/files/halves.heic').subarray(0, 2000),
      'The picture photos/a.heic is broken: it ends too early or holds bytes that are no picture.',
    ],
    [
      'an HEIC that was renamed',
      'a.jpg',
      async () => readFileSync('tests/pictures/files/halves.heic'),
      'The picture photos/a.jpg is an HEIC by its content, not what its name says.',
    ],
    [
      'a WebP that a messenger renamed',
      'a.jpg',
      () => halves().webp().toBuffer(),
      'The picture photos/a.jpg is a WebP by its content, not what its name says.',
    ],
    ['a film', 'a.mp4', async () => mp4, 'photos/a.mp4 is no picture that can be read.'],
    [
      'a page that a download gave instead',
      'a.jpg',
      async () => Buffer.from('<!doctype html><title>404</title>'),
      'photos/a.jpg is no picture that can be read.',
    ],
    [
      'a file of a system beside the picture',
      '._a.jpg',
      async () => Buffer.from('\0\u0005\u0016\u0007\0\u0002\0\0Mac OS X', 'latin1'),
      'photos/._a.jpg is no picture that can be read.',
    ],
    [
      'a picture of a camera before it is developed',
      'a.dng',
      async () => Buffer.from('II*\0\b\0\0\0', 'latin1'),
      'photos/a.dng is a TIFF picture.',
    ],
  ]
  it.each(refused)('is refused with words: %s', async (_, name, bytes, message) => {
    const { picture, diagnostics } = await becomes(name, await bytes())
    expect(picture).toBeUndefined()
    expect(diagnostics.map((one) => one.message)).toEqual([message])
    expect(diagnostics[0]?.advice).toBeTruthy()
  })
})
