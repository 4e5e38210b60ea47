/**
 * How long the engine takes over one horse, from 8 to 200 visits with every measure at both stages of all feet; and
 * how long with all lists read that it makes only when they are asked for.
 * Run it bundled, as the program runs:
 *   npx esbuild scripts/bench-engine.ts --bundle --platform=node --format=cjs --outfile=dist/bench-engine.cjs && node dist/bench-engine.cjs
 */

import { performance } from 'node:perf_hooks'
import { noComfort } from '../src/casebook/comfort.ts'
import type { Horse, Practice, Reading, Visit } from '../src/casebook/model.ts'
import { addDays } from '../src/hoof/dates.ts'
import { feet } from '../src/hoof/feet.ts'
import { measureIds, measures } from '../src/hoof/measures.ts'
import { assess } from '../src/trend/assess.ts'
import type { Assessment } from '../src/trend/assessment.ts'

const practice: Practice = {
  name: 'Bench',
  units: 'mm',
  language: 'en',
  trimCycleDays: 35,
  feetOrder: feet,
  owners: [],
  people: [],
  localRules: null,
  contacts: { practice: null, vet: { name: null, phone: null } },
  portfolio: { time: 'weeks', hidesPractice: false, holdBackDays: 0 },
  terms: {},
  body: '',
}
const body = { own: '', forOwner: null, forTeaching: null }

/** Readings that wander as real ones do; a seeded sine mix stands in for chance. */
function visit(i: number): Visit {
  const wobble = (k: number) => Math.sin(12.9898 * (i + 1) * (k + 1)) + Math.cos(78.233 * (i + 2) * (k + 3))
  const readings: Reading[] = (['before', 'after'] as const).flatMap((stage, s) =>
    feet.flatMap((foot, f) =>
      measureIds.map((measure, m) => {
        const { likely, sd } = measures[measure]
        const middle = (likely[0] + likely[1]) / 2
        const trimmed = stage === 'before' && measures[measure].kind === 'length' ? 4 : 0
        return { stage, foot, measure, value: middle + trimmed + 0.01 * i + sd * wobble(m * 8 + f * 2 + s) }
      }),
    ),
  )
  const date = addDays('2006-01-02', i * 35)
  return {
    id: date,
    date,
    file: `bench/${date}.md`,
    draft: false,
    by: null,
    footing: null,
    readings,
    findings: feet.map((foot) => ({ foot, what: 'flare', place: 'medial quarter', grade: 1, words: null })),
    growOut: feet.map((foot) => ({ foot, what: 'ring', place: 'toe', distance: 10 + i })),
    comfort: noComfort,
    bodyState: { weightKg: 500, condition: 5, crest: 1 },
    stance: {},
    cleared: { feet: {}, all: null },
    photos: [],
    care: [],
    nextVisit: null,
    body,
  }
}

const horse = (visits: number): Horse => ({
  id: 'bench',
  name: 'Bench',
  owner: null,
  ownerSince: null,
  kind: null,
  sex: null,
  born: '2000',
  heightCm: 150,
  weightKg: 500,
  started: null,
  history: [],
  tetanus: null,
  vet: { involved: false, diagnosis: null, name: null, phone: null, date: null, feet: [] },
  consent: { ownerSite: false, portfolio: false, photos: false, given: null },
  alias: null,
  privateWords: [],
  targets: { 'toe-angle': Object.fromEntries(feet.map((foot) => [foot, { low: 60, high: 64 }])) },
  trimLimits: { sole: {}, mostPerTrim: null },
  problems: [],
  visits: Array.from({ length: visits }, (_, i) => visit(i)),
  body,
  file: 'bench/horse.md',
})

/** Asks for every list that is made only then: what a reader of the whole assessment adds. */
const readAll = ({ readings, trends, growth }: Assessment): number =>
  readings.length +
  trends.reduce((sum, { points }) => sum + points.length, 0) +
  growth.reduce((sum, { phases, trims }) => sum + phases.length + trims.length, 0)

/** Median milliseconds of some work, after a warm-up. */
function medianOf(runs: number, work: () => unknown): number {
  const times: number[] = []
  for (let run = 0; run < runs + 5; run++) {
    const start = performance.now()
    work()
    if (run >= 5) times.push(performance.now() - start)
  }
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN
}

function measure(visits: number, runs: number) {
  const of = horse(visits)
  const asOf = addDays('2006-01-02', visits * 35)
  const assessed = () => assess(of, practice, asOf)
  return {
    series: assessed().trends.length,
    ms: medianOf(runs, assessed),
    allReadMs: medianOf(runs, () => readAll(assessed())),
  }
}

const sizes = [8, 25, 50, 100, 200]
const results = sizes.map((visits) => ({ visits, ...measure(visits, visits < 50 ? 60 : 25) }))
console.log('visits  readings  series  ms a horse  ms per 100 series  ms all read')
for (const { visits, ms, series, allReadMs } of results) {
  const readings = visits * 2 * feet.length * measureIds.length
  const cells = [
    visits,
    readings,
    series,
    ms.toFixed(2),
    ((100 * ms) / series).toFixed(2),
    allReadMs.toFixed(2),
  ]
  console.log(cells.map((cell, i) => String(cell).padStart([6, 8, 6, 10, 17, 11][i] ?? 0)).join('  '))
}
const first = results[0]
const last = results.at(-1)
if (first !== undefined && last !== undefined) {
  const exponent = Math.log(last.ms / first.ms) / Math.log(last.visits / first.visits)
  console.log(
    `cost grows as the number of readings to the power ${exponent.toFixed(2)} (1 is in step with them)`,
  )
}
