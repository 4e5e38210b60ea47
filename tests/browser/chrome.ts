import { existsSync } from 'node:fs'
import { join } from 'node:path'
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

/** Starts the system's Chromium or Chrome, else the one that `@sparticuz/chromium` carries. */
export async function launch(): Promise<Browser> {
  const system = systemBrowser()
  if (system !== null) return chromium.launch({ executablePath: system, args })
  const { default: carried } = await import('@sparticuz/chromium')
  return chromium.launch({ executablePath: await carried.executablePath(), args })
}
