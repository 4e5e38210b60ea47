/** The library where there is no Node: in a page of its own, whose policy lets nothing be evaluated. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { packageRoot } from '../../src/build/program.ts'
import * as library from '../../src/library.ts'
import { asOf, casebookFiles, wholeExport } from '../library-kit.ts'
import { launch } from './chrome.ts'

const address = 'http://library.test/'
const policy = "default-src 'none'; script-src 'self'"

const program = `import { assess, exportOf, read } from './library.js'
const day = ${JSON.stringify(asOf)}
const { casebook } = read(${JSON.stringify(casebookFiles)}, day)
const assessments = casebook.horses.map((horse) => assess(horse, casebook.practice, day))
document.body.append(JSON.stringify(exportOf(assessments, day)))
document.body.id = ['Buffer', 'process', 'require'].filter((name) => name in globalThis).join() || 'no-node'
`

const served: Readonly<Record<string, readonly [type: string, text: string]>> = {
  '': [
    'text/html',
    '<!doctype html><title>Library</title><body><script type="module" src="program.js"></script>',
  ],
  'program.js': ['text/javascript', program],
  'library.js': ['text/javascript', readFileSync(join(packageRoot(), 'dist', 'library-browser.js'), 'utf8')],
}

let browser: Browser
beforeAll(async () => {
  browser = await launch()
})
afterAll(() => browser?.close())

describe('the library in a browser', () => {
  it('reads, assesses and exports a casebook as on Node, to the letter', async () => {
    const page = await browser.newPage()
    await page.route(`${address}**`, (route) => {
      const [contentType, body] = served[route.request().url().slice(address.length)] ?? ['text/plain', '']
      return route.fulfill({ body, contentType, headers: { 'content-security-policy': policy } })
    })
    const problems: string[] = []
    page.on('pageerror', ({ message }) => problems.push(message))
    page.on('console', (message) => problems.push(message.text()))
    await page.goto(address)
    expect(problems).toEqual([])
    expect(await page.locator('body#no-node').textContent()).toBe(wholeExport(library))
  })
})
