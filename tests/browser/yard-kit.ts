/** The yard page of a small practice on a static host, and a phone that opens it. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll } from 'vitest'
import { casebook, type Trial, trial } from '../editions/kit.ts'
import { yardFolder, yardKey } from '../editions/yard/kit.ts'
import { launch } from './chrome.ts'
import { type StaticHost, staticHost } from './yard-server.ts'

export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  timezoneId: 'Europe/London',
}

/** Two people; a horse that must not be touched, and one with a name of forty letters. */
export const longName = 'Maximiliana-Theodora of the Long Low Marsh'
export const files = {
  ...casebook,
  'practice.md': String(casebook['practice.md']).replace(
    'units: mm\n',
    'units: mm\npeople:\n  wren: {name: Wren Ashby}\n  teal: {name: Teal Orme}\ncontacts: {practice: 01632 960114, vet: {name: Noor Feldarch, phone: 01632 960117}}\n',
  ),
  'long/horse.md': `---\nname: ${longName}\nowner: fenwick\nkind: cob\nstarted: 2026-01-12\n---\n`,
  'long/2026-02-16.md': `---\ndate: 2026-02-16\nbefore:\n  toe length: [98, 97, 91, 92]\n  toe angle: [44, 45, 48, 47]\nfindings:\n  LF:\n    - drainage, sole, 3\n    - heat, coronet, 2\ncomfort:\n  lameness: {LF: 4}\n  digital pulse: {LF: 3}\nnext visit: in 5 weeks\n---\nStood on three legs.\n`,
}

interface Hosted {
  readonly host: StaticHost
  readonly url: string
  /** What the host has of the page. */
  readonly folder: string
}

export interface Opened {
  readonly page: Page
  readonly troubles: readonly string[]
  close(): Promise<void>
}

interface Yard {
  readonly browser: Browser
  readonly made: Trial
  /** The page in a folder of a host that holds other things besides; until the test ends. */
  hosted(): Promise<Hosted>
  open(url: string, options?: BrowserContextOptions): Promise<Opened>
  /** After each test. */
  clear(): Promise<void>
  close(): Promise<void>
}

async function openYard(): Promise<Yard> {
  const made = trial(files)
  await made.buildUnread(['yard'])
  const browser = await launch()
  const hosts: StaticHost[] = []
  const folders: string[] = []
  return {
    browser,
    made,
    hosted: async () => {
      const root = mkdtempSync(join(tmpdir(), 'growdown-host-'))
      folders.push(root)
      const folder = join(root, 'some', 'where')
      cpSync(yardFolder(made), folder, { recursive: true })
      const host = await staticHost(root)
      hosts.push(host)
      return { host, url: `${host.origin}/some/where/`, folder }
    },
    open: (url, options = phone) => open(browser, url, options),
    clear: async () => {
      await Promise.all(hosts.splice(0).map((host) => host.stop()))
      for (const one of folders.splice(0)) rmSync(one, { recursive: true, force: true })
    },
    close: async () => {
      await browser.close()
      made.done()
    },
  }
}

/** The same for the tests of a file. */
export function useYard() {
  let yard: Yard
  beforeAll(async () => {
    yard = await openYard()
  })
  afterEach(() => yard.clear())
  afterAll(() => yard?.close())
  return {
    made: () => yard.made,
    hosted: () => yard.hosted(),
    open: (url: string, options?: BrowserContextOptions) => yard.open(url, options),
    unlock: (page: Page, passphrase?: string) => unlock(page, yard.made, undefined, passphrase),
  }
}

async function open(browser: Browser, url: string, options: BrowserContextOptions): Promise<Opened> {
  const context = await browser.newContext(options)
  const page = await context.newPage()
  await page.clock.setFixedTime(new Date('2026-03-21T08:00:00'))
  const troubles: string[] = []
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) troubles.push(message.text())
  })
  page.on('pageerror', (error) => troubles.push(error.message))
  page.on('request', (request) => {
    const address = request.url()
    if (!address.startsWith(url) && !/^(data|blob):/.test(address)) troubles.push(`left the page: ${address}`)
  })
  await page.goto(url)
  return { page, troubles, close: () => context.close() }
}

/** Types the passphrase of a build on the gate. @param shown what stands on the page once it is open */
export async function unlock(
  page: Page,
  of: Trial,
  shown = '#yard .rows',
  passphrase = yardKey(of).passphrase,
) {
  await page.fill('#words', passphrase)
  await page.click('#unlock button[type=submit]')
  await page.waitForSelector(shown)
}
