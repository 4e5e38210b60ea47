/** The demo casebook, built once for all browser tests as a person would build it. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

/** Today, as the demo's pages are to see it. */
export const asOf = '2026-11-25'

export interface BuiltSite {
  readonly folder: string
  /** Address of a page within the site, from disk. */
  url(path: string): string
  /** Every HTML page of an edition, paths within the site. */
  pages(edition: string): readonly string[]
  text(path: string): string
}

export function buildDemo(
  edition: 'practice' | 'owner' | 'portfolio' | 'all',
  casebook = 'cases',
  env: NodeJS.ProcessEnv = {},
): BuiltSite {
  const folder = join(mkdtempSync(join(tmpdir(), 'growdown-')), 'site')
  const args = ['dist/cli.js', 'build', casebook, '--out', folder, '--edition', edition, '--as-of', asOf]
  execFileSync(process.execPath, args, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, ...env },
  })
  return {
    folder,
    url: (path) => pathToFileURL(join(folder, path)).href,
    pages: (name) =>
      readdirSync(join(folder, name), { recursive: true, encoding: 'utf8' })
        .filter((path) => path.endsWith('.html'))
        .map((path) => `${name}/${path}`)
        .sort(),
    text: (path) => readFileSync(join(folder, path), 'utf8'),
  }
}

/** One page of each kind, and every horse's own page: the kinds look alike, the horses do not. */
export function kindsOf(site: BuiltSite): readonly string[] {
  const pages = site.pages('practice')
  const first = (pattern: RegExp) => pages.filter((path) => pattern.test(path)).slice(0, 1)
  return [
    'practice/index.html',
    'practice/office.html',
    'practice/reference.html',
    ...pages.filter((path) => /^practice\/[^/]+\/index\.html$/.test(path)),
    ...first(/\/\d{4}-\d{2}-\d{2}\.html$/),
    ...first(/\/measures\.html$/),
    ...first(/\/hand-over\.html$/),
    ...first(/\/field-sheet\.html$/),
  ]
}
