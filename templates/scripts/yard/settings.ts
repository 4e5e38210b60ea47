/** What the person who holds the phone chose, kept on the phone in the clear. */
import type { YardSettings, YardWindow } from './opened.ts'

/** Several practices may stand on one host, each in a folder of its own. */
const name = `growdown yard ${location.pathname.replace(/[^/]*$/, '')}`

const usual: YardSettings = { hand: 'right', by: null, light: 'phone' }

export function keptSettings(): YardSettings {
  try {
    return { ...usual, ...JSON.parse(localStorage.getItem(name) ?? '{}') }
  } catch {
    return usual
  }
}

export function keepSettings(settings: YardSettings): void {
  try {
    localStorage.setItem(name, JSON.stringify(settings))
  } catch {
    // Then they hold until the page is closed.
  }
}

/** The phone's choice of light or dark is a rule of the style sheet; another choice takes it in or out. */
export function showLight(light: YardSettings['light']): void {
  document.documentElement.dataset.light = light
  const page: YardWindow = window
  page.darkRules ??= new Set()
  const { darkRules } = page
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (!(rule instanceof CSSMediaRule)) continue
      const isDark = darkRules.has(rule) || rule.media.mediaText === forDark
      if (!isDark) continue
      darkRules.add(rule)
      rule.media.mediaText = light === 'phone' ? forDark : light === 'dark' ? 'screen' : 'not all'
    }
  }
}

const forDark = '(prefers-color-scheme: dark)'
