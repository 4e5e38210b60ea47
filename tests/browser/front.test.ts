/** The pages over all horses, as a tired person holds them: what is on the first screen, how long they are, what a thumb hits. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axe } from './axe.ts'
import { launch } from './chrome.ts'
import { type BuiltSite, buildDemo } from './site.ts'
import { sideways, visit } from './visitor.ts'

const phone = { width: 390, height: 844 }
const site = buildDemo('practice')

/** One horse with a stop, whose names and problem are as long as they come. */
function longNames(): BuiltSite {
  const folder = mkdtempSync(join(tmpdir(), 'growdown-long-'))
  const name = 'Wilhelmina-Constantinopolitana Featherstonehaugh'
  mkdirSync(join(folder, 'long'))
  const write = (path: string, lines: readonly string[]) =>
    writeFileSync(join(folder, path), ['---', ...lines, '---', ''].join('\n'))
  write('practice.md', [`practice: ${name}`, `owners: {own: ${name}}`])
  write('long/horse.md', [`name: ${name}`, 'owner: own', `problems: ["${'Donaudampfschiff'.repeat(4)}"]`])
  write('long/2026-11-20.md', [
    'date: 2026-11-20',
    'next visit: 2026-11-26',
    'findings: {LF: ["drainage, heel bulbs, 2"], LH: ["drainage, heel bulbs, 2"], RH: ["abscess, toe, 2"]}',
  ])
  return buildDemo('practice', folder)
}
const long = longNames()

let browser: Browser
beforeAll(async () => {
  browser = await launch()
})
afterAll(() => browser?.close())

/** A page with its folds as they come. */
async function opened<T>(
  address: string,
  options: BrowserContextOptions,
  see: (page: Page) => Promise<T>,
): Promise<T> {
  const context = await browser.newContext(options)
  try {
    const page = await context.newPage()
    await page.goto(address, { waitUntil: 'load' })
    return await see(page)
  } finally {
    await context.close()
  }
}

const screensOf = (path: string) =>
  opened(site.url(path), { viewport: phone }, (page) =>
    page.evaluate((height) => document.documentElement.scrollHeight / height, phone.height),
  )

/** Height of each element, and where its lower edge is on the page. */
const boxes = (page: Page, selector: string) =>
  page.locator(selector).evaluateAll((elements) =>
    elements.map((element) => {
      const { height, bottom, width } = element.getBoundingClientRect()
      return { height, bottom: bottom + scrollY, width }
    }),
  )

describe('the front page', () => {
  const path = 'practice/index.html'

  it('is at most four screens of a telephone', async () => {
    expect(await screensOf(path)).toBeLessThanOrEqual(4)
  })

  it('has the whole list by day on its first screen, and nothing before it', async () => {
    await opened(site.url(path), { viewport: phone }, async (page) => {
      const rows = await boxes(page, 'section.days .rows > li')
      expect(rows.length).toBeGreaterThan(5)
      for (const { bottom } of rows) expect(bottom).toBeLessThanOrEqual(phone.height)
      expect(await page.locator('main h2').first().textContent()).toBe('Overdue')
    })
  })

  it('has rows of 56 px to tap that lead to the horse, and beside each its field sheet', async () => {
    await opened(site.url(path), { viewport: phone }, async (page) => {
      const rows = await boxes(page, '.rows > li:visible > .go')
      expect(rows.length).toBeGreaterThan(15)
      for (const { height } of rows) expect(height).toBeGreaterThanOrEqual(56)
      for (const { height, width } of await boxes(page, '.rows > li:visible > .sheet')) {
        expect(height).toBeGreaterThanOrEqual(56)
        expect(width).toBeGreaterThanOrEqual(44)
      }
      await page.locator('.rows .sheet').first().click()
      expect(page.url()).toMatch(/\/turnstone\/field-sheet\.html$/)
    })
  })

  it('says stop in the row itself, in letters that stand out', async () => {
    await opened(site.url(path), { viewport: phone }, async (page) => {
      const row = page.locator('section.days li', { hasText: 'Eider' })
      expect(await row.locator('.flag-stop').textContent()).toBe('Stop: left hind')
      const ground = (selector: string) =>
        row.locator(selector).evaluate((element) => getComputedStyle(element).backgroundColor)
      expect(await ground('.flag-stop')).not.toBe(await ground('.go'))
    })
  })

  it('says no caution twice', async () => {
    const said = await opened(site.url(path), { viewport: phone }, (page) =>
      page.locator('.caution').evaluateAll((blocks) =>
        blocks.flatMap((block) => {
          const horse = block.querySelector('.word a')?.textContent
          return [...block.querySelectorAll('li')].map((line) => `${horse}: ${line.textContent}`)
        }),
      ),
    )
    expect(said.length).toBeGreaterThan(5)
    expect(new Set(said).size).toBe(said.length)
  })

  it('finds a horse by its own name, its owner’s, a finding or a problem', async () => {
    await opened(site.url(path), { viewport: phone }, async (page) => {
      const names = () =>
        page
          .locator('#horse-list > li:visible b')
          .evaluateAll((found) => found.map(({ textContent }) => textContent))
      expect(await names()).toHaveLength(10)
      for (const [words, found] of [
        ['eid', ['Eider']],
        ['pellick', ['Eider', 'Marram']],
        ['drainage', ['Eider']],
        ['frog ratio improving', ['Dunlin']],
        ['nothing of the kind', []],
      ] as const) {
        await page.fill('#find', words)
        expect(await names(), words).toEqual(found)
      }
      expect(await page.locator('#shown').textContent()).toBe('No horse fits. Clear the search.')
    })
  })
})

describe('measures and sources', () => {
  it('begins with an index, whole on the first screen, that leads to every part', async () => {
    await opened(site.url('practice/reference.html'), { viewport: phone }, async (page) => {
      const links = await boxes(page, '.index a')
      for (const { bottom, height } of links) {
        expect(bottom).toBeLessThanOrEqual(phone.height)
        expect(height).toBeGreaterThanOrEqual(44)
      }
      const parts = await page.locator('main h2').evaluateAll((found) => found.map(({ id }) => `#${id}`))
      const told = await page
        .locator('.index a')
        .evaluateAll((found) => found.map((a) => a.getAttribute('href')))
      expect(told).toEqual(expect.arrayContaining(parts))
    })
  })

  it('tells what the demo’s horses have taught, in a table that fits a telephone', async () => {
    await opened(site.url('practice/reference.html'), { viewport: phone }, async (page) => {
      const text = await page.locator('section[aria-labelledby="lessons"]').textContent()
      expect(text).toMatch(
        /Your readings of toe length by gauge repeat to \d\.\d mm \(literature: 2\.0 mm\), from \d+ readings\./,
      )
      const overflow = await page
        .locator('section[aria-labelledby="lessons"] .scroll')
        .evaluate((box) => box.scrollWidth - box.clientWidth)
      expect(overflow).toBeLessThanOrEqual(0)
    })
  })
})

describe('with names as long as they come', () => {
  const pages = ['practice/index.html', 'practice/office.html', 'practice/reference.html']

  it.each(pages)('%s never scrolls sideways at 320 px', async (path) => {
    const { page, troubles, close } = await visit(browser, long.url(path), 'file:', {
      viewport: { width: 320, height: 640 },
    })
    expect(await sideways(page)).toEqual([])
    expect(troubles).toEqual([])
    await close()
  })

  it.each(['light', 'dark'] as const)('the front page is accessible in %s', async (colorScheme) => {
    const { page, close } = await visit(browser, long.url('practice/index.html'), 'file:', { colorScheme })
    expect(await axe(page)).toEqual([])
    await close()
  })
})
