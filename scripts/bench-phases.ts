/**
 * Where the time of a build goes: the journey of each horse of a casebook on one thread, phase by phase. The phase
 * `start` is what each thread takes before its first horse; reading holds the parse that finds the sections of a body.
 * `scripts/bench-site.mjs` bundles and runs it; it prints milliseconds by phase as JSON.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import { disk } from '../src/build/disk/real-disk.ts'
import { diskFolder, knownFolder } from '../src/build/disk/source-folder.ts'
import { sharedBuffer, stage } from '../src/build/disk/staging.ts'
import { packageRoot, templates } from '../src/build/program.ts'
import { readHorse, readPractice } from '../src/casebook/read.ts'
import { presentHorse, summarise } from '../src/pages/practice/index.ts'
import { formatters } from '../src/pages/shared/format.ts'
import { practiceLanguage, wordsFor } from '../src/pages/words/index.ts'
import { createRenderer } from '../src/render/renderer.ts'
import { assess } from '../src/trend/assess.ts'

const [casebook = '', asOf = ''] = process.argv.slice(2)
const spent = { start: performance.now(), list: 0, read: 0, assess: 0, present: 0, render: 0, stage: 0 }

async function timed<T>(phase: keyof typeof spent, work: () => T | Promise<T>): Promise<T> {
  const began = performance.now()
  const result = await work()
  spent[phase] += performance.now() - began
  return result
}

const whole = diskFolder(casebook)
const entries = await timed('list', () => whole.list())
const { practice, horseIds } = readPractice(whole, asOf)
if (practice === null) throw new Error('the casebook of the benchmark has no practice.md')
const words = wordsFor(practiceLanguage)
const renderer = createRenderer(templates(packageRoot()), words)
const format = formatters(words)(practice.units)
const folder = mkdtempSync(join(tmpdir(), 'growdown-phases-'))
const encode = sharedBuffer()
const staging = { site: join(folder, 'site'), folder: join(folder, 'staging') }

for (const id of horseIds) {
  const own = knownFolder(
    casebook,
    entries.filter(({ path }) => path.startsWith(`${id}/`)),
  )
  const { horse } = await timed('read', () => readHorse(own, id, practice, asOf))
  if (horse === null) continue
  const assessment = await timed('assess', () => assess(horse, practice, asOf))
  const input = { horse, assessment, practice, pictures: new Map(), format }
  await timed('present', () => summarise(input))
  const views = presentHorse(input)
  for (;;) {
    const { value: view } = await timed('present', () => views.next())
    if (view === undefined) break
    const text = await timed('render', () => renderer.render(view))
    await timed('stage', () => stage(disk, staging, { path: view.path, text }, encode))
  }
}
rmSync(folder, { recursive: true })
process.stdout.write(JSON.stringify(spent))
