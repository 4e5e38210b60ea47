import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'

/**
 * What of a page, or of what a selector finds on it, axe objects to: rule and element; empty where there is nothing.
 * Pages have no frames, so axe need not gather results of several, and what it found in order is not described: that
 * took two thirds of the time.
 */
export async function axe(page: Page, within?: string): Promise<readonly string[]> {
  const builder = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] })
  const { violations } = await (within === undefined ? builder : builder.include(within)).analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
}
