/**
 * Cards that are not what they should be, in rendered pictures; and the card as it is printed. The short run takes the
 * sound card from a block and by hand, and each fault in one picture, in turns from a block and by hand.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, describe, expect, it } from 'vitest'
import { packageRoot, templates } from '../../src/build/program.ts'
import { type CardSearch, findCard, searchedSide } from '../../src/card/find-card.ts'
import { card } from '../../src/commands/card.ts'
import { cardHeight, cardWidth } from '../../src/hoof/card.ts'
import { cardPage } from '../../src/pages/mark/card-page.ts'
import { practiceLanguage, wordsFor } from '../../src/pages/words/index.ts'
import { createRenderer } from '../../src/render/renderer.ts'
import { runs } from '../runs.ts'
import { chance } from './bench/chance.ts'
import { type Fault, rendered } from './bench/render.ts'
import { cardBeside, type Stood, sideShot } from './bench/shots.ts'

async function searched(bytes: Uint8Array): Promise<CardSearch> {
  const { data, info } = await sharp(bytes)
    .flatten({ background: '#fff' })
    .greyscale()
    .resize({ width: searchedSide, height: searchedSide, fit: 'inside', withoutEnlargement: true })
    .raw()
    .toBuffer({ resolveWithObject: true })
  return findCard(
    { width: info.width, height: info.height, data },
    { width: info.width, height: info.height },
  )
}

/** What was said of as many pictures, in turns on a block and by hand, from the n-th on. */
async function said(
  fault: Fault,
  n: number,
  from = 0,
  second?: (first: Stood) => Stood,
): Promise<readonly string[]> {
  const draw = chance(5)
  const all: string[] = []
  for (let i = from; i < from + n; i++) {
    const shot = sideShot(i % 2 === 0 ? 'block' : 'yard', draw)
    const stood = cardBeside(shot, draw)
    const cards = second ? [stood, second(stood)] : [stood]
    const jpeg = await rendered(shot, { seed: i, cards, blur: 0.5, noise: 3, fault })
    all.push((await searched(jpeg)).refusal ?? 'used')
  }
  return all
}

const n = runs(1, 12)
const every = (word: string) => Array.from({ length: n }, () => word)

describe('a card in a picture', () => {
  it('is used as it was printed', async () => {
    expect(await said({}, n + 1)).toEqual([...every('used'), 'used'])
  }, 200_000)

  it.each<[string, Fault, string, from: number]>([
    ['bent, its middle 10 mm out', { bend: 10 }, 'corners disagree', 0],
    ['with markers of the family that are not its own', { ids: [1, 2, 3, 4] }, 'other markers', 1],
    ['with two of its markers exchanged', { ids: [222, 101, 343, 464] }, 'corners disagree', 0],
    ['of which half is cut off', { cut: 100 }, 'half a card', 1],
  ])(
    'is refused %s',
    async (_, fault, refusal, from) => {
      expect(await said(fault, n, from)).toEqual(every(refusal))
    },
    200_000,
  )

  it('is refused where there are two', async () => {
    const beside = (first: Stood): Stood => ({
      ...first,
      origin: [first.origin[0], first.origin[1] + 190, first.origin[2]],
    })
    expect(await said({}, n, 0, beside)).toEqual(every('two cards'))
  }, 200_000)

  it.each([
    [0.14, 1],
    [0.26, 0],
  ])(
    'is never used where it is shown on a screen of %f mm',
    async (screen, from) => {
      expect(await said({ screen }, n, from)).not.toContain('used')
    },
    200_000,
  )

  it('is not seen where there is none', async () => {
    const shot = sideShot('yard', chance(2))
    expect(await searched(await rendered(shot, { seed: 2 }))).toEqual({ card: null, refusal: 'none' })
  })
})

describe('growdown card', () => {
  const cwd = mkdtempSync(join(tmpdir(), 'card-'))
  afterAll(() => rmSync(cwd, { recursive: true }))
  const run = async (file: string | undefined) => {
    const said: string[] = []
    const out = { write: (text: string) => void said.push(text), isTerminal: false }
    const world = {
      cwd,
      stdout: out,
      stderr: out,
      keys: async function* () {},
      today: () => '2026-01-12',
      now: Date.now,
      signal: new AbortController().signal,
    }
    return { status: await card.run([file], new Map([['paper', 'letter']]), world), said: said.join('') }
  }

  it('makes the page and never replaces one', async () => {
    const { status, said } = await run(undefined)
    expect([status, said]).toEqual([
      0,
      'growdown-card.html is made. Open it, print it at 100 %, and hold a ruler to its check line.\n',
    ])
    const page = readFileSync(join(cwd, 'growdown-card.html'), 'utf8')
    expect(page).toContain('size: letter;')
    await expect(run('growdown-card.html')).rejects.toThrow(
      'growdown-card.html is there already and is not replaced.',
    )
    expect(readFileSync(join(cwd, 'growdown-card.html'), 'utf8')).toBe(page)
    await expect(run('nowhere/card.html')).rejects.toThrow(/could not be written|cannot be written/)
  })
})

describe('the page that is printed', () => {
  it.each(['A4', 'letter'] as const)('shows the card in its size, on %s, as it is found', async (paper) => {
    const words = wordsFor(practiceLanguage)
    const page = await createRenderer(templates(packageRoot()), words).render(cardPage(paper, words))
    expect(page).toContain(`size: ${paper};`)
    expect(page).toContain(`width="${cardWidth}mm" height="${cardHeight}mm"`)
    // The check line, in a drawing of one unit a millimetre.
    expect(page).toContain('width="186mm" height="14mm" viewBox="0 0 186 14"')
    expect(page).toContain('M20 9 H120')
    const svg = page.slice(page.indexOf('<svg'), page.indexOf('</svg>') + 6)
    const printed = await sharp(Buffer.from(svg), { density: 130 })
      .flatten({ background: '#fff' })
      .extend({ top: 90, bottom: 90, left: 90, right: 90, background: '#777' })
      .png()
      .toBuffer()
    const { width = 0, height = 0 } = await sharp(printed).metadata()
    const search = await searched(printed)
    const pixels = (width - 180) / cardWidth
    const wanted = [
      [90, height - 90],
      [width - 90, height - 90],
      [width - 90, 90],
      [90, 90],
    ]
    for (const [i, [x = 0, y = 0]] of wanted.entries()) {
      const [u, v] = search.card?.corners[i as 0 | 1 | 2 | 3] ?? [0, 0]
      // A tenth of a millimetre.
      expect(Math.hypot(u - x, v - y)).toBeLessThan(Math.max(1, 0.1 * pixels))
    }
  })
})
