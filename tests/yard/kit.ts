/** Drafts as the yard page holds them, and a casebook for them to lie beside. */
import { memoryFolder } from '../../src/casebook/memory-folder.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import type { PlainDate } from '../../src/hoof/dates.ts'
import { assess } from '../../src/trend/assess.ts'
import { emptyDraft, type YardDraft } from '../../src/yard/draft.ts'
import { knowledgeOf } from '../../src/yard/knowledge.ts'
import { type OpenHorse, openHorse } from '../../src/yard/open-horse.ts'

export const today = '2026-06-20'

export const draftOf = (of: Partial<YardDraft> = {}): YardDraft => ({
  ...emptyDraft({
    id: '3f9ab2c4d5e6',
    changed: '2026-06-20T09:00:00Z',
    horse: 'juno',
    date: '2026-06-20',
    by: null,
  }),
  ...of,
})

export const practiceText = '---\npractice: Low Field\nowners:\n  ada: {name: Ada Moor}\n---\n'
export const horseText = '---\nname: Juno\nowner: ada\nstarted: 2026-01-10\n---\n'
export const visitText = (date: string, toe = 90) =>
  `---\ndate: ${date}\nbefore:\n  toe length: [${toe}, ${toe - 1}, ${toe - 3}, ${toe - 4}]\n  toe angle: [48, 49, 50, 51]\nafter:\n  toe length: [${toe - 5}, ${toe - 6}, ${toe - 8}, ${toe - 9}]\n---\n`

/** A horse's files by path. */
export const files: Readonly<Record<string, string>> = {
  'juno/horse.md': horseText,
  'juno/2026-05-10.md': visitText('2026-05-10'),
}

/** A horse of the yard page opened on its files and more. */
export function opened(more: Readonly<Record<string, string>> = {}, day: PlainDate = today): OpenHorse {
  const all = { ...files, ...more }
  const { casebook } = readCasebook(memoryFolder({ ...all, 'practice.md': practiceText }), today)
  const [horse] = casebook?.horses ?? []
  if (!casebook || !horse) throw new Error('the horse cannot be read')
  const knowledge = knowledgeOf(horse, casebook.practice, assess(horse, casebook.practice, today))
  const open = openHorse(
    { practiceFile: practiceText, asOf: today },
    { id: 'juno', files: all, pictures: [], knowledge },
    day,
  )
  if (open === null) throw new Error('the horse cannot be read')
  return open
}
