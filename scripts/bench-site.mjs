/**
 * How long a whole practice takes to build, against a floor measured in the same run: every file read, its block parsed
 * with `yaml`, its body turned into HTML with unified and remark-gfm, on one thread and nothing else.
 *
 *   node scripts/bench-site.mjs [horses ...]     default: 100 1000
 */
import { execFileSync, spawn } from 'node:child_process'
import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { availableParallelism, cpus, tmpdir } from 'node:os'
import { join } from 'node:path'
import { build as esbuild } from 'esbuild'
import { writePractice } from './bench-casebook.mjs'
import { bundle } from './bundle.mjs'
import { root } from './install.mjs'

const visitsEach = 8
const asOf = '2026-11-25'

if (process.argv[2] === '--floor') await floor(process.argv[3])
else await measure(process.argv.slice(2).map(Number))

async function measure(sizes) {
  await bundle()
  console.log(`Node ${process.version}, ${availableParallelism()} x ${cpus()[0]?.model ?? 'processor'}`)
  // All goes at the very end: some file systems make new files slowly for minutes after many were deleted.
  const folder = mkdtempSync(join(tmpdir(), 'growdown-bench-'))
  try {
    for (const horses of sizes.length > 0 ? sizes : [100, 1000]) {
      await measurePractice(join(folder, `cases-${horses}`), join(folder, `site-${horses}`), horses)
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

async function measurePractice(cases, site, horses) {
  writePractice(cases, horses)
  const build = () => timed(['dist/cli.js', 'build', cases, '--out', site, '--as-of', asOf])
  const base = await timed(['scripts/bench-site.mjs', '--floor', cases])
  console.log(`\n${horses} horses, ${horses * visitsEach} visits`)
  show('floor', base, base, horses)
  show('cold build', await build(), base, horses)
  console.log(`  its phases         ${await phases(cases)}`)
  show('nothing changed', await build(), base, horses)
  appendFileSync(join(cases, 'horse-0007', '2026-05-30.md'), '\nOne more line.\n')
  show('one visit changed', await build(), base, horses)
  const waits = await previewWaits(cases, site)
  console.log(`  preview, save to told to reload: ${waits.map((ms) => `${Math.round(ms)} ms`).join(', ')}`)
}

function show(what, { wall, cpu, peak }, base, horses) {
  const figures = [
    `${wall.toFixed(2)} s wall`,
    `${cpu.toFixed(2)} s cpu`,
    `${Math.round(peak)} MiB peak`,
    `${((wall * 1000) / (horses * visitsEach)).toFixed(2)} ms a visit`,
    `${(wall / base.wall).toFixed(3)} x the floor`,
  ]
  console.log(`  ${what.padEnd(18)} ${figures.join('   ')}`)
}

/** Runs a script in a process of its own; its time and peak memory are what the process says of itself as it ends. */
async function timed(args) {
  const report = `process.on('exit', () => {
    const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage()
    process.send?.({ peak: maxRSS / 1024, cpu: (userCPUTime + systemCPUTime) / 1e6 })
  })`
  const preload = `data:text/javascript,${encodeURIComponent(report)}`
  const began = performance.now()
  const child = spawn(process.execPath, ['--import', preload, ...args], {
    cwd: root,
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

/** The share of each phase in the journey of every horse, on one thread. */
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
      .map(([phase, ms]) => `${phase} ${((100 * ms) / total).toFixed(0)} %`)
      .join('   ')
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
