import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { AxeBuilder } from '@axe-core/playwright'
import { Decrypter } from 'age-encryption'
import { HtmlValidate } from 'html-validate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { workFactor } from '../../src/editions/owner/lock.ts'
import { casebook, type Trial, trial } from '../editions/kit.ts'
import { english } from '../english.ts'
import { launch } from './chrome.ts'
import { sideways, visit } from './visitor.ts'

const { owner } = english

let browser: Browser
let at: Trial
let key: { passphrase: string; token: string }
let server: Server
let port: number

beforeAll(async () => {
  at = trial(casebook, workFactor)
  await at.build(['owner'])
  key = parse(readFileSync(join(at.casebook, 'passphrases.yaml'), 'utf8')).kestrel
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
  at?.done()
})

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

async function type(page: Page, words: string): Promise<void> {
  await page.fill('#words', words)
  await page.click('button[type=submit]')
}

async function unlock(page: Page, words = key.passphrase): Promise<void> {
  await type(page, words)
  await page.waitForSelector('body.record')
}

async function axe(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
}

describe('the locked page', () => {
  it.each(['disk', 'a server'])(
    'opens from %s, asks for nothing, keeps nothing, and locks when loaded again',
    async (from) => {
      const home = from === 'disk' ? 'file:' : `http://127.0.0.1:${port}/`
      const url = from === 'disk' ? fromDisk() : `${home}owners/${key.token}/index.html`
      const { page, troubles, close } = await visit(browser, url, home)
      expect(await page.textContent('body')).not.toMatch(/Zoë|Pipkin|Kestrel/)
      await unlock(page)
      expect(await page.title()).toBe('Your horses, from Sandpiper Hoof Care')
      expect(await page.textContent('h1')).toBe('For Ada Kestrel')
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
    expect(await says(page)).toBe(owner.locked.empty)
    await type(page, 'not these words at all')
    await page.waitForFunction(
      (text) => document.querySelector('#said')?.textContent === text,
      owner.locked.wrong,
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
      expect(await says(page), name).toBe(owner.locked.damaged)
      await type(page, key.passphrase)
      expect(await says(page), name).toBe(owner.locked.damaged)
      await close()
    }
  })

  it('says what to do without JavaScript, and still gives the file', async () => {
    const { page, close } = await visit(browser, fromDisk(), 'file:', { javaScriptEnabled: false })
    expect(await page.isVisible('noscript p')).toBe(true)
    expect(await page.textContent('noscript p')).toBe(owner.locked.noScript)
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

describe('both faces of the page', () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    it(`are accessible in ${colorScheme}, and never scroll sideways at 320 px`, async () => {
      const { page, close } = await visit(browser, fromDisk(), 'file:', {
        colorScheme,
        viewport: { width: 320, height: 640 },
      })
      expect(await axe(page)).toEqual([])
      expect(await sideways(page)).toEqual([])
      await unlock(page)
      expect(await axe(page)).toEqual([])
      expect(await sideways(page)).toEqual([])
      await page.emulateMedia({ media: 'print', colorScheme: 'light' })
      expect(await axe(page)).toEqual([])
      await close()
    })
  }

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
    expect(await box.getAttribute('aria-label')).toBe('Mon: CARE-ZOE every day')
    await close()
  })
})
