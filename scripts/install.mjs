import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The checkout's own folder, wherever the script was started from. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)))

const readJson = (path) => JSON.parse(readFileSync(path, 'utf8'))

/** Whether every package that the lock file names for this kind of machine stands in node_modules. */
function isInstalled() {
  const kept = join(root, 'node_modules', '.package-lock.json')
  if (!existsSync(kept)) return false
  const wanted = readJson(join(root, 'package-lock.json')).packages
  const present = readJson(kept).packages
  return Object.entries(wanted).every(
    ([path, entry]) => path === '' || entry.optional || present[path]?.version === entry.version,
  )
}

/** Installs what the lock file names, if any of it is missing or another version. */
export function install() {
  if (isInstalled()) return
  console.log('Installing the packages that are missing ...')
  run('npm', ['ci', '--no-audit', '--no-fund'])
}

/**
 * Runs a program in the checkout, its output shown as it comes.
 * @returns its exit status
 */
function attempt(command, args) {
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  if (error) console.error(`${command} could not be started: ${error.message}`)
  return status ?? 1
}

/** The same, and ends this script with the same status where it fails. */
export function run(command, args) {
  const status = attempt(command, args)
  if (status !== 0) process.exit(status)
}
