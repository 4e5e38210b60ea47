/** Lists of words that several places offer. */
import { feet } from '../../../hoof/feet.ts'
import { findingAliases, findingMeanings, grades, places } from '../../../hoof/findings.ts'
import { derivedMeasures, measures } from '../../../hoof/measures.ts'
import { type ScaleName, scales } from '../../../hoof/scales.ts'
import type { LengthUnit } from '../../../hoof/units.ts'
import { type Around, type At, type Choice, type Shape, words } from './shape.ts'

const unitNames: Readonly<Record<LengthUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  in: 'inches, also 3 5/8 in',
}

export const notRead: Choice = { word: '~', about: 'not read' }

/** A unit once a number is there. */
const lengthUnits = (typed: string): readonly Choice[] =>
  /^\d[\d.,/ ]*$/.test(typed)
    ? Object.entries(unitNames).map(([unit, about]) => ({ word: `${typed.trim()} ${unit}`, about }))
    : []

const angleUnits = (typed: string): readonly Choice[] =>
  /^\d[\d.,]*\s*$/.test(typed) ? [{ word: `${typed.trim()} deg`, about: 'degrees' }] : []

export const lengthOf = ({ typed }: At): readonly Choice[] => lengthUnits(typed)
export const quantityOf = (kind: 'length' | 'angle', typed: string): readonly Choice[] =>
  kind === 'length' ? lengthUnits(typed) : angleUnits(typed)

export const scale = (name: ScaleName, about: string = scales[name].name): Shape =>
  words(about, ...scales[name].levels.map(({ level, meaning }) => ({ word: level, about: meaning })))

export const yesNo = (about: string): Shape => words(about, 'yes', 'no')

export const footNames: readonly Choice[] = feet.map((foot) => ({
  word: foot,
  about: { LF: 'left fore', RF: 'right fore', LH: 'left hind', RH: 'right hind' }[foot],
}))

export const placeWords: readonly Choice[] = places.map((word) => ({ word, about: null }))

export const gradeWords: readonly Choice[] = grades.map((name, grade) => ({
  word: String(grade),
  about: name,
}))

/** Findings of the trade and of the practice; those still open on the foot come first. */
export function findingWords({ practice, past }: Around, { foot }: At): readonly Choice[] {
  const open = new Set(
    past.at(-1)?.findings.flatMap((one) => (one.foot === foot && one.grade > 0 ? [one.what] : [])) ?? [],
  )
  const named = (word: string, about: string): Choice => ({ word, about, isLikely: open.has(word) })
  return [
    ...Object.entries(findingMeanings).map(([word, meaning]) => named(word, meaning)),
    ...Object.entries(practice.terms).map(([word, meaning]) => named(word, meaning)),
    ...Object.entries(findingAliases).map(([word, name]) => ({ word, about: `read as ${name}` })),
  ]
}

const footGroups: readonly Choice[] = [
  { word: 'fores', about: 'left fore and right fore' },
  { word: 'hinds', about: 'left hind and right hind' },
  { word: 'all', about: 'all four feet' },
]

/** The feet first, then what may be wrong with them; what is open there comes first. */
export function problemWords({ practice, past }: Around, { typed }: At): readonly Choice[] {
  const feetSaid = /^(LF|RF|LH|RH|fores|hinds|all)\s+/i.exec(typed)?.[1]
  const open = past.at(-1)?.findings.filter(({ grade }) => grade > 0) ?? []
  if (feetSaid === undefined) {
    const lines = open.map(({ foot, what, place }) => ({
      word: `${foot} ${what}, ${place}`,
      about: null,
      isLikely: true,
    }))
    return [...lines, ...footNames, ...footGroups]
  }
  const named = (word: string, about: string): Choice => ({ word: `${feetSaid} ${word}`, about })
  return [
    ...Object.values(measures).map(({ name, how }) => named(name, how)),
    ...Object.values(derivedMeasures).map(({ name, formula }) => named(name, formula)),
    ...[...Object.entries(findingMeanings), ...Object.entries(practice.terms)].map(([word, meaning]) =>
      named(word, meaning),
    ),
  ]
}

/** What is followed on the foot already. */
export function followedWords({ past }: Around, { foot }: At): readonly Choice[] {
  const seen = past.flatMap(({ growOut }) => growOut).filter((one) => one.foot === foot)
  const known = [...new Set(seen.map(({ what }) => what))].map((word) => ({
    word,
    about: 'followed already',
    isLikely: true,
  }))
  const usual = ['nail holes', 'ring', 'crack', 'old abscess'].filter(
    (word) => !known.some((one) => one.word === word),
  )
  return [...known, ...usual.map((word) => ({ word, about: null }))]
}

/** Places where this was seen before on this foot come first. */
export function placesSeen({ past }: Around, { foot, before }: At): readonly Choice[] {
  const what = before[0] ?? ''
  const seen = new Set(
    past
      .flatMap(({ findings, growOut }) => [...findings, ...growOut])
      .flatMap((one) => (one.foot === foot && one.what === what ? [one.place] : [])),
  )
  return placeWords.map((one) => ({ ...one, isLikely: seen.has(one.word) }))
}
