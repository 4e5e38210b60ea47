/** The awkward horse: a name of forty letters, forty visits, every foot with findings, plans and features, long notes. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { addDays } from '../../src/hoof/dates.ts'

export const longName = 'Wilhelmina-Constantia vom Unteren Moorhofe'
const visits = 40
const first = '2022-01-22'
const every = 45

/** The same small differences on every machine. */
const noise = (visit: number, foot: number) => (((visit * 7 + foot * 5) % 9) - 4) / 4

const row = (name: string, of: (foot: number) => number) =>
  `  ${name}: [${[0, 1, 2, 3].map((foot) => of(foot).toFixed(1)).join(', ')}]`

function readings(visit: number): string {
  const left = (from: number, slope: number) => (foot: number) =>
    from + foot + (slope * visit) / visits + noise(visit, foot)
  const grown = (more: number, value: (foot: number) => number) => (foot: number) => value(foot) + more
  const toe = left(98, -8)
  const inner = left(44, -3)
  const outer = left(38, 0)
  return [
    'before:',
    row('toe length', grown(9, toe)),
    row('toe angle', left(44, 4)),
    row('heel angle', left(36, 3)),
    row('heel medial', grown(5, inner)),
    row('heel lateral', grown(5, outer)),
    row('breakover', left(52, -8)),
    row('bearing length', left(140, -6)),
    row('width', left(126, 2)),
    row('frog length', left(88, 0)),
    row('frog width', left(50, 6)),
    row('sulcus depth', left(18, -6)),
    row('white line', left(9, -3)),
    'after:',
    row('toe length', toe),
    row('toe angle', left(45, 4)),
    row('heel medial', inner),
    row('heel lateral', outer),
  ].join('\n')
}

const feet = ['LF', 'RF', 'LH', 'RH']

function findings(visit: number): string {
  const grade = (foot: number, from: number) => Math.max(1, from - Math.floor((visit + foot * 3) / 15))
  return [
    'findings:',
    ...feet.flatMap((foot, i) => [
      `  ${foot}:`,
      `    - separation, lateral quarter, ${grade(i, 2)}, packed with sand again, cleaned out`,
      `    - flare, medial quarter, ${grade(i, 3)}`,
      `    - underrun heels, whole foot, ${grade(i, 3)}`,
      ...(visit === visits - 1 && i === 3 ? ['    - heat, whole foot, 3'] : []),
    ]),
    'grow-out:',
    ...feet.flatMap((foot, i) => [`  ${foot}:`, `    - ring, toe, ${8 + (visit % 9) * 9 + i} mm`]),
  ].join('\n')
}

const sentence =
  'Stood well for once, though the wind was up and the gate banged; read every foot twice before the knife came out.'

const visitText = (visit: number, date: string): string => `---
date: ${date}
footing: soft and deep after three weeks of rain, harder towards the road
${readings(visit)}
${findings(visit)}
comfort:
  lameness: {LF: 1, RF: 1, by: practitioner}
  landing: [toe, toe, flat, flat]
  digital pulse: [1, 1, 0, 0]
body: {weight: 540 kg, condition: 8, crest: 3}
care:
  - Pick out and dry the clefts of all four feet every day, and look at the white line while you are there
  - Straw on the standing by the gate, so that she has one dry place
  - Ring me if she goes short on gravel for more than two days
next visit: in 6 weeks
---
${Array.from({ length: 9 }, () => sentence).join(' ')}

- first this
- then that

${sentence}
`

const horseText = `---
name: ${longName}
owner: long
kind: warmblood cross, heavy type
sex: mare
born: 2009
height: 16.2 hh
weight: 610 kg
history:
${Array.from({ length: 8 }, (_, i) => `  - Something that happened in the year 201${i} and that nobody has quite forgotten since then`).join('\n')}
vet: {involved: yes}
targets:
  toe angle: [50, 54]
  toe length: [~, 86]
  breakover: [~, 40]
trim limits: {sole: flat, most per trim: 1.5 mm}
problems:
  - fores toe length
  - fores breakover
  - fores toe angle
  - RH heel balance
  - all separation, lateral quarter
  - she will not stand on three legs for longer than the count of ten, on either side, whatever is tried
---
${sentence}
`

/** Writes the casebook into a folder of its own. */
export function writeLongCase(): string {
  const folder = mkdtempSync(join(tmpdir(), 'growdown-long-'))
  const horse = join(folder, 'moorhof')
  mkdirSync(horse)
  writeFileSync(
    join(folder, 'practice.md'),
    '---\npractice: Hoof Care between the Lower Moor and the Upper Marsh\nowners:\n  long: {name: Maximiliana Charlotte Freifrau von Oberhohenfels}\n---\n',
  )
  writeFileSync(join(horse, 'horse.md'), horseText)
  for (let visit = 0; visit < visits; visit++) {
    const date = addDays(first, visit * every)
    writeFileSync(join(horse, `${date}.md`), visitText(visit, date))
  }
  return folder
}
