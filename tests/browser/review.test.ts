import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Started, startPreview } from '../apps/preview/started.ts'
import { axe } from './axe.ts'
import { launch } from './chrome.ts'
import { sideways, visit } from './visitor.ts'

let folder: string
let browser: Browser
let preview: Started

const file = (path: string) => join(folder, 'cases', path)
const changed = (path: string, from: string, to: string) =>
  writeFileSync(file(path), readFileSync(file(path), 'utf8').replace(from, to))
const approvals = () => readFileSync(file('approvals.txt'), 'utf8').match(/^[a-z].* [\w-]{43}$/gm) ?? []

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  cpSync('tests/casebooks/good-plain', join(folder, 'cases'), { recursive: true })
  const picture = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#842' } })
    .jpeg()
    .toBuffer()
  writeFileSync(file('juno/photos/lf-side.jpg'), picture)
  changed('juno/horse.md', 'photos: no', 'photos: yes')
  cpSync(file('juno'), file('whimsy'), { recursive: true })
  changed('whimsy/horse.md', 'name: Juno', 'name: Whimsy')
  changed('whimsy/horse.md', 'alias: The grey cob', 'alias: The other cob')
  changed('juno/2026-02-16.md', 'Shown in the portfolio.', 'On 2026-03-01 Whimsy stood beside Juno.')
  preview = await startPreview(folder)
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
  await preview?.stop()
  rmSync(folder, { recursive: true, force: true })
})

describe('the page of what is to be read before it leaves', () => {
  for (const width of [390, 1280]) {
    it(`is light, plain and whole at ${width} pixels`, async () => {
      const { page, troubles, close } = await visit(browser, `${preview.address}-/review`, preview.address, {
        viewport: { width, height: 900 },
      })
      await page.locator('.review-item img').first().scrollIntoViewIfNeeded()
      expect(await sideways(page)).toEqual([])
      expect(await axe(page)).toEqual([])
      expect(troubles).toEqual([])
      expect(await page.locator('mark').allTextContents()).toEqual(['Whimsy'])
      expect(
        await page
          .locator('.review-item img')
          .first()
          .evaluate((image) => (image as HTMLImageElement).naturalWidth),
      ).toBe(60)
      await close()
    })
  }

  it('is reached from a previewed page, keeps what is approved, and asks about what is marked by itself', async () => {
    const { page, close } = await visit(browser, preview.address, preview.address)
    await page.getByRole('link', { name: 'Read and approve' }).click()
    const total = await page.locator('.review-item').count()
    await page.locator('.review-item:not(.is-marked) .approve').first().click()
    await page.getByText(`${total - 1} still to read.`).waitFor()
    expect(approvals()).toHaveLength(1)
    const [first, second] = [page.locator('.approve-rest').first(), page.locator('.approve-rest').last()]
    await second.click()
    await page.getByRole('heading', { name: 'The other cob' }).waitFor({ state: 'detached' })
    await first.click()
    await page.getByText('1 still to read.').waitFor()
    expect(await page.locator('.review-item').textContent()).toContain('Look twice: Whimsy (a name)')
    await page.locator('.approve').click()
    await page.getByText('All is read.').waitFor()
    expect(approvals()).toHaveLength(total)
    await page.goto(preview.address)
    await expect.poll(() => page.locator('#preview-waiting').count(), { timeout: 15_000 }).toBe(0)
    await close()
  })
})
