import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { HtmlValidate } from 'html-validate'
import type { Browser, CDPSession, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { demoPictures } from '../../scripts/demo-feet.ts'
import { diskFolder } from '../../src/build/disk/source-folder.ts'
import { readHorse, readPractice } from '../../src/casebook/read.ts'
import { mark } from '../../src/commands/mark.ts'
import { measureLandmarks, type Point } from '../../src/hoof/landmarks.ts'
import { landmarkEntries } from '../../src/pages/mark/landmark-block.ts'
import { marksOf } from '../../src/pages/mark/mark-task.ts'
import { chance } from '../photos/bench/chance.ts'
import { sideSeen } from '../photos/bench/foot.ts'
import { rendered } from '../photos/bench/render.ts'
import { cardBeside, sideShot } from '../photos/bench/shots.ts'
import { axe } from './axe.ts'
import { launch } from './chrome.ts'

const practiceOf = (folder: string) => {
  const { practice } = readPractice(diskFolder(folder), '2026-11-20')
  if (practice === null) throw new Error('no practice')
  return practice
}

const drawnOf = (file: string) => {
  const found = demoPictures.find((picture) => picture.file === file)
  if (found === undefined) throw new Error(`there is no drawing ${file}`)
  return found.drawn
}
const side = { photo: 'whimbrel/photos/lf-side-2026-10-10.png', file: 'photos/lf-side-2026-10-10.png' }
const visitFile = 'whimbrel/2026-10-10.md'

let browser: Browser
beforeAll(async () => {
  browser = await launch()
})
afterAll(() => browser?.close())

let casebook = ''
let stop = new AbortController()
let ended: Promise<number> = Promise.resolve(0)
beforeEach(() => {
  casebook = mkdtempSync(join(tmpdir(), 'marking-'))
  cpSync('cases', casebook, { recursive: true })
  stop = new AbortController()
})
afterEach(async () => {
  stop.abort()
  expect(await ended).toBe(0)
  rmSync(casebook, { recursive: true })
})

/** Starts the command as a person does and gives the address that it prints. */
async function start(photo: string): Promise<string> {
  return new Promise((found, failed) => {
    const out = (text: string) => {
      const url = /Open (\S+)/.exec(text)?.[1]
      if (url !== undefined) found(url)
    }
    ended = mark.run([photo], new Map([['port', '0']]), {
      cwd: casebook,
      stdout: { write: out, isTerminal: false },
      stderr: { write: (text) => failed(new Error(text)), isTerminal: false },
      keys: async function* () {},
      today: () => '2026-11-20',
      now: Date.now,
      signal: stop.signal,
    })
    ended.catch(failed)
  })
}

async function open(photo: string, width: number, hasTouch: boolean) {
  const context = await browser.newContext({ viewport: { width, height: 844 }, hasTouch })
  const page = await context.newPage()
  const troubles: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text())
  })
  page.on('pageerror', (error) => troubles.push(error.message))
  const url = await start(photo)
  page.on('request', (request) => {
    if (!request.url().startsWith(url)) troubles.push(`left the page: ${request.url()}`)
  })
  await page.goto(url)
  await page.locator('#board[data-ready]').waitFor()
  return { page, troubles, close: () => context.close() }
}

/** Takes every point away, so that marking starts from nothing. */
async function clear(page: Page): Promise<void> {
  await page.locator('#points button').first().click()
  const skip = page.getByRole('button', { name: 'Leave out' })
  while (await skip.isEnabled()) await skip.click()
  await page.locator('#points button').first().click()
}

const stepIds = [
  'scale from',
  'scale to',
  'ground from',
  'ground to',
  'toe-at-ground',
  'toe-at-hairline',
].concat(['new-growth-ends', 'heel-at-ground', 'heel-at-hairline', 'pastern from', 'pastern to'])

interface View {
  readonly left: number
  readonly top: number
  readonly size: number
  readonly width: number
  readonly height: number
}

/** How the picture lies on the board. */
const viewOf = (page: Page): Promise<View> =>
  page.evaluate(() => {
    const [left = 0, top = 0, size = 1] = (
      document.querySelector<HTMLElement>('#layer')?.style.transform.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []
    ).map(Number)
    const { clientWidth: width = 0, clientHeight: height = 0 } = document.querySelector('#board') ?? {}
    return { left, top, size, width, height }
  })

const sessions = new WeakMap<Page, Promise<CDPSession>>()

/** Fingers on the board as a phone's browser reports them. */
async function touch(page: Page, type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: Point[]) {
  const box = await page.locator('#board').boundingBox()
  if (!box) throw new Error('no board')
  const session = sessions.get(page) ?? page.context().newCDPSession(page)
  sessions.set(page, session)
  const client = await session
  await client.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: points.map(([x, y], id) => ({ x: box.x + x, y: box.y + y, id })),
  })
}

/** Taps a point as a person does: near, and then the place itself; a swipe where it is not in view. @returns taps */
async function tapAt(page: Page, [x, y]: Point): Promise<number> {
  const board = page.locator('#board')
  for (let taps = 1; taps < 4; taps++) {
    let view = await viewOf(page)
    let at: Point = [view.left + x * view.size, view.top + y * view.size]
    for (
      let i = 0;
      i < 4 && !(at[0] > 8 && at[1] > 8 && at[0] < view.width - 8 && at[1] < view.height - 8);
      i++
    ) {
      const [dx, dy] = [view.width / 2 - at[0], view.height / 2 - at[1]]
      const far = Math.max(Math.abs(dx) / 150, Math.abs(dy) / 150, 1)
      const middle: Point = [view.width / 2, view.height / 2]
      await touch(page, 'touchStart', middle)
      await touch(page, 'touchMove', [middle[0] + 10, middle[1]])
      await touch(page, 'touchMove', [middle[0] + dx / far, middle[1] + dy / far])
      await touch(page, 'touchEnd')
      view = await viewOf(page)
      at = [view.left + x * view.size, view.top + y * view.size]
    }
    const step = await page.locator('#step-name').textContent()
    await board.tap({ position: { x: at[0], y: at[1] } })
    if ((await page.locator('#step-name').textContent()) !== step) return taps
  }
  throw new Error('the point is not set')
}

const block = (page: Page) => page.locator('#block').inputValue()
const placeOf = (text: string, key: string): readonly number[] =>
  (new RegExp(`${key}: \\[([\\d.]+), ([\\d.]+)\\]`).exec(text) ?? []).slice(1).map(Number)

describe('the marking page', () => {
  it('sets every point by touch at 390 px in half the taps, and measures as the foot was drawn', async () => {
    const { page, troubles, close } = await open(side.photo, 390, true)
    const drawn = drawnOf(side.file)
    const marks = marksOf(drawn.landmarks)
    await clear(page)
    await page.locator('#length').fill('100 mm')
    let taps = 0
    for (const id of stepIds) {
      const target = marks[id]
      if (target === undefined) throw new Error(`nothing is drawn for ${id}`)
      expect(await page.locator('.mark-sample .is-now').getAttribute('data-point')).toBe(id)
      taps += await tapAt(page, target)
    }
    // It was 33: each point was tapped, moved and set.
    expect(taps).toBeLessThanOrEqual(17)
    expect(await page.locator('#step-name').textContent()).toContain('All points are through')
    const text = await block(page)
    for (const [key] of landmarkEntries({ ...drawn.landmarks, camera: 'yard' }))
      if (key !== 'camera') expect(text).toContain(`    ${key}: [`)
    const shown = await page.locator('#values li').allTextContents()
    expect(shown).toHaveLength(Object.keys(drawn.truth).length)
    for (const line of shown) {
      const [, name = '', value = ''] = /^([a-z ]+) ([\d.]+)/.exec(line) ?? []
      const truth = Object.entries(drawn.truth).find(([id]) => id.replaceAll('-', ' ') === name)?.[1]
      expect(Math.abs(Number(value) - (truth ?? Number.NaN)), line).toBeLessThan(
        name.endsWith('angle') ? 1.5 : 0.6,
      )
    }
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
    expect(sideways).toBe(false)
    expect(troubles).toEqual([])
    await close()
  })

  it('moves the point by one pixel with the arrow keys, by ten with Shift, and goes on with Enter', async () => {
    const { page, troubles, close } = await open(side.photo, 1280, false)
    await page.getByRole('button', { name: 'Toe at the ground' }).click()
    const at = async () => placeOf(await block(page), 'toe at ground')
    expect(await at()).toEqual([330, 730])
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+ArrowDown')
    expect(await at()).toEqual([331, 740])
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Shift+ArrowLeft')
    expect(await at()).toEqual([321, 739])
    await page.keyboard.press('Enter')
    expect(await page.locator('#step-name').textContent()).toBe('Toe at the hairline')
    await page.keyboard.press('Delete')
    expect(await block(page)).not.toContain('toe at hairline')
    await page.keyboard.press('Backspace')
    await page.keyboard.press('Backspace')
    expect(await page.locator('#step-name').textContent()).toBe('Toe at the ground')
    expect(troubles).toEqual([])
    await close()
  })

  it('never moves a point by a swipe or by two fingers, which move and size the picture', async () => {
    const { page, troubles, close } = await open(side.photo, 390, true)
    await page.getByRole('button', { name: 'Toe at the ground' }).click()
    const [before, text] = [await viewOf(page), await block(page)]
    await touch(page, 'touchStart', [200, 200])
    for (const x of [190, 160, 120]) await touch(page, 'touchMove', [x, 200])
    await touch(page, 'touchEnd')
    const swiped = await viewOf(page)
    expect(swiped.left).toBeLessThan(before.left - 60)
    expect(swiped.size).toBe(before.size)
    await touch(page, 'touchStart', [100, 200], [200, 200])
    for (const x of [90, 70, 40]) await touch(page, 'touchMove', [x, 200], [300 - x, 200])
    await touch(page, 'touchEnd')
    expect((await viewOf(page)).size).toBeGreaterThan(1.5 * swiped.size)
    expect(await block(page)).toBe(text)
    expect(await page.locator('#step-name').textContent()).toBe('Toe at the ground')
    expect(troubles).toEqual([])
    await close()
  })

  it('takes back and does again, and has the points after the page is loaded anew', async () => {
    const { page, close } = await open(side.photo, 390, true)
    const at = async () => placeOf(await block(page), 'toe at ground')
    await page.getByRole('button', { name: 'Toe at the ground' }).click()
    await page.keyboard.press('Shift+ArrowRight')
    await page.keyboard.press('ArrowDown')
    expect(await at()).toEqual([340, 731])
    await page.getByRole('button', { name: 'Undo' }).tap()
    expect(await at()).toEqual([340, 730])
    await page.getByRole('button', { name: 'Undo' }).tap()
    expect(await at()).toEqual([330, 730])
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
    await page.getByRole('button', { name: 'Redo' }).tap()
    expect(await at()).toEqual([340, 730])
    await page.reload()
    await page.locator('#board[data-ready]').waitFor()
    expect(await at()).toEqual([340, 730])
    expect(await page.locator('#status').textContent()).toContain('Points of last time')
    await page.getByRole('button', { name: 'Undo' }).tap()
    expect(await at()).toEqual([330, 730])
    await close()
  })

  it('clicks and drags with the mouse, and sizes with the wheel', async () => {
    const { page, troubles, close } = await open(side.photo, 1280, false)
    await page.getByRole('button', { name: 'Toe at the ground' }).click()
    const box = await page.locator('#board').boundingBox()
    if (!box) throw new Error('no board')
    await page.mouse.move(box.x + 300, box.y + 200)
    await page.mouse.down()
    await page.mouse.move(box.x + 250, box.y + 180, { steps: 5 })
    await page.mouse.up()
    expect(placeOf(await block(page), 'toe at ground')).toEqual([330, 730])
    const { left, top, size } = await viewOf(page)
    await page.mouse.click(box.x + 320, box.y + 240)
    const [x = 0, y = 0] = placeOf(await block(page), 'toe at ground')
    expect(Math.abs(x - (320 - left) / size)).toBeLessThan(0.2)
    expect(Math.abs(y - (240 - top) / size)).toBeLessThan(0.2)
    const before = await viewOf(page)
    await page.mouse.wheel(0, -200)
    expect((await viewOf(page)).size).toBeGreaterThan(1.5 * before.size)
    expect(troubles).toEqual([])
    await close()
  })

  it('finds the card, asks for neither scale nor ground, and writes what check and build measure by', async () => {
    const draw = chance(3)
    const shot = sideShot('yard', draw)
    const jpeg = await rendered(shot, { seed: 3, cards: [cardBeside(shot, draw)] })
    writeFileSync(join(casebook, 'whimbrel/photos/card.jpg'), jpeg)
    const file = join(casebook, 'whimbrel/2026-11-19.md')
    const entry = '---\nphotos:\n  - file: photos/card.jpg\n    foot: LF\n    view: lateral\n---\n'
    writeFileSync(file, entry)
    const { page, troubles, close } = await open('whimbrel/photos/card.jpg', 390, true)
    expect(await page.locator('#card-said').textContent()).toContain('The card was found')
    let taps = 0
    const seen = sideSeen(shot.foot, shot.camera)
    const targets: Readonly<Record<string, Point>> = {
      ...seen.points,
      'pastern from': seen.pastern[0],
      'pastern to': seen.pastern[1],
    }
    for (const id of stepIds.slice(4)) {
      const target = targets[id]
      if (target) taps += await tapAt(page, [target[0] / 2, target[1] / 2])
      else await page.getByRole('button', { name: 'Leave out' }).tap()
    }
    expect(taps).toBeLessThanOrEqual(10)
    expect(await page.locator('#doubts').textContent()).toBe('')
    await page.getByRole('button', { name: /^Write it into/ }).tap()
    await page.locator('#outcome', { hasText: 'Written.' }).waitFor()
    expect(readFileSync(file, 'utf8')).toMatch(/card: \{corners: \[\[.*width: 180 mm, camera: \[/)
    const { horse } = readHorse(diskFolder(casebook), 'whimbrel', practiceOf(casebook), '2026-11-20')
    const landmarks = horse?.visits.at(-1)?.photos[0]?.landmarks
    const read = landmarks ? measureLandmarks(landmarks, 'lateral') : []
    for (const [id, within] of [
      ['toe-angle', 1.5],
      ['toe-length', 3],
    ] as const) {
      const value = read.find(({ measure }) => measure === id)?.value ?? Number.NaN
      expect(Math.abs(value - (shot.truth[id] ?? 0)), id).toBeLessThan(within)
    }
    expect(troubles).toEqual([])
    await close()
  })

  it('names points that cannot be, and values that hardly are, when they are set', async () => {
    const { page, close } = await open(side.photo, 390, true)
    await page.getByRole('button', { name: 'New growth ends' }).click()
    for (let i = 0; i < 20; i++) await page.keyboard.press('Shift+ArrowLeft')
    expect(await page.locator('#status').textContent()).not.toBe('')
    expect(await page.locator('#doubts').textContent()).toContain('New growth ends off the toe wall.')
    await page.getByRole('button', { name: 'Pastern, low' }).click()
    for (let i = 0; i < 30; i++) await page.keyboard.press('Shift+ArrowDown')
    expect(await page.locator('#doubts').textContent()).toContain('pastern is marked on the hoof')
    await close()
  })

  it('asks for the length of the scale, and says what it cannot read', async () => {
    const { page, close } = await open(side.photo, 390, true)
    await page.locator('#length').fill('a hand')
    await page.getByRole('button', { name: 'Scale, other end' }).click()
    await page.getByRole('button', { name: 'Next' }).click()
    expect(await page.locator('#status').textContent()).toBe(
      '"a hand" is no length. Write 100 mm, 10 cm or 4 in.',
    )
    expect(await block(page)).not.toContain('scale:')
    await page.locator('#length').fill('4 in')
    await page.keyboard.press('Enter')
    expect(await block(page)).toContain(', 101.6 mm]')
    expect(await page.locator('#step-name').textContent()).toBe('Ground, in front')
    await close()
  })

  it('writes only when asked, only the points, and keeps the old file beside', async () => {
    const { page, close } = await open(side.photo, 390, true)
    const file = join(casebook, visitFile)
    const before = readFileSync(file, 'utf8')
    await page.getByRole('button', { name: 'Toe at the ground' }).click()
    await page.keyboard.press('ArrowRight')
    expect(readFileSync(file, 'utf8')).toBe(before)
    expect(existsSync(`${file}.before-mark`)).toBe(false)
    await page.getByRole('button', { name: /^Write it into/ }).click()
    await page.locator('#outcome', { hasText: 'Written.' }).waitFor()
    expect(readFileSync(file, 'utf8')).toBe(
      before.replace('toe at ground: [330, 730]', 'toe at ground: [331, 730]'),
    )
    expect(readFileSync(`${file}.before-mark`, 'utf8')).toBe(before)
    await close()
  })

  it('writes no points that cannot be, and says which', async () => {
    const { page, close } = await open(side.photo, 390, true)
    const file = join(casebook, visitFile)
    const before = readFileSync(file, 'utf8')
    await page.getByRole('button', { name: 'Heel at the ground' }).click()
    for (let i = 0; i < 60; i++) await page.keyboard.press('Shift+ArrowLeft')
    await page.getByRole('button', { name: /^Write it into/ }).click()
    await page.locator('#outcome', { hasText: 'Nothing was written' }).waitFor()
    expect(await page.locator('#outcome').textContent()).toContain('Heel at ground lies in front of the toe.')
    expect(readFileSync(file, 'utf8')).toBe(before)
    expect(existsSync(`${file}.before-mark`)).toBe(false)
    await close()
  })

  it('copies the block, or selects it', async () => {
    const { page, close } = await open(side.photo, 1280, false)
    await page.getByRole('button', { name: 'Copy the block' }).click()
    await page.locator('#outcome', { hasText: /Copied|selected/ }).waitFor()
    await close()
  })

  it('has a drawing for each view, and no point of the sole asks for a ground line', async () => {
    const { page, troubles, close } = await open('samphire/photos/lf-sole-2025-12-13.png', 390, true)
    const steps = await page.locator('#points button').allTextContents()
    expect(steps).toContain('Frog tip')
    expect(steps).not.toContain('Ground, in front')
    const drawn = drawnOf('photos/lf-sole-2025-12-13.png')
    const shown = await page.locator('#values li').allTextContents()
    for (const { measure, value } of measureLandmarks(drawn.landmarks, 'solar')) {
      const digits = measure === 'toe-share' ? 2 : 1
      expect(
        shown.some((line) => line.startsWith(`${measure.replaceAll('-', ' ')} ${value.toFixed(digits)}`)),
        measure,
      ).toBe(true)
    }
    expect(troubles).toEqual([])
    await close()
  })

  it('is accessible in light and dark, and valid HTML', async () => {
    const { page, close } = await open(side.photo, 390, true)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await axe(page)).toEqual([])
    }
    const html = await (await page.request.get(page.url())).text()
    const validator = new HtmlValidate({ extends: ['html-validate:standard'], elements: ['html5'] })
    const { results } = await validator.validateString(html)
    expect(
      results.flatMap(({ messages }) => messages.map(({ message, line }) => `${line}: ${message}`)),
    ).toEqual([])
    await close()
  })
})
