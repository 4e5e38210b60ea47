import { appendFileSync, cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Started, startPreview } from '../apps/preview/started.ts'
import { axe } from './axe.ts'
import { launch } from './chrome.ts'
import { sideways } from './visitor.ts'

let folder: string
let browser: Browser
let preview: Started
let address: string

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  cpSync('tests/casebooks/good-plain', join(folder, 'cases'), { recursive: true })
  preview = await startPreview(folder)
  address = preview.address
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
  await preview?.stop()
  rmSync(folder, { recursive: true, force: true })
})

describe('growdown preview', () => {
  const visit = () => join(folder, 'cases/juno/2026-02-16.md')

  it('shows a saved file at the same place of the page', async () => {
    const page = await browser.newPage({ viewport: { width: 390, height: 600 } })
    await page.goto(`${address}juno/2026-02-16.html`)
    await page.evaluate(() => window.scrollTo(0, 400))
    appendFileSync(visit(), '\n\nThe frog is shedding on its own.\n')
    await page.getByText('The frog is shedding on its own.').waitFor({ state: 'attached', timeout: 15_000 })
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(400)
    await page.close()
  })

  it('shows a problem over the last good page, and takes it away once it is mended', async () => {
    const page = await browser.newPage()
    await page.goto(`${address}juno/2026-02-16.html`)
    const good = readFileSync(visit(), 'utf8')
    writeFileSync(visit(), good.replace('toe angle:', 'toe angel:'))
    const shown = page.locator('#preview-problems')
    await shown.getByText('"toe angel" is not a measure').waitFor({ timeout: 15_000 })
    expect(await shown.textContent()).toContain('juno/2026-02-16.md:')
    expect(await page.locator('h1').count()).toBe(1)
    writeFileSync(`${visit()}.tmp`, good)
    renameSync(`${visit()}.tmp`, visit())
    await shown.waitFor({ state: 'detached', timeout: 15_000 })
    await page.close()
  })

  it('shows warnings as a line that opens, with where they are and what to do', async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 700 } })
    const page = await context.newPage()
    await page.goto(`${address}juno/2026-02-16.html`)
    const good = readFileSync(visit(), 'utf8')
    appendFileSync(visit(), '\n## For the owners\n')
    const shown = page.locator('#preview-problems')
    await shown.getByText('1 warning').click({ timeout: 15_000 })
    expect(await shown.locator('li p').allTextContents()).toEqual([
      expect.stringMatching(/^warning juno\/2026-02-16\.md:\d+:1$/),
      'The heading "for the owners" opens no section for others, so what follows stays private.',
      'expected: ## For the owner',
      'likely fix: ## For the owner',
    ])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await axe(page, '#preview-problems')).toEqual([])
    }
    expect(await sideways(page)).toEqual([])
    await page.reload()
    await shown.getByText('likely fix: ## For the owner').waitFor()
    writeFileSync(visit(), good)
    await shown.waitFor({ state: 'detached', timeout: 15_000 })
    await context.close()
  })

  it('shows what was saved in a page that is opened while it is made, however late that listens', async () => {
    const page = await browser.newPage()
    let listensAfter = 0
    await page.route('**/-/news?*', async (route) => {
      await new Promise((resolve) => setTimeout(resolve, listensAfter))
      await route.continue()
    })
    const good = readFileSync(visit(), 'utf8')
    for (const [nth, opens] of [0, 10, 25, 40, 60, 80, 120].entries()) {
      listensAfter = nth % 2 === 0 ? 300 : 0
      const sentence = `This was saved as number ${nth}.`
      await page.goto('about:blank')
      writeFileSync(visit(), `${good}\n${sentence}\n`)
      await page.waitForTimeout(opens)
      await page.goto(`${address}juno/2026-02-16.html`)
      await page.getByText(sentence).waitFor({ state: 'attached', timeout: 5_000 })
    }
    writeFileSync(visit(), good)
    await page.close()
  })

  it('leaves a person on the way to another page alone', async () => {
    const page = await browser.newPage()
    await page.goto(`${address}juno/2026-02-16.html`)
    const good = readFileSync(visit(), 'utf8')
    for (const nth of [0, 1, 2, 3]) {
      await page.locator('a[href$="2026-01-12.html"]').first().waitFor()
      writeFileSync(visit(), `${good}\nSaved ${nth}.\n`)
      // The answer comes when the build has ended, and so does the news of it.
      await page.waitForTimeout(15 + 5 * nth)
      await page.locator('a[href$="2026-01-12.html"]').first().click()
      await page.waitForURL('**/2026-01-12.html')
      await page.waitForTimeout(200)
      expect(page.url()).toContain('2026-01-12.html')
      await page.goBack()
      await page.getByText(`Saved ${nth}.`).waitFor({ state: 'attached', timeout: 5_000 })
    }
    writeFileSync(visit(), good)
    await page.close()
  })

  it('lives through a file that vanishes and comes back half saved', async () => {
    const page = await browser.newPage()
    await page.goto(address)
    const good = readFileSync(visit(), 'utf8')
    rmSync(visit())
    await expect
      .poll(async () => (await fetch(`${address}juno/2026-02-16.html`)).status, { timeout: 15_000 })
      .toBe(404)
    writeFileSync(visit(), good.slice(0, 120))
    await page.locator('#preview-problems').waitFor({ timeout: 15_000 })
    writeFileSync(visit(), good)
    await expect
      .poll(async () => (await fetch(`${address}juno/2026-02-16.html`)).status, { timeout: 15_000 })
      .toBe(200)
    await page.close()
  })

  it('leads from a picture to the page on which it is marked', async () => {
    const page = await browser.newPage()
    await page.goto(`${address}juno/2026-01-12.html`)
    await page.getByRole('link', { name: 'Mark its points' }).first().click()
    await page.getByRole('heading', { name: /Marking/ }).waitFor({ timeout: 15_000 })
    expect(new URL(page.url()).hostname).toBe('127.0.0.1')
    await page.close()
  })
})
