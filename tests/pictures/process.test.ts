import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { deflateSync } from 'node:zlib'
import exifr from 'exifr'
import sharp, { type Sharp } from 'sharp'
import { afterEach, describe, expect, it } from 'vitest'
import { contentHash } from '../../src/build/disk/content-hash.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import type { PictureVariant } from '../../src/pages/shared/pictures.ts'
import { pictureKeys, processPictures } from '../../src/pictures/process.ts'
import { bytesOf, pictureFiles, pictureStore, placeOf } from '../../src/pictures/store.ts'
import { chunksOf, junoWith, memoryStore, pixelBomb, segmentsOf, withChunk, withSegment } from './kit.ts'

const plain = (width: number, height: number, colour = '#7a5') =>
  sharp({ create: { width, height, channels: 3, background: colour } })

const jpegOf = (width: number, height: number) => plain(width, height).jpeg().toBuffer()

async function processed(pictures: Readonly<Record<string, Uint8Array>>) {
  const { horse, folder } = junoWith(pictures)
  const store = memoryStore()
  return { ...(await processPictures(horse, folder, store)), store }
}

const reported = (diagnostics: readonly { message: string; advice: string | null }[]) =>
  diagnostics.map(({ message, advice }) => [message, advice])

describe('a processed picture', () => {
  it('comes in sizes for phone and desk, with a JPEG for what shows nothing newer', async () => {
    const { pictures, store, diagnostics } = await processed({ 'a.jpg': await jpegOf(2400, 1800) })
    expect(diagnostics).toEqual([])
    const picture = pictures.get('photos/a.jpg')
    expect(picture).toMatchObject({ width: 2400, height: 1800 })
    expect(picture?.variants.map(({ type, width, height }) => [type, width, height])).toEqual([
      ['image/webp', 480, 360],
      ['image/webp', 960, 720],
      ['image/webp', 1600, 1200],
      ['image/jpeg', 960, 720],
    ])
    expect(pictureFiles('juno', pictures, store).map(({ path }) => path)).toEqual(
      picture?.variants.map(({ path }) => `juno/${path}`),
    )
  })

  it.each([
    [200, [200]],
    [480, [480]],
    [481, [480, 481]],
    [960, [480, 960]],
    [1000, [480, 960, 1000]],
    [1600, [480, 960, 1600]],
  ])('is never enlarged: %i pixels wide', async (width, expected) => {
    const { pictures } = await processed({ 'a.jpg': await jpegOf(width, 100) })
    const variants = pictures.get('photos/a.jpg')?.variants ?? []
    const ofType = (type: PictureVariant['type']) =>
      variants.filter((variant) => variant.type === type).map((variant) => variant.width)
    expect(ofType('image/webp')).toEqual(expected)
    expect(ofType('image/jpeg')).toEqual([Math.min(width, 960)])
  })

  it('stands upright, whatever way the camera was held', async () => {
    // Left half red, right half blue, stored lying: orientation 6 turns it clockwise, so red comes to the top.
    const lying = await plain(600, 400, '#f00')
      .composite([{ input: await plain(300, 400, '#00f').png().toBuffer(), left: 300, top: 0 }])
      .jpeg({ quality: 95 })
      .withMetadata({ orientation: 6 })
      .toBuffer()
    const { pictures, store } = await processed({ 'a.jpg': lying })
    const picture = pictures.get('photos/a.jpg')
    expect(picture).toMatchObject({ width: 400, height: 600 })
    for (const bytes of store.files.values()) {
      const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true })
      expect([info.width, info.height]).toEqual([400, 600])
      const at = (x: number, y: number) => [...data.subarray((y * info.width + x) * 3).subarray(0, 3)]
      expect(at(200, 60)[0]).toBeGreaterThan(230)
      expect(at(200, 60)[2]).toBeLessThan(30)
      expect(at(200, 540)[0]).toBeLessThan(30)
      expect(at(200, 540)[2]).toBeGreaterThan(230)
    }
  })

  it('carries nothing of the source but its pixels', async () => {
    const secret = 'Fenwick-Lane-Yard'
    const exif = {
      IFD0: { Artist: secret, ImageDescription: secret, Copyright: secret, Software: secret },
      IFD2: { MakerNote: secret, UserComment: secret, BodySerialNumber: secret },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'W',
        GPSLongitude: '2/1 15/1 0/1',
        GPSAreaInformation: secret,
      },
    }
    const xmp = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:dc="http://purl.org/dc/elements/1.1/" dc:source="${secret}"/></rdf:RDF></x:xmpmeta>`
    const tagged = (source: Sharp) => source.withExif(exif).withXmp(xmp).withIccProfile('p3')
    const image = plain(900, 600)
    let jpeg: Buffer<ArrayBufferLike> = await tagged(image.clone()).jpeg().toBuffer()
    jpeg = withSegment(
      jpeg,
      0xed,
      `Photoshop 3.0\u00008BIM\u0004\u0004\0\0\0\0\0\u0016\u001c\u0002x\0\u0011${secret}`,
    )
    jpeg = withSegment(jpeg, 0xfe, secret)
    jpeg = withSegment(jpeg, 0xe2, `MPF\0${secret}`)
    jpeg = Buffer.concat([jpeg, Buffer.from(`after the end: ${secret}`)])
    let png: Buffer<ArrayBufferLike> = await tagged(image.clone()).png().toBuffer()
    png = withChunk(png, 'tEXt', `Comment\0${secret}`)
    png = withChunk(png, 'iTXt', `Title\0\0\0\0\0${secret}`)
    const webp = await tagged(image.clone()).webp().toBuffer()
    const avif = await tagged(image.clone()).avif({ effort: 0 }).toBuffer()
    const sources = { 'a.jpg': jpeg, 'b.png': png, 'c.webp': webp, 'd.avif': avif }
    for (const [name, bytes] of Object.entries(sources)) {
      expect(bytes.includes(secret), `${name} holds what was planted`).toBe(true)
    }
    expect(await exifr.gps(jpeg)).toEqual({ latitude: 51.5, longitude: -2.25 })

    const { diagnostics, store } = await processed(sources)
    expect(diagnostics).toEqual([])
    expect(store.files.size).toBe(4 * 3)
    for (const [name, bytes] of store.files) {
      const { exif: a, xmp: b, iptc: c, icc: d, comments: e, orientation: f } = await sharp(bytes).metadata()
      expect([a, b, c, d, e, f], name).toEqual(Array(6).fill(undefined))
      expect(Buffer.from(bytes).includes('Fenwick'), name).toBe(false)
      if (name.endsWith('.jpg')) {
        expect(segmentsOf(bytes).filter((one) => one.startsWith('APP') || one === 'fe')).toEqual([])
        const everything = { xmp: true, iptc: true, icc: true, jfif: false, gps: true, makerNote: true }
        expect(await exifr.parse(Buffer.from(bytes), everything)).toBeUndefined()
      } else {
        expect(chunksOf(bytes), name).toEqual(['VP8 '])
      }
    }
  })

  it('has its colours brought to sRGB', async () => {
    // Display P3 (0, 200, 0) lies outside sRGB: red is cut off at 0, green rises. Untouched, 200 would stay 200.
    const green = plain(500, 10, '#00c800')
    const { icc } = await sharp(await green.clone().withIccProfile('p3').png().toBuffer()).metadata()
    if (!icc) throw new Error('no profile to plant')
    const tagged = withChunk(
      await green.png().toBuffer(),
      'iCCP',
      Buffer.concat([Buffer.from('p3\0\0', 'latin1'), deflateSync(icc)]),
    )
    const { store } = await processed({ 'a.png': tagged })
    for (const bytes of store.files.values()) {
      const { data } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true })
      expect(data[1]).toBeGreaterThan(203)
    }
  })

  it('has white where the source was transparent', async () => {
    const clear = { r: 0, g: 0, b: 0, alpha: 0 }
    const png = await sharp({ create: { width: 50, height: 50, channels: 4, background: clear } })
      .png()
      .toBuffer()
    const { store } = await processed({ 'a.png': png })
    for (const bytes of store.files.values()) {
      const { data } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true })
      expect(data[0]).toBeGreaterThan(250)
    }
  })

  it('has a name that tells nothing, and the same bytes each time', async () => {
    const sources = { 'juno-at-fenwick.jpg': await jpegOf(700, 500) }
    const [one, two] = [await processed(sources), await processed(sources)]
    expect([...one.store.files]).toEqual([...two.store.files])
    for (const name of one.store.files.keys()) expect(name).toMatch(/^[0-9a-f]{32}-\d+\.(?:webp|jpg)$/)
  })
})

describe('a picture that cannot be used', () => {
  it('stops only itself, and is reported at its line', async () => {
    const good = await jpegOf(500, 400)
    const { pictures, diagnostics } = await processed({
      'a.jpg': Buffer.from('not a picture'),
      'b.jpg': good,
    })
    expect([...pictures.keys()]).toEqual(['photos/b.jpg'])
    expect(diagnostics).toHaveLength(1)
    expect(diagnostics[0]).toMatchObject({
      code: 'picture-form',
      level: 'error',
      file: 'juno/2026-01-12.md',
      line: 3,
      column: 12,
      endColumn: 24,
      sourceLine: '  - {file: photos/a.jpg, foot: LF, view: lateral}',
      message: 'photos/a.jpg is no picture that can be read.',
      expected: 'a picture as JPEG, PNG, WebP, AVIF or HEIC',
    })
  })

  it('may be of a form that browsers do not show', async () => {
    const { diagnostics } = await processed({
      'c.gif': Buffer.from('GIF89a'),
      'd.svg': Buffer.from('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>'),
      'e.tif': Buffer.from('II*\0'),
      'f.pdf': Buffer.from('%PDF-1.7'),
      'g.jpg': Buffer.alloc(0),
    })
    expect(reported(diagnostics)).toEqual([
      ['photos/c.gif is a GIF picture.', 'save it as JPEG'],
      ['photos/d.svg is an SVG drawing.', 'save it as JPEG'],
      ['photos/e.tif is a TIFF picture.', 'save it as JPEG'],
      ['photos/f.pdf is a PDF document.', 'save it as JPEG'],
      ['The picture photos/g.jpg is an empty file.', 'copy the picture again'],
    ])
  })

  it('may have the wrong name for what it is', async () => {
    const image = plain(40, 30)
    const { diagnostics } = await processed({
      'a.jpg': await image.clone().png().toBuffer(),
      'b.png': await image.clone().jpeg().toBuffer(),
      'c.JPEG': await image.clone().jpeg().toBuffer(),
      'd.webp': await image.clone().avif({ effort: 0 }).toBuffer(),
    })
    expect(reported(diagnostics)).toEqual([
      [
        'The picture photos/a.jpg is a PNG by its content, not what its name says.',
        'rename it to photos/a.png, here and in the folder',
      ],
      [
        'The picture photos/b.png is a JPEG by its content, not what its name says.',
        'rename it to photos/b.jpg, here and in the folder',
      ],
      [
        'The picture photos/d.webp is an AVIF by its content, not what its name says.',
        'rename it to photos/d.avif, here and in the folder',
      ],
    ])
  })

  it('may be torn', async () => {
    const noise = { type: 'gaussian', mean: 128, sigma: 40 } as const
    const image = sharp({ create: { width: 600, height: 400, channels: 3, background: '#000', noise } })
    const whole = {
      'a.jpg': await image.clone().jpeg().toBuffer(),
      'b.png': await image.clone().png().toBuffer(),
      'c.webp': await image.clone().webp().toBuffer(),
      'd.avif': await image.clone().avif({ effort: 0 }).toBuffer(),
    }
    const torn = Object.fromEntries(
      Object.entries(whole).map(([name, bytes]) => [name, bytes.subarray(0, bytes.length * 0.6)]),
    )
    const { pictures, diagnostics } = await processed(torn)
    expect(pictures.size).toBe(0)
    expect(diagnostics.map(({ code }) => code)).toEqual(Array(4).fill('picture-broken'))
    expect(diagnostics[0]?.message).toBe(
      'The picture photos/a.jpg is broken: it ends too early or holds bytes that are no picture.',
    )
  })

  it('may be larger than any camera makes, in pixels or in bytes', async () => {
    const { diagnostics } = await processed({
      'a.png': pixelBomb(60_000, 60_000),
      'b.png': pixelBomb(99, 1_100_000),
    })
    expect(diagnostics.map(({ message }) => message)).toEqual([
      'The picture photos/a.png says that it has 60,000 by 60,000 pixels.',
      'The picture photos/b.png says that it has 99 by 1,100,000 pixels.',
    ])
    expect(diagnostics[0]?.expected).toBe('at most 100,000,000 pixels in all')

    const { horse, folder, reads } = junoWith({ 'a.jpg': new Uint8Array(8) })
    const huge = folder.list().map((entry) => ({ ...entry, size: 70_000_000 }))
    const store = memoryStore()
    const made = await processPictures(horse, { ...folder, list: () => huge }, store)
    expect(reported(made.diagnostics)).toEqual([
      ['The picture photos/a.jpg has 67 MiB.', 'save it smaller as JPEG'],
    ])
    expect(reads).not.toContain('juno/photos/a.jpg')
  })
})

describe('the store of pictures', () => {
  const folders: string[] = []
  const newFolder = () => {
    const folder = mkdtempSync(join(tmpdir(), 'pictures-'))
    folders.push(folder)
    return folder
  }
  afterEach(() => {
    for (const folder of folders.splice(0)) rmSync(folder, { recursive: true })
  })

  it('never processes an unchanged picture again, and reads none whose hash is known', async () => {
    const bytes = await jpegOf(700, 500)
    const { horse, folder, reads } = junoWith({ 'a.jpg': bytes })
    const place = newFolder()
    const store = pictureStore(disk, place)
    const kept: string[] = []
    const counting = {
      ...store,
      keep: (...given: Parameters<typeof store.keep>) => {
        kept.push(given[0])
        store.keep(...given)
      },
    }
    const first = await processPictures(horse, folder, counting)
    const second = await processPictures(horse, folder, counting)
    expect(kept).toHaveLength(1)
    expect(reads.filter((path) => path.endsWith('.jpg'))).toHaveLength(2)
    const third = await processPictures(
      horse,
      folder,
      counting,
      new Map([['juno/photos/a.jpg', contentHash(bytes)]]),
    )
    expect(kept).toHaveLength(1)
    expect(reads.filter((path) => path.endsWith('.jpg'))).toHaveLength(2)
    expect(second).toEqual(first)
    expect(third).toEqual(first)
    expect(readdirSync(place).some((name) => name.endsWith('.new'))).toBe(false)
  })

  it('makes again what is gone or damaged', async () => {
    const { horse, folder } = junoWith({ 'a.jpg': await jpegOf(700, 500) })
    const place = newFolder()
    const store = pictureStore(disk, place)
    const first = await processPictures(horse, folder, store)
    const names = readdirSync(place)
    const picture = names.find((name) => name.endsWith('.webp')) ?? ''
    rmSync(join(place, picture))
    expect(await processPictures(horse, folder, store)).toEqual(first)
    writeFileSync(join(place, names.find((name) => name.endsWith('.json')) ?? ''), '{"width":')
    expect(await processPictures(horse, folder, store)).toEqual(first)
    expect(readdirSync(place)).toEqual(names)
  })

  it('hands out places and bytes, and forgets what no casebook holds', async () => {
    const bytes = await jpegOf(700, 500)
    const { horse, folder } = junoWith({ 'a.jpg': bytes, 'b.jpg': await jpegOf(300, 300) })
    const store = pictureStore(disk, newFolder())
    const { pictures } = await processPictures(horse, folder, store)
    const picture = pictures.get('photos/a.jpg')
    const variant = picture?.variants[0]
    if (!picture || !variant) throw new Error('nothing was made')
    expect(disk.stat(placeOf(store, variant))?.kind).toBe('file')
    expect(bytesOf(store, variant)?.length).toBeGreaterThan(100)
    store.sweep(pictureKeys([['juno/photos/a.jpg', contentHash(bytes)]]))
    expect(bytesOf(store, variant)?.length).toBeGreaterThan(100)
    const other = pictures.get('photos/b.jpg')
    expect(other && bytesOf(store, other.variants[0] ?? variant)).toBeNull()
  })
})
