/** Readings of a table as the text of case files. */
import { grouped } from '../../casebook/grouped.ts'
import type { TableReading } from '../../casebook/table.ts'
import type { Foot } from '../../hoof/feet.ts'
import { feet } from '../../hoof/feet.ts'
import { measureIds, measures } from '../../hoof/measures.ts'
import type { Words } from '../words/index.ts'
import type { StarterFile } from './casebook.ts'
import { startHorse } from './horse.ts'

/**
 * One file a visit, and a horse.md for each horse; which of them may be written is for the caller to say.
 * Values are written as the table has them, a length with the unit that it came in.
 */
export function importedFiles(
  readings: readonly TableReading[],
  words: Words['starter'],
): readonly (StarterFile & { readonly horse: string })[] {
  const visits = grouped(readings, ({ horse, visit }) => `${horse}/${visit}.md`)
  const horses = grouped(readings, ({ horse }) => horse)
  const profiles = [...horses].map(([horse, of]) => {
    const started = of.map(({ date }) => date).toSorted()[0] ?? ''
    return { horse, path: `${horse}/horse.md`, text: startHorse(of[0]?.horseName ?? horse, started, words) }
  })
  const files = [...visits].map(([path, of]) => ({ horse: of[0]?.horse ?? '', path, text: visitText(of) }))
  return [...profiles, ...files].toSorted((a, b) => (a.path < b.path ? -1 : 1))
}

function visitText(readings: readonly TableReading[]): string {
  const stages = (['before', 'after'] as const).flatMap((stage) => {
    const here = readings.filter((reading) => reading.stage === stage)
    if (here.length === 0) return []
    const lines = measureIds.flatMap((id) => {
      const row = here.filter(({ measure }) => measure === id)
      return row.length === 0
        ? []
        : [`  ${measures[id].name}: {${feet.flatMap((foot) => entry(row, foot)).join(', ')}}`]
    })
    return [`${stage}:`, ...lines]
  })
  return ['---', `date: ${readings[0]?.date ?? ''}`, ...stages, '---', ''].join('\n')
}

function entry(row: readonly TableReading[], foot: Foot): string[] {
  const reading = row.find((one) => one.foot === foot)
  if (reading === undefined) return []
  return [`${foot}: ${reading.written}`]
}
