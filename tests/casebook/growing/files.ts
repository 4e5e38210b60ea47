/** Case files that grow. A size is about the number of letters. */
import type { CasebookFiles } from '../../../src/casebook/memory-folder.ts'

/** The texts of a casebook of one horse with two visits. */
interface Texts {
  readonly practice?: string
  readonly horse?: string
  readonly visit?: string
  readonly practiceBody?: string
  readonly horseBody?: string
  readonly visitBody?: string
}

const file = (block: string, body = ''): string => `---\n${block}\n---\n${body}`

/** Blocks that hold what nearly every page is made of; a text that grows takes the place of one of their lines. */
const usual = {
  practice: [
    'practice: Slow Hoof Practice',
    'owners: {abel: {name: Abel Moor}}',
    'terms: {chalk toe: crumbling horn}',
  ],
  horse: [
    'name: Juno Grey',
    'owner: abel',
    'alias: Fern',
    'consent: {owner site: yes, portfolio: yes, photos: yes, given: 2026-01-12}',
    'private words: [Hill Yard]',
  ],
  visit: ['before:', '  toe length: [98, 96, 90, 91]', 'care:', '  - Pick out daily'],
}

/** The usual block with another value for the key that the given one begins with. */
function blockWith(lines: readonly string[], given: string): string {
  const key = /^[a-z ]+:/.exec(given)?.[0]
  const kept: string[] = []
  let isReplaced = false
  for (const line of lines) {
    if (!line.startsWith(' ')) isReplaced = key !== undefined && line.startsWith(key)
    if (!isReplaced) kept.push(line)
  }
  return [...kept, given].join('\n')
}

export function filesWith(texts: Texts): CasebookFiles {
  const { practice = '', horse = '', visit = '', practiceBody, horseBody, visitBody } = texts
  return {
    'practice.md': file(blockWith(usual.practice, practice), practiceBody),
    'juno/horse.md': file(blockWith(usual.horse, horse), horseBody),
    'juno/2026-01-12.md': file(usual.visit.join('\n')),
    'juno/2026-02-16.md': file(blockWith(usual.visit, visit), visitBody),
  }
}

export interface Growing {
  readonly name: string
  readonly files: (size: number) => CasebookFiles
}
