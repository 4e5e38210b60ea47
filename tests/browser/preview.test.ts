import { type ChildProcess, spawn } from 'node:child_process'
import { appendFileSync, cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { launch } from './chrome.ts'

let folder: string
let browser: Browser
let preview: ChildProcess
let address: string

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  cpSync('tests/casebooks/good-plain', join(folder, 'cases'), { recursive: true })
  preview = spawn(process.execPath, [resolve('dist/cli.js'), 'preview', '--port', '0'], { cwd: folder })
  address = await new Promise((found, failed) => {
    let said = ''
    preview.stdout?.on('data', (part) => {
      said += part
      const match = /Open (\S+)\n/.exec(said)
      if (match?.[1]) found(match[1])
    })
    preview.once('exit', (status) => failed(new Error(`preview ended with ${status}: ${said}`)))
  })
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
  const ended = new Promise((resolve) => preview?.once('close', resolve))
  preview?.kill('SIGINT')
  await ended
  rmSync(folder, { recursive: true, force: true })
})

describe('growdown preview', () => {
  const visit = () => join(folder, 'cases/juno/2026-02-16.md')

  it('shows a saved file at the same place of the page', async () => {
    const page = await browser.newPage({ viewport: { width: 390, height: 600 } })
    await page.goto(`${address}juno/2026-02-16.html`)
    await page.evaluate(() => window.scrollTo(0, 400))
    appendFileSync(visit(), '\n\nThe frog is shedding on its own.\n')
    await page.getByText('The frog is shedding on its own.').waitFor({ timeout: 15_000 })
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(400)
    await page.close()
  })

  it('shows a problem over the last good page, and takes it away once it is mended', async () => {
    const page = await browser.newPage()
    await page.goto(`${address}juno/2026-02-16.html`)
    const good = readFileSync(visit(), 'utf8')
    writeFileSync(visit(), good.replace('toe angle:', 'toe angel:'))
    const shown = page.locator('#preview-problems')
    await shown.getByText('"toe angel" is not a measure').waitFor({ timeout: 15_000 })
    expect(await shown.textContent()).toContain('juno/2026-02-16.md:')
    expect(await page.locator('h1').count()).toBe(1)
    writeFileSync(`${visit()}.tmp`, good)
    renameSync(`${visit()}.tmp`, visit())
    await shown.waitFor({ state: 'detached', timeout: 15_000 })
    await page.close()
  })

  it('lives through a file that vanishes and comes back half saved', async () => {
    const page = await browser.newPage()
    await page.goto(address)
    const good = readFileSync(visit(), 'utf8')
    rmSync(visit())
    await expect
      .poll(async () => (await fetch(`${address}juno/2026-02-16.html`)).status, { timeout: 15_000 })
      .toBe(404)
    writeFileSync(visit(), good.slice(0, 120))
    await page.locator('#preview-problems').waitFor({ timeout: 15_000 })
    writeFileSync(visit(), good)
    await expect
      .poll(async () => (await fetch(`${address}juno/2026-02-16.html`)).status, { timeout: 15_000 })
      .toBe(200)
    await page.close()
  })

  it('leads from a picture to the page on which it is marked', async () => {
    const page = await browser.newPage()
    await page.goto(`${address}juno/2026-01-12.html`)
    await page.getByRole('link', { name: 'Mark its points' }).first().click()
    await page.getByRole('heading', { name: /Marking/ }).waitFor({ timeout: 15_000 })
    expect(new URL(page.url()).hostname).toBe('127.0.0.1')
    await page.close()
  })
})
