/** Whether marks and lines of drawings are seen on the grounds on which they lie, in light, dark and print. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const style = ['growdown', 'drawings']
  .map((name) => readFileSync(`templates/styles/${name}.css`, 'utf8'))
  .join('\n')

/** The colours of a mode: those of the light one, with what the mode says over them. */
function coloursOf(mode: string | null): ReadonlyMap<string, string> {
  const colours = new Map<string, string>()
  const roots = [...style.matchAll(/(?:@media ([^{]+) \{\s*)?:root \{([^}]*)\}/g)]
  for (const wanted of mode === null ? [undefined] : [undefined, mode])
    for (const [, media, body = ''] of roots)
      if (media === wanted)
        for (const [, name = '', value = ''] of body.matchAll(/--([\w-]+): (#[\da-f]{3,6});/g))
          colours.set(name, value)
  return colours
}

/** WCAG 2.2, relative luminance of sRGB. */
function luminance(hex: string): number {
  const full = hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit).join('') : hex.slice(1)
  const [r = 0, g = 0, b = 0] = [0, 2, 4].map((at) => {
    const value = Number.parseInt(full.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (high + 0.05) / (low + 0.05)
}

const grounds = ['paper', 'skin', 'bulb', 'horn', 'horn-side', 'sole', 'hollow', 'frog', 'groove', 'opened']

describe.each([
  ['light', null],
  ['dark', '(prefers-color-scheme: dark)'],
  ['print', 'print'],
])('in %s', (_, mode) => {
  const colours = coloursOf(mode)
  const of = (name: string) => {
    const colour = colours.get(name)
    if (colour === undefined) throw new Error(`no colour ${name}`)
    return colour
  }

  it.each(grounds)('marks and lines stand out from %s by 3 to 1', (ground) => {
    expect(contrast(of('mark'), of(ground))).toBeGreaterThanOrEqual(3)
    expect(contrast(of('drawn'), of(ground))).toBeGreaterThanOrEqual(3)
  })

  it('figures and words stand out from the page by 4.5 to 1', () => {
    expect(contrast(of('ink'), of('paper'))).toBeGreaterThanOrEqual(4.5)
    expect(contrast(of('ink-soft'), of('paper'))).toBeGreaterThanOrEqual(4.5)
  })

  it('a deep sulcus stands out from the frog', () => {
    expect(contrast(of('deep'), of('frog'))).toBeGreaterThanOrEqual(
      mode === '(prefers-color-scheme: dark)' ? 1.5 : 3,
    )
  })
})
