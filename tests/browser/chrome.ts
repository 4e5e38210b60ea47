import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { type Browser, chromium } from 'playwright-core'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome']
const fixedPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
]

/** The system's own Chromium or Chrome, if there is one. */
function systemBrowser(): string | null {
  const onPath = (process.env.PATH ?? '')
    .split(':')
    .flatMap((folder) => names.map((name) => join(folder, name)))
  return [...onPath, ...fixedPlaces].find((path) => existsSync(path)) ?? null
}

/** Pages are opened from disk, nothing is asked of the network, and the machine may be a container without a desk. */
const args = [
  '--no-sandbox',
  '--allow-file-access-from-files',
  '--disable-background-networking',
  '--disable-dev-shm-usage',
  '--disable-gpu',
]

/** The system's Chromium or Chrome, else the one that `@sparticuz/chromium` carries. */
async function executable(): Promise<string> {
  const system = systemBrowser()
  if (system !== null) return system
  const { default: carried } = await import('@sparticuz/chromium')
  return carried.executablePath()
}

export async function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: await executable(), args })
}

/** A browser with a profile on the disk, as a person has it. */
export interface OwnBrowser {
  readonly browser: Browser
  /** Ends it as a dead battery does. */
  kill(): Promise<void>
}

export async function launchWithProfile(folder: string): Promise<OwnBrowser> {
  const port = join(folder, 'DevToolsActivePort')
  rmSync(port, { force: true })
  const child = spawn(
    await executable(),
    [...args, '--headless', '--remote-debugging-port=0', `--user-data-dir=${folder}`, 'about:blank'],
    { stdio: 'ignore' },
  )
  while (!existsSync(port) || readFileSync(port, 'utf8').split('\n').length < 2) await setTimeout(50)
  const [number] = readFileSync(port, 'utf8').split('\n')
  return {
    browser: await chromium.connectOverCDP(`http://127.0.0.1:${number}`),
    kill: async () => {
      const ended = once(child, 'exit')
      child.kill('SIGKILL')
      await ended
      // Its helper processes notice a little later, and write until then.
      await setTimeout(500)
    },
  }
}
