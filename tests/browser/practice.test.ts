import { existsSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { HtmlValidate } from 'html-validate'
import { PDFDocument } from 'pdf-lib'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { nothingHere } from '../../src/apps/local-server.ts'
import { servedPaths } from '../../src/apps/preview/served.ts'
import { servePreview } from '../../src/apps/preview/server.ts'
import { isLong } from '../runs.ts'
import { axe, coloursAlone } from './axe.ts'
import { launch } from './chrome.ts'
import { longName, writeLongCase } from './long-case.ts'
import { type BuiltSite, buildDemo, kindsOf } from './site.ts'
import { sideways, tour, visit } from './visitor.ts'

let browser: Browser
const site: BuiltSite = buildDemo('practice')
const kinds = kindsOf(site)
/** In the short run, of the horses' own pages, which look alike, those of some; of every other kind of page each. */
const withHorses = (...ids: readonly string[]): readonly string[] =>
  kinds.filter((path) => {
    const horse = /^practice\/([^/]+)\/index\.html$/.exec(path)?.[1]
    return isLong || horse === undefined || ids.includes(horse)
  })
/** The one with the most on it and the one with a stop. */
const some = withHorses('samphire', 'eider')
/** For what looks at every element there is, the one with less to measure. */
const judged = some.map((path) =>
  isLong ? path : path.replace(/^practice\/\w+\/measures/, 'practice/limpet/measures'),
)

beforeAll(async () => {
  browser = await launch()
})
afterAll(() => browser?.close())

describe('every kind of page, from disk', () => {
  it('has a kind of each', () => {
    expect(kinds.length).toBeGreaterThan(10)
  })

  it.each(judged)(
    'opens without trouble and is accessible in light, in dark and as printed: %s',
    async (path) => {
      const { page, troubles, close } = await visit(browser, site.url(path), 'file:', {
        colorScheme: 'light',
      })
      expect(await axe(page)).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axe(page, undefined, coloursAlone)).toEqual([])
      await page.emulateMedia({ media: 'print', colorScheme: 'light' })
      expect(await axe(page)).toEqual([])
      expect(troubles).toEqual([])
      await close()
    },
  )

  it('never scrolls sideways, at 320 px and at 200 % of a desk', async () => {
    const { page, go, close } = await tour(browser, 'file:')
    for (const viewport of [
      { width: 320, height: 640 },
      { width: 640, height: 400 },
    ]) {
      await page.setViewportSize(viewport)
      for (const path of kinds) {
        await go(site.url(path))
        expect(await sideways(page), `${path} at ${viewport.width}`).toEqual([])
      }
    }
    await close()
  })

  it('reads fully without JavaScript', async () => {
    const { page, go, close } = await tour(browser, 'file:', { javaScriptEnabled: false })
    for (const path of some) {
      await go(site.url(path))
      const heard = (await page.locator('main').textContent()) ?? ''
      expect(heard.length, path).toBeGreaterThan(200)
      expect(await page.locator('main h1').count(), path).toBe(1)
    }
    await close()
  })

  it('lets the keyboard reach every control', async () => {
    const { page, go, close } = await tour(browser, 'file:')
    for (const path of some) {
      await go(site.url(path))
      const controls = await page
        .locator('a[href]:visible, summary:visible, input:visible, select:visible, button:visible')
        .count()
      const reached = await page.evaluateHandle(() => {
        const all = new Set<EventTarget | null>()
        document.addEventListener('focusin', ({ target }) => all.add(target))
        return all
      })
      for (let step = 0; step < Math.min(controls, 60) + 2; step++) await page.keyboard.press('Tab')
      expect(await reached.evaluate(({ size }) => size), path).toBeGreaterThanOrEqual(
        Math.min(controls, 60) - 1,
      )
    }
    await close()
  })
})

describe('the length of a page on a telephone, folds as they come', () => {
  const telephone = { width: 390, height: 844 }
  const long = buildDemo('practice', writeLongCase())
  const latestVisit = (pages: readonly string[]) =>
    pages.filter((path) => /\/\d{4}-\d\d-\d\d\.html$/.test(path)).at(-1) ?? ''
  const ofHorse = (from: BuiltSite, horse: string) =>
    from.pages('practice').filter((path) => path.startsWith(`practice/${horse}/`))

  let page: Page
  beforeAll(async () => {
    page = await browser.newPage({ viewport: telephone })
  })
  afterAll(() => page?.close())

  async function screensOf(from: BuiltSite, path: string): Promise<number> {
    await page.goto(from.url(path), { waitUntil: 'load' })
    return (await page.evaluate(() => document.documentElement.scrollHeight)) / telephone.height
  }

  it('is at most six screens for a horse', async () => {
    const horses = site.pages('practice').filter((path) => /^practice\/[^/]+\/index\.html$/.test(path))
    expect(horses.length).toBeGreaterThan(5)
    for (const path of horses) expect(await screensOf(site, path), path).toBeLessThanOrEqual(6)
    expect(await screensOf(long, 'practice/moorhof/index.html'), 'forty visits').toBeLessThanOrEqual(6)
  })

  it('is at most five screens for a visit', async () => {
    for (const horse of ['samphire', 'whimbrel', 'turnstone', 'orache', 'eider']) {
      const path = latestVisit(ofHorse(site, horse))
      expect(await screensOf(site, path), path).toBeLessThanOrEqual(5)
    }
    const path = latestVisit(ofHorse(long, 'moorhof'))
    expect(await screensOf(long, path), 'the fortieth visit').toBeLessThanOrEqual(5)
  })

  it('answers in the first screen what to heed, what was noted last and what may come off', async () => {
    for (const horse of ['samphire', 'turnstone', 'eider', 'orache']) {
      await page.goto(site.url(`practice/${horse}/index.html`), { waitUntil: 'load' })
      for (const place of ['.bar', '.calm, .caution', '.last-note']) {
        const box = await page.locator(place).first().boundingBox()
        expect(box?.y ?? Number.POSITIVE_INFINITY, `${horse} ${place}`).toBeLessThan(telephone.height)
      }
    }
  })

  it('weighs less than 80 kB and 1,500 nodes for a horse', async () => {
    for (const [from, path] of [
      [site, 'practice/samphire/index.html'],
      [long, 'practice/moorhof/index.html'],
    ] as const) {
      const html = from.text(path)
      expect(Buffer.byteLength(html), path).toBeLessThan(80_000)
      expect(html.match(/<[a-z]/g)?.length, path).toBeLessThan(1_500)
    }
  })

  it('holds a name of forty letters at 320 px, and targets of 44 px', async () => {
    expect(longName.replace(/[^A-Za-z]/g, '').length).toBeGreaterThanOrEqual(36)
    const { page, go, close } = await tour(browser, 'file:', { viewport: { width: 320, height: 640 } })
    for (const path of ofHorse(long, 'moorhof').filter((one) => !/\d{4}-\d\d/.test(one))) {
      await go(long.url(path))
      expect(await sideways(page), path).toEqual([])
      const low = await page.evaluate(
        () =>
          [...document.querySelectorAll('.bar a')].filter((one) => one.getBoundingClientRect().height < 44)
            .length,
      )
      expect(low, path).toBe(0)
    }
    await close()
  })

  it('fits the readings of four feet into 390 px', async () => {
    const path = latestVisit(ofHorse(site, 'samphire'))
    const { page, close } = await visit(browser, site.url(path), 'file:', { viewport: telephone })
    const widths = await page.evaluate(() =>
      [...document.querySelectorAll('table.readings')].map((one) => one.getBoundingClientRect().right),
    )
    expect(widths.length).toBeGreaterThan(0)
    for (const right of widths) expect(right).toBeLessThanOrEqual(telephone.width)
    await close()
  })
})

describe('the site as files', () => {
  it('is valid HTML', async () => {
    const validator = new HtmlValidate({ extends: ['html-validate:standard'], elements: ['html5'] })
    for (const path of kinds) {
      const { results } = await validator.validateString(site.text(path))
      const messages = results.flatMap(({ messages: found }) =>
        found.map(({ line, column, message, ruleId }) => `${path}:${line}:${column} ${message} (${ruleId})`),
      )
      expect(messages.slice(0, 10)).toEqual([])
    }
  })

  it('has no link that leads nowhere', () => {
    const pages = site.pages('practice')
    const ids = new Map(
      pages.map((path) => [
        path,
        new Set([...site.text(path).matchAll(/\sid="([^"]+)"/g)].map((match) => match[1])),
      ]),
    )
    const broken: string[] = []
    for (const path of pages) {
      for (const match of site.text(path).matchAll(/\s(?:href|src)="([^"]*)"/g)) {
        const address = (match[1] ?? '').replaceAll('&amp;', '&')
        if (/^(?:https?:|mailto:|data:)/.test(address)) continue
        const [file = '', anchor] = address.split('#')
        const target = file === '' ? path : normalize(join(dirname(path), decodeURIComponent(file)))
        if (!existsSync(join(site.folder, target))) broken.push(`${path}: ${address}`)
        else if (anchor && ids.has(target) && !ids.get(target)?.has(anchor))
          broken.push(`${path}: ${address}`)
      }
    }
    expect(broken.slice(0, 20)).toEqual([])
  })

  it('gives each page a policy that allows its own style and script alone', () => {
    for (const path of site.pages('practice')) {
      expect(site.text(path), path).toContain(
        `http-equiv="Content-Security-Policy" content="default-src 'none'`,
      )
      expect(site.text(path), path).not.toMatch(/\sstyle="|<style|\son[a-z]+="|unsafe-inline/)
    }
  })
})

describe('paper', () => {
  it('puts hand-over and field sheet of each horse on one side of A4 and of Letter, or says that it goes on', async () => {
    const sheets = site.pages('practice').filter((path) => /(?:hand-over|field-sheet)\.html$/.test(path))
    expect(sheets.length).toBeGreaterThan(10)
    // In the short run the fuller half.
    const fullest = sheets.toSorted((a, b) => site.text(b).length - site.text(a).length)
    const { page, go, close } = await tour(browser, 'file:')
    for (const path of isLong ? sheets : fullest.slice(0, sheets.length / 2)) {
      await go(site.url(path))
      const expected = /class="[^"]*\bsecond\b/.test(site.text(path)) ? 2 : 1
      for (const format of ['A4', 'Letter'] as const) {
        const bytes = await page.pdf({ format, preferCSSPageSize: false })
        expect((await PDFDocument.load(bytes)).getPageCount(), `${path} on ${format}`).toBe(expected)
      }
    }
    await close()
  })
})

describe('the same pages from the preview server', () => {
  it('open without trouble and listen for news', async () => {
    const script = `new EventSource('/-/news').addEventListener('reload', () => location.reload())`
    const server = await servePreview(
      {
        folder: join(site.folder, 'practice'),
        served: () => servedPaths(site.folder, 'practice'),
        settled: () => null,
        assets: { script, style: '', markText: 'Mark' },
        review: { show: () => nothingHere, taker: () => null },
        openMarking: () => Promise.reject(new Error('not here')),
      },
      0,
    )
    try {
      for (const path of some) {
        const address = server.url + path.slice('practice/'.length)
        const { page, troubles, close } = await visit(browser, address, server.url)
        expect(await page.locator('h1').count()).toBe(1)
        expect(troubles, path).toEqual([])
        await close()
      }
    } finally {
      await server.close()
    }
  })
})
