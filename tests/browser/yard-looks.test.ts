import { HtmlValidate } from 'html-validate'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { yardHtml } from '../editions/yard/kit.ts'
import { allButColours, axe, coloursAlone } from './axe.ts'
import { sideways } from './visitor.ts'
import { longName, phone, useYard } from './yard-kit.ts'

const { made, hosted, open, unlock } = useYard()

/** Targets that a finger would miss. */
const small = (page: Page) =>
  page.$$eval('a[href], button, summary, input, .choice label', (all) =>
    all
      .filter(
        (one) =>
          one.getClientRects().length > 0 && !(one instanceof HTMLInputElement && one.type === 'radio'),
      )
      .filter((one) => !one.closest('p, .skip') || one.matches('.ring'))
      .filter((one) => !(one instanceof HTMLInputElement && one.type === 'checkbox'))
      .map((one) => ({ text: one.textContent, height: one.getBoundingClientRect().height }))
      .filter(({ height }) => height < 44),
  )

describe('every screen of it', () => {
  const looks = [
    { name: 'on a phone', options: phone, light: null, rules: {} },
    { name: 'dark', options: { ...phone, colorScheme: 'dark' as const }, light: null, rules: coloursAlone },
    { name: 'in the sun', options: phone, light: 'sun', rules: coloursAlone },
    {
      name: 'at 320 px',
      options: { ...phone, viewport: { width: 320, height: 640 } },
      light: null,
      rules: allButColours,
    },
    {
      name: 'at 1280 px',
      options: { viewport: { width: 1280, height: 800 } },
      light: null,
      rules: allButColours,
    },
  ]

  it.each(looks)('is accessible and fits, $name', async ({ options, light, rules }) => {
    const { url } = await hosted()
    const { page, close } = await open(url, options)
    if (light !== null) {
      await page.evaluate(
        ([name, text]) => localStorage.setItem(name ?? '', text ?? ''),
        [`growdown yard /some/where/`, JSON.stringify({ light })],
      )
      await page.reload()
    }
    const look = async () => {
      expect(await axe(page, undefined, rules)).toEqual([])
      expect(await sideways(page)).toEqual([])
      expect(await small(page)).toEqual([])
    }
    await look()
    await unlock(page)
    await look()
    await page.click('a[href="#settings"]')
    await page.waitForSelector('.choice')
    await look()
    await page.goBack()
    await page.click(`.rows a:has-text("${longName}")`)
    await page.waitForSelector('.horse-part')
    await look()
    await close()
  })

  it('can be read and tapped at 400 % text', async () => {
    const { url } = await hosted()
    const { page, close } = await open(url, { viewport: { width: 390, height: 844 } })
    const session = await page.context().newCDPSession(page)
    await session.send('Page.setFontSizes', { fontSizes: { standard: 64, fixed: 52 } })
    await page.reload()
    expect(await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize))).toBe(72)
    await unlock(page)
    expect(await sideways(page)).toEqual([])
    await page.click(`.rows a:has-text("Zoë")`)
    await page.waitForSelector('.horse-part')
    expect(await sideways(page)).toEqual([])
    // The bar does not stay in the way.
    expect(await page.$eval('.bar-below', (bar) => getComputedStyle(bar).position)).toBe('static')
    await close()
  })

  it('is valid HTML', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-inline-style': 'error', 'script-type': 'off' },
    })
    const report = await validator.validateString(yardHtml(made()).replace(/(id="sealed">)[^<]*/, '$1'))
    expect(report.results.flatMap(({ messages }) => messages.map(({ message }) => message))).toEqual([])
  })
})
