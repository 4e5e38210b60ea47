/** The form of the yard page in a real browser, as a thumb uses it. */
import { rmSync } from 'node:fs'
import type { Browser, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { feet } from '../../src/hoof/feet.ts'
import { sideways } from './visitor.ts'
import { eightMeasures, heronCasebook, readingNow } from './yard-form/heron.ts'
import {
  caseFile,
  type Forms,
  kept,
  write as open,
  openForms,
  saved,
  tap,
  typeOn,
  value,
  violationsOf,
} from './yard-form/kit.ts'
import { type FormPage, serveForm } from './yard-form/page.ts'

let forms: Forms
let browser: Browser
let form: FormPage
let heron: FormPage
beforeAll(async () => {
  forms = await openForms()
  ;({ browser, form, heron } = forms)
})
afterAll(() => forms?.close())

const write = (served: FormPage, query = '', options: BrowserContextOptions = {}) =>
  open(browser, served, query, options)

const measureNames = Object.keys(eightMeasures) as readonly (keyof typeof eightMeasures)[]

describe('a visit written at the hoof', () => {
  it('takes four feet with eight measures each, a tap a digit and one to go on', async () => {
    const { page, troubles, close } = await write(heron, 'horse=heron')
    let taps = 0
    let digits = 0
    for (const [i, foot] of feet.entries()) {
      for (const measure of measureNames) {
        expect(await page.locator('.yf-value h2').textContent()).toContain(
          measure.replace(/^./, (letter) => letter.toUpperCase()),
        )
        const text = String(readingNow(measure, i))
        taps += await typeOn(page, text)
        digits += text.length
        await tap(page, 'Next')
        taps++
      }
      if (foot === 'LF') {
        await tap(page, '1 mild')
        await tap(page, 'Next')
        taps += 2
      }
    }
    await tap(page, 'Finish')
    await page.getByLabel('Pick the feet out every day').tap()
    await tap(page, '5 weeks')
    taps += 3
    await page.getByLabel('A line for the owner to do').pressSequentially('Hay net ')
    await kept(page)
    expect(await page.locator('.yf-feet button').first().getAttribute('aria-label')).toBe(
      'left fore: 9 of 9 done',
    )
    const text = caseFile(await saved(page))
    for (const measure of measureNames)
      expect(text).toContain(`${measure}: [${feet.map((_, i) => readingNow(measure, i)).join(', ')}]`)
    expect(text).toContain('- thrush, central sulcus, 1')
    expect(text).toMatch(/Pick the feet out every day"?\n {2}- "?Hay net"?\n/)
    expect(text).toContain('next visit: in 5 weeks')
    expect(taps).toBe(digits + 32 + 2 + 3)
    expect(troubles).toEqual([])
    await close()
  })

  it('shows the last value, the difference, and what is odd, where it is written', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    const said = page.locator('.yf-measure .yf-said')
    expect(await page.locator('.yf-value .yf-was').textContent()).toContain('88 mm on 30 Oct')
    await typeOn(page, '89')
    expect(await page.locator('.yf-difference').textContent()).toBe('+1 mm')
    expect(await said.textContent()).toBe('')
    // The first key after coming back replaces what stood; the eraser mends it.
    await tap(page, 'Next')
    await tap(page, 'Back')
    await typeOn(page, '980')
    await expect.poll(() => said.textContent()).toContain('980')
    await tap(page, 'Erase')
    expect(await value(page).inputValue()).toBe('98')
    await tap(page, 'After the trim')
    await tap(page, 'toe length')
    await typeOn(page, '120')
    await expect.poll(() => said.textContent()).toMatch(/trim/)
    await close()
  })

  it('takes eighths where the practice measures in inches, and half degrees', async () => {
    const inches = heronCasebook('in')
    const served = await serveForm(inches)
    const { page, close } = await write(served, 'horse=heron')
    await typeOn(page, '3')
    await page.getByRole('button', { name: '5/8', exact: true }).tap()
    expect(await value(page).inputValue()).toBe('3 5/8')
    await page.getByRole('button', { name: '1/4', exact: true }).tap()
    expect(await value(page).inputValue()).toBe('3 1/4')
    await tap(page, 'Next')
    await typeOn(page, '44')
    await tap(page, '.5')
    await tap(page, 'Next')
    const text = caseFile(await saved(page))
    expect(text).toContain('toe length: {LF: 3 1/4}')
    expect(text).toContain('toe angle: {LF: 44.5}')
    await close()
    served.close()
    rmSync(inches, { recursive: true })
  })

  it('answers a danger sign at once with the number, and goes on writing', async () => {
    const { page, close } = await write(heron, 'horse=heron')
    await tap(page, 'Going')
    await page.getByRole('button', { name: /^3: bounding/ }).tap()
    const alert = page.locator('.yf-danger.is-stop')
    await alert.waitFor()
    expect(await alert.textContent()).toContain('Stop: ring the vet')
    expect(await alert.locator('a').getAttribute('href')).toBe('tel:01632960002')
    expect(await alert.textContent()).toContain('Una Brandt, 01632 960002')
    await tap(page, 'Measure')
    await typeOn(page, '89')
    expect(await value(page).inputValue()).toBe('89')
    await tap(page, 'I have read this')
    expect(await page.locator('.yf-danger.is-read').textContent()).toContain('Stop: ring the vet')
    await tap(page, 'Going')
    await page.getByRole('button', { name: /^0: none/ }).tap()
    await page.locator('.yf-danger').waitFor({ state: 'detached' })
    await close()
  })

  it('takes a new finding in three taps, and follows a feature from where it should be today', async () => {
    const { page, close } = await write(form, 'horse=marram')
    await tap(page, 'Findings')
    await tap(page, 'drainage')
    await tap(page, 'sole')
    await page.locator('.yf-new').getByRole('button', { name: '2 moderate' }).tap()
    await page.locator('.yf-danger.is-stop', { hasText: 'left fore' }).waitFor()
    await tap(page, 'I have read this')
    await page.getByText('Follow something down the wall').tap()
    await page.getByRole('group', { name: 'What', exact: true }).getByRole('button', { name: 'crack' }).tap()
    await tap(page, 'toe')
    await page.locator('.yf-value h2', { hasText: 'Crack, toe' }).waitFor()
    await typeOn(page, '12')
    await page.getByRole('button', { name: /^right fore/ }).tap()
    await page.locator('.yf-rows button', { hasText: 'Dish, toe' }).tap()
    const was = await page.locator('.yf-value .yf-was').textContent()
    expect(was).toMatch(/^about [\d.]+ mm today; 61 mm on 17 Oct/)
    expect(Number(/about ([\d.]+)/.exec(was ?? '')?.[1])).toBeGreaterThan(65)
    const text = caseFile(await saved(page))
    expect(text).toContain('drainage, sole, 2')
    expect(text).toContain('crack, toe, 12')
    await close()
  })

  it('hears a dictated visit, and lets what is typed win', async () => {
    const { page, troubles, close } = await write(heron, 'horse=heron')
    await typeOn(page, '99')
    await tap(page, 'Speak')
    const names = ['Left fore', 'Right fore', 'Left hind', 'Right hind']
    const dictated = `On arrival. ${names
      .map((name, i) => `${name}. ${measureNames.map((one) => `${one} ${readingNow(one, i)}`).join(', ')}.`)
      .join(' ')} Left fore thrush mild in the central sulcus. See her in five weeks.`
    await page.getByLabel('What you say').fill(dictated)
    await page.locator('.yf-understood dt').nth(3).waitFor()
    expect(await page.locator('.yf-understood').textContent()).toContain('Toe angle 49°')
    // Words that are still coming are kept too, and the last ones when the part is left.
    await page.getByLabel('What you say').pressSequentially(' Left fore digital pulse two.', { delay: 20 })
    await tap(page, 'Going')
    const pulse = page.getByRole('group', { name: 'Digital pulse, left fore' })
    await expect
      .poll(() => pulse.getByRole('button', { name: /^2/ }).getAttribute('aria-pressed'))
      .toBe('true')
    const text = caseFile(await saved(page))
    expect(text).toContain('toe length: [99, 90, 91, 92]')
    for (const measure of measureNames.slice(1))
      expect(text).toContain(`${measure}: [${feet.map((_, i) => readingNow(measure, i)).join(', ')}]`)
    expect(text).toContain('next visit: in 5 weeks')
    expect(troubles).toEqual([])
    await close()
  })
})

describe('the form fits', () => {
  it('a narrow phone and text of four times the size, with nothing sideways', async () => {
    for (const [viewport, css] of [
      [{ width: 320, height: 568 }, ''],
      [{ width: 390, height: 844 }, 'html { font-size: 450% !important }'],
    ] as const) {
      const { page, close } = await write(form, 'horse=whimbrel', { viewport })
      await page.addStyleTag({ content: css || ':root {}' })
      for (const part of ['Measure', 'Findings', 'Going', 'Pictures', 'Finish', 'Speak']) {
        await tap(page, part)
        expect(await sideways(page), part).toEqual([])
      }
      await close()
    }
  })

  it('the left hand: the key to go on lies under its thumb', async () => {
    const sides: number[] = []
    for (const hand of ['left', 'right']) {
      const { page, close } = await write(heron, `horse=heron&hand=${hand}`)
      const box = await page.locator('.yf-side .yf-next').boundingBox()
      sides.push((box?.x ?? 0) + (box?.width ?? 0) / 2)
      await close()
    }
    expect(sides[0]).toBeLessThan(100)
    expect(sides[1]).toBeGreaterThan(290)
  })

  it('gloves: every key of it is 56 px high, and 44 px wide at the least', async () => {
    const { page, close } = await write(form, 'horse=whimbrel')
    for (const part of ['Measure', 'Findings', 'Going', 'Pictures', 'Finish']) {
      await tap(page, part)
      const small = await page.locator('.yf button:visible').evaluateAll((keys) =>
        keys.flatMap((one) => {
          const { width, height } = one.getBoundingClientRect()
          return height >= 56 && width >= 44 ? [] : [`${one.textContent} ${width} x ${height}`]
        }),
      )
      expect(small, part).toEqual([])
    }
    await close()
  })

  it('every reader: no violation in light and dark', async () => {
    // High enough that nothing lies under the keys that stay.
    const { page, close } = await write(form, 'horse=whimbrel', { viewport: { width: 390, height: 3000 } })
    await tap(page, 'Going')
    await page.getByRole('button', { name: /^3: bounding/ }).tap()
    await page.locator('.yf-danger').first().waitFor()
    expect(await violationsOf(page)).toEqual([])
    await tap(page, 'I have read this')
    for (const part of ['Measure', 'Findings', 'Pictures', 'Finish', 'Speak']) {
      await tap(page, part)
      await page.emulateMedia({ colorScheme: 'light' })
      expect(await violationsOf(page), part).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await violationsOf(page, true), part).toEqual([])
    }
    await close()
  })
})
