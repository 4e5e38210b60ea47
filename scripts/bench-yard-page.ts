/**
 * What the yard page costs: how heavy it is, how soon its passphrase field can be typed in, how soon after the key is
 * found the day's list is there, and a horse with forty visits after a tap; in real Chromium with the processor slowed six
 * times, for the demo and for a large practice. `BUILDS=1` times builds of it as well, beside those of the practice's own
 * pages.
 *
 *   npx esbuild scripts/bench-yard-page.ts --bundle --platform=node --format=esm --packages=external --outfile=dist/bench-yard-page.mjs && node dist/bench-yard-page.mjs [horses ...]
 *
 * default: 1000
 */
import { spawnSync } from 'node:child_process'
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { parse } from 'yaml'
import { launch } from '../tests/browser/chrome.ts'
import { staticHost } from '../tests/browser/yard-server.ts'
import { fortyVisits } from '../tests/editions/forty-visits.ts'
import { writePractice } from './bench-casebook.mjs'

const asOf = '2026-11-25'
const slowed = 6
const turns = 3

const root = mkdtempSync(join(tmpdir(), 'growdown-bench-'))

async function bench(): Promise<void> {
  const code = ['yard-gate.js', 'yard.js', 'yard-worker.js'].map((name) =>
    readFileSync(join('dist', 'browser', name)),
  )
  console.log(`code, gzipped: ${code.map((bytes) => kB(gzipSync(bytes, { level: 9 }).length)).join(', ')}`)
  const asked = process.argv.slice(2).map(Number)
  const demo = join(root, 'demo')
  cpSync('cases', demo, { recursive: true })
  await page('the demo', demo)
  for (const horses of asked.length > 0 ? asked : [1000]) {
    const cases = join(root, `cases-${horses}`)
    writePractice(cases, horses)
    for (const [path, text] of Object.entries(fortyVisits('forty', 'nobody', 'Alias'))) {
      const file = join(cases, path)
      mkdirSync(dirname(file), { recursive: true })
      writeFileSync(file, text.replace(/^owner: .*\n/m, ''))
    }
    if (process.env.BUILDS === '1') builds(horses, cases)
    await page(`${horses} horses and one of forty visits`, cases)
  }
}

const kB = (bytes: number) => `${(bytes / 1000).toFixed(0)} kB`
const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
const ms = (values: readonly number[]) =>
  `${median(values).toFixed(0)} ms (${Math.min(...values).toFixed(0)} to ${Math.max(...values).toFixed(0)})`

/** One build in a process of its own: wall and processor time, seconds. */
function timed(
  cases: string,
  site: string,
  edition: string,
): { readonly wall: number; readonly cpu: number } {
  const report = `process.on('exit', () => {
    const { userCPUTime, systemCPUTime } = process.resourceUsage()
    console.error('cpu ' + (userCPUTime + systemCPUTime) / 1e6)
  })`
  const began = performance.now()
  const preload = `data:text/javascript,${encodeURIComponent(report)}`
  const args = ['dist/cli.js', 'build', cases, '--out', site, '--edition', edition, '--as-of', asOf]
  const { stderr } = spawnSync(process.execPath, ['--import', preload, ...args], { encoding: 'utf8' })
  return {
    wall: (performance.now() - began) / 1000,
    cpu: Number(/cpu (\S+)/.exec(stderr)?.[1] ?? Number.NaN),
  }
}

function builds(horses: number, cases: string): void {
  console.log(`builds of ${horses} horses; wall, processor; the lists in the order of the builds`)
  for (const edition of ['practice', 'yard']) {
    const site = join(root, `site-${horses}-${edition}`)
    const said = (times: readonly { readonly wall: number; readonly cpu: number }[]) =>
      times.map(({ wall, cpu }) => `${wall.toFixed(2)} s, ${cpu.toFixed(2)} s`).join('; ')
    const cold = timed(cases, site, edition)
    const again = timed(cases, site, edition)
    const one = Array.from({ length: turns }, (_, turn) => {
      appendFileSync(join(cases, 'horse-0007', '2026-05-30.md'), `\nOne more line, ${edition} ${turn}.\n`)
      return timed(cases, site, edition)
    })
    console.log(
      `${edition}: cold ${said([cold])}; nothing changed ${said([again])}; one visit changed ${said(one)}`,
    )
  }
}

async function page(name: string, cases: string): Promise<void> {
  const site = join(root, `page-${name.replace(/\W/g, '-')}`)
  timed(cases, site, 'yard')
  const { yard } = parse(readFileSync(join(cases, 'passphrases.yaml'), 'utf8'))
  const folder = join(site, 'yard')
  const html = readFileSync(join(folder, yard.token, 'index.html'))
  const host = await staticHost(folder)
  const browser = await launch()
  const took: Record<'field' | 'list' | 'horse', number[]> = { field: [], list: [], horse: [] }
  try {
    for (let turn = 0; turn < turns; turn++) {
      const context = await browser.newContext({
        viewport: { width: 390, height: 844 },
        serviceWorkers: 'block',
      })
      const tab = await context.newPage()
      const session = await context.newCDPSession(tab)
      await session.send('Emulation.setCPUThrottlingRate', { rate: slowed })
      await tab.goto(`${host.origin}/${yard.token}/`, { waitUntil: 'commit' })
      // The form listens once the field has the focus.
      await tab.waitForFunction(() => document.activeElement?.id === 'words', null, { polling: 5 })
      took.field.push(await tab.evaluate(() => performance.now()))
      await tab.waitForLoadState('load')
      await tab.fill('#words', yard.passphrase)
      await tab.click('#unlock button')
      await tab.waitForSelector('#yard h1', { timeout: 120_000 })
      took.list.push(
        await tab.evaluate(
          () =>
            new Promise<number>((done) =>
              requestAnimationFrame(() =>
                done(performance.now() - (performance.getEntriesByName('key')[0]?.startTime ?? 0)),
              ),
            ),
        ),
      )
      const busiest = readdirSync(cases).includes('forty') ? 'forty' : 'curlew'
      took.horse.push(
        await tab.evaluate(
          (id) =>
            new Promise<number>((done) => {
              const began = performance.now()
              const look = () =>
                document.querySelector('.horse-part')
                  ? done(performance.now() - began)
                  : requestAnimationFrame(look)
              location.hash = `#horse/${id}`
              look()
            }),
          busiest,
        ),
      )
      await context.close()
    }
  } finally {
    await browser.close()
    await host.stop()
  }
  console.log(
    `${name}: page ${kB(html.length)}; passphrase field ${ms(took.field)}, list after the key ${ms(took.list)}, a horse after a tap ${ms(took.horse)}; processor slowed ${slowed} times, ${turns} turns`,
  )
}

try {
  await bench()
} finally {
  rmSync(root, { recursive: true })
}
