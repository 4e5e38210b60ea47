/** The yard page on a phone: opened, read, kept without a network, exchanged for a newer one. */
import { cpSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { type Trial, trial } from '../editions/kit.ts'
import { yardFolder, yardHtml, yardKey } from '../editions/yard/kit.ts'
import { english } from '../english.ts'
import { files, longName, phone, unlock as typeWords, useYard } from './yard-kit.ts'

const { page: says, locked: gate } = english.yard

const { made, open, unlock, ...yard } = useYard()
/** What the host has of the page of this test. */
let folder: string
const hosted = async () => {
  const found = await yard.hosted()
  folder = found.folder
  return found
}
/** Of another build, wherever the page is. */
const unlockAs = (page: Page, of: Trial) => typeWords(page, of, '#yard main')

const rows = (page: Page) =>
  page.$$eval('.days', (groups) =>
    groups.map((group) => [
      group.querySelector('h2, summary')?.textContent ?? '',
      ...[...group.querySelectorAll('.rows b')].map((name) => name.textContent ?? ''),
    ]),
  )

describe('the yard page', () => {
  it('opens with the passphrase as a phone types it, and says kindly what was wrong', async () => {
    const { url } = await hosted()
    const { page, troubles, close } = await open(url)
    expect(await page.textContent('body')).not.toMatch(/Zoë|Pipkin|Kestrel/)
    await page.click('#unlock button[type=submit]')
    expect(await page.textContent('#said')).toBe(gate.empty)
    await page.fill('#words', 'not these words at all')
    await page.click('#unlock button[type=submit]')
    await page.waitForFunction((text) => document.querySelector('#said')?.textContent === text, gate.wrong)
    expect(await page.getAttribute('#words', 'type')).toBe('password')
    await page.check('#show')
    expect(await page.getAttribute('#words', 'type')).toBe('text')
    const { passphrase } = yardKey(made())
    await unlock(
      page,
      ` ${passphrase.slice(0, 1).toUpperCase()}${passphrase.slice(1).replaceAll(' ', '  ')} `,
    )
    await page.click('.bar-below button')
    await page.waitForSelector('#unlock')
    expect(await page.textContent('body')).not.toMatch(/Zoë|Pipkin|Kestrel/)
    expect(troubles).toEqual([])
    await close()
  })

  it('says that it did not arrive whole, whichever half is damaged', async () => {
    const { url } = await hosted()
    const html = yardHtml(made())
    const damaged = {
      'the lock': html.replace(
        /(\n[A-Za-z0-9+/]{20})(.)/,
        (_, before, sign) => before + (sign === 'a' ? 'b' : 'a'),
      ),
      'the rest': html.replace(/(id="sealed">.{80})./, '$1#'),
    }
    for (const [name, text] of Object.entries(damaged)) {
      writeFileSync(join(folder, 'index.html'), text)
      const { page, close } = await open(url)
      await page.fill('#words', yardKey(made()).passphrase)
      await page.click('#unlock button[type=submit]')
      await page
        .waitForFunction((said) => document.querySelector('#said')?.textContent === said, gate.damaged)
        .catch(() => expect.fail(name))
      await close()
    }
  })

  it('lists the visits by the day on which it is opened, and finds every horse', async () => {
    const { url } = await hosted()
    const { page, troubles, close } = await open(url)
    await unlock(page)
    expect(await page.textContent('h1')).toBe('Sat 21 March 2026')
    expect(await page.textContent('.list-head')).toContain('As of 1 March 2026, 3 weeks ago')
    expect(await rows(page)).toEqual([['Next week', longName, 'May', 'Pipkin', 'Zoë']])
    const stop = page.locator('.rows a', { hasText: longName })
    expect(await stop.locator('.flag-stop').textContent()).toMatch(/^Stop/)
    for (const row of await page.locator('.rows a').all())
      expect((await row.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(56)
    await page.clock.setFixedTime(new Date('2026-03-24T08:00:00'))
    await page.reload()
    await unlock(page)
    expect((await rows(page)).map(([head]) => head)).toEqual(['Overdue'])
    await page.fill('#find', 'zoe')
    expect(await rows(page)).toEqual([['1 horse', 'Zoë']])
    await page.fill('#find', 'fenwick')
    expect(await rows(page)).toEqual([['2 horses', longName, 'May']])
    await page.fill('#find', 'nobody at all')
    expect(await page.textContent('#found')).toBe(says.foundNone)
    expect(troubles).toEqual([])
    await close()
  })

  it('shows a horse, what to heed first, and the back button leads back', async () => {
    const { url } = await hosted()
    const { page, troubles, close } = await open(url)
    await unlock(page)
    await page.tap(`.rows a:has-text("${longName}")`)
    await page.waitForSelector('.horse-part')
    const text = (await page.textContent('main')) ?? ''
    expect(await page.textContent('h1')).toBe(longName)
    expect(text.indexOf('Stop')).toBeLessThan(text.indexOf('What may come off'))
    expect(text).toContain('Stood on three legs.')
    expect(await page.getAttribute('.ring', 'href')).toBe('tel:01632960117')
    const act = await page.locator('.main-act').boundingBox()
    expect((act?.y ?? 0) + (act?.height ?? 0)).toBeLessThanOrEqual(844)
    await page.goBack()
    await page.waitForSelector('.rows')
    await page.goto(`${url}#horse/zoe`)
    await page.waitForSelector('.horse-part')
    expect(await page.textContent('h1')).toBe('Zoë')
    await page.goto(`${url}#horse/nobody`)
    await page.waitForFunction((said) => document.querySelector('h1')?.textContent === said, says.unknown)
    expect(troubles).toEqual([])
    await close()
  })

  it('begins a screen at its top, and goes back to where the other was left', async () => {
    const { url } = await hosted()
    const { page, close } = await open(url, { ...phone, viewport: { width: 390, height: 400 } })
    await unlock(page)
    await page.evaluate(() => scrollTo(0, 300))
    await page.waitForFunction(() => scrollY === 300)
    // A tap by the library may move the page first.
    await page.$eval('a[href="#settings"]', (link) => (link as HTMLAnchorElement).click())
    await page.waitForSelector('.choice')
    await page.waitForFunction(() => scrollY === 0)
    await page.goBack()
    await page.waitForSelector('.rows')
    await page.waitForFunction(() => scrollY === 300)
    await close()
  })

  it('opens and is read with the network really cut, and asks for nothing outside its folder', async () => {
    const { host, url } = await hosted()
    const { page, troubles, close } = await open(url)
    await page.waitForFunction(
      async () => (await navigator.serviceWorker.ready).active?.state === 'activated',
    )
    await page.context().setOffline(true)
    await host.stop()
    await page.reload()
    await unlock(page)
    await page.tap('.rows a:has-text("Zoë")')
    await page.waitForSelector('.horse-part')
    await page.goto(`${url}index.html`)
    await unlock(page)
    await page.click('a[href="#settings"]')
    await page.waitForFunction((said) => document.body.textContent?.includes(said), says.offlineReady)
    expect(host.asked.filter((path) => !path.startsWith('/some/where/'))).toEqual([])
    expect(troubles).toEqual([])
    await close()
  })

  it('takes a newer build when asked, and a locked page takes it by itself', async () => {
    const newer = trial(files)
    cpSync(join(made().casebook, 'passphrases.yaml'), join(newer.casebook, 'passphrases.yaml'))
    await newer.buildUnread(['yard'], '2026-03-20')
    const { url } = await hosted()
    const { page, troubles, close } = await open(url)
    await page.waitForFunction(
      async () => (await navigator.serviceWorker.ready).active?.state === 'activated',
    )
    await page.reload()
    await unlock(page)
    await page.click('a[href="#settings"]')
    cpSync(yardFolder(newer), folder, { recursive: true })
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update())
    await page.waitForSelector('.note-above')
    expect(await page.textContent('.note-above')).toContain(says.news)
    expect(await page.textContent('main')).toContain('As of 1 March 2026')
    await Promise.all([page.waitForEvent('load'), page.click('.note-above button')])
    await unlockAs(page, newer)
    expect(await page.textContent('main')).toContain('As of 20 March 2026, 1 day ago')

    // Half an upload: the worker's list names bytes that are not there yet. Nothing is taken.
    cpSync(join(yardFolder(made()), 'worker.js'), join(folder, 'worker.js'))
    await page.evaluate(async () =>
      (await navigator.serviceWorker.getRegistration())?.update().catch(() => {}),
    )
    await page.waitForFunction(async () => {
      const registration = await navigator.serviceWorker.getRegistration()
      return registration?.installing === null && registration.waiting === null
    })
    await page.reload()
    await unlockAs(page, newer)
    expect(await page.textContent('main')).toContain('As of 20 March 2026')

    cpSync(yardFolder(made()), folder, { recursive: true })
    await page.reload()
    // It is locked again: the newer build takes its place with nobody asked.
    const taken = page.waitForEvent('load')
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update())
    await taken
    await unlockAs(page, made())
    expect(await page.textContent('main')).toContain('As of 1 March 2026')
    expect(troubles.filter((text) => !/integrity/i.test(text))).toEqual([])
    await close()
    newer.done()
  })

  it('begins a visit, which outlives loading again, and goes on with it', async () => {
    const { url } = await hosted()
    const { page, troubles, close } = await open(url)
    await unlock(page)
    await page.tap('a[href="#settings"]')
    await page.check('label:has-text("Teal Orme") input')
    await page.goto(`${url}#horse/zoe`)
    await page.waitForSelector('.main-act')
    expect(await page.textContent('.main-act')).toBe(says.write)
    await page.tap('.main-act')
    await page.waitForFunction(() => location.hash.startsWith('#write/'))
    await page.waitForSelector('.yf')
    await page.reload()
    await unlockAs(page, made())
    await page.waitForFunction(() => document.querySelector('.yf')?.textContent?.includes('Zoë'))
    await page.goto(`${url}#horse/zoe`)
    await page.waitForFunction((text) => document.querySelector('.main-act')?.textContent === text, says.goOn)
    await page.goto(`${url}#`)
    await page.waitForSelector('.rows')
    await page.waitForSelector(`text=${says.notTaken(1)}`)
    await page.tap(`text=${says.notTaken(1)}`)
    await page.waitForFunction(() => document.querySelector('main')?.textContent?.includes('Zoë'))
    expect(troubles).toEqual([])
    await close()
  })

  it('opens from a file for reading, and says that nothing can be written there', async () => {
    const { page, troubles, close } = await open(pathToFileURL(join(yardFolder(made()), 'index.html')).href)
    await unlock(page)
    expect(await page.textContent('main')).toContain(says.fileOnly)
    await page.click('.rows a:has-text("Zoë")')
    await page.waitForSelector('.horse-part')
    expect(await page.$('.main-act')).toBeNull()
    expect(troubles).toEqual([])
    await close()
  })

  it('locks once it was out of sight for a quarter of an hour, and not before', async () => {
    const { url } = await hosted()
    const { page, close } = await open(url)
    await unlock(page)
    const hide = (hidden: boolean) =>
      page.evaluate((isHidden) => {
        Object.defineProperty(document, 'hidden', { configurable: true, get: () => isHidden })
        document.dispatchEvent(new Event('visibilitychange'))
      }, hidden)
    await hide(true)
    await page.clock.setFixedTime(new Date('2026-03-21T08:14:00'))
    await hide(false)
    expect(await page.$('.rows')).not.toBeNull()
    await hide(true)
    await page.clock.setFixedTime(new Date('2026-03-21T08:30:00'))
    await Promise.all([page.waitForEvent('load'), hide(false)])
    await page.waitForSelector('#unlock')
    expect(await page.$('.rows')).toBeNull()
    await close()
  })

  it('remembers who holds it, which hand and which light, and nothing of a horse', async () => {
    const { url } = await hosted()
    const { page, close } = await open(url)
    await unlock(page)
    const barStart = async () => (await page.locator('.bar-below a').first().boundingBox())?.x ?? 0
    const right = await barStart()
    await page.click('a[href="#settings"]')
    await page.check('label:has-text("Teal Orme") input')
    await page.check(`label:has-text("${says.hands.left}") input`)
    await page.check(`label:has-text("${says.lights.dark}") input`)
    expect(await barStart()).toBeGreaterThan(right)
    await page.reload()
    const dark = await page.evaluate(() => getComputedStyle(document.body).backgroundColor)
    expect(dark).toBe('rgb(21, 19, 15)')
    await page.goto(url)
    await page.reload()
    await unlock(page)
    await page.click('a[href="#settings"]')
    expect(await page.isChecked('label:has-text("Teal Orme") input')).toBe(true)
    const kept = await page.evaluate(() => JSON.stringify(localStorage))
    expect(kept).toContain('teal')
    expect(kept).not.toMatch(/zoe|pip|may|long/)
    await close()
  })
})
