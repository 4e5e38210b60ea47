/** A small casebook as texts, and what every form of the library must make of it. */
import type * as library from '../src/library-browser.ts'

export const asOf = '2026-03-25'

const visit = (toe: readonly number[], words: string) => `---
before:
  toe length: [${toe.map((value) => value + 8).join(', ')}]
after:
  toe length: [${toe.join(', ')}]
  toe angle: [45, 46, 48, 48]
findings:
  LF:
    - flare, medial quarter, 2
---
${words}

## For the owner

- Pick out *every* day
`

export const casebookFiles: Readonly<Record<string, string>> = {
  'practice.md': '---\npractice: Sandpiper\nowners:\n  kestrel: {name: Ada Kestrel}\n---\nWe work slowly.\n',
  'juno/horse.md': '---\nname: Juno\nowner: kestrel\nstarted: 2026-01-12\n---\nZoë’s mare.\n',
  'juno/2026-01-12.md': visit([92, 91, 86, 87], 'First visit.'),
  'juno/2026-02-16.md': visit([88, 89, 85, 85], 'Second visit.'),
}

/** The export of that casebook as text. */
export function wholeExport({ read, assess, exportOf }: typeof library): string {
  const { casebook } = read(casebookFiles, asOf)
  if (casebook === null) throw new Error('the casebook cannot be read')
  const { practice, horses } = casebook
  const assessments = horses.map((horse) => assess(horse, practice, asOf))
  return JSON.stringify(exportOf(assessments, asOf))
}
