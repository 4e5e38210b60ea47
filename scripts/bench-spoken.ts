/**
 * How long spoken notes take, from 1 to 200 kB: as people speak, the same with no stops, and one finding's name over and
 * over. Linear is what is wanted: twice the text, twice the time.
 *   npx esbuild scripts/bench-spoken.ts --bundle --platform=node --format=cjs --outfile=dist/bench-spoken.cjs && node dist/bench-spoken.cjs
 */
import { performance } from 'node:perf_hooks'
import { feet } from '../src/hoof/feet.ts'
import { buildLexicon, draftVisit, type Known, understand } from '../src/spoken/index.ts'
import { notesOf } from '../tests/spoken/score.ts'

const known: Known = { units: 'mm', feetOrder: feet, date: '2026-11-27', openFindings: [], features: [] }
const spoken = notesOf('developing')
  .filter(({ format }) => format === undefined)
  .map(({ said }) => said)
  .join('\n\n')

const texts: Readonly<Record<string, (size: number) => string>> = {
  spoken: (size) => spoken.repeat(Math.ceil(size / spoken.length)).slice(0, size),
  'no stops': (size) =>
    spoken
      .repeat(Math.ceil(size / spoken.length) + 1)
      .replaceAll(/[.,?!;:]/g, '')
      .replaceAll(/\s+/g, ' ')
      .slice(0, size),
  'one word': (size) => 'flare '.repeat(Math.ceil(size / 6)),
}

const started = performance.now()
const lexicon = buildLexicon()
console.log(`vocabulary ${(performance.now() - started).toFixed(0)} ms`)
for (const [name, textOf] of Object.entries(texts)) {
  for (const size of [1000, 25_000, 50_000, 100_000, 200_000]) {
    const text = textOf(size)
    const times = Array.from({ length: 5 }, () => {
      const from = performance.now()
      draftVisit(understand(text, known, lexicon), known)
      return performance.now() - from
    }).toSorted((a, b) => a - b)
    console.log(
      `${name.padEnd(10)} ${String(size / 1000).padStart(5)} kB ${(times[2] ?? 0).toFixed(1).padStart(8)} ms`,
    )
  }
}
