/**
 * A page that is opened around a save shows what was saved, or is told to load again, whenever it is asked for. The
 * short run tries twelve moments.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as rest } from 'node:timers/promises'
import fc from 'fast-check'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { runs } from '../../runs.ts'
import { type Started, startPreview } from './started.ts'

let folder: string
let preview: Started
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'growdown-'))
  cpSync('tests/casebooks/good-plain', join(folder, 'cases'), { recursive: true })
  preview = await startPreview(folder)
})
afterAll(async () => {
  await preview.stop()
  rmSync(folder, { recursive: true })
})

const page = async () => (await fetch(`${preview.address}juno/2026-02-16.html`)).text()

/** Whether a page is told to load again within this time, milliseconds. */
async function isTold(html: string, within: number): Promise<boolean> {
  const build = /data-build="([\w-]+)"/.exec(html)?.[1]
  const signal = AbortSignal.timeout(within)
  try {
    const news = await fetch(`${preview.address}-/news?build=${build}`, { signal })
    const reader = news.body?.pipeThrough(new TextDecoderStream()).getReader()
    for (let heard = ''; ; heard += (await reader?.read())?.value ?? '') {
      if (!heard.includes('event: reload')) continue
      await reader?.cancel()
      return true
    }
  } catch (error) {
    if (signal.aborted) return false
    throw error
  }
}

it('never stays stale', async () => {
  const visit = join(folder, 'cases/juno/2026-02-16.md')
  const good = readFileSync(visit, 'utf8')
  let saved = 0
  const outcomes = { shown: 0, told: 0 }
  await fc.assert(
    fc.asyncProperty(
      // Asked for this long after the save, or before it; listens so long after that.
      fc.integer({ min: -10, max: 150 }),
      fc.constantFrom(0, 15, 60, 250),
      async (asked, listens) => {
        saved += 1
        const sentence = `This is what was saved as number ${saved}.`
        const save = () => writeFileSync(visit, `${good}\n${sentence}\n`)
        if (asked >= 0) save()
        await rest(Math.max(0, asked))
        let html = await page()
        if (asked < 0) save()
        await rest(listens)
        if (html.includes(sentence)) outcomes.shown += 1
        else outcomes.told += 1
        for (let loads = 0; !html.includes(sentence); loads += 1) {
          expect(loads, `asked ${asked} ms after the save, listens ${listens} ms later`).toBeLessThan(3)
          expect(await isTold(html, 5_000), `told, asked ${asked}, listens ${listens}`).toBe(true)
          html = await page()
        }
        // Of the newest build now, it is left alone.
        await rest(100)
        expect(await isTold(await page(), 50)).toBe(false)
      },
    ),
    {
      numRuns: runs(12, 200),
      seed: 4,
      examples: [
        [-1, 250],
        [0, 0],
        [0, 250],
        [30, 250],
        [30, 0],
      ],
    },
  )
  expect(outcomes.shown).toBeGreaterThan(0)
  expect(outcomes.told).toBeGreaterThan(0)
}, 600_000)
