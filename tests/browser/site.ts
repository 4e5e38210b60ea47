/** The demo casebook, built once for all browser tests as a person would build it. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, renameSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { inject } from 'vitest'

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

type EditionName = 'practice' | 'owner' | 'portfolio' | 'all'

/** The demo, which several test files look at and none changes, is built by the first; all else each time. */
export function buildDemo(edition: EditionName, casebook = 'cases', env: NodeJS.ProcessEnv = {}): BuiltSite {
  if (casebook !== 'cases' || Object.keys(env).length > 0) return builtSite(build(edition, casebook, env))
  const folder = join(inject('builds'), edition)
  if (!existsSync(folder)) {
    const made = build(edition, casebook, env)
    // Two files may build at the same time; the first to be done is kept.
    if (!existsSync(folder)) renameSync(made, folder)
  }
  return builtSite(folder)
}

function build(edition: EditionName, casebook: string, env: NodeJS.ProcessEnv): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'growdown-')), 'site')
  const args = ['dist/cli.js', 'build', casebook, '--out', folder, '--edition', edition, '--as-of', asOf]
  execFileSync(process.execPath, args, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, ...env },
  })
  return folder
}

function builtSite(folder: string): BuiltSite {
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
