// A synthetic practice of any size: every measure at both stages of all feet, findings, features, ordinary notes.
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { ordinaryNotes } from './bench-notes.mjs'

/** What a foot reads at first, and how that drifts from visit to visit. */
const measures = {
  'toe length': [95, -1.2],
  'toe angle': [46, 0.6],
  'new angle': [52, 0],
  'new length': [20, 6],
  'heel angle': [38, 0.4],
  'pastern angle': [52, 0],
  'coronet angle': [22, 0],
  'heel medial': [40, -0.4],
  'heel lateral': [36, 0],
  'quarter medial': [62, 0],
  'quarter lateral': [64, 0],
  'bearing length': [135, 0],
  width: [128, 0],
  breakover: [48, -1],
  'frog length': [86, 0],
  'frog width': [58, 0],
  'groove apex': [12, 0],
  'groove heel': [20, 0],
  'sulcus depth': [8, 0],
  'wall thickness': [9, 0],
  'white line': [4, 0],
  'coronet girth': [350, 0],
}
/** Growth since the last trim, mm, on arrival. */
const grown = {
  'toe length': 8,
  'heel medial': 3,
  'heel lateral': 3,
  'quarter medial': 3,
  'quarter lateral': 3,
}

const dates = [
  '2026-01-10',
  '2026-02-14',
  '2026-03-21',
  '2026-04-25',
  '2026-05-30',
  '2026-07-04',
  '2026-08-08',
  '2026-09-12',
]

/** The same numbers on every machine: a linear congruential generator (Numerical Recipes' constants, from memory). */
function dice(seed) {
  let state = seed
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}

/** Writes a casebook of that many horses with eight visits each into an empty folder. */
export function writePractice(folder, horses) {
  const roll = dice(horses)
  const owners = Array.from({ length: Math.ceil(horses / 3) }, (_, i) => `  owner-${i}: {name: Person ${i}}`)
  mkdirSync(folder, { recursive: true })
  writeFileSync(
    join(folder, 'practice.md'),
    `---\npractice: Bench\nowners:\n${owners.join('\n')}\n---\nSynthetic.\n`,
  )
  for (let horse = 0; horse < horses; horse++) {
    const own = join(folder, `horse-${String(horse).padStart(4, '0')}`)
    mkdirSync(own)
    writeFileSync(join(own, 'horse.md'), profile(horse))
    dates.forEach((date, visit) => {
      writeFileSync(join(own, `${date}.md`), visitText(date, visit, roll))
    })
  }
}

const profile = (horse) => `---
name: Horse ${horse}
owner: owner-${Math.floor(horse / 3)}
kind: cob
born: 2012
weight: 500 kg
started: 2026-01-10
targets: {toe angle: [50, 54], toe length: [~, 86]}
trim limits: {sole: flat}
---
Notes.
`

const visitText = (date, visit, roll) => `---
date: ${date}
footing: soft
before:
${readings(visit, roll, grown)}
after:
${readings(visit, roll, {})}
findings:
  LF:
    - flare, medial quarter, ${Math.max(0, 3 - Math.floor(visit / 3))}
    - wall separation, toe, ${visit > 5 ? 0 : 2}
  RH:
    - thrush, central sulcus, ${visit % 3}
grow-out:
  LF:
    - nail holes, toe, ${20 + visit * 9} mm
comfort:
  landing: [heel, flat, heel, heel]
body: {weight: 500 kg, condition: 5}
care:
  - Pick out every day
next visit: in 5 weeks
---
${ordinaryNotes(roll)}
`

function readings(visit, roll, extra) {
  return Object.entries(measures)
    .map(([name, [first, drift]]) => {
      const feet = [0, 1, 2, 3].map((foot) => {
        const noise = (roll() + roll() + roll() - 1.5) * 1.6
        return Math.round((first + drift * visit + (extra[name] ?? 0) + foot * 0.7 + noise) * 2) / 2
      })
      return `  ${name}: [${feet.join(', ')}]`
    })
    .join('\n')
}
