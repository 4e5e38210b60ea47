/** Photographs on a horse's pages, made from the demo casebook as a build makes them. */
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { assetFiles } from '../../src/build/assets.ts'
import { disk } from '../../src/build/disk/real-disk.ts'
import { diskFolder } from '../../src/build/disk/source-folder.ts'
import type { MadeFile } from '../../src/build/disk/staging.ts'
import { packageRoot, templates } from '../../src/build/program.ts'
import { readHorse, readPractice } from '../../src/casebook/read.ts'
import { practice as practiceEdition } from '../../src/editions/practice.ts'
import { presentHorse } from '../../src/pages/practice/index.ts'
import { processPictures } from '../../src/pictures/process.ts'
import { pictureFiles, pictureStore } from '../../src/pictures/store.ts'
import { createRenderer } from '../../src/render/renderer.ts'
import { assess } from '../../src/trend/assess.ts'
import { english, formatIn } from '../english.ts'
import { axe } from './axe.ts'
import { launch } from './chrome.ts'
import { asOf } from './site.ts'
import { sideways, visit } from './visitor.ts'

let browser: Browser
let site = ''
const url = (path: string) => pathToFileURL(join(site, 'practice', path)).href
const horsePage = 'samphire/index.html'
const visitPage = 'samphire/2025-12-13.html'

function put(path: string, file: MadeFile): void {
  const place = join(site, path)
  mkdirSync(dirname(place), { recursive: true })
  if ('text' in file) writeFileSync(place, file.text)
  else copyFileSync(file.copyFrom, place)
}

beforeAll(async () => {
  site = mkdtempSync(join(tmpdir(), 'photos-'))
  const folder = diskFolder('cases')
  const { practice } = readPractice(folder, asOf)
  if (practice === null) throw new Error('the demo has no practice')
  const { horse } = readHorse(folder, 'samphire', practice, asOf)
  if (horse === null) throw new Error('the demo horse cannot be read')
  const store = pictureStore(disk, join(site, 'store'))
  const { pictures, diagnostics } = await processPictures(horse, folder, store)
  expect(diagnostics).toEqual([])
  const renderer = createRenderer(templates(packageRoot()), english)
  const views = presentHorse({
    horse,
    practice,
    pictures,
    assessment: assess(horse, practice, asOf),
    format: formatIn(practice.units),
  })
  for (const view of views)
    put(`practice/${view.path}`, { path: view.path, text: await renderer.render(view) })
  for (const file of pictureFiles(horse.id, pictures, store)) put(`practice/${file.path}`, file)
  for (const file of assetFiles(packageRoot(), practiceEdition.assets)) put(`practice/${file.path}`, file)
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
  rmSync(site, { recursive: true, force: true })
})

describe('then and now', () => {
  it('stands as two pictures side by side without JavaScript', async () => {
    const { page, close } = await visit(browser, url(horsePage), 'file:', {
      javaScriptEnabled: false,
      viewport: { width: 1280, height: 900 },
    })
    const section = page.locator('#compare-lf-lateral')
    expect(await section.locator('img').count()).toBe(2)
    const [first, latest] = await Promise.all(
      [0, 1].map((i) => section.locator('figure').nth(i).boundingBox()),
    )
    expect(first?.y).toBe(latest?.y)
    expect(latest?.x).toBeGreaterThan((first?.x ?? 0) + (first?.width ?? 0))
    expect(await section.getByRole('button').count()).toBe(0)
    expect(await section.locator('svg[role=img]').count()).toBe(0)
    await close()
  })

  it('lays one over the other, moved by keyboard, mouse and finger', async () => {
    for (const hasTouch of [false, true]) {
      const viewport = hasTouch ? { width: 390, height: 844 } : { width: 1280, height: 900 }
      const { page, troubles, close } = await visit(browser, url(horsePage), 'file:', { viewport, hasTouch })
      const section = page.locator('#compare-lf-lateral')
      const button = section.getByRole('button', { name: 'Lay one over the other' })
      await button.click()
      const slider = section.getByRole('slider')
      await slider.focus()
      for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight')
      expect(await slider.getAttribute('aria-valuetext')).toBe('then 58 %, now 42 %')
      const shown = section.locator('clipPath rect')
      expect(Number(await shown.getAttribute('width'))).toBeCloseTo(1280 * 0.58, 6)
      await page.keyboard.press('Home')
      expect(await shown.getAttribute('width')).toBe('0')
      const svg = section.locator('svg[role=img]')
      await svg.scrollIntoViewIfNeeded()
      const box = await svg.boundingBox()
      if (!box) throw new Error('no picture')
      if (hasTouch) await page.touchscreen.tap(box.x + box.width * 0.25, box.y + 40)
      else await page.mouse.click(box.x + box.width * 0.25, box.y + 40)
      expect(await slider.inputValue()).toBe('25')
      await button.click()
      expect(await svg.isVisible()).toBe(false)
      expect(troubles).toEqual([])
      await close()
    }
  })

  it('puts the scale of both pictures at one size and both feet on one ground', async () => {
    const { page, close } = await visit(browser, url(horsePage), 'file:', {
      viewport: { width: 1280, height: 900 },
    })
    const section = page.locator('#compare-lf-lateral')
    await section.getByRole('button').click()
    const matrix = await section
      .locator('image')
      .first()
      .evaluate((image) => {
        const { a, b, c, d, e, f } = (image as SVGImageElement).transform.baseVal.getItem(0).matrix
        return [a, b, c, d, e, f]
      })
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = matrix
    // Toe at the ground of the latest picture onto that of the first; a similarity keeps right angles and one size.
    expect(a * 300 + c * 760 + e).toBeCloseTo(250, 1)
    expect(b * 300 + d * 760 + f).toBeCloseTo(700, 1)
    expect(Math.hypot(a, b)).toBeCloseTo(0.24 / 0.26, 3)
    expect(a).toBeCloseTo(d, 4)
    expect(b).toBeCloseTo(-c, 4)
    await close()
  })
})

describe('a photograph on a page', () => {
  it('has its size, waits until it is wanted, and carries its lines on the screen and on paper', async () => {
    const { page, troubles, close } = await visit(browser, url(visitPage), 'file:')
    const photo = page.locator('figure.photo').first()
    expect(await photo.locator('img').evaluate((image: HTMLImageElement) => image.loading)).toBe('lazy')
    expect(await photo.locator('img').getAttribute('width')).toBe('1280')
    await photo.scrollIntoViewIfNeeded()
    await page.waitForFunction(
      () => document.querySelector<HTMLImageElement>('figure.photo img')?.naturalWidth,
    )
    for (const media of ['screen', 'print'] as const) {
      await page.emulateMedia({ media })
      const lines = await photo.locator('svg.photo-lines').boundingBox()
      const image = await photo.locator('img').boundingBox()
      expect(lines?.width).toBeCloseTo(image?.width ?? 0, 0)
      expect(lines?.height).toBeCloseTo(image?.height ?? 0, 0)
      const texts = await photo.locator('svg.photo-lines text').allTextContents()
      expect(texts).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'])
      const margin = await photo.locator('.photo-margin li').allInnerTexts()
      expect(margin).toEqual([
        'ab bearing length 147 mm',
        'ac toe angle 44.5°, toe length 102.5 mm',
        'bd heel angle 35.5°, heel lateral 43.5 mm',
        'cd coronet angle 23°',
        'ef pastern angle 53°',
        'gh scale 100 mm',
      ])
      const outside = await photo.locator('svg.photo-lines text').evaluateAll((found) => {
        const frame = found[0]?.closest('.photo-lines')?.getBoundingClientRect()
        return found.filter((text) => {
          const box = text.getBoundingClientRect()
          return !frame || box.left < frame.left || box.right > frame.right || box.bottom > frame.bottom
        }).length
      })
      expect(outside).toBe(0)
    }
    expect(troubles).toEqual([])
    await close()
  })

  it('keeps every letter inside the picture at 320 and 390 px, with no sideways scrolling', async () => {
    for (const width of [320, 390]) {
      for (const path of [horsePage, visitPage]) {
        const { page, close } = await visit(browser, url(path), 'file:', { viewport: { width, height: 800 } })
        expect(await sideways(page)).toEqual([])
        const cut = await page.locator('svg.photo-lines text').evaluateAll((found) =>
          found.flatMap((text) => {
            const frame = text.closest('.photo-lines')?.getBoundingClientRect()
            const box = text.getBoundingClientRect()
            return frame && box.left >= frame.left && box.right <= frame.right ? [] : [text.textContent]
          }),
        )
        expect(cut, `${path} at ${width}`).toEqual([])
        await close()
      }
    }
  })

  it('is accessible, laid over as well', async () => {
    for (const [path, colorScheme] of [
      [horsePage, 'light'],
      [visitPage, 'dark'],
    ] as const) {
      const { page, close } = await visit(browser, url(path), 'file:', { colorScheme })
      for (const button of await page.locator('.compare-switch').all()) await button.click()
      expect(await axe(page, 'main')).toEqual([])
      await close()
    }
  })
})
