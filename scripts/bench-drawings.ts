/**
 * What a horse's drawings cost: bytes and time, each view on four feet. Wanted: under 12 kB and 2 ms for what a horse's
 * page shows, one drawing a foot.
 *
 *   npx esbuild scripts/bench-drawings.ts --bundle --platform=node --format=cjs --outfile=dist/bench-drawings.cjs && node dist/bench-drawings.cjs
 */
import { gzipSync } from 'node:zlib'
import { type Foot, feet } from '../src/hoof/feet.ts'
import type { FootMeasures } from '../src/hoof/stand-ins.ts'
import { behindView } from '../src/render/drawings/behind.ts'
import { sideView } from '../src/render/drawings/side.ts'
import { soleView } from '../src/render/drawings/sole.ts'
import { wallView } from '../src/render/drawings/wall.ts'

/** An invented foot, a little other each time, so that nothing is drawn twice. */
const footOf = (i: number): FootMeasures => ({
  'toe-length': 85 + (i % 17),
  'toe-angle': 48 + (i % 7),
  'heel-angle': 44 + (i % 5),
  'heel-medial': 38 + (i % 9),
  'heel-lateral': 34,
  'bearing-length': 116 + (i % 11),
  width: 124 - (i % 6),
  breakover: 34,
  'frog-length': 76,
  'frog-width': 48,
  'sulcus-depth': 5 + (i % 13),
})

const sides = { medial: 'inner', lateral: 'outer' }
const name = { 'aria-labelledby': 'side-lf-title', 'aria-describedby': 'side-lf-text' }
const findings = [
  { what: 'thrush', place: 'medial groove', grade: 2, sign: '1' },
  { what: 'flare', place: 'lateral quarter', grade: 1, sign: '2' },
  { what: 'white line stretched', place: 'toe', grade: 2, sign: '3' },
] as const
const features = [
  { what: 'ring', place: 'whole foot', at: 34, ahead: [45, 56, 67], wallLength: null, sign: 'a' },
  { what: 'nail holes', place: 'lateral quarter', at: 50, ahead: [60], wallLength: 70, sign: 'b' },
]

const views: Readonly<Record<string, (foot: Foot, i: number) => string>> = {
  side: (foot, i) => sideView({ foot, now: footOf(i), first: footOf(i + 9) }, name),
  behind: (foot, i) => behindView({ foot, now: footOf(i), label: '8 mm', sides }, name),
  'sole with three findings': (foot, i) =>
    soleView({ foot, now: footOf(i), findings, sides, isSmall: true }, name),
  'wall with two things growing down': (foot, i) => wallView({ foot, now: footOf(i), features, sides }, name),
}

const horses = 400
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0

let [allBytes, allTime] = [0, 0]
for (const [view, draw] of Object.entries(views)) {
  const times: number[] = []
  const bytes: number[] = []
  for (let i = 0; i < horses; i++) {
    const from = performance.now()
    const drawn = feet.map((foot) => draw(foot, i)).join('')
    times.push(performance.now() - from)
    bytes.push(Buffer.byteLength(drawn))
  }
  const cold = times[0] ?? 0
  const [time, size] = [median(times), median(bytes)]
  const packed = gzipSync(feet.map((foot) => draw(foot, 0)).join('')).length
  allBytes += size
  allTime += time
  console.log(
    `${view}, four feet: ${(size / 1024).toFixed(1)} kB (gzip ${(packed / 1024).toFixed(1)}), median ${time.toFixed(2)} ms, first ${cold.toFixed(2)} ms`,
  )
}
console.log(`all sixteen: ${(allBytes / 1024).toFixed(1)} kB, ${allTime.toFixed(2)} ms`)
