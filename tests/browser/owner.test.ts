import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import { dirname, join, relative } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Decrypter } from 'age-encryption'
import { HtmlValidate } from 'html-validate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { workFactor } from '../../src/editions/lock/lock.ts'
import { practitionersEntry } from '../../src/editions/lock/practitioners-entry.ts'
import { fortyVisits, longName } from '../editions/forty-visits.ts'
import { casebook, type Trial, trial } from '../editions/kit.ts'
import { english, german } from '../english.ts'
import { axe, coloursAlone } from './axe.ts'
import { launch } from './chrome.ts'
import { asOf } from './site.ts'
import { sideways, visit } from './visitor.ts'

interface Key {
  readonly passphrase: string
  readonly token: string
}

/** Every page is looked at in each language, and its lock is turned lightly. */
const languages = [
  { tag: 'en', words: english.owner, monday: 'Mon' },
  { tag: 'de', words: german.owner, monday: 'Mo' },
] as const
type Tag = (typeof languages)[number]['tag']

const inLanguage = (practice: string, tag: Tag) =>
  practice.replace('\nunits: mm\n', `\nunits: mm\nlanguage: ${tag}\n`)
/** Those of owners: the demo may have been built before, with the practitioner's own page. */
function keysOf({ casebook: folder }: Trial): Readonly<Record<string, Key>> {
  const { [practitionersEntry]: _, ...keys } = parse(readFileSync(join(folder, 'passphrases.yaml'), 'utf8'))
  return keys
}

let browser: Browser
/** In each language; and in the first with the lock turned as it is for owners, which knows no language. */
type Made = Tag | 'turned'
const built = new Map<Made, Trial>()
/** Those of the language whose tests are run. */
let at: Trial
let key: Key
let server: Server
let port: number

beforeAll(async () => {
  const make = async (name: Made, tag: Tag, factor?: number) => {
    const practice = inLanguage(casebook['practice.md'] ?? '', tag)
    const made = trial({ ...casebook, 'practice.md': practice }, factor)
    built.set(name, made)
    await made.buildUnread(['owner'])
  }
  for (const { tag } of languages) await make(tag, tag)
  await make('turned', 'en', workFactor)
  server = createServer((request, response) => {
    response.setHeader('content-type', 'text/html; charset=utf-8')
    response.end(readFileSync(join(at.site, new URL(request.url ?? '/', 'http://here').pathname)))
  })
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready))
  const address = server.address()
  port = typeof address === 'object' && address !== null ? address.port : 0
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
  server?.close()
  for (const made of built.values()) made.done()
})

function use(name: Made): void {
  const made = built.get(name)
  const keys = made && keysOf(made)
  if (made === undefined || keys?.kestrel === undefined) throw new Error(`nothing was built as ${name}`)
  at = made
  key = keys.kestrel
}

const pageFile = () => join(at.site, 'owners', key.token, 'index.html')
const fromDisk = () => pathToFileURL(pageFile()).href

/** Another copy of the page, changed, and its address. */
function changedPage(name: string, change: (html: string) => string): string {
  const path = join(at.root, 'changed', name)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, change(readFileSync(pageFile(), 'utf8')))
  return pathToFileURL(path).href
}

const says = (page: Page) => page.textContent('#said')

async function type(page: Page, passphrase: string): Promise<void> {
  await page.fill('#words', passphrase)
  await page.click('button[type=submit]')
}

async function unlock(page: Page, passphrase = key.passphrase): Promise<void> {
  await type(page, passphrase)
  await page.waitForSelector('body.record')
}

describe.each(languages)('the locked page, $tag', ({ tag, words }) => {
  beforeAll(() => use(tag))

  it.each([
    ['disk', tag],
    ['a server', tag],
    ...(tag === 'en' ? [['disk', 'turned'] as const] : []),
  ] as const)(
    'opens from %s, asks for nothing, keeps nothing, and locks when loaded again, made as %s',
    async (from, name) => {
      use(name)
      const home = from === 'disk' ? 'file:' : `http://127.0.0.1:${port}/`
      const url = from === 'disk' ? fromDisk() : `${home}owners/${key.token}/index.html`
      const { page, troubles, close } = await visit(browser, url, home)
      expect(await page.textContent('body')).not.toMatch(/Zoë|Pipkin|Kestrel/)
      await unlock(page)
      expect(await page.title()).toBe(words.title('Sandpiper Hoof Care'))
      expect(await page.textContent('h1')).toBe(words.forOwner('Ada Kestrel'))
      expect(await page.getAttribute('html', 'lang')).toBe(tag)
      expect(await page.textContent('main')).toContain('LETTER-ZOE to you.')
      expect(await page.textContent('main')).toContain('CARE-PIP every day')
      expect(
        await page.evaluate(() => [localStorage.length, sessionStorage.length, document.cookie]),
      ).toEqual([0, 0, ''])
      await page.click('[data-lock]')
      await page.waitForSelector('#unlock')
      expect(await page.textContent('body')).not.toMatch(/Zoë|Pipkin|Kestrel/)
      expect(troubles).toEqual([])
      await close()
      use(tag)
    },
  )

  it('forgives capitals and spaces as a phone makes them', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:')
    await unlock(
      page,
      ` ${key.passphrase.slice(0, 1).toUpperCase()}${key.passphrase.slice(1).replaceAll(' ', '  ')} `,
    )
    await close()
  })

  it('says kindly that the words were wrong, and lets try again', async () => {
    const { page, troubles, close } = await visit(browser, fromDisk(), 'file:')
    await type(page, '')
    expect(await says(page)).toBe(words.locked.empty)
    await type(page, 'not these words at all')
    await page.waitForFunction(
      (text) => document.querySelector('#said')?.textContent === text,
      words.locked.wrong,
    )
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('words')
    await unlock(page)
    expect(troubles).toEqual([])
    await close()
  })

  it('says that the page did not arrive whole, whatever was damaged', async () => {
    const changes: Readonly<Record<string, (html: string) => string>> = {
      'one sign': (html) => html.replace(/(\n[A-Za-z0-9+/]{63})[A-Z](?=\n)/, '$1a'),
      'a line': (html) => html.replace(/\n[A-Za-z0-9+/]{64}(?=\n)/, ''),
      'its head': (html) => html.replace('BEGIN AGE', 'BEGIN'),
      'all of it': (html) => html.replace(/-----BEGIN[\s\S]*?END AGE ENCRYPTED FILE-----/, ''),
    }
    for (const [name, change] of Object.entries(changes)) {
      const { page, close } = await visit(browser, changedPage(`${name}.html`, change), 'file:')
      expect(await says(page), name).toBe(words.locked.damaged)
      await type(page, key.passphrase)
      expect(await says(page), name).toBe(words.locked.damaged)
      await close()
    }
  })

  it('says what to do without JavaScript, and still gives the file', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:', { javaScriptEnabled: false })
    expect(await page.isVisible('noscript p')).toBe(true)
    expect(await page.textContent('noscript p')).toBe(words.locked.noScript)
    expect(await page.isVisible('#unlock')).toBe(false)
    expect(await page.inputValue('#locked')).toContain('BEGIN AGE ENCRYPTED FILE')
    await close()
  })

  it('gives the locked file, which the library opens on its own', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:')
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save')])
    expect(download.suggestedFilename()).toBe('record.age')
    const decrypter = new Decrypter()
    decrypter.addPassphrase(key.passphrase)
    const plain = await decrypter.decrypt(readFileSync(await download.path()), 'text')
    expect(plain).toContain('LETTER-ZOE to you.')
    await close()
  })
})

describe.each(languages)('both faces of the page, $tag', ({ tag, words, monday }) => {
  beforeAll(() => use(tag))

  it('are accessible in light, dark and print, and never scroll sideways at 320 px', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:', {
      colorScheme: 'light',
      viewport: { width: 320, height: 640 },
    })
    const look = async () => {
      expect(await axe(page)).toEqual([])
      expect(await sideways(page)).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axe(page, undefined, coloursAlone)).toEqual([])
      await page.emulateMedia({ colorScheme: 'light' })
    }
    await look()
    await unlock(page)
    await look()
    await page.emulateMedia({ media: 'print', colorScheme: 'light' })
    expect(await axe(page)).toEqual([])
    await close()
  })

  it('are valid HTML', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'error' },
    })
    const { page, close } = await visit(browser, fromDisk(), 'file:')
    const decrypter = new Decrypter()
    decrypter.addPassphrase(key.passphrase)
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save')])
    const plain = await decrypter.decrypt(readFileSync(await download.path()), 'text')
    await close()
    for (const html of [readFileSync(pageFile(), 'utf8'), plain]) {
      const report = await validator.validateString(html)
      expect(
        report.results.flatMap(({ messages }) =>
          messages.map(({ ruleId, message, line }) => `${line} ${ruleId}: ${message}`),
        ),
      ).toEqual([])
    }
  })

  it('print one list alone when asked, and the whole page after', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:')
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-asked', document.body.className)
    })
    await unlock(page)
    await page.click('[data-print="pip-care"]')
    await page.emulateMedia({ media: 'print' })
    const shown = () =>
      page.evaluate(() =>
        ['#pip-care', '#zoe-care', '#zoe-name', '#ring', 'h1'].map(
          (at) => document.querySelector(at)?.checkVisibility() ?? false,
        ),
      )
    expect(await shown()).toEqual([true, false, false, true, false])
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')))
    expect(await shown()).toEqual([true, true, true, true, true])
    await close()
  })

  it('work by keyboard from the words to the ticks', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('words')
    await page.keyboard.type(key.passphrase)
    await page.keyboard.press('Enter')
    await page.waitForSelector('body.record')
    const box = page.locator('#zoe-care input').first()
    await box.focus()
    await page.keyboard.press('Space')
    expect(await box.isChecked()).toBe(true)
    expect(await box.getAttribute('aria-label')).toBe(words.careTick(monday, 'CARE-ZOE every day'))
    await close()
  })
})

/** What is to be known of an unlocked page at the width of a phone, all folds as they come. */
const layoutOf = (page: Page) =>
  page.evaluate(() => ({
    height: document.documentElement.scrollHeight,
    /** Where what to do begins, or what a vet must see first. */
    first: Math.min(
      ...[...document.querySelectorAll('.urgent, .care')].map((one) => one.getBoundingClientRect().top),
    ),
    small: [...document.querySelectorAll('main a, main button, main label, main summary')]
      .filter((one) => one.checkVisibility() && !one.closest('.letter'))
      .filter((one) => one.getBoundingClientRect().height < 43.5)
      .map((one) => one.textContent),
    horses: [...document.querySelectorAll('.horse')].map((horse) => ({
      name: horse.querySelector('h2')?.textContent ?? '',
      heads: [...horse.querySelectorAll('h3')]
        .filter((one) => one.checkVisibility())
        .map((one) => one.textContent ?? ''),
    })),
  }))

describe('the unlocked page', () => {
  /** The demo's owners, and one with a horse of forty visits: built in one language after the other. */
  let demo: Trial
  let practice: string
  beforeAll(() => {
    const files = Object.fromEntries(
      readdirSync('cases', { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ parentPath, name }) => join(parentPath, name))
        .map((path) => [relative('cases', path), readFileSync(path)]),
    )
    demo = trial({ ...files, ...fortyVisits('hard', 'hardy', 'Rowan') })
    practice = String(files['practice.md']).replace(
      'owners:\n',
      'owners:\n  hardy: {name: Hannelore Hardy}\n',
    )
  })
  afterAll(() => demo?.done())

  describe.each(languages)('$tag', ({ tag, words }) => {
    const layouts = new Map<string, Awaited<ReturnType<typeof layoutOf>>>()

    /** The page of an owner, unlocked. */
    const opened = async (owner: string, width: number) => {
      const { passphrase = '', token = '' } = keysOf(demo)[owner] ?? {}
      const url = pathToFileURL(join(demo.site, 'owners', token, 'index.html')).href
      const { page, close } = await visit(browser, url, 'file:', { viewport: { width, height: 844 } })
      await unlock(page, passphrase)
      return { page, close }
    }

    beforeAll(async () => {
      demo.write('practice.md', inLanguage(practice, tag))
      await demo.buildUnread(['owner'], asOf)
      for (const owner of Object.keys(keysOf(demo))) {
        const { page, close } = await opened(owner, 390)
        layouts.set(owner, await layoutOf(page))
        await close()
      }
    })

    it('is at most five screens of a phone for each horse', () => {
      for (const [owner, { height, horses }] of layouts)
        expect(height / 844 / horses.length, owner).toBeLessThanOrEqual(5)
      expect([...layouts.keys()]).toContain('hardy')
      expect(layouts.size).toBe(7)
    })

    it('says on the first screen what to do, or what a vet must see first', () => {
      for (const [owner, { first }] of layouts) expect(first, owner).toBeLessThan(844)
    })

    it('has its parts in one order, and targets as large as a finger', () => {
      const order = [words.standingHead, words.careHead, words.lettersHead, words.photosHead, words.feetHead]
      for (const [owner, { small, horses }] of layouts) {
        expect(small, owner).toEqual([])
        for (const { name, heads } of horses) {
          const known = heads.filter((head) => order.includes(head))
          expect(known, owner).toEqual(order.filter((head) => known.includes(head)))
          expect(heads.at(-1), owner).toBe(words.lookForHead(name))
        }
      }
    })

    it('never scrolls sideways at 320 px with a name of forty letters, and is accessible', async () => {
      const { page, close } = await opened('hardy', 320)
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true
      })
      expect(await page.textContent('h2')).toBe(longName)
      expect(await sideways(page)).toEqual([])
      expect(await axe(page)).toEqual([])
      await close()
    })
  })
})
