/** Opens pages as a visitor does and notes whatever goes wrong on the way. */
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'

export interface Tour {
  readonly page: Page
  /** Opens a page, and all that is folded on it, so that it is judged too. */
  go(url: string): Promise<void>
  /** Errors of the console, refused content and requests that left the page. */
  readonly troubles: readonly string[]
  close(): Promise<void>
}

/** One page that goes to one address after the other. `home` is the start of every address that may be asked for. */
export async function tour(
  browser: Browser,
  home: string,
  options: BrowserContextOptions = {},
): Promise<Tour> {
  const context = await browser.newContext(options)
  const page = await context.newPage()
  const troubles: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      troubles.push(`console: ${message.text()}`)
  })
  page.on('pageerror', (error) => troubles.push(`error: ${error.message}`))
  page.on('requestfailed', (request) => {
    if (!/\/-\/news(\?|$)/.test(request.url())) troubles.push(`failed: ${request.url()}`)
  })
  page.on('request', (request) => {
    const address = request.url()
    if (!address.startsWith(home) && !address.startsWith('data:') && !address.startsWith('blob:')) {
      troubles.push(`left the page: ${address}`)
    }
  })
  const go = async (url: string) => {
    await page.goto(url, { waitUntil: 'load' })
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true
    })
  }
  return { page, troubles, go, close: () => context.close() }
}

/** A tour of one page. */
export async function visit(
  browser: Browser,
  url: string,
  home: string,
  options: BrowserContextOptions = {},
): Promise<Tour> {
  const toured = await tour(browser, home, options)
  await toured.go(url)
  return toured
}

/** What sticks out to the right of the window; empty when nothing makes the page scroll sideways. */
export const sideways = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const width = document.documentElement.clientWidth
    if (document.documentElement.scrollWidth <= width) return []
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      (['auto', 'scroll', 'hidden'].includes(getComputedStyle(element).overflowX) ||
        scrolls(element.parentElement))
    return [...document.body.querySelectorAll('*')]
      .filter(
        (element) => element.getBoundingClientRect().right > width + 1 && !scrolls(element.parentElement),
      )
      .map((element) => `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`)
      .slice(0, 5)
  })
