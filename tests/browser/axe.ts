import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'

/** Which rules are asked: by their names or tags, or all but some. */
interface Rules {
  readonly runOnly?: readonly string[]
  readonly rules?: Readonly<Record<string, { readonly enabled: boolean }>>
}

const ofColours = ['color-contrast', 'link-in-text-block']

/** For a page that was judged before, and has other colours now. */
export const coloursAlone: Rules = { runOnly: ofColours }

/** For a page that was judged before, and has another size now. */
export const allButColours: Rules = {
  rules: Object.fromEntries(ofColours.map((name) => [name, { enabled: false }])),
}

interface WithAxe {
  readonly axe: {
    run(
      within: string | Document,
      options: unknown,
    ): Promise<{
      readonly violations: readonly {
        readonly id: string
        readonly nodes: readonly { readonly html: string }[]
      }[]
    }>
  }
}

/**
 * What of a page, or of what a selector finds on it, axe objects to: rule and element; empty where there is nothing.
 * Pages have no frames, so axe need not gather results of several, and what it found in order is not described: that
 * took two thirds of the time. It is brought into a page once.
 */
export async function axe(page: Page, within?: string, rules: Rules = {}): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in window)))
    await new AxeBuilder({ page }).setLegacyMode().withRules('html-has-lang').analyze()
  return page.evaluate(
    async ([selector, options]) => {
      const { violations } = await (window as unknown as WithAxe).axe.run(selector ?? document, options)
      return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
    },
    [within, { resultTypes: ['violations'], ...rules }] as const,
  )
}
