import { existsSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { HtmlValidate } from 'html-validate'
import { PDFDocument } from 'pdf-lib'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { nothingHere } from '../../src/apps/local-server.ts'
import { servedPaths } from '../../src/apps/preview/served.ts'
import { servePreview } from '../../src/apps/preview/server.ts'
import { isLong } from '../runs.ts'
import { launch } from './chrome.ts'
import { type BuiltSite, buildDemo, kindsOf } from './site.ts'
import { sideways, visit } from './visitor.ts'

let browser: Browser
const site: BuiltSite = buildDemo('practice')
const kinds = kindsOf(site)
/** Of the horses' own pages, which look alike, those of some; of every other kind of page each. */
const withHorses = (...ids: readonly string[]): readonly string[] =>
  kinds.filter((path) => {
    const horse = /^practice\/([^/]+)\/index\.html$/.exec(path)?.[1]
    return isLong || horse === undefined || ids.includes(horse)
  })
/** The one with the most on it and the one with a stop; where light has shown both, the one with a stop. */
const inLight = withHorses('samphire', 'eider')
const typical = withHorses('eider')

beforeAll(async () => {
  browser = await launch()
})
afterAll(() => browser?.close())

const wcag = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

async function axe(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(wcag).analyze()
  return violations
    .flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
    .slice(0, 10)
}

describe('every kind of page, from disk', () => {
  it('has a kind of each', () => {
    expect(kinds.length).toBeGreaterThan(10)
  })

  it.each(inLight)('opens without trouble and is accessible in light: %s', async (path) => {
    const { page, troubles, close } = await visit(browser, site.url(path), 'file:', { colorScheme: 'light' })
    expect(await axe(page)).toEqual([])
    expect(troubles).toEqual([])
    await close()
  })

  it.each(typical)('opens without trouble and is accessible in dark: %s', async (path) => {
    const { page, troubles, close } = await visit(browser, site.url(path), 'file:', { colorScheme: 'dark' })
    expect(await axe(page)).toEqual([])
    expect(troubles).toEqual([])
    await close()
  })

  it.each(typical)('is accessible as printed: %s', async (path) => {
    const { page, close } = await visit(browser, site.url(path), 'file:', { colorScheme: 'dark' })
    await page.emulateMedia({ media: 'print', colorScheme: 'light' })
    expect(await axe(page)).toEqual([])
    await close()
  })

  it('never scrolls sideways, at 320 px and at 200 % of a desk', async () => {
    for (const path of kinds) {
      for (const viewport of [
        { width: 320, height: 640 },
        { width: 640, height: 400 },
      ]) {
        const { page, close } = await visit(browser, site.url(path), 'file:', { viewport })
        expect(await sideways(page), `${path} at ${viewport.width}`).toEqual([])
        await close()
      }
    }
  })

  it('reads fully without JavaScript', async () => {
    for (const path of kinds) {
      const without = await visit(browser, site.url(path), 'file:', { javaScriptEnabled: false })
      const heard = (await without.page.locator('main').textContent()) ?? ''
      expect(heard.length, path).toBeGreaterThan(200)
      expect(await without.page.locator('main h1').count(), path).toBe(1)
      await without.close()
    }
  })

  it('lets the keyboard reach every control', async () => {
    for (const path of kinds) {
      const { page, close } = await visit(browser, site.url(path), 'file:')
      const controls = await page
        .locator('a[href]:visible, summary:visible, input:visible, select:visible, button:visible')
        .count()
      const reached = new Set<string>()
      for (let step = 0; step < Math.min(controls, 60) + 2; step++) {
        await page.keyboard.press('Tab')
        const focused = await page.evaluate(() => {
          const element = document.activeElement
          return element === null || element === document.body
            ? ''
            : `${[...document.querySelectorAll('*')].indexOf(element)}`
        })
        if (focused !== '') reached.add(focused)
      }
      expect(reached.size, path).toBeGreaterThanOrEqual(Math.min(controls, 60) - 1)
      await close()
    }
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
  const pagesOf = async (path: string, format: 'A4' | 'Letter'): Promise<number> => {
    const { page, close } = await visit(browser, site.url(path), 'file:')
    const bytes = await page.pdf({ format, preferCSSPageSize: false })
    await close()
    return (await PDFDocument.load(bytes)).getPageCount()
  }

  for (const format of ['A4', 'Letter'] as const) {
    it(`puts hand-over and field sheet of each horse on one side of ${format}, or says that it goes on`, async () => {
      const sheets = site.pages('practice').filter((path) => /(?:hand-over|field-sheet)\.html$/.test(path))
      expect(sheets.length).toBeGreaterThan(10)
      for (const path of sheets) {
        const expected = /class="[^"]*\bsecond\b/.test(site.text(path)) ? 2 : 1
        expect(await pagesOf(path, format), path).toBe(expected)
      }
    })
  }
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
      for (const path of kinds) {
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
