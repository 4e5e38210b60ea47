/** What the program carries with it: templates, styles, browser scripts. Found beside the program, not where it is run. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Templates } from '../render/renderer.ts'
import { cacheKey } from './cache-key.ts'

/** The package's own folder: the nearest one above this file that holds package.json. */
export function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder)
    if (above === folder) throw new Error('the package of this program has no package.json')
    folder = above
  }
  return folder
}

/** The version as package.json has it. */
export function packageVersion(root: string): string {
  const written: unknown = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
  const known = typeof written === 'object' && written !== null && 'version' in written
  return known ? String(written.version) : 'unknown'
}

/** Files below a folder with this ending, by path with forward slashes and without the ending. */
function textsBelow(folder: string, ending: string): ReadonlyMap<string, string> {
  const paths = existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : []
  return new Map(
    paths
      .map((path) => path.replaceAll('\\', '/'))
      .filter((path) => path.endsWith(ending))
      .sort()
      .map((path) => [path.slice(0, -ending.length), readFileSync(join(folder, path), 'utf8')]),
  )
}

/** Texts of every Handlebars page and partial. */
export const templateSources = (root: string) => textsBelow(join(root, 'templates'), '.hbs')

/** The same as the bundle has them, ready to be rendered. */
export const templates = (root: string): Templates =>
  createRequire(import.meta.url)(join(root, 'dist', 'templates.cjs'))

/** Every style sheet, by name. */
export const styleSheets = (root: string) => textsBelow(join(root, 'templates', 'styles'), '.css')

/** The sheets that every page begins with, in the order in which they build on one another. */
export const commonStyles: readonly string[] = [
  'growdown',
  'parts',
  'problems',
  'tables',
  'figures',
  'lists',
  'sheets',
  'drawings',
]

/** Every bundled browser script, by name. */
export const browserScripts = (root: string) => textsBelow(join(root, 'dist', 'browser'), '.js')

/** The place on this disk of a file that is made with the bundle, to stand beside pages as it is. */
export const browserFile = (name: string): string => join(packageRoot(), 'dist', 'browser', name)

/**
 * Names this very program: its version and the content of all that decides what pages look like.
 * The entry files name their parts by content, so they stand for the whole bundle.
 */
export function programKey(root: string): string {
  const entries = ['cli.js', 'worker.js', 'templates.cjs'].map((name) => join(root, 'dist', name))
  return cacheKey(
    packageVersion(root),
    ...entries.map((path) => (existsSync(path) ? readFileSync(path, 'utf8') : '')),
    ...[styleSheets(root), browserScripts(root)].flatMap((texts) => [...texts].flat()),
  )
}
