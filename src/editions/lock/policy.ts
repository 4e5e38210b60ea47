/** The Content Security Policy of a page that carries its own style and scripts. */
import { createHash } from 'node:crypto'

const source = (text: string) => `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`

/**
 * A page may use its own style and scripts, and pictures that it carries; nothing else, from nowhere.
 * @param more further directives
 */
export const policyOf = (style: string, scripts: readonly string[], more: readonly string[] = []): string =>
  [
    "default-src 'none'",
    ...(more.some((one) => one.startsWith('img-src ')) ? [] : ['img-src data:']),
    `style-src ${source(style)}`,
    ...(scripts.length === 0 ? [] : [`script-src ${scripts.map(source).join(' ')}`]),
    ...more,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')
