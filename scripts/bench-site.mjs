/**
 * How long a whole practice takes to build, beside two measures taken in the same run:
 *
 * - the floor: every file read, its block parsed with `yaml`, its body turned into HTML with unified and remark-gfm, on
 *   one thread and nothing else;
 * - a plain general-purpose generator (`bench-generator.mjs`): a page a file, no charts.
 *
 * The three take turns, so that what else the machine does weighs on all alike; medians are shown. Processor time is
 * the second witness. `LONG=1` has each take more turns.
 *
 *   node scripts/bench-site.mjs [horses ...]     default: 100 1000
 */
import { execFileSync, spawn } from 'node:child_process'
import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { availableParallelism, cpus, tmpdir } from 'node:os'
import { join } from 'node:path'
import { build as esbuild } from 'esbuild'
import { writePractice } from './bench-casebook.mjs'
import { installGenerator, prepareGenerator } from './bench-generator.mjs'
import { bundle } from './bundle.mjs'
import { root } from './install.mjs'

const visitsEach = 8
const asOf = '2026-11-25'

if (process.argv[2] === '--floor') await floor(process.argv[3])
else await measure(process.argv.slice(2).map(Number))

async function measure(sizes) {
  await bundle()
  installGenerator()
  console.log(`Node ${process.version}, ${availableParallelism()} x ${cpus()[0]?.model ?? 'processor'}`)
  // All goes at the very end: some file systems make new files slowly for minutes after many were deleted.
  const folder = mkdtempSync(join(tmpdir(), 'growdown-bench-'))
  try {
    for (const horses of sizes.length > 0 ? sizes : [100, 1000]) await measurePractice(folder, horses)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

async function measurePractice(folder, horses) {
  const cases = join(folder, `cases-${horses}`)
  writePractice(cases, horses)
  const generator = prepareGenerator(folder, cases)
  const turns = (horses > 200 ? 1 : 3) * (process.env.LONG === '1' ? 3 : 1)
  const of = { floor: [], generator: [], cold: [] }
  for (let turn = 0; turn < turns; turn++) {
    of.floor.push(await timed(['scripts/bench-site.mjs', '--floor', cases]))
    of.generator.push(await timed(generator.args, generator.cwd))
    of.cold.push(await timed(buildArgs(cases, join(folder, `site-${horses}-${turn}`))))
  }
  const floor = median(of.floor)
  const plain = median(of.generator)
  const site = join(folder, `site-${horses}-0`)
  const again = await timed(buildArgs(cases, site))
  appendFileSync(join(cases, 'horse-0007', '2026-05-30.md'), '\nOne more line.\n')
  const one = await timed(buildArgs(cases, site))

  console.log(
    `\n${horses} horses, ${horses * visitsEach} visits; medians of ${turns}, the single builds of one`,
  )
  const rows = {
    floor,
    'plain generator': plain,
    'cold build': median(of.cold),
    'nothing changed': again,
    'one visit changed': one,
  }
  console.log(`| | wall | processor | peak | x the floor | x the generator |\n|---|---|---|---|---|---|`)
  for (const [what, { wall, cpu, peak }] of Object.entries(rows)) {
    const cells = [
      what,
      `${wall.toFixed(2)} s`,
      `${cpu.toFixed(2)} s`,
      `${Math.round(peak)} MiB`,
      (wall / floor.wall).toFixed(3),
      (wall / plain.wall).toFixed(3),
    ]
    console.log(`| ${cells.join(' | ')} |`)
  }
  const waits = await previewWaits(cases, site)
  console.log(`preview, save to told to reload: ${waits.map((ms) => `${Math.round(ms)} ms`).join(', ')}`)
  console.log(`on one thread, by phase: ${await phases(cases)}`)
}

function buildArgs(cases, site) {
  return ['dist/cli.js', 'build', cases, '--out', site, '--as-of', asOf]
}

/** The run whose wall time is in the middle. */
function median(runs) {
  return runs.toSorted((a, b) => a.wall - b.wall)[Math.floor(runs.length / 2)]
}

/** Runs a script in a process of its own; its time and peak memory are what the process says of itself as it ends. */
async function timed(args, cwd = root) {
  const report = `process.on('exit', () => {
    const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage()
    process.send?.({ peak: maxRSS / 1024, cpu: (userCPUTime + systemCPUTime) / 1e6 })
  })`
  const preload = `data:text/javascript,${encodeURIComponent(report)}`
  const began = performance.now()
  const child = spawn(process.execPath, ['--import', preload, ...args], {
    cwd,
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
  let usage = { peak: Number.NaN, cpu: Number.NaN }
  child.on('message', (message) => {
    usage = message
  })
  const status = await new Promise((resolve) => child.on('close', resolve))
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}`)
  return { wall: (performance.now() - began) / 1000, ...usage }
}

/** What each phase in the journey of every horse takes, on one thread. */
async function phases(cases) {
  const outfile = join(root, 'dist', 'bench-phases.js')
  await esbuild({
    absWorkingDir: root,
    entryPoints: ['scripts/bench-phases.ts'],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
  })
  try {
    const spent = JSON.parse(execFileSync(process.execPath, [outfile, cases, asOf], { encoding: 'utf8' }))
    const total = Object.values(spent).reduce((sum, ms) => sum + ms, 0)
    return Object.entries(spent)
      .map(([phase, ms]) => `${phase} ${(ms / 1000).toFixed(2)} s (${((100 * ms) / total).toFixed(0)} %)`)
      .join(', ')
  } finally {
    rmSync(outfile)
  }
}

async function floor(folder) {
  const { parse } = await import('yaml')
  const { unified } = await import('unified')
  const steps = ['remark-parse', 'remark-gfm', 'remark-rehype', 'rehype-stringify']
  const html = unified()
  for (const step of steps) html.use((await import(step)).default)
  html.freeze()
  for (const name of readdirSync(folder, { recursive: true })) {
    if (!name.endsWith('.md')) continue
    const text = readFileSync(join(folder, name), 'utf8')
    const end = text.indexOf('\n---', 3)
    parse(text.slice(4, end))
    html.processSync(text.slice(end + 5))
  }
}

/** Milliseconds from saving a visit until the preview tells its pages to load again, five times. */
async function previewWaits(cases, site) {
  const child = spawn(process.execPath, ['dist/cli.js', 'preview', cases, '--out', site, '--port', '0'], {
    cwd: root,
  })
  try {
    const address = await said(child, /Open (\S+)\n/)
    const news = (await fetch(`${address}-/news`)).body.pipeThrough(new TextDecoderStream()).getReader()
    await news.read()
    const waits = []
    for (let round = 0; round < 6; round++) {
      await new Promise((resolve) => setTimeout(resolve, 500))
      const began = performance.now()
      appendFileSync(join(cases, 'horse-0003', '2026-05-30.md'), `\nSaved again, ${round}.\n`)
      while (!(await news.read()).value?.includes('reload'));
      waits.push(performance.now() - began)
    }
    // The first save loads what later ones find loaded.
    return waits.slice(1)
  } finally {
    child.kill('SIGINT')
    await new Promise((resolve) => child.on('close', resolve))
  }
}

function said(child, pattern) {
  return new Promise((resolve, reject) => {
    let text = ''
    child.stdout.on('data', (part) => {
      text += part
      const found = pattern.exec(text)
      if (found) resolve(found[1])
    })
    child.once('close', (status) => reject(new Error(`preview ended with ${status}: ${text}`)))
  })
}
