/** Measures, units and sides of the foot as they are said. */

import { spellingsOf } from '../../casebook/measure-names.ts'
import type { Place } from '../../hoof/findings.ts'
import { type MeasureId, measureIds } from '../../hoof/measures.ts'
import { combined, type Inward, type Measured, type Phrase, phrases } from './sense.ts'

export const sideWords: Readonly<Record<Inward, readonly string[]>> = {
  medial: ['inside', 'inner', 'medial', 'med'],
  lateral: ['outside', 'outer', 'lateral', 'lat'],
}

/** A groove, before the place at which its depth is read. */
const grooves: readonly string[] = [
  'groove at the',
  'grooves at the',
  'groove',
  'grooves',
  'collateral groove at the',
  'collateral grooves at the',
  'groove depth at the',
]

/** Other ways to name a measure; its own name goes without saying. */
const spoken: Partial<Record<MeasureId, readonly string[]>> = {
  'toe-length': [
    'toe lengths',
    'length of toe',
    'length of the toe',
    'length at the toe',
    'dorsal length',
    'dorsal wall length',
    'toelength',
    'toe wall',
  ],
  'toe-angle': [
    'toe angles',
    'hoof angle',
    'hoof angles',
    'dorsal angle',
    'front angle',
    'angle at the toe',
    'angle of the toe',
    'toeangle',
    'angle',
    'angles',
    'dorsal hoof wall angle',
  ],
  'heel-angle': [
    'heel angles',
    'angle at the heel',
    'angle of the heel',
    'angle at the heels',
    'heels angle',
    'angle of the heels',
    'heelangle',
  ],
  'pastern-angle': ['angle of the pastern', 'pastern angles'],
  'coronet-angle': ['hairline angle', 'coronary band angle', 'coronary angle', 'angle of the coronet'],
  'new-angle': ['new growth angle', 'angle of the new growth', 'new angles'],
  'new-length': ['new growth length', 'length of the new growth', 'length of new growth', 'new lengths'],
  'bearing-length': ['bearing surface', 'bearing surface length', 'ground length', 'bearing lengths'],
  width: [
    'hoof width',
    'foot width',
    'width of the foot',
    'width of the hoof',
    'widths',
    'widest part',
    'width across',
  ],
  breakover: ['break over', 'breakovers', 'frog tip to breakover', 'breakover distance'],
  'frog-length': ['length of the frog', 'length of frog', 'frog lengths'],
  'frog-width': ['width of the frog', 'width of frog', 'frog widths'],
  'groove-apex': combined(
    [...grooves, 'depth at the'],
    ['apex', 'frog tip', 'tip of the frog', 'point of the frog'],
  ).concat('apex groove'),
  'groove-heel': combined(grooves, ['heel', 'heels']).concat('heel groove'),
  'sulcus-depth': [
    'depth of the sulcus',
    'depth of the central sulcus',
    'central sulcus depth',
    'sulcus depths',
  ],
  'wall-thickness': [
    'thickness of the wall',
    'thickness of wall',
    'wall thickness at the toe',
    'wall thickness at toe',
  ],
  'white-line': ['white line width', 'width of the white line'],
  'coronet-girth': [
    'coronary girth',
    'girth at the coronet',
    'girth of the coronet',
    'girth at the hairline',
    'hairline girth',
    'round the coronet',
    'tape round the hairline',
  ],
  'sole-depth': [
    'depth of sole',
    'depth of the sole',
    'sole depths',
    'sole depth from the films',
    'sole depth on the films',
    'sole depth on the x ray',
  ],
}

/** A measure whose name is also a place, where it may stand as one. */
const placeOf: Partial<Record<MeasureId, Place>> = {
  'heel-medial': 'medial heel',
  'heel-lateral': 'lateral heel',
  'quarter-medial': 'medial quarter',
  'quarter-lateral': 'lateral quarter',
  'white-line': 'white line',
}

const measure = (words: readonly string[], of: Measured, place: Place | null = null) =>
  phrases(words, { kind: 'measure', measure: of, place })

function sided(part: 'heel' | 'quarter', side: Inward): readonly Phrase[] {
  const nouns =
    part === 'heel'
      ? ['heel', 'heels', 'heel height', 'heel length']
      : ['quarter', 'quarters', 'quarter height', 'quarter length']
  const words = sideWords[side]
  const names = [
    ...combined(words, nouns),
    ...combined([part], words),
    ...combined([`${part} on the`, `${part} on`, `${part}, on the`], words),
  ]
  return measure(names, `${part}-${side}`, `${side} ${part}`)
}

export const measurePhrases: readonly Phrase[] = [
  ...measureIds.flatMap((id) =>
    measure([...spellingsOf([id]), ...(spoken[id] ?? [])], id, placeOf[id] ?? null),
  ),
  ...measure(['toe', 'toes'], 'toe', 'toe'),
  ...measure(['white line at the toe', 'white line at toe'], 'white-line', 'toe'),
  ...measure(['heel'], 'heel'),
  ...measure(['heels', 'heel heights', 'heel lengths'], 'heels'),
  ...measure(['quarters', 'quarter heights'], 'quarters'),
  ...measure(['width'], 'any-width'),
  ...measure(['length'], 'any-length'),
  ...sided('heel', 'medial'),
  ...sided('heel', 'lateral'),
  ...sided('quarter', 'medial'),
  ...sided('quarter', 'lateral'),
  ...(['medial', 'lateral'] as const).flatMap((side) => phrases(sideWords[side], { kind: 'inward', side })),
]

export const unitPhrases: readonly Phrase[] = [
  ...phrases(
    [
      'mm',
      'mms',
      'millimetre',
      'millimetres',
      'millimeter',
      'millimeters',
      'mil',
      'mils',
      'mill',
      'milli',
      'millis',
    ],
    {
      kind: 'unit',
      unit: 'mm',
    },
  ),
  ...phrases(['cm', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters', 'centi', 'centis'], {
    kind: 'unit',
    unit: 'cm',
  }),
  ...phrases(['inch', 'inches', 'of an inch', 'an inch', '"', '″'], { kind: 'unit', unit: 'in' }),
  ...phrases(['degree', 'degrees', 'deg', '°'], { kind: 'unit', unit: 'deg' }),
  ...phrases(['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms', 'kilogramme', 'kilogrammes'], {
    kind: 'mass',
    unit: 'kg',
  }),
  ...phrases(['lb', 'lbs', 'pounds', 'pound'], { kind: 'mass', unit: 'lb' }),
]
