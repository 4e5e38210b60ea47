/**
 * How long an editor waits: from a key pressed to what is told of the file, and for a list of words and a look at a
 * measure right after it. Over the real protocol, with a process of its own, on a practice of 1,000 visits.
 *
 *   npx esbuild scripts/bench-editor.ts --bundle --platform=node --format=esm --outfile=dist/bench-editor.js && node dist/bench-editor.js
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openEditor } from '../tests/apps/editor/client.ts'
import { writePractice } from './bench-casebook.mjs'

const rounds = 60

/** Writes a casebook of that many horses, the first of which has as many visits as asked for. */
function lay(horses: number, visitsOfFirst: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'growdown-bench-'))
  writePractice(join(folder, 'cases'), horses)
  const own = join(folder, 'cases', 'horse-0000')
  const models = readdirSync(own).filter((name) => /^\d/.test(name))
  const first = Date.UTC(2026, 4, 1) / 86_400_000 - visitsOfFirst * 35
  for (let visit = models.length; visit < visitsOfFirst; visit++) {
    const day = new Date((first - visit * 2) * 86_400_000).toISOString().slice(0, 10)
    const text = readFileSync(join(own, models[visit % models.length] ?? ''), 'utf8')
    writeFileSync(join(own, `${day}.md`), text.replace(/^date: .*/m, `date: ${day}`))
  }
  for (const horse of readdirSync(join(folder, 'cases'))) layPhotos(join(folder, 'cases', horse))
  return folder
}

/** Pictures of each visit, empty: a casebook has more of them than of anything else. */
function layPhotos(horse: string): void {
  if (horse.endsWith('.md')) return
  mkdirSync(join(horse, 'photos'))
  for (const name of readdirSync(horse).filter((one) => /^\d/.test(one))) {
    for (const foot of ['lf', 'rf', 'lh', 'rh', 'sole']) {
      writeFileSync(join(horse, 'photos', `${name.replace('.md', '')}-${foot}.jpg`), '')
    }
  }
}

/** Processor time of a process so far, milliseconds; null where the system does not tell. */
function processorOf(pid: number | undefined): number | null {
  try {
    const [user = '', system = ''] =
      readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ').slice(11) ?? []
    return (Number(user) + Number(system)) * 10
  } catch {
    return null
  }
}

const figures = (times: readonly number[]): string => {
  const sorted = times.toSorted((a, b) => a - b)
  const at = (share: number) =>
    (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(1)
  return `median ${at(0.5)} ms, nine of ten within ${at(0.9)} ms, worst ${at(1)} ms`
}

async function measure(title: string, horses: number, visitsOfFirst: number): Promise<void> {
  const folder = lay(horses, visitsOfFirst)
  const root = join(folder, 'cases')
  const editor = await openEditor(root)
  const path = 'horse-0000/2026-05-30.md'
  const text = readFileSync(join(root, path), 'utf8')
  const row = text.split('\n').findIndex((line) => line.startsWith('  toe angle:'))
  const asked = { textDocument: { uri: editor.uri(path) }, position: { line: row, character: 4 } }
  const began = performance.now()
  editor.open(path, text)
  // Wrong and right in turn, so that each change changes what is told.
  const wrong = (round: number) => `  toe angl: [4${round % 10}, 45, 48, 47]\n`
  const right = '  toe angle: [44, 45, 48, 47]\n'
  const line = { start: { line: row, character: 0 }, end: { line: row + 1, character: 0 } }
  editor.change(path, wrong(0), line)
  await editor.told(path, (told) => told.some(({ code }) => code === 'measure-unknown'))
  const first = performance.now() - began
  // The other horses are read meanwhile; wait until the editor is idle.
  await new Promise((resolve) => setTimeout(resolve, 100 + 25 * horses))
  const times = { told: [] as number[], completion: [] as number[], hover: [] as number[] }
  const processor = processorOf(editor.pid)
  for (let round = 0; round < rounds; round++) {
    const isRight = round % 2 === 0
    let start = performance.now()
    editor.change(path, isRight ? right : wrong(round), line)
    await editor.told(path, (told) => told.some(({ code }) => code === 'measure-unknown') !== isRight)
    times.told.push(performance.now() - start)
    start = performance.now()
    await editor.request('textDocument/completion', { ...asked, position: { line: row, character: 2 } })
    times.completion.push(performance.now() - start)
    start = performance.now()
    await editor.request('textDocument/hover', asked)
    times.hover.push(performance.now() - start)
  }
  console.log(`${title}\n  first answer after opening: ${first.toFixed(0)} ms`)
  const spent = processorOf(editor.pid)
  if (processor !== null && spent !== null)
    console.log(
      `  processor: ${((spent - processor) / rounds).toFixed(1)} ms for a change, the words and a look together`,
    )
  for (const [what, all] of Object.entries(times)) console.log(`  ${what}: ${figures(all)}`)
  await editor.close()
  rmSync(folder, { recursive: true })
}

await measure('125 horses, 8 visits each', 125, 8)
await measure('121 horses, one of them with 40 visits', 121, 40)
await measure('one horse with 200 visits', 1, 200)
await measure('one horse with 1,000 visits', 1, 1000)
