/**
 * How long the engine takes over one horse, from 8 to 200 visits with every measure at both stages of all feet; how long
 * with all lists read that it makes only when they are asked for; and how long a practice of such horses takes to learn
 * from, with what each horse's record costs to be made ready for it.
 * Beside each median stands the processor time of the run, which other work on the machine moves less.
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
import { learnPractice } from '../src/trend/model/practice.ts'
import { teachingOf } from '../src/trend/model/teaching.ts'

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

/** Readings that wander as real ones do; a seeded sine mix stands in for chance, another for each horse. */
function visit(i: number, ofHorse: number): Visit {
  const wobble = (k: number) =>
    Math.sin(12.9898 * (i + 1) * (k + 1) + ofHorse) + Math.cos(78.233 * (i + 2) * (k + 3) + 7 * ofHorse)
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
    yard: null,
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

const horse = (visits: number, ofHorse = 0): Horse => ({
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
  visits: Array.from({ length: visits }, (_, i) => visit(i, ofHorse)),
  body,
  file: 'bench/horse.md',
})

/** Asks for every list that is made only then: what a reader of the whole assessment adds. */
const readAll = ({ readings, trends, growth }: Assessment): number =>
  readings.length +
  trends.reduce((sum, { points }) => sum + points.length, 0) +
  growth.reduce((sum, { phases, trims }) => sum + phases.length + trims.length, 0)

interface Cost {
  /** Median milliseconds by the clock. */
  readonly ms: number
  /** Mean milliseconds of the processor. */
  readonly cpu: number
}

/** After a warm-up. */
function costOf(runs: number, work: () => unknown, warmUps = 5): Cost {
  for (let run = 0; run < warmUps; run++) work()
  const times: number[] = []
  const before = process.cpuUsage()
  for (let run = 0; run < runs; run++) {
    const start = performance.now()
    work()
    times.push(performance.now() - start)
  }
  const { user, system } = process.cpuUsage(before)
  return {
    ms: times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN,
    cpu: (user + system) / 1000 / runs,
  }
}

const shown = ({ ms, cpu }: Cost): string => `${ms.toFixed(2)} (${cpu.toFixed(2)})`

function printed(widths: readonly number[], cells: readonly (string | number)[]): void {
  console.log(cells.map((cell, i) => String(cell).padStart(widths[i] ?? 0)).join('  '))
}

function measure(visits: number, runs: number) {
  const of = horse(visits)
  const asOf = addDays('2006-01-02', visits * 35)
  const { learned } = learnPractice([teachingOf(of, asOf)])
  const assessed = () => assess(of, practice, asOf, learned)
  return {
    series: assessed().trends.length,
    assessing: costOf(runs, assessed),
    allRead: costOf(runs, () => readAll(assessed())),
    teaching: costOf(runs, () => teachingOf(of, asOf)),
  }
}

const sizes = [8, 25, 50, 100, 200]
const results = sizes.map((visits) => ({ visits, ...measure(visits, visits < 50 ? 60 : 25) }))
const widths = [6, 8, 6, 17, 17, 17]
printed(widths, ['visits', 'readings', 'series', 'ms a horse (CPU)', 'all lists read', 'made ready to teach'])
for (const { visits, series, assessing, allRead, teaching } of results)
  printed(widths, [
    visits,
    visits * 2 * feet.length * measureIds.length,
    series,
    shown(assessing),
    shown(allRead),
    shown(teaching),
  ])
const first = results[0]
const last = results.at(-1)
if (first !== undefined && last !== undefined) {
  const exponent = Math.log(last.assessing.cpu / first.assessing.cpu) / Math.log(last.visits / first.visits)
  console.log(
    `cost grows as the number of readings to the power ${exponent.toFixed(2)} (1 is in step with them)`,
  )
}

/** Horses that are drawn; of more than these each teaches several times, which costs the same. */
const drawn = 100
const asOf = addDays('2006-01-02', 8 * 35 + 40)
const teachings = Array.from({ length: drawn }, (_, i) => teachingOf(horse(8, i), asOf))
console.log('\nhorses of 8 visits  ms to learn from all (CPU)')
for (const [horses, runs] of [
  [1, 10],
  [30, 10],
  [300, 3],
  [1000, 3],
] as const) {
  const all = Array.from({ length: horses }, (_, i) => teachings[i % drawn]).filter(
    (one) => one !== undefined,
  )
  printed([18, 27], [horses, shown(costOf(runs, () => learnPractice(all), 1))])
}
