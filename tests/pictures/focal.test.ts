import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { focalNoted } from '../../src/pictures/focal.ts'

async function exifOf(focal: string | null): Promise<Buffer | undefined> {
  const picture = sharp({ create: { width: 8, height: 8, channels: 3, background: '#777' } })
  const noted = focal === null ? {} : { IFD2: { FocalLengthIn35mmFilm: focal } }
  const jpeg = await picture
    .withExif({ IFD0: { Software: 'x' }, ...noted })
    .jpeg()
    .toBuffer()
  return (await sharp(jpeg).metadata()).exif
}

describe('the focal length that a camera notes', () => {
  it('is read as on film', async () => {
    expect(focalNoted(await exifOf('26'))).toBe(26)
    expect(focalNoted(await exifOf('52'))).toBe(52)
  })

  it('is none where it is not noted, or no likely one', async () => {
    expect(focalNoted(undefined)).toBeNull()
    expect(focalNoted(await exifOf(null))).toBeNull()
    expect(focalNoted(await exifOf('0'))).toBeNull()
    expect(focalNoted(await exifOf('9000'))).toBeNull()
  })

  it('is none in a block that is torn anywhere or points out of itself', async () => {
    const whole = (await exifOf('52')) ?? Buffer.alloc(0)
    for (let length = 0; length < whole.length; length++)
      expect([null, 52]).toContain(focalNoted(whole.subarray(0, length)))
    for (let at = 0; at < Math.min(60, whole.length); at++) {
      const bent = Buffer.from(whole)
      bent[at] = 0xff
      const read = focalNoted(bent)
      expect(read === null || (read >= 10 && read <= 300)).toBe(true)
    }
  })
})
