/** The demo's horses and one of forty visits, as the editions for others are given them. */
import { readCasebook } from '../../src/casebook/read.ts'
import type { PlainDate } from '../../src/hoof/dates.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import { assess } from '../../src/trend/assess.ts'
import { diskFolder } from '../casebook/disk-folder.ts'
import { memoryFolder } from '../casebook/memory-folder.ts'
import { formatIn } from '../english.ts'
import { fortyVisits } from './forty-visits.ts'

export function demoInputs(asOf: PlainDate): readonly HorseInput[] {
  const demo = diskFolder('cases')
  const { casebook } = readCasebook(demo, asOf)
  const practiceFile = new TextDecoder().decode(demo.read('practice.md'))
  const hard = memoryFolder({ 'practice.md': practiceFile, ...fortyVisits('hard', 'tornby', 'Rowan') })
  const more = readCasebook(hard, asOf).casebook
  if (casebook === null || more === null) throw new Error('a casebook cannot be read')
  const { practice } = casebook
  return [...casebook.horses, ...more.horses].map((horse) => ({
    horse,
    practice,
    assessment: assess(horse, practice, asOf),
    pictures: new Map(),
    format: formatIn(practice.units),
  }))
}
