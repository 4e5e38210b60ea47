/** What is written on the yard page is kept, with its pictures, until it is given out and has arrived. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import exifr from 'exifr'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launchWithProfile } from './chrome.ts'
import {
  caseFile,
  type Forms,
  kept,
  write as open,
  openForms,
  phone,
  saved,
  tap,
  typeOn,
  value,
  violationsOf,
} from './yard-form/kit.ts'
import type { FormPage } from './yard-form/page.ts'

let forms: Forms
let browser: Browser
let heron: FormPage
beforeAll(async () => {
  forms = await openForms()
  ;({ browser, heron } = forms)
})
afterAll(() => forms?.close())

const write = (served: FormPage, query = '', options: BrowserContextOptions = {}) =>
  open(browser, served, query, options)

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

/** Bytes that the phone still keeps. */
const room = 300_000

/** Whether the browser keeps more than it has room for: it counts in its own time, and does not always mind what it is told. */
const keepsMore = () =>
  new Promise<boolean>((done) => {
    const opening = indexedDB.open('probe')
    opening.onupgradeneeded = () => opening.result.createObjectStore('probe')
    opening.onsuccess = () => {
      const end = (kept: boolean) => {
        opening.result.close()
        indexedDB.deleteDatabase('probe').onsuccess = () => done(kept)
      }
      const tx = opening.result.transaction('probe', 'readwrite')
      tx.oncomplete = () => end(true)
      tx.onabort = () => end(false)
      tx.objectStore('probe').put(crypto.getRandomValues(new Uint8Array(65_536)).toString().repeat(4), 1)
    }
  })

/** For a browser that minds no limit: large records are refused as one refuses them that does. */
const refuseLarge = () => {
  const { put } = IDBObjectStore.prototype
  IDBObjectStore.prototype.put = function (value, ...key) {
    const size = Object.values(value).reduce(
      (sum: number, one) => sum + ((one as Uint8Array).byteLength ?? 0),
      0,
    )
    if (size > 250_000) throw new DOMException('full', 'QuotaExceededError')
    return put.call(this, value, ...key)
  }
}

/** A phone with little room left. */
async function fullPhone(): Promise<Page> {
  const { origin } = new URL(heron.url(''))
  for (let tried = 0; ; tried++) {
    const page = await browser.newPage(phone)
    const client = await page.context().newCDPSession(page)
    await page.goto(`${origin}/nothing`)
    await client.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: room })
    if (!(await page.evaluate(keepsMore))) return page
    if (tried === 4) {
      await page.addInitScript(refuseLarge)
      return page
    }
    await page.close()
  }
}

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
    const page = await fullPhone()
    await page.goto(heron.url('horse=heron'))
    await page.getByText('has room for about').waitFor()
    await tap(page, 'Pictures')
    const full = page.locator('.yf-pictures [role=alert]')
    // The browser may let one too many in, since it counts in its own time.
    for (let tried = 0; tried < 3 && (await full.count()) === 0; tried++) {
      const shown = await page.locator('.yf-pictures img').count()
      const buffer = await noisy(1200, 900)
      await page.locator('input[capture]').setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer })
      await expect
        .poll(async () => (await full.count()) + (await page.locator('.yf-pictures img').count()), {
          timeout: 20_000,
        })
        .toBeGreaterThan(shown)
    }
    expect(await full.allTextContents()).toEqual([expect.stringContaining('The phone keeps no more.')])
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
    await page.getByText('Given out on').first().waitFor()
    const id = page.url().replace(/.*#write\//, '')
    expect(await page.evaluate('shared')).toEqual([`heron-2026-11-27-${id.slice(0, 4)}.txt`])
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
