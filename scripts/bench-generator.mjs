/**
 * A plain general-purpose generator for the benchmark: Eleventy makes a page of each file's body. It is no dependency
 * of the project; the first run installs it into a cache folder.
 */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { root } from './install.mjs'

const version = '3.1.8'
const folder = join(root, 'node_modules', '.cache', 'bench-generator', version)
const program = join(folder, 'node_modules', '@11ty', 'eleventy', 'cmd.cjs')

export function installGenerator() {
  if (existsSync(program)) return
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'package.json'), '{"private": true}\n')
  execFileSync('npm', ['install', '--no-audit', '--no-fund', `@11ty/eleventy@${version}`], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'inherit'],
  })
}

/** Writes what the generator needs beside a casebook; gives the arguments that build it, and where to run them. */
export function prepareGenerator(beside, casebook) {
  const name = basename(casebook)
  const config = `${name}.config.cjs`
  mkdirSync(join(beside, 'layouts'), { recursive: true })
  writeFileSync(
    join(beside, 'layouts', 'page.html'),
    '<!doctype html>\n<html lang="en"><meta charset="utf-8"><title>{{ page.fileSlug }}</title>{{ content }}</html>\n',
  )
  writeFileSync(
    join(beside, config),
    `module.exports = (eleventy) => {
  eleventy.addGlobalData('layout', 'page.html')
  return { markdownTemplateEngine: false, dir: { input: '${name}', includes: '../layouts', output: 'plain-${name}' } }
}
`,
  )
  return { cwd: beside, args: [program, `--config=${config}`, '--quiet'] }
}
