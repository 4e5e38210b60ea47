/** A horse that is read for eight measures on each foot at every visit: enough to count what a whole visit takes. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { feet } from '../../../src/hoof/feet.ts'

/** As a case file calls them, with their readings of the left fore; the other feet read a little more. */
export const eightMeasures = {
  'toe length': 88,
  'toe angle': 48,
  'heel angle': 41,
  'heel medial': 34,
  'heel lateral': 35,
  width: 121,
  'frog width': 46,
  'sulcus depth': 8,
} as const

/** What is read now: like last time, and a little different. */
export const readingNow = (measure: keyof typeof eightMeasures, foot: number): number =>
  eightMeasures[measure] + foot + 1

const visit = (date: string) => `---
date: ${date}
before:
${Object.entries(eightMeasures)
  .map(([name, value]) => `  ${name}: [${feet.map((_, i) => value + i).join(', ')}]`)
  .join('\n')}
findings:
  LF: [thrush, central sulcus, 2]
care:
  - Pick the feet out every day
next visit: in 5 weeks
---
`

/** A casebook with this horse alone; in inches without visits. */
export function heronCasebook(units: 'mm' | 'in' = 'mm'): string {
  const folder = mkdtempSync(join(tmpdir(), 'heron-'))
  mkdirSync(join(folder, 'heron'))
  const write = (name: string, text: string) => writeFileSync(join(folder, name), text)
  const vet = 'contacts: {practice: 01632 960001, vet: {name: Una Brandt, phone: 01632 960002}}'
  write(
    'practice.md',
    `---\npractice: Heron Round\nunits: ${units}\ntrim cycle: 5 weeks\nowners:\n  alder: {name: Wim Alder}\n${vet}\npeople: [una, wim]\n---\n`,
  )
  write('heron/horse.md', '---\nname: Heron\nowner: alder\n---\n')
  const dates = units === 'mm' ? ['2026-08-21', '2026-09-25', '2026-10-30'] : []
  for (const date of dates) write(`heron/${date}.md`, visit(date))
  return folder
}
