/** The form of the yard page in a real browser, as a thumb uses it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import exifr from 'exifr'
import { strFromU8, unzipSync } from 'fflate'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { feet } from '../../src/hoof/feet.ts'
import { launch, launchWithProfile } from './chrome.ts'
import { sideways, visit } from './visitor.ts'
import { eightMeasures, heronCasebook, readingNow } from './yard-form/heron.ts'
import { type FormPage, serveForm } from './yard-form/page.ts'

const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
}
const measureNames = Object.keys(eightMeasures) as readonly (keyof typeof eightMeasures)[]

let browser: Browser
let form: FormPage
let heron: FormPage
const casebook = heronCasebook()
beforeAll(async () => {
  ;[browser, form, heron] = await Promise.all([launch(), serveForm(), serveForm(casebook)])
})
afterAll(async () => {
  await browser?.close()
  form?.close()
  heron?.close()
  rmSync(casebook, { recursive: true })
})

async function write(served: FormPage, query = '', options: BrowserContextOptions = {}) {
  const url = served.url(query)
  const opened = await visit(browser, url, url.slice(0, url.indexOf('?')), { ...phone, ...options })
  await opened.page.locator('.yf-feet').waitFor()
  return opened
}

const key = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const tap = (page: Page, name: string) => key(page, name).tap()
const kept = (page: Page) => page.locator('[data-saved=kept]').waitFor()
const value = (page: Page) => page.locator('#yf-value')

/** Types a value on the pad. @returns taps */
async function typeOn(page: Page, text: string): Promise<number> {
  const pad = page.locator('.yf-pad')
  for (const digit of text) await pad.getByRole('button', { name: digit, exact: true }).tap()
  return text.length
}

/** The case file and its pictures, as the phone saves them. */
async function saved(page: Page): Promise<Readonly<Record<string, Uint8Array>>> {
  await tap(page, 'Finish')
  const download = page.waitForEvent('download')
  await tap(page, 'Save as a file')
  const path = await (await download).path()
  return unzipSync(readFileSync(path))
}
/** A picture that no coding makes small. */
const noisy = (width: number, height: number): Promise<Buffer> =>
  sharp({
    create: {
      width,
      height,
      channels: 3,
      background: '#000',
      noise: { type: 'gaussian', mean: 120, sigma: 60 },
    },
  })
    .jpeg({ quality: 95 })
    .toBuffer()

const caseFile = (files: Readonly<Record<string, Uint8Array>>): string =>
  Object.entries(files)
    .filter(([path]) => path.endsWith('.md'))
    .map(([, bytes]) => strFromU8(bytes))
    .join('')

describe('a visit written at the hoof', () => {
  it('takes four feet with eight measures each, a tap a digit and one to go on', async () => {
    const { page, troubles, close } = await write(heron, 'horse=heron')
    let taps = 0
    let digits = 0
    for (const [i, foot] of feet.entries()) {
      for (const measure of measureNames) {
        expect(await page.locator('.yf-value h2').textContent()).toContain(
          measure.replace(/^./, (letter) => letter.toUpperCase()),
        )
        const text = String(readingNow(measure, i))
        taps += await typeOn(page, text)
        digits += text.length
        await tap(page, 'Next')
        taps++
      }
      if (foot === 'LF') {
        await tap(page, '1 mild')
        await tap(page, 'Next')
        taps += 2
      }
    }
    await tap(page, 'Finish')
    await page.getByLabel('Pick the feet out every day').tap()
    await tap(page, '5 weeks')
    taps += 3
    await page.getByLabel('A line for the owner to do').pressSequentially('Hay net ')
    await kept(page)
    expect(await page.locator('.yf-feet button').first().getAttribute('aria-label')).toBe(
      'left fore: 9 of 9 done',
    )
    const text = caseFile(await saved(page))
    for (const measure of measureNames)
      expect(text).toContain(`${measure}: [${feet.map((_, i) => readingNow(measure, i)).join(', ')}]`)
    expect(text).toContain('- thrush, central sulcus, 1')
    expect(text).toMatch(/Pick the feet out every day"?\n {2}- "?Hay net"?\n/)
    expect(text).toContain('next visit: in 5 weeks')
    expect(taps).toBe(digits + 32 + 2 + 3)
    expect(troubles).toEqual([])
    await close()
  })

  it('shows the last value, the difference, and what is odd, where it is written', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    const said = page.locator('.yf-measure .yf-said')
    expect(await page.locator('.yf-value .yf-was').textContent()).toContain('88 mm on 30 Oct')
    await typeOn(page, '89')
    expect(await page.locator('.yf-difference').textContent()).toBe('+1 mm')
    expect(await said.textContent()).toBe('')
    // The first key after coming back replaces what stood; the eraser mends it.
    await tap(page, 'Next')
    await tap(page, 'Back')
    await typeOn(page, '980')
    await expect.poll(() => said.textContent()).toContain('980')
    await tap(page, 'Erase')
    expect(await value(page).inputValue()).toBe('98')
    await tap(page, 'After the trim')
    await tap(page, 'toe length')
    await typeOn(page, '120')
    await expect.poll(() => said.textContent()).toMatch(/trim/)
    await close()
  })

  it('takes eighths where the practice measures in inches, and half degrees', async () => {
    const inches = heronCasebook('in')
    const served = await serveForm(inches)
    const { page, close } = await write(served, 'horse=heron')
    await typeOn(page, '3')
    await page.getByRole('button', { name: '5/8', exact: true }).tap()
    expect(await value(page).inputValue()).toBe('3 5/8')
    await page.getByRole('button', { name: '1/4', exact: true }).tap()
    expect(await value(page).inputValue()).toBe('3 1/4')
    await tap(page, 'Next')
    await typeOn(page, '44')
    await tap(page, '.5')
    await tap(page, 'Next')
    const text = caseFile(await saved(page))
    expect(text).toContain('toe length: {LF: 3 1/4}')
    expect(text).toContain('toe angle: {LF: 44.5}')
    await close()
    served.close()
    rmSync(inches, { recursive: true })
  })

  it('answers a danger sign at once with the number, and goes on writing', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    await tap(page, 'Going')
    await page.getByRole('button', { name: /^3: bounding/ }).tap()
    const alert = page.locator('.yf-danger.is-stop')
    await alert.waitFor()
    expect(await alert.textContent()).toContain('Stop: ring the vet')
    expect(await alert.locator('a').getAttribute('href')).toBe('tel:01632960002')
    expect(await alert.textContent()).toContain('Una Brandt, 01632 960002')
    await tap(page, 'Measure')
    await typeOn(page, '89')
    expect(await value(page).inputValue()).toBe('89')
    await tap(page, 'I have read this')
    expect(await page.locator('.yf-danger.is-read').textContent()).toContain('Stop: ring the vet')
    await tap(page, 'Going')
    await page.getByRole('button', { name: /^0: none/ }).tap()
    await page.locator('.yf-danger').waitFor({ state: 'detached' })
    await close()
  })

  it('takes a new finding in three taps, and follows a feature from where it should be today', async () => {
    const { page, close } = await write(form, 'horse=marram')
    await tap(page, 'Findings')
    await tap(page, 'drainage')
    await tap(page, 'sole')
    await page.locator('.yf-new').getByRole('button', { name: '2 moderate' }).tap()
    await page.locator('.yf-danger.is-stop', { hasText: 'left fore' }).waitFor()
    await tap(page, 'I have read this')
    await page.getByText('Follow something down the wall').tap()
    await page.getByRole('group', { name: 'What', exact: true }).getByRole('button', { name: 'crack' }).tap()
    await tap(page, 'toe')
    await page.locator('.yf-value h2', { hasText: 'Crack, toe' }).waitFor()
    await typeOn(page, '12')
    await page.getByRole('button', { name: /^right fore/ }).tap()
    await page.locator('.yf-rows button', { hasText: 'Dish, toe' }).tap()
    const was = await page.locator('.yf-value .yf-was').textContent()
    expect(was).toMatch(/^about [\d.]+ mm today; 61 mm on 17 Oct/)
    expect(Number(/about ([\d.]+)/.exec(was ?? '')?.[1])).toBeGreaterThan(65)
    const text = caseFile(await saved(page))
    expect(text).toContain('drainage, sole, 2')
    expect(text).toContain('crack, toe, 12')
    await close()
  })

  it('hears a dictated visit, and lets what is typed win', async () => {
    const { page, troubles, close } = await write(heron, 'horse=heron')
    await typeOn(page, '99')
    await tap(page, 'Speak')
    const names = ['Left fore', 'Right fore', 'Left hind', 'Right hind']
    const dictated = `On arrival. ${names
      .map((name, i) => `${name}. ${measureNames.map((one) => `${one} ${readingNow(one, i)}`).join(', ')}.`)
      .join(' ')} Left fore thrush mild in the central sulcus. See her in five weeks.`
    await page.getByLabel('What you say').fill(dictated)
    await page.locator('.yf-understood dt').nth(3).waitFor()
    expect(await page.locator('.yf-understood').textContent()).toContain('Toe angle 49°')
    // Words that are still coming are kept too, and the last ones when the part is left.
    await page.getByLabel('What you say').pressSequentially(' Left fore digital pulse two.', { delay: 20 })
    await tap(page, 'Going')
    const pulse = page.getByRole('group', { name: 'Digital pulse, left fore' })
    await expect
      .poll(() => pulse.getByRole('button', { name: /^2/ }).getAttribute('aria-pressed'))
      .toBe('true')
    const text = caseFile(await saved(page))
    expect(text).toContain('toe length: [99, 90, 91, 92]')
    for (const measure of measureNames.slice(1))
      expect(text).toContain(`${measure}: [${feet.map((_, i) => readingNow(measure, i)).join(', ')}]`)
    expect(text).toContain('next visit: in 5 weeks')
    expect(troubles).toEqual([])
    await close()
  })
})

describe('what is written is kept', () => {
  it('over a reload in the middle of a value, and goes on where it was', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    await typeOn(page, '89')
    await tap(page, 'Next')
    await typeOn(page, '4')
    await kept(page)
    await page.reload()
    await page.locator('.yf-rows').waitFor()
    const rows = await page.locator('.yf-rows button').allTextContents()
    expect(rows[0]).toContain('89 mm')
    expect(rows[1]).toContain('4°')
    expect(await page.locator('.yf-value h2').textContent()).toContain('Heel angle')
    await close()
  })

  it('when the browser is killed while writing, and opens again in a new one', async () => {
    const profile = mkdtempSync(join(tmpdir(), 'phone-'))
    const first = await launchWithProfile(profile)
    const url = heron.url('horse=heron')
    const page = await first.browser.contexts()[0]?.newPage()
    await page?.goto(url)
    await page?.locator('#yf-value').waitFor()
    const draft = page?.url().replace(/.*#/, '#')
    for (const digit of ['8', '9'])
      await page?.locator('.yf-pad').getByRole('button', { name: digit, exact: true }).click()
    await page?.waitForTimeout(300)
    await first.kill()
    const second = await launchWithProfile(profile)
    const again = await second.browser.contexts()[0]?.newPage()
    await again?.goto(url + draft)
    await again?.locator('.yf-rows').waitFor()
    expect(await again?.locator('.yf-rows button').first().textContent()).toContain('89 mm')
    await second.kill()
    rmSync(profile, { recursive: true })
  })

  it('says that the phone keeps no more, and loses nothing that is on the screen', async () => {
    const page = await browser.newPage(phone)
    const client = await page.context().newCDPSession(page)
    const url = heron.url('horse=heron')
    // A browser asks for its room when it first keeps something.
    const { origin } = new URL(url)
    await page.goto(`${origin}/nothing`)
    await client.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 300_000 })
    await page.goto(url)
    await page.getByText('has room for about').waitFor()
    await tap(page, 'Pictures')
    const buffer = await noisy(1200, 900)
    await page.locator('input[capture]').setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer })
    await page.locator('.yf-pictures [role=alert]').waitFor()
    expect(await page.locator('.yf-pictures [role=alert]').textContent()).toContain(
      'The phone keeps no more.',
    )
    const long = 'wet '.repeat(100_000)
    await tap(page, 'Finish')
    await page.getByLabel('Note, for you alone').fill(long)
    await page.locator('[data-saved=full]').waitFor()
    expect(await page.getByRole('alert').first().textContent()).toContain('share the visit now')
    expect(caseFile(await saved(page))).toContain(long.trim())
    await page.getByLabel('Note, for you alone').fill('dry')
    await kept(page)
    await page.close()
  })

  it('by one window at a time, and moves to the other when asked', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    await typeOn(page, '89')
    const second = await page.context().newPage()
    await second.goto(page.url())
    await second.getByText('open in another window').waitFor()
    await second.getByRole('button', { name: 'Write it here instead' }).click()
    await second.locator('.yf-rows').waitFor()
    expect(await second.locator('.yf-rows button').first().textContent()).toContain('89 mm')
    await page.getByText('open in another window').waitFor()
    await second.close()
    await page.locator('.yf-rows').waitFor()
    await close()
  })

  it('by another window where the first one sleeps and does not answer', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    await typeOn(page, '89')
    await kept(page)
    const address = page.url()
    const asleep = await page.context().newPage()
    await page.goto('about:blank')
    await asleep.goto(`${new URL(address).origin}/?horse=heron#drafts`)
    await asleep.evaluate(
      (name) => {
        void navigator.locks.request(name, () => new Promise(() => {}))
      },
      `growdown draft ${address.replace(/.*write\//, '')}`,
    )
    await page.goto(address)
    await tap(page, 'Write it here instead')
    await page.locator('.yf-rows').waitFor()
    expect(await page.locator('.yf-rows button').first().textContent()).toContain('89 mm')
    await close()
  })

  it('locked: no word of it is readable in the store, and another key leaves it there unread', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    await tap(page, 'Finish')
    await page.getByLabel('Note, for you alone').fill('Stands badly for the hind feet')
    await kept(page)
    const stored = await page.evaluate(async () => {
      const asked = <T>(request: IDBRequest<T>) =>
        new Promise<T>((done) => {
          request.onsuccess = () => done(request.result)
        })
      const database = await asked(indexedDB.open('growdown test'))
      const drafts = database.transaction('drafts', 'readwrite').objectStore('drafts')
      const [record] = await asked(drafts.getAll())
      // As a page of next year may write it.
      await asked(drafts.put({ ...record, id: 'later', shape: 2 }))
      return JSON.stringify(record) + new TextDecoder('latin1').decode(record.locked)
    })
    expect(stored).toContain('nonce')
    expect(stored).not.toMatch(/Stands badly|heron/)
    const other = Buffer.alloc(32, 7).toString('base64')
    await page.goto(`${heron.url(`horse=heron&key=${encodeURIComponent(other)}`)}#drafts`)
    await page.getByText('Kept, but not readable here').waitFor()
    expect(await page.locator('.yf-list').textContent()).toContain('locked with another key')
    expect(await page.locator('.yf-list').textContent()).toContain('by another version of this page')
    await page.goto(`${heron.url('horse=heron')}#drafts`)
    await page.getByRole('link', { name: /heron/ }).waitFor()
    await close()
  })
})

describe('pictures', () => {
  /** Twelve megapixels, lying on its side, with the place where it was taken. */
  const camera = () =>
    sharp({ create: { width: 4000, height: 3000, channels: 3, background: '#7a6a50' } })
      .jpeg()
      .withExif({
        IFD0: { Make: 'Telephone' },
        IFD3: { GPSLatitude: '54/1 10/1 0/1', GPSLatitudeRef: 'N' },
      })
      .withMetadata({ orientation: 6 })
      .toBuffer()

  it('are scaled upright, tell nothing but their pixels, and are named by foot and view', async () => {
    const buffer = await camera()
    expect(await exifr.parse(buffer)).toBeDefined()
    const { page, troubles, close } = await write(heron, 'horse=heron')
    await tap(page, 'Pictures')
    await page.locator('input[capture]').setInputFiles({ name: 'IMG_1.jpg', mimeType: 'image/jpeg', buffer })
    await page.locator('.yf-shot img').waitFor()
    await tap(page, 'sole')
    await page.locator('figcaption', { hasText: 'Left fore, sole' }).waitFor()
    await kept(page)
    const files = await saved(page)
    const [path = ''] = Object.keys(files).filter((one) => one.endsWith('.jpg'))
    expect(path).toMatch(/^heron\/photos\/2026-11-27-lf-sole-[0-9a-f]{4}\.jpg$/)
    const jpeg = Buffer.from(files[path] ?? [])
    expect(await sharp(jpeg).metadata()).toMatchObject({ width: 1500, height: 2000, format: 'jpeg' })
    expect(await exifr.parse(jpeg, { gps: true, tiff: true, xmp: true, iptc: true })).toBeUndefined()
    expect(jpeg.includes('Exif')).toBe(false)
    expect(caseFile(files)).toContain(`file: ${path.replace('heron/', '')}`)
    await tap(page, 'Pictures')
    await page.getByRole('button', { name: 'Take away left fore, sole' }).tap()
    await page.locator('.yf-shot').waitFor({ state: 'detached' })
    await tap(page, 'Bring it back')
    await page.locator('.yf-shot img').waitFor()
    await page.getByRole('button', { name: 'Take away left fore, sole' }).tap()
    await kept(page)
    expect(caseFile(await saved(page))).not.toContain('photos:')
    expect(troubles).toEqual([])
    await close()
  })

  it('are marked on the board of the desk, and what they measure stands beside the reading', async () => {
    const { page, troubles, close } = await write(heron, 'horse=heron')
    await tap(page, 'Pictures')
    const buffer = await sharp({ create: { width: 800, height: 600, channels: 3, background: '#9a8a70' } })
      .png()
      .toBuffer()
    await page.locator('input[capture]').setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer })
    await tap(page, 'Mark points')
    await page.locator('#board[data-ready]').waitFor()
    const set = async (name: string, right: number, down: number) => {
      await page.locator('#points').getByRole('button', { name }).click()
      const press = async (key: string, times: number) => {
        for (let i = 0; i < times; i++) await page.keyboard.press(`Shift+${key}`)
      }
      await press(right < 0 ? 'ArrowLeft' : 'ArrowRight', Math.abs(right))
      await press(down < 0 ? 'ArrowUp' : 'ArrowDown', Math.abs(down))
    }
    await set('Ground, in front', -30, 10)
    await set('Ground, behind', 30, 10)
    await set('Toe at the ground', -10, 10)
    await set('Toe at the hairline', 5, -5)
    expect(await page.locator('#values').textContent()).toContain('toe angle')
    await tap(page, 'Done')
    await page.getByText('Points are marked').waitFor()
    const text = caseFile(await saved(page))
    expect(text).toMatch(/toe at ground: \[\d+/)
    await tap(page, 'Measure')
    await page.locator('.yf-rows button', { hasText: 'Toe angle' }).tap()
    expect(await page.locator('.yf-value .yf-was').textContent()).toMatch(/picture: \d+(\.5)?° ±/)
    expect(await value(page).inputValue()).toBe('')
    expect(troubles).toEqual([])
    await close()
  })
})

describe('what is given out', () => {
  it('goes through the share sheet, is said to be out, and is removed once it has arrived', async () => {
    const context = await browser.newContext(phone)
    await context.addInitScript(() => {
      const shared: string[] = []
      Object.assign(navigator, {
        canShare: () => true,
        share: async ({ files }: { files: File[] }) => shared.push(...files.map(({ name }) => name)),
      })
      Object.assign(globalThis, { shared })
    })
    const page = await context.newPage()
    await page.goto(heron.url('horse=heron'))
    await value(page).waitFor()
    await typeOn(page, '89')
    await tap(page, 'Finish')
    await tap(page, 'Share')
    await page
      .getByText('Given out on 27 Nov')
      .first()
      .waitFor()
      .catch(() => page.getByText('Given out on').first().waitFor())
    expect(await page.evaluate('shared')).toEqual(['heron-2026-11-27.txt'])
    const id = page.url().replace(/.*#write\//, '')
    await tap(page, 'Measure')
    await typeOn(page, '5')
    await kept(page)
    const list = async (arrived: number) => {
      const told = encodeURIComponent(JSON.stringify([{ draft: id, version: arrived }]))
      await page.goto(`${heron.url(`horse=heron&arrived=${told}`)}#drafts`)
      await page.locator('.yf-list').waitFor()
      return page.locator('.yf-list')
    }
    expect(await (await list(1)).textContent()).toContain('An older state of it is in the casebook')
    expect(await (await list(2)).textContent()).toContain(
      'Everything written on this phone is in the casebook.',
    )
    expect(await violationsOf(page)).toEqual([])
    await page.getByText('Arrived in the casebook').tap()
    await page.getByRole('button', { name: /^Remove from the phone/ }).tap()
    await tap(page, 'Bring it back')
    await page.getByText('Arrived in the casebook').waitFor()
    await context.close()
  })
})

/** @param rules these alone */
async function violationsOf(page: Page, rules?: readonly string[]): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).include('.yf')
  const asked = rules
    ? axe.withRules([...rules])
    : axe.withTags(['wcag2a', 'wcag2aa', 'wcag22aa', 'best-practice'])
  const { violations } = await asked.analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))
}

describe('the form fits', () => {
  it('a narrow phone and text of four times the size, with nothing sideways', async () => {
    for (const [viewport, css] of [
      [{ width: 320, height: 568 }, ''],
      [{ width: 390, height: 844 }, 'html { font-size: 450% !important }'],
    ] as const) {
      const { page, close } = await write(form, 'horse=whimbrel', { viewport })
      await page.addStyleTag({ content: css || ':root {}' })
      for (const part of ['Measure', 'Findings', 'Going', 'Pictures', 'Finish', 'Speak']) {
        await tap(page, part)
        expect(await sideways(page), part).toEqual([])
      }
      await close()
    }
  })

  it('the left hand: the key to go on lies under its thumb', async () => {
    const sides: number[] = []
    for (const hand of ['left', 'right']) {
      const { page, close } = await write(heron, `horse=heron&hand=${hand}`)
      const box = await page.locator('.yf-side .yf-next').boundingBox()
      sides.push((box?.x ?? 0) + (box?.width ?? 0) / 2)
      await close()
    }
    expect(sides[0]).toBeLessThan(100)
    expect(sides[1]).toBeGreaterThan(290)
  })

  it('gloves: every key of it is 56 px high, and 44 px wide at the least', async () => {
    const { page, close } = await write(form, 'horse=whimbrel')
    for (const part of ['Measure', 'Findings', 'Going', 'Pictures', 'Finish']) {
      await tap(page, part)
      const small = await page.locator('.yf button:visible').evaluateAll((keys) =>
        keys.flatMap((one) => {
          const { width, height } = one.getBoundingClientRect()
          return height >= 56 && width >= 44 ? [] : [`${one.textContent} ${width} x ${height}`]
        }),
      )
      expect(small, part).toEqual([])
    }
    await close()
  })

  it('every reader: no violation in light and dark', async () => {
    // High enough that nothing lies under the keys that stay.
    const { page, close } = await write(form, 'horse=whimbrel', { viewport: { width: 390, height: 3000 } })
    await tap(page, 'Going')
    await page.getByRole('button', { name: /^3: bounding/ }).tap()
    await page.locator('.yf-danger').first().waitFor()
    expect(await violationsOf(page)).toEqual([])
    await tap(page, 'I have read this')
    for (const part of ['Measure', 'Findings', 'Pictures', 'Finish', 'Speak']) {
      await tap(page, part)
      await page.emulateMedia({ colorScheme: 'light' })
      expect(await violationsOf(page), part).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await violationsOf(page, ['color-contrast']), part).toEqual([])
    }
    await close()
  })
})
