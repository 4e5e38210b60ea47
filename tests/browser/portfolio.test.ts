import { existsSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { pathToFileURL } from 'node:url'
import { HtmlValidate } from 'html-validate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fortyVisits } from '../editions/forty-visits.ts'
import { type Trial, trial } from '../editions/kit.ts'
import { english } from '../english.ts'
import { isLong } from '../runs.ts'
import { axe, coloursAlone } from './axe.ts'
import { launch } from './chrome.ts'
import { asOf, type BuiltSite, buildDemo } from './site.ts'
import { sideways, tour, visit } from './visitor.ts'

const { portfolio } = english

let browser: Browser
let site: BuiltSite
let cases: readonly string[]
let forty: Trial

beforeAll(async () => {
  site = buildDemo('portfolio')
  cases = site.pages('portfolio').filter((path) => path.split('/').length === 3)
  browser = await launch()
  forty = trial({
    'practice.md':
      '---\npractice: Sandpiper Hoof Care\nunits: mm\ntrim cycle: 5 weeks\nowners:\n  hardy: {name: Hannelore Hardy}\n---\n',
    ...fortyVisits('hard', 'hardy', 'Rowan'),
  })
  await forty.build(['portfolio'], asOf)
})
afterAll(async () => {
  await browser?.close()
  forty?.done()
})

/** A case of forty visits. */
const hard = () => {
  const path = 'portfolio/rowan/index.html'
  return { path, url: pathToFileURL(join(forty.site, path)).href }
}

const first = () => cases[0] ?? ''
const kinds = () => ['portfolio/index.html', 'portfolio/summary.html', ...cases]

/** As a reader finds it: `visit` opens every fold. */
const fold = (page: Page) =>
  page.evaluate(() => {
    for (const one of document.querySelectorAll('details')) one.open = false
  })

describe('pages of the portfolio', () => {
  it('are a list, a page over all, and a page a case', () => {
    expect(cases.length).toBeGreaterThanOrEqual(4)
    expect(site.pages('portfolio').length).toBe(cases.length + 2)
  })

  it('open without trouble and are accessible in light and dark', async () => {
    // The list, the page over all, and a case: cases look alike.
    for (const path of kinds().slice(0, isLong ? 4 : 3)) {
      const { page, troubles, close } = await visit(browser, site.url(path), 'file:', {
        colorScheme: 'light',
      })
      expect(await axe(page), path).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axe(page, undefined, coloursAlone), path).toEqual([])
      expect(troubles, path).toEqual([])
      await close()
    }
  })

  it('never scroll sideways at 320 px', async () => {
    const { page, go, close } = await tour(browser, 'file:', { viewport: { width: 320, height: 640 } })
    for (const path of kinds()) {
      await go(site.url(path))
      expect(await sideways(page), path).toEqual([])
    }
    await close()
  })

  it('are valid HTML, and every link leads somewhere', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'error' },
    })
    for (const path of kinds()) {
      const { results } = await validator.validateString(site.text(path))
      expect(
        results.flatMap(({ messages }) =>
          messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
        ),
        path,
      ).toEqual([])
      for (const [, href = ''] of site.text(path).matchAll(/ (?:href|src)="([^"#:]+)(?:#[^"]*)?"/g)) {
        expect(existsSync(normalize(join(site.folder, dirname(path), href))), `${path}: ${href}`).toBe(true)
      }
    }
  })

  it('are at most eight screens of a phone a case, with what came of it open and the other folds as they come', async () => {
    const { page, go, close } = await tour(browser, 'file:', { viewport: { width: 390, height: 844 } })
    for (const { url, path } of [...cases.map((path) => ({ path, url: site.url(path) })), hard()]) {
      await go(url)
      await fold(page)
      const before = await page.evaluate(() => document.documentElement.scrollHeight)
      expect(before / 844, path).toBeLessThanOrEqual(5)
      await page.click(`summary:has-text("${portfolio.open}")`)
      const height = await page.evaluate(() => document.documentElement.scrollHeight)
      expect(height, path).toBeGreaterThan(before)
      expect(height / 844, path).toBeLessThanOrEqual(8)
    }
    await close()
  })

  it('have scale and zero on every axis of change, and a scale on every other', async () => {
    const { page, go, close } = await tour(browser, 'file:')
    await go(site.url('portfolio/summary.html'))
    const axes = await page.$$eval('.figure-distribution svg', (pictures) =>
      pictures.map((one) =>
        [...one.querySelectorAll('g[text-anchor=middle] text')].map((text) => text.textContent ?? ''),
      ),
    )
    expect(axes.length).toBeGreaterThanOrEqual(2)
    for (const ticks of axes) {
      expect(ticks.length).toBeGreaterThanOrEqual(3)
      expect(ticks.some((text) => Number(text.replace('\u2212', '-')) === 0)).toBe(true)
    }
    for (const path of cases) {
      await go(site.url(path))
      const ticks = await page.$$eval('.figure-trend', (figures) =>
        figures.map(
          (one) => one.querySelectorAll('g[text-anchor=end] text, g[text-anchor=middle] text').length,
        ),
      )
      for (const count of ticks) expect(count, path).toBeGreaterThanOrEqual(6)
    }
    await close()
  })

  it('may be found by anyone', () => {
    for (const path of kinds()) expect(site.text(path)).not.toContain('noindex')
  })
})

describe('a case', () => {
  it('shows the first visit, then asks, then tells, with and without JavaScript', async () => {
    for (const javaScriptEnabled of [true, false]) {
      const { page, close } = await visit(browser, site.url(first()), 'file:', { javaScriptEnabled })
      await fold(page)
      const shown = () =>
        page.evaluate(() =>
          [...document.querySelectorAll('main h2')]
            .filter((head) => head.checkVisibility({ contentVisibilityAuto: true }))
            .map((head) => head.textContent),
        )
      const before = [portfolio.patient, portfolio.findings, portfolio.timeline, portfolio.assessment]
      const after = [portfolio.done, portfolio.outcome, portfolio.discussion, portfolio.ownerView]
      expect(await shown()).toEqual([...before, portfolio.consent])
      await page.click(`summary:has-text("${portfolio.plan}")`)
      expect(await page.isVisible(`text=${portfolio.planQuestions[0]}`)).toBe(true)
      await page.click(`summary:has-text("${portfolio.open}")`)
      expect(await shown()).toEqual([...before, ...after, portfolio.consent])
      await close()
    }
  })
})

describe('the list of cases', () => {
  it('stands whole without JavaScript', async () => {
    const { page, close } = await visit(browser, site.url('portfolio/index.html'), 'file:', {
      javaScriptEnabled: false,
    })
    expect(await page.locator('.card:visible').count()).toBe(cases.length)
    expect(await page.isVisible('#filters')).toBe(false)
    await close()
  })

  it('is sifted by each of its choices, says how many are left, and comes back whole', async () => {
    const { page, close } = await visit(browser, site.url('portfolio/index.html'), 'file:')
    for (const name of ['finding', 'foot', 'length', 'outcome']) {
      const value = (await page.locator(`#by-${name} option`).nth(1).getAttribute('value')) ?? ''
      await page.selectOption(`#by-${name}`, value)
      const left = await page
        .locator('.card:visible')
        .evaluateAll((cards, of) => cards.map((card) => (card as HTMLElement).dataset[of] ?? ''), name)
      expect(left.length).toBeGreaterThan(0)
      for (const tags of left) expect(tags.split('|')).toContain(value)
      const text =
        left.length === cases.length
          ? portfolio.shownAll(cases.length)
          : portfolio.shownSome(cases.length).replace('#', String(left.length))
      expect(await page.textContent('#shown')).toBe(text)
      await page.click('button[type=reset]')
      await page.waitForFunction(
        (all) => document.querySelector('#shown')?.textContent === all,
        portfolio.shownAll(cases.length),
      )
    }
    expect(await page.locator('.card:visible').count()).toBe(cases.length)
    await close()
  })
})
