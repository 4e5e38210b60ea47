/** One visit the whole way: from an empty phone to the casebook, to built pages, and back to the phone that wrote it. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { growdownProcess } from '../commands/run.ts'
import { english } from '../english.ts'
import { launch } from './chrome.ts'
import { type StaticHost, staticHost } from './yard-server.ts'

const day = '2026-11-27'
const { page: says } = english.yard
let root: string
let host: StaticHost
let browser: Browser

const build = (edition: string) => {
  const ran = growdownProcess(root, 'build', 'cases', '--edition', edition, '--as-of', day)
  expect([ran.status, ran.err]).toEqual([0, ''])
}

/** What the practitioner reads in passphrases.yaml. */
const entry = (name: string) =>
  new RegExp(`^yard:\\n(?: .*\\n)*? {2}${name}: "?([^"\\n]+)"?$`, 'm').exec(
    readFileSync(join(root, 'cases', 'passphrases.yaml'), 'utf8'),
  )?.[1] ?? ''

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'growdown-visit-'))
  mkdirSync(join(root, 'cases'))
  for (const name of ['practice.md', 'curlew'])
    cpSync(resolve('cases', name), join(root, 'cases', name), { recursive: true })
  build('yard')
  ;[browser, host] = await Promise.all([launch(), staticHost(join(root, 'site', 'yard'))])
})
afterAll(async () => {
  await Promise.all([browser?.close(), host?.stop()])
  rmSync(root, { recursive: true })
})

const tap = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first().tap()

async function unlock(page: Page): Promise<void> {
  await page.fill('#words', entry('passphrase'))
  await page.click('#unlock button[type=submit]')
  await page.waitForSelector('#yard :is(.rows, h1)')
}

it('is written without a network, collected, built, and known again on the phone', async () => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    timezoneId: 'Europe/London',
  })
  const page = await context.newPage()
  const troubles: string[] = []
  page.on('pageerror', (error) => troubles.push(error.message))
  await page.clock.setFixedTime(new Date(`${day}T09:00:00`))
  await page.goto(`${host.origin}/${entry('token')}/`)
  await unlock(page)
  await page.evaluate(() => navigator.serviceWorker.ready)

  await context.setOffline(true)
  await page.getByText('Curlew').first().tap()
  await tap(page, 'Write the visit')
  await tap(page, 'After the trim')
  const pad = page.locator('.yf-pad')
  for (const [digits, then] of [
    ['81', 'Next'],
    ['52', 'Next'],
  ] as const) {
    for (const digit of digits) await pad.getByRole('button', { name: digit, exact: true }).tap()
    await tap(page, then)
  }
  await tap(page, 'Speak')
  await page
    .getByRole('textbox')
    .first()
    .fill('Right fore after the trim, toe length 83. Frog is dry and tight. See her in six weeks.')
  await expect.poll(() => page.locator('body').textContent()).toContain('83')
  // What was said and became no reading is shown as what it stays.
  await expect.poll(() => page.locator('.yf-understood').textContent()).toContain('Frog is dry and tight.')
  await tap(page, 'Pictures')
  const picture = await sharp({ create: { width: 2600, height: 1900, channels: 3, background: '#876' } })
    .jpeg()
    .toBuffer()
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'IMG_1.jpg', mimeType: 'image/jpeg', buffer: picture })
  await page.locator('img[src^="blob:"]').first().waitFor()
  await tap(page, 'Finish')
  const download = page.waitForEvent('download')
  await tap(page, 'Save as a file')
  const parcel = await (await download).path()
  await context.setOffline(false)

  const taken = growdownProcess(root, 'collect', '--casebook', 'cases', parcel)
  expect(taken.err).toBe('')
  expect(taken.out).toMatch(/^cases\/curlew\/2026-11-27\.md and 1 picture written/)
  expect(taken.status).toBe(0)
  const text = readFileSync(join(root, 'cases', 'curlew', `${day}.md`), 'utf8')
  const [, draft = ''] = /^yard: ([0-9a-f]{12})-1$/m.exec(text) ?? []
  expect(draft).not.toBe('')
  // The round begins at the foot of this horse that is read.
  expect(text).toContain('toe length: {RF: 83, LH: 81}')
  expect(text).toContain('next visit: in 6 weeks')
  expect(growdownProcess(root, 'collect', '--casebook', 'cases', parcel).out).toContain('taken over already')

  build('practice')
  const built = readFileSync(join(root, 'site', 'practice', 'curlew', `${day}.html`), 'utf8')
  expect(built).toContain('Visit of 27 November 2026')
  expect(built).toContain('Frog is dry and tight.')
  expect(built).not.toContain(draft)

  build('yard')
  await page.evaluate(() => {
    location.hash = ''
  })
  await page.reload()
  await unlock(page)
  // The newer page is fetched beside the old one, and taken by a tap.
  await tap(page, says.take)
  await page.waitForSelector('#words')
  await unlock(page)
  await page.getByRole('link', { name: says.drafts }).tap()
  await page.getByText('Arrived in the casebook').first().waitFor()
  expect(troubles).toEqual([])

  expect(growdownProcess(root, 'collect', '--casebook', 'cases', '--undo').out).toContain(
    `${day}.md taken back`,
  )
  await context.close()
})
