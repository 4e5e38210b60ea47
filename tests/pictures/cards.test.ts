import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { cardHeight, cardPlane, cardWidth } from '../../src/hoof/card.ts'
import { measureLandmarks } from '../../src/hoof/landmarks.ts'
import { through } from '../../src/hoof/plane.ts'
import { landmarkText } from '../../src/pages/mark/landmark-block.ts'
import { refusedCards, withCards } from '../../src/pictures/cards.ts'
import { cardsIn, processPictures } from '../../src/pictures/process.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { readVisitBlock } from '../casebook/read-one.ts'
import { chance } from '../photos/bench/chance.ts'
import { type Fault, rendered } from '../photos/bench/render.ts'
import { cardBeside, sideShot } from '../photos/bench/shots.ts'
import { memoryStore } from './kit.ts'

const draw = chance(3)
const shot = sideShot('yard', draw)
const stood = cardBeside(shot, draw)
/** The picture is half as large as the shot's pixels. */
const half = ([x, y]: readonly [number, number]) => [x / 2, y / 2] as const
const marked = {
  ...shot.marked,
  lines: {},
  points: Object.fromEntries(Object.entries(shot.marked.points).map(([name, at]) => [name, half(at)])),
}

async function read(keys: string, fault: Fault = {}, cards = [stood], focal: string | null = null) {
  const bare = await rendered(shot, { seed: 1, cards, fault })
  const exif = { IFD2: { FocalLengthIn35mmFilm: focal ?? '' } }
  const picture = focal === null ? bare : await sharp(bare).withExif(exif).jpeg({ quality: 90 }).toBuffer()
  const block = `photos:\n  - file: photos/a.jpg\n    foot: LF\n    view: lateral\n${landmarkText(marked, '    ')}${keys}`
  const files = { 'juno/photos/a.jpg': picture }
  const { horse } = readVisitBlock(block, { files })
  if (horse === null) throw new Error('the visit cannot be read')
  return { horse, folder: memoryFolder({ ...files, 'juno/2026-01-12.md': `---\n${block}\n---\n` }) }
}

const toeLength = (horse: Parameters<typeof withCards>[0]) => {
  const landmarks = horse.visits[0]?.photos[0]?.landmarks
  return landmarks
    ? measureLandmarks(landmarks, 'lateral').find(({ measure }) => measure === 'toe-length')
    : undefined
}

describe('a card beside marked points', () => {
  it('is found while building, measures, and is found again without a look', async () => {
    const { horse, folder } = await read('')
    const store = memoryStore()
    const { cards, diagnostics } = await processPictures(horse, folder, store)
    expect(diagnostics).toEqual([])
    expect(refusedCards(horse, cards, folder)).toEqual([])
    expect(toeLength(horse)).toBeUndefined()
    expect(Math.abs((toeLength(withCards(horse, cards))?.value ?? 0) - shot.foot.toeLength)).toBeLessThan(4)
    expect([...store.records.values()][0]?.card).toEqual(cards.get('photos/a.jpg'))
    expect((await processPictures(horse, folder, store)).cards).toEqual(cards)
    // The export finds what the build finds.
    expect(await cardsIn(horse, folder)).toEqual(cards)
  })

  it('takes what is told of it', async () => {
    const { horse, folder } = await read('    card: 30 mm nearer\n')
    const { cards } = await processPictures(horse, folder, memoryStore())
    const { landmarks } = withCards(horse, cards).visits[0]?.photos[0] ?? {}
    expect(landmarks?.card?.nearer).toBe(30)
    const [x] = landmarks?.card ? through(cardPlane(landmarks.card), landmarks.card.corners[1]) : [0]
    expect(x).toBeCloseTo(180, 6)
  })

  it('is not looked for where that is told', async () => {
    const { horse, folder } = await read('    card: none\n')
    expect((await processPictures(horse, folder, memoryStore())).cards.size).toBe(0)
    expect((await cardsIn(horse, folder)).size).toBe(0)
  })

  it('is said where it is not used, and why, at its line', async () => {
    const { horse, folder } = await read('', { bend: 12 })
    const { cards } = await processPictures(horse, folder, memoryStore())
    expect(withCards(horse, cards)).toBe(horse)
    expect(refusedCards(horse, cards, folder)).toMatchObject([
      {
        code: 'card-corners-disagree',
        level: 'warning',
        file: 'juno/2026-01-12.md',
        line: 3,
        message:
          'photos/a.jpg shows a card whose markers do not lie in one plane: it is bent, or not the one that is printed.',
      },
    ])
  })

  it('is not used where it stands on its head', async () => {
    const [x, , z] = stood.origin
    const { right } = stood
    const onItsHead = {
      origin: [x + cardWidth * right[0], cardHeight, z + cardWidth * right[2]] as const,
      right: [-right[0], 0, -right[2]] as const,
      up: [0, -1, 0] as const,
    }
    const { horse, folder } = await read('', {}, [onItsHead])
    const { cards } = await processPictures(horse, folder, memoryStore())
    expect(cards.get('photos/a.jpg')?.card).toBeTruthy()
    expect(toeLength(withCards(horse, cards))).toBeUndefined()
    expect(refusedCards(horse, cards, folder)).toMatchObject([{ code: 'card-not-upright', level: 'warning' }])
  })

  it('tells how far the camera stood by the focal length that it noted', async () => {
    const at = async (focal: string | null) => {
      const { horse, folder } = await read('', {}, [stood], focal)
      const { cards } = await processPictures(horse, folder, memoryStore())
      return cards.get('photos/a.jpg')?.card?.camera?.[2] ?? Number.NaN
    }
    const usual = await at(null)
    expect(Math.abs(usual / shot.camera.at[2] - 1)).toBeLessThan(0.05)
    const longer = (await at('52')) / usual
    expect(longer).toBeGreaterThan(1.7)
    expect(longer).toBeLessThan(2.2)
  })
})
