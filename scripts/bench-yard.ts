/**
 * How long the yard page's checks take with each key that is pressed, in Node:
 *
 *   npx esbuild scripts/bench-yard.ts --bundle --platform=node --format=cjs --outfile=dist/bench-yard.cjs && node dist/bench-yard.cjs
 *
 * A horse of 8 and one of 40 visits, each with twelve rows of readings, findings and comfort; a draft that grows by a
 * reading a key. Median, and the time that nine of ten stay under, of 200 keys after 20 that are not counted.
 */

import { memoryFolder } from '../src/casebook/memory-folder.ts'
import { readCasebook } from '../src/casebook/read.ts'
import { addDays } from '../src/hoof/dates.ts'
import { type Foot, feet } from '../src/hoof/feet.ts'
import { measureIds, measures } from '../src/hoof/measures.ts'
import { assess } from '../src/trend/assess.ts'
import { emptyDraft, type YardDraft } from '../src/yard/draft.ts'
import { knowledgeOf } from '../src/yard/knowledge.ts'
import { openHorse } from '../src/yard/open-horse.ts'

const practiceFile = '---\npractice: Low Field\nowners: {ada: {name: Ada}}\n---\n'
const rows = measureIds.slice(0, 12)
const middle = (id: (typeof rows)[number], by: number) => {
  const [low, high] = measures[id].likely
  return Math.round((low + high) / 2) + by
}

function visitText(date: string, count: number): string {
  const stage = (name: string, less: number) =>
    `${name}:\n${rows.map((id) => `  ${measures[id].name}: [${feet.map((_, i) => middle(id, (count % 3) + i - less)).join(', ')}]\n`).join('')}`
  return `---\ndate: ${date}\n${stage('before', 0)}${stage('after', 2)}findings:\n  LF:\n    - thrush, frog, ${count % 3}\n  RH:\n    - flare, medial quarter, 1\ncomfort:\n  landing: [heel, heel, flat, heel]\nnext visit: in 5 weeks\n---\nQuiet today. Stood well.\n`
}

const spoken =
  'Left fore as she comes. Toe length ninety-eight, angle forty-four. Bit of thrush in the central sulcus. Right fore toe length ninety-five. She leaned on me the whole time. See her in five weeks. '

const of = (times: number[]) => {
  const sorted = times.toSorted((a, b) => a - b)
  const at = (share: number) => (sorted[Math.floor(sorted.length * share)] ?? 0).toFixed(1)
  return `median ${at(0.5)} ms, nine of ten under ${at(0.9)} ms`
}

const timed = (run: () => unknown): number => {
  const began = performance.now()
  run()
  return performance.now() - began
}

for (const visits of [8, 40]) {
  const today = addDays('2020-01-10', 35 * visits)
  const files = Object.fromEntries([
    ['juno/horse.md', '---\nname: Juno\nowner: ada\n---\n'],
    ...Array.from({ length: visits }, (_, index) => {
      const date = addDays('2020-01-10', 35 * index)
      return [`juno/${date}.md`, visitText(date, index)]
    }),
  ])
  const { casebook } = readCasebook(memoryFolder({ ...files, 'practice.md': practiceFile }), today)
  const [read] = casebook?.horses ?? []
  if (!casebook || !read) throw new Error('the horse cannot be read')
  const knowledge = knowledgeOf(read, casebook.practice, assess(read, casebook.practice, today))
  const given = [
    { practiceFile, asOf: today },
    { id: 'juno', files, pictures: [], knowledge },
  ] as const
  const opened = Array.from({ length: 15 }, () => timed(() => openHorse(...given, today)))
  const horse = openHorse(...given, today)
  if (horse === null) throw new Error('the horse cannot be read')
  const empty = emptyDraft({ id: '3f9ab2c4d5e6', changed: '', horse: 'juno', date: today, by: null })
  const cells = rows.flatMap((measure) => feet.map((foot: Foot) => ({ foot, measure })))
  const keys = Array.from({ length: 220 }, (_, index): YardDraft => {
    const written = cells.slice(0, 1 + (index % cells.length)).map(({ foot, measure }) => ({
      stage: 'before' as const,
      foot,
      measure,
      text: String(middle(measure, index % 4)),
      heard: null,
    }))
    return { ...empty, readings: written }
  })
  const checked = keys.map((draft) => timed(() => horse.check(draft))).slice(20)
  const heard = Array.from({ length: 30 }, () => timed(() => horse.hear(empty, spoken.repeat(5)))).slice(5)
  console.log(
    `${visits} visits: opened ${of(opened.slice(3))}; checked ${of(checked)}; 1 kB heard ${of(heard)}`,
  )
}
