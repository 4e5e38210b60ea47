import type { Evidence } from './evidence.ts'

/**
 * What is read on a foot, as the design's table has it. Lengths in millimetres, angles in degrees.
 * `likely` is the range outside which a reading is doubted; `sd` is the repeatability of one reading;
 * `matters` the smallest change that matters in practice.
 */
export interface Measure {
  readonly id: MeasureId
  readonly name: string
  /** Where and how it is taken, one line. */
  readonly how: string
  readonly kind: 'length' | 'angle'
  readonly likely: readonly [number, number]
  readonly sd: number
  readonly sdEvidence: Evidence
  readonly matters: number
}

/** What follows from other readings; `formula` in words, `parts` the measures it is made of. */
export interface DerivedMeasure {
  readonly id: DerivedId
  readonly name: string
  readonly formula: string
  readonly reading: string
  readonly kind: 'length' | 'angle' | 'ratio' | 'index'
  readonly parts: readonly MeasureId[]
  readonly evidence: readonly Evidence[]
}

export const measureIds = [
  'toe-length',
  'toe-angle',
  'new-angle',
  'new-length',
  'heel-angle',
  'pastern-angle',
  'coronet-angle',
  'heel-medial',
  'heel-lateral',
  'quarter-medial',
  'quarter-lateral',
  'bearing-length',
  'width',
  'breakover',
  'frog-length',
  'frog-width',
  'groove-apex',
  'groove-heel',
  'sulcus-depth',
  'wall-thickness',
  'white-line',
  'coronet-girth',
  'sole-depth',
] as const
export type MeasureId = (typeof measureIds)[number]

/** Derived measures of one foot. `pair-mismatch` belongs to a pair and is carried by its left foot. */
export const derivedIds = [
  'axis-deviation',
  'heel-gap',
  'heel-balance',
  'heel-tilt',
  'toe-to-heel-ratio',
  'frog-ratio',
  'pair-mismatch',
  'toe-share',
  'load-index',
] as const
export type DerivedId = (typeof derivedIds)[number]
export type AnyMeasureId = MeasureId | DerivedId

const trade: Evidence = { mark: 'common practice' }

/**
 * What a measure is called on pages, in messages and in case files, where its id says too little. Case files and tables
 * that call it by its id are read as well.
 */
const plainNames: { readonly [Id in MeasureId]?: string } = {
  'new-angle': 'new growth angle',
  'new-length': 'new growth length',
  'groove-apex': 'groove depth at frog tip',
  'groove-heel': 'groove depth at heel',
}

const entry = (
  id: MeasureId,
  kind: Measure['kind'],
  how: string,
  likely: readonly [number, number],
  sd: number,
  matters: number,
  sdEvidence: Evidence = trade,
): Measure => ({
  id,
  name: plainNames[id] ?? id.replaceAll('-', ' '),
  kind,
  how,
  likely,
  sd,
  matters,
  sdEvidence,
})

/** The entered measures: design table, one line each. */
export const measures: Readonly<Record<MeasureId, Measure>> = Object.fromEntries(
  [
    entry('toe-length', 'length', 'front wall at the midline, hairline to ground edge', [50, 160], 2, 5),
    entry('toe-angle', 'angle', 'front wall to the ground, the lower straight part', [30, 75], 1.4, 2, {
      mark: 'published',
      source: 'malone',
      note: 'computed: standard errors of 0.57-0.61° for a difference within 11 horses give about 2.0° for a difference and 1.4° for one reading; horse and gauge together',
    }),
    entry('new-angle', 'angle', 'the steeper strip below the hairline, to the ground', [30, 80], 2, 2),
    entry(
      'new-length',
      'length',
      'the steeper strip, from the hairline down to where it ends',
      [3, 120],
      1.5,
      5,
    ),
    entry('heel-angle', 'angle', 'heel wall, along the tubules, to the ground', [15, 75], 2, 3),
    entry(
      'pastern-angle',
      'angle',
      'front of the pastern to the ground, horse standing square',
      [35, 75],
      2,
      3,
    ),
    entry('coronet-angle', 'angle', 'hairline to the ground, seen from the side', [5, 45], 2, 3),
    entry('heel-medial', 'length', 'inner heel wall at the buttress, hairline to ground', [10, 90], 1.5, 2),
    entry('heel-lateral', 'length', 'outer heel wall at the buttress, hairline to ground', [10, 90], 1.5, 2),
    entry('quarter-medial', 'length', 'inner wall at the widest part, hairline to ground', [25, 110], 1.5, 2),
    entry(
      'quarter-lateral',
      'length',
      'outer wall at the widest part, hairline to ground',
      [25, 110],
      1.5,
      2,
    ),
    entry('bearing-length', 'length', 'toe ground edge to the line of the heel buttresses', [70, 190], 2, 5),
    entry('width', 'length', 'widest part of the ground surface', [70, 190], 2, 3),
    entry('breakover', 'length', 'true frog tip to where the hoof rolls over at the toe', [10, 90], 2, 4),
    entry('frog-length', 'length', 'frog, apex to base', [30, 140], 2, 4),
    entry('frog-width', 'length', 'frog, widest at the base', [15, 100], 2, 4),
    entry(
      'groove-apex',
      'length',
      'depth of the collateral groove beside the frog tip, to a straight-edge across the foot',
      [0, 45],
      1,
      2,
    ),
    entry(
      'groove-heel',
      'length',
      'depth of the collateral groove at the heel, to a straight-edge across the foot',
      [0, 45],
      1,
      2,
    ),
    entry('sulcus-depth', 'length', 'depth of the central sulcus of the frog', [0, 40], 1.5, 3),
    entry('wall-thickness', 'length', 'hoof wall at the toe, ground surface', [3, 25], 1, 2),
    entry('white-line', 'length', 'width of the white line at the toe', [0, 25], 1, 2),
    entry('coronet-girth', 'length', 'tape round the hairline', [220, 520], 2, 5, {
      mark: 'published',
      source: 'tape',
      note: 'tape within 2 mm',
    }),
    entry('sole-depth', 'length', "from a vet's radiograph only", [2, 35], 1, 2),
  ].map((measure) => [measure.id, measure]),
) as Record<MeasureId, Measure>

export const derivedMeasures: Readonly<Record<DerivedId, DerivedMeasure>> = {
  'axis-deviation': {
    id: 'axis-deviation',
    name: 'axis deviation',
    kind: 'angle',
    formula: 'pastern angle - toe angle',
    reading: 'above 0 broken back, below 0 broken forward; within 3° called straight',
    parts: ['pastern-angle', 'toe-angle'],
    evidence: [
      { ...trade, note: 'the 3°' },
      { mark: 'published', source: 'turner', note: 'defines the fault, gives no degrees' },
    ],
  },
  'heel-gap': {
    id: 'heel-gap',
    name: 'toe-heel angle difference',
    kind: 'angle',
    formula: 'toe angle - heel angle',
    reading:
      '5° or more is underrun by one published definition, yet sound feet average about 8.7° in a later study: a remark, never an alarm',
    parts: ['toe-angle', 'heel-angle'],
    evidence: [
      { mark: 'published', source: 'turner' },
      { mark: 'second hand', source: 'dyson' },
    ],
  },
  'heel-balance': {
    id: 'heel-balance',
    name: 'heel balance',
    kind: 'length',
    formula: 'heel medial - heel lateral',
    reading:
      'above 0 the inner heel is the higher; wanted within 2 mm; 5 mm or more either way is the published disparity of sheared heels',
    parts: ['heel-medial', 'heel-lateral'],
    evidence: [
      { mark: 'published', source: 'turner', note: 'the 5 mm' },
      { ...trade, note: 'the 2 mm' },
    ],
  },
  'heel-tilt': {
    id: 'heel-tilt',
    name: 'heel tilt',
    kind: 'angle',
    formula: 'atan(heel balance / width)',
    reading: 'the sign says the high side: above 0 the inner',
    parts: ['heel-medial', 'heel-lateral', 'width'],
    evidence: [trade],
  },
  'toe-to-heel-ratio': {
    id: 'toe-to-heel-ratio',
    name: 'toe to heel ratio',
    kind: 'ratio',
    formula: 'toe length / mean heel length',
    reading: 'about 2 to 1, fore and hind',
    parts: ['toe-length', 'heel-medial', 'heel-lateral'],
    evidence: [{ mark: 'published', source: 'stachurska' }],
  },
  'frog-ratio': {
    id: 'frog-ratio',
    name: 'frog ratio',
    kind: 'ratio',
    formula: 'frog width / frog length',
    reading: 'below 0.67 contracted; others ask 0.70',
    parts: ['frog-width', 'frog-length'],
    evidence: [
      { mark: 'published', source: 'turner' },
      { mark: 'published', source: 'ogrady', note: 'the 0.70' },
    ],
  },
  'pair-mismatch': {
    id: 'pair-mismatch',
    name: 'left-right angle difference',
    kind: 'angle',
    formula: 'toe angle left - toe angle right',
    reading: '5° or more is called mismatched',
    parts: ['toe-angle'],
    evidence: [{ mark: 'from memory', source: 'turner', note: 'uncertain' }],
  },
  'toe-share': {
    id: 'toe-share',
    name: 'share ahead of frog tip',
    kind: 'ratio',
    formula: 'bearing length in front of the frog tip / bearing length',
    reading:
      'shown, no band; from gauge readings the breakover is taken for the part in front of the frog tip',
    parts: ['breakover', 'bearing-length'],
    evidence: [trade],
  },
  'load-index': {
    id: 'load-index',
    name: 'load index',
    kind: 'index',
    formula: 'weight (lb) x 12.56 / coronet girth (in) squared',
    reading: 'above 78 lb/in² (5.48 kg/cm²): small feet for the weight',
    parts: ['coronet-girth'],
    evidence: [
      { mark: 'from memory', source: 'turner', note: 'the formula' },
      { mark: 'published', source: 'turner', note: 'the limit' },
    ],
  },
}

export const isMeasureId = (id: string): id is MeasureId => Object.hasOwn(measures, id)
export const isDerivedId = (id: string): id is DerivedId => Object.hasOwn(derivedMeasures, id)
