/** The form in a browser, and what a thumb does with it. */
import { readFileSync, rmSync } from 'node:fs'
import { strFromU8, unzipSync } from 'fflate'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { axe, coloursAlone } from '../axe.ts'
import { launch } from '../chrome.ts'
import { visit } from '../visitor.ts'
import { heronCasebook } from './heron.ts'
import { type FormPage, serveForm } from './page.ts'

export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
}

export interface Forms {
  readonly browser: Browser
  readonly form: FormPage
  /** Of a horse that is read at four feet with eight measures each. */
  readonly heron: FormPage
  close(): Promise<void>
}

export async function openForms(): Promise<Forms> {
  const casebook = heronCasebook()
  const [browser, form, heron] = await Promise.all([launch(), serveForm(), serveForm(casebook)])
  const close = async () => {
    await browser.close()
    form.close()
    heron.close()
    rmSync(casebook, { recursive: true })
  }
  return { browser, form, heron, close }
}

export async function write(
  browser: Browser,
  served: FormPage,
  query = '',
  options: BrowserContextOptions = {},
) {
  const url = served.url(query)
  const opened = await visit(browser, url, url.slice(0, url.indexOf('?')), { ...phone, ...options })
  await opened.page.locator('.yf-feet').waitFor()
  return opened
}

export const key = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
export const tap = (page: Page, name: string) => key(page, name).tap()
export const kept = (page: Page) => page.locator('[data-saved=kept]').waitFor()
export const value = (page: Page) => page.locator('#yf-value')

/** Types a value on the pad. @returns taps */
export async function typeOn(page: Page, text: string): Promise<number> {
  const pad = page.locator('.yf-pad')
  for (const digit of text) await pad.getByRole('button', { name: digit, exact: true }).tap()
  return text.length
}

/** The case file and its pictures, as the phone saves them. */
export async function saved(page: Page): Promise<Readonly<Record<string, Uint8Array>>> {
  await tap(page, 'Finish')
  const download = page.waitForEvent('download')
  await tap(page, 'Save as a file')
  const path = await (await download).path()
  return unzipSync(readFileSync(path))
}

export const caseFile = (files: Readonly<Record<string, Uint8Array>>): string =>
  Object.entries(files)
    .filter(([path]) => path.endsWith('.md'))
    .map(([, bytes]) => strFromU8(bytes))
    .join('')

const asked = { runOnly: ['wcag2a', 'wcag2aa', 'wcag22aa', 'best-practice'] }

/** @param isJudged it was before, and has other colours now */
export const violationsOf = (page: Page, isJudged = false): Promise<readonly string[]> =>
  axe(page, '.yf', isJudged ? coloursAlone : asked)
