import type { Words } from '../words/index.ts'
import { casesWanted, type ToldCase } from './coarsen.ts'
import type { Band } from './profile.ts'

/** The patient as the case page tells it. */
export interface Patient {
  readonly facts: readonly { readonly name: string; readonly value: string }[]
  /** Why no closer. */
  readonly note: string
}

export function patientOf({ profile, alike }: ToldCase, words: Words['portfolio']): Patient {
  const word = <T>(value: T | null | 'not told', say: (value: T) => string) =>
    value === 'not told' ? null : value === null ? words.notSaid : say(value as T)
  const rows = [
    { name: words.patientKind, value: word(profile.kind, (kind) => words.kinds[kind]) },
    { name: words.patientSex, value: word(profile.sex, (sex) => words.sexes[sex]) },
    { name: words.patientAge, value: word(profile.age, (age) => words.ages[age]) },
    {
      name: words.patientHeight,
      value: word<Band>(profile.heightCm, ({ low, high }) => words.cm(low, high)),
    },
    {
      name: words.patientWeight,
      value: word<Band>(profile.weightKg, ({ low, high }) => words.kg(low, high)),
    },
  ]
  const told = rows.flatMap(({ name, value }) => (value === null ? [] : [{ name, value }]))
  const untold = rows.filter(({ value }) => value === null).map(({ name }) => name)
  return {
    note: alike < casesWanted ? words.patientWide : words.patientShared(casesWanted),
    facts: untold.length === 0 ? told : [...told, { name: words.notTold, value: words.notToldList(untold) }],
  }
}
