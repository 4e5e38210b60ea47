import { existsSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { HtmlValidate } from 'html-validate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { english } from '../english.ts'
import { isLong } from '../runs.ts'
import { launch } from './chrome.ts'
import { type BuiltSite, buildDemo } from './site.ts'
import { sideways, visit } from './visitor.ts'

const { portfolio } = english

let browser: Browser
let site: BuiltSite
let cases: readonly string[]

beforeAll(async () => {
  site = buildDemo('portfolio')
  cases = site.pages('portfolio').filter((path) => path.split('/').length === 3)
  browser = await launch()
})
afterAll(() => browser?.close())

const first = () => cases[0] ?? ''
const kinds = () => ['portfolio/index.html', 'portfolio/summary.html', ...cases]

async function axe(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
}

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

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`open without trouble and are accessible in ${colorScheme}`, async () => {
      // The list, the page over all, and a case or two: cases look alike.
      for (const path of kinds().slice(0, isLong ? 4 : colorScheme === 'light' ? 3 : 2)) {
        const { page, troubles, close } = await visit(browser, site.url(path), 'file:', { colorScheme })
        expect(await axe(page), path).toEqual([])
        expect(troubles, path).toEqual([])
        await close()
      }
    })
  }

  it('never scroll sideways at 320 px', async () => {
    for (const path of kinds()) {
      const { page, close } = await visit(browser, site.url(path), 'file:', {
        viewport: { width: 320, height: 640 },
      })
      expect(await sideways(page), path).toEqual([])
      await close()
    }
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
