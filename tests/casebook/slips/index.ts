/** All slips, in one list. */
import { drafts, people, problems, together } from './case.ts'
import { findings, names, wordsLost } from './findings.ts'
import { dates, fences, form } from './form.ts'
import { fileNames, horses, photos, practices } from './horses.ts'
import { exchanged, readings } from './readings.ts'
import type { Slip } from './slip.ts'

export const slips: readonly Slip[] = [
  ...readings,
  ...names,
  ...findings,
  ...wordsLost,
  ...form,
  ...fences,
  ...dates,
  ...horses,
  ...practices,
  ...photos,
  ...fileNames,
  ...exchanged,
  ...problems,
  ...people,
  ...drafts,
  ...together,
]
