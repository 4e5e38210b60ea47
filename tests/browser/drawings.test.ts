/** Drawings in a real browser: pens and words at every size, in forced colours, and that nothing is cut off. */
import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { behindView } from '../../src/render/drawings/behind.ts'
import { sideView } from '../../src/render/drawings/side.ts'
import { soleView } from '../../src/render/drawings/sole.ts'
import { wallView } from '../../src/render/drawings/wall.ts'
import { launch } from './chrome.ts'

const style = ['growdown', 'drawings']
  .map((name) => readFileSync(`templates/styles/${name}.css`, 'utf8'))
  .join('')
const now = {
  'toe-length': 85,
  'toe-angle': 50,
  'heel-angle': 47,
  'heel-medial': 44,
  'heel-lateral': 34,
  'bearing-length': 112,
  width: 124,
  'frog-length': 76,
  'frog-width': 48,
}
const sides = { medial: 'inner', lateral: 'outer' }
const name = { 'aria-label': 'a foot' }
const findings = ['toe', 'sole', 'frog', 'medial heel'].map((place, i) => ({
  what: 'bruise',
  place,
  grade: 2 as const,
  sign: String(i + 1),
}))
const features = [{ what: 'ring', place: 'toe', at: 40, ahead: [50], wallLength: null, sign: 'a' }]
const drawings = [
  sideView({ foot: 'LF', now }, name),
  behindView({ foot: 'LF', now, label: '10 mm', sides }, name),
  soleView({ foot: 'RF', now, findings, sides }, name),
  wallView({ foot: 'LF', now, features, sides }, name),
]

let browser: Browser
beforeAll(async () => {
  browser = await launch()
})
afterAll(async () => {
  await browser?.close()
})

async function at(width: number, forcedColors: 'active' | 'none' = 'none'): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 900, height: 900 }, forcedColors })
  const shown = drawings.map((one) => `<div class="drawn" style="width:${width}px">${one}</div>`).join('')
  await page.setContent(
    `<!doctype html><html lang="en"><title>drawings</title><style>${style}</style>${shown}</html>`,
  )
  return page
}

describe.each([170, 214, 215, 299, 300, 399, 400, 599, 600, 800])('at %i px', (width) => {
  it('words can be read and stand within the drawing, lines are as thick as a pen', async () => {
    const page = await at(width)
    const found = await page.locator('svg.drawing').evaluateAll((svgs) =>
      svgs.map((svg) => {
        const sheet = svg.getBoundingClientRect()
        const scale = sheet.width / 1000
        const sizeOf = (one: Element, property: 'fontSize' | 'strokeWidth') =>
          Number.parseFloat(getComputedStyle(one)[property]) * scale
        const outside = [...svg.querySelectorAll('text')].filter((text) => {
          const box = text.getBoundingClientRect()
          return (
            box.left < sheet.left - 1 ||
            box.right > sheet.right + 1 ||
            box.top < sheet.top - 1 ||
            box.bottom > sheet.bottom + 1
          )
        })
        return {
          texts: [...svg.querySelectorAll('text')].map((text) => sizeOf(text, 'fontSize')),
          outside: outside.map(({ textContent }) => textContent),
          outline: sizeOf(svg.querySelector('.outline') ?? svg, 'strokeWidth'),
          fine: [...svg.querySelectorAll('.fine')].map((one) => getComputedStyle(one).display),
        }
      }),
    )
    for (const { texts, outside, outline, fine } of found) {
      expect(outside).toEqual([])
      for (const size of texts) {
        expect(size).toBeGreaterThan(10)
        expect(size).toBeLessThan(19)
      }
      expect(outline).toBeGreaterThan(1.4)
      expect(outline).toBeLessThan(3.4)
      expect(new Set(fine)).toEqual(new Set([width < 400 ? 'none' : 'inline']))
    }
    await page.close()
  })
})

it('in forced colours lines and marks take the colours of the system', async () => {
  const page = await at(300, 'active')
  const colours = await page.evaluate(() => {
    const probe = document.body.appendChild(document.createElement('i'))
    const system = (name: string) => {
      probe.style.color = name
      return getComputedStyle(probe).color
    }
    const of = (look: string, property: 'stroke' | 'fill') => {
      const one = document.querySelector(`.drawing ${look}`)
      return one === null ? '' : getComputedStyle(one)[property]
    }
    return [
      [of('.outline', 'stroke'), system('CanvasText')],
      [of('.mark', 'stroke'), system('LinkText')],
      [of('.wall', 'fill'), system('Canvas')],
    ]
  })
  for (const [drawn, system] of colours) expect(drawn).toBe(system)
  await page.close()
})
