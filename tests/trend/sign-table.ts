/**
 * Every danger sign, as agreed: what raises it, at which level, what stops just short of it, and what ends it.
 * Shared by the tests of the engine and of the pages.
 */
import type { CautionCode, CautionLevel } from '../../src/trend/assessment.ts'
import type { HorseSketch, VisitSketch } from './build-horse.ts'

export type Sketch = Omit<VisitSketch, 'date'>

export interface SignRow {
  readonly code: CautionCode
  readonly level: CautionLevel
  /** Whether the feet have no plan: every stop, and the others that the table names. */
  readonly holds?: true
  readonly raises: readonly Sketch[]
  readonly shortOf: readonly (readonly Sketch[])[]
  /** Each ends it, a visit later. */
  readonly ends: readonly Sketch[]
  /** None of them ends it. */
  readonly keeps?: readonly Sketch[]
  readonly horse?: Omit<HorseSketch, 'visits'>
  /** About a pair or the whole horse. */
  readonly wide?: true
}

const findings = (...all: string[]): Sketch => ({ findings: all })
const comfort = (of: NonNullable<Sketch['comfort']>): Sketch => ({ comfort: of })

/** A finding that counts at any grade. */
const found = (
  code: CautionCode,
  level: CautionLevel,
  what: string,
  place: string,
  more: Partial<SignRow> = {},
): SignRow => ({
  code,
  level,
  ...(level === 'stop' ? { holds: true } : {}),
  raises: [findings(`LF ${what}, ${place}, 1`)],
  shortOf: [[findings(`LF ${what}, ${place}, 0`)]],
  ends: [findings(`LF ${what}, ${place}, 0`)],
  keeps: [findings('LF flare, toe, 1'), findings(`RF ${what}, ${place}, 0`)],
  ...more,
})

/** A finding that counts at grade 3. */
const severe = (code: CautionCode, what: string, place: string): SignRow => ({
  code,
  level: 'vet',
  raises: [findings(`LF ${what}, ${place}, 3`)],
  shortOf: [[findings(`LF ${what}, ${place}, 2`)]],
  ends: [findings(`LF ${what}, ${place}, 2`), findings(`LF ${what}, ${place}, 0`)],
  keeps: [findings('LF flare, toe, 1'), findings(`LF ${what}, ${place}, 3`)],
})

const diagnosis = (text: string) => ({
  vet: {
    involved: true,
    diagnosis: text,
    name: null,
    phone: null,
    date: '2026-01-02',
    feet: ['LF' as const],
  },
})

export const signTable: readonly SignRow[] = [
  found('abscess', 'stop', 'abscess', 'sole'),
  found('drainage', 'stop', 'drainage', 'toe'),
  found('fresh-blood-sole-toe', 'stop', 'fresh blood', 'sole'),
  found('fresh-blood-sole-toe', 'stop', 'fresh blood', 'medial toe'),
  found('fresh-blood-elsewhere', 'vet', 'fresh blood', 'frog'),
  ...['sole', 'frog', 'medial groove', 'central sulcus', 'bars', 'white line', 'whole foot'].map((place) =>
    found('puncture', 'stop', 'puncture', place),
  ),
  ...['heel bulbs', 'coronet', 'pastern', 'lateral quarter'].map((place) =>
    found('puncture-elsewhere', 'vet', 'puncture', place),
  ),
  {
    code: 'nail-in-white-line-tender',
    level: 'vet',
    raises: [findings('LF nail in white line, medial quarter, 1', 'LF tenderness, sole, 1')],
    shortOf: [
      [findings('LF nail in white line, medial quarter, 1')],
      [findings('LF nail in white line, medial quarter, 1', 'RF tenderness, sole, 1')],
    ],
    ends: [findings('LF nail in white line, medial quarter, 0'), findings('LF tenderness, sole, 0')],
  },
  {
    code: 'nail-in-white-line-tender',
    level: 'vet',
    raises: [findings('LF nail hole, white line, 1', 'LF tenderness, sole, 1')],
    shortOf: [[findings('LF nail hole, lateral quarter, 1', 'LF tenderness, sole, 1')]],
    ends: [findings('LF nail hole, white line, 0')],
  },
  {
    code: 'pulse-bounding',
    level: 'stop',
    holds: true,
    raises: [comfort({ digitalPulse: { LF: 3 } })],
    shortOf: [[comfort({ digitalPulse: { LF: 2 } })]],
    ends: [comfort({ digitalPulse: { LF: 1 } }), comfort({ digitalPulse: { LF: 0 } })],
    keeps: [comfort({ digitalPulse: { LF: 2 } }), comfort({ digitalPulse: { RF: 0 } })],
  },
  ...(['LF RF', 'LH RH'] as const).map((pair): SignRow => {
    const [left, right] = pair.split(' ') as ['LF', 'RF']
    return {
      code: 'pulse-pair',
      level: 'stop',
      holds: true,
      wide: true,
      raises: [comfort({ digitalPulse: { [left]: 2, [right]: 2 } })],
      shortOf: [
        [comfort({ digitalPulse: { LF: 2, LH: 2 } })],
        [comfort({ digitalPulse: { [left]: 2, [right]: 1 } })],
      ],
      ends: [comfort({ digitalPulse: { [left]: 1, [right]: 0 } })],
      keeps: [comfort({ digitalPulse: { [left]: 2 } }), comfort({ digitalPulse: { [left]: 1 } })],
    }
  }),
  {
    code: 'pulse-clear',
    level: 'vet',
    raises: [comfort({ digitalPulse: { LF: 2 } })],
    shortOf: [[comfort({ digitalPulse: { LF: 1 } })]],
    ends: [comfort({ digitalPulse: { LF: 1 } })],
  },
  {
    code: 'heat-with-lameness',
    level: 'stop',
    holds: true,
    raises: [{ ...findings('LF heat, whole foot, 1'), ...comfort({ lameness: { LF: 1 } }) }],
    shortOf: [
      [findings('LF heat, whole foot, 1')],
      [{ ...findings('LF heat, whole foot, 1'), ...comfort({ lameness: { LF: 0, RF: 1 } }) }],
    ],
    ends: [findings('LF heat, whole foot, 0'), comfort({ lameness: { LF: 0 } })],
    keeps: [comfort({ lameness: { RF: 0 } }), comfort({ lameness: { LF: 0 }, painkillers: '2026-02-08' })],
  },
  {
    code: 'heat-with-pulse',
    level: 'stop',
    holds: true,
    raises: [{ ...findings('LF heat, toe, 1'), ...comfort({ digitalPulse: { LF: 2 } }) }],
    shortOf: [[{ ...findings('LF heat, toe, 1'), ...comfort({ digitalPulse: { LF: 1 } }) }]],
    ends: [findings('LF heat, toe, 0'), comfort({ digitalPulse: { LF: 1 } })],
  },
  {
    code: 'heat-severe',
    level: 'stop',
    holds: true,
    raises: [findings('LF heat, whole foot, 3')],
    shortOf: [[findings('LF heat, whole foot, 2')]],
    ends: [findings('LF heat, whole foot, 0')],
    keeps: [findings('LF heat, whole foot, 1')],
  },
  found('heat', 'vet', 'heat', 'whole foot'),
  {
    code: 'obel',
    level: 'stop',
    holds: true,
    wide: true,
    raises: [comfort({ obel: 1 })],
    shortOf: [[comfort({ obel: 0 })]],
    ends: [comfort({ obel: 0 })],
    keeps: [comfort({ lameness: { LF: 0 } }), comfort({ obel: 0, painkillers: '2026-02-08' })],
  },
  ...[
    'acute laminitis',
    'chronic founder',
    'rotation of 5 degrees',
    'sinking',
    'abscess',
    'infection',
    'fracture of the coffin bone',
  ].map(
    (text): SignRow => ({
      code: 'vet-diagnosis',
      level: 'stop',
      holds: true,
      horse: diagnosis(text),
      raises: [{}],
      shortOf: [],
      ends: [],
      keeps: [findings('LF flare, toe, 0')],
    }),
  ),
  {
    code: 'vet-diagnosis-past',
    level: 'mind',
    horse: diagnosis('old fracture, healed'),
    raises: [{}],
    shortOf: [],
    ends: [],
  },
  {
    code: 'leaning-back-sore',
    level: 'stop',
    holds: true,
    wide: true,
    raises: [{ stance: { LF: 'leaning back' }, ...comfort({ digitalPulse: { LF: 2 } }) }],
    shortOf: [
      [{ stance: { LF: 'leaning back' } }],
      [{ stance: { LF: 'camped under' }, ...comfort({ digitalPulse: { LF: 2 } }) }],
    ],
    ends: [{ stance: { LF: 'straight' } }, comfort({ digitalPulse: { LF: 1 } })],
    keeps: [{ stance: { RF: 'straight' } }],
  },
  {
    code: 'leaning-back',
    level: 'vet',
    wide: true,
    raises: [{ stance: { LF: 'leaning back' } }],
    shortOf: [[{ stance: { LF: 'camped under' } }]],
    ends: [{ stance: { LF: 'straight' } }],
  },
  found('coronet-depression', 'stop', 'coronet depression', 'coronet'),
  found('sole-prolapse', 'stop', 'sole prolapse', 'sole'),
  ...[4, 5].map(
    (grade): SignRow => ({
      code: 'lameness-severe',
      level: 'stop',
      holds: true,
      raises: [comfort({ lameness: { LF: grade } })],
      shortOf: [[comfort({ lameness: { LF: 3 } })]],
      ends: [comfort({ lameness: { LF: 0 } }), comfort({ lameness: { LF: 0 }, lamenessBy: 'vet' })],
      keeps: [
        comfort({ lameness: { LF: 2 } }),
        comfort({ lameness: { RF: 0 } }),
        comfort({ lameness: { LF: 0 }, lamenessBy: 'owner' }),
        comfort({ lameness: { LF: 0 }, painkillers: '2026-02-08' }),
      ],
    }),
  ),
  {
    code: 'lameness-marked',
    level: 'vet',
    holds: true,
    raises: [comfort({ lameness: { LF: 3 } })],
    shortOf: [[comfort({ lameness: { LF: 2 } })]],
    ends: [comfort({ lameness: { LF: 2 } })],
    keeps: [comfort({ lameness: { LF: 1 }, painkillers: '2026-02-08' })],
  },
  {
    code: 'lameness-moderate',
    level: 'vet',
    raises: [comfort({ lameness: { LF: 2 } })],
    shortOf: [[comfort({ lameness: { LF: 1 } })]],
    ends: [comfort({ lameness: { LF: 1 } })],
  },
  {
    code: 'lameness-rising',
    level: 'vet',
    raises: [comfort({ lameness: { LF: 0 } }), {}, comfort({ lameness: { LF: 1 } })],
    shortOf: [
      [comfort({ lameness: { LF: 1 } }), comfort({ lameness: { LF: 1 } })],
      [comfort({ lameness: { LF: 1 } })],
    ],
    ends: [comfort({ lameness: { LF: 0 } })],
    keeps: [comfort({ lameness: { LF: 1 } })],
  },
  {
    code: 'unwilling-to-move',
    level: 'stop',
    holds: true,
    wide: true,
    raises: [comfort({ surfaces: { gravel: 'careful' } }), comfort({ surfaces: { gravel: 'unwilling' } })],
    shortOf: [[comfort({ surfaces: { gravel: 'careful', sand: 'easy' } })]],
    ends: [comfort({ surfaces: { gravel: 'easy' } })],
    keeps: [
      comfort({ surfaces: { sand: 'easy' } }),
      comfort({ surfaces: { gravel: 'short' } }),
      // Given the day before the visit.
      comfort({ surfaces: { gravel: 'easy' }, painkillers: '2026-03-15' }),
    ],
  },
  found('canker', 'vet', 'canker', 'frog'),
  found('keratoma', 'vet', 'keratoma', 'toe'),
  found('proud-flesh', 'vet', 'proud tissue', 'coronet'),
  found('swelling', 'vet', 'swelling', 'coronet'),
  found('growth', 'vet', 'growth', 'heel bulbs'),
  severe('separation-severe', 'wall separation', 'toe'),
  severe('white-line-severe', 'white line stretched', 'toe'),
  severe('white-line-disease-severe', 'white-line disease', 'toe'),
  severe('thrush-severe', 'thrush', 'frog'),
  severe('sulcus-split-deep', 'sulcus split', 'central sulcus'),
  severe('bruise-severe', 'bruise', 'sole'),
  severe('crack-severe', 'crack', 'toe'),
  severe('coronet-injury-severe', 'coronet injury', 'coronet'),
  {
    code: 'sulcus-split-deep',
    level: 'vet',
    raises: [findings('LF sulcus split, central sulcus, 2, runs deep into the bulbs')],
    shortOf: [[findings('LF sulcus split, central sulcus, 2')]],
    ends: [findings('LF sulcus split, central sulcus, 1')],
    keeps: [findings('LF sulcus split, central sulcus, 2')],
  },
  ...['bleeds at the coronet', 'moves when loaded', 'runs through the wall', 'full thickness'].map(
    (words): SignRow => ({
      code: 'crack-full-thickness',
      level: 'vet',
      raises: [findings(`LF crack, toe, 2, ${words}`)],
      shortOf: [
        [findings('LF crack, toe, 2, part thickness, does not move')],
        [findings('LF crack, toe, 2')],
      ],
      ends: [findings('LF crack, toe, 1'), findings('LF crack, toe, 0')],
      keeps: [findings('LF crack, toe, 2')],
    }),
  ),
  {
    code: 'tenderness',
    level: 'vet',
    raises: [findings('LF tenderness, sole, 3')],
    shortOf: [[findings('LF tenderness, sole, 2')]],
    ends: [findings('LF tenderness, sole, 2')],
  },
  {
    code: 'tenderness',
    level: 'vet',
    raises: [findings('LF tenderness, sole, 1', 'LF heat, sole, 1')],
    shortOf: [[findings('LF tenderness, sole, 1', 'RF heat, sole, 1')]],
    ends: [findings('LF tenderness, sole, 0'), findings('LF heat, sole, 0')],
  },
  {
    code: 'tenderness',
    level: 'vet',
    raises: [{ ...findings('LF tenderness, sole, 1'), ...comfort({ digitalPulse: { LF: 2 } }) }],
    shortOf: [[{ ...findings('LF tenderness, sole, 1'), ...comfort({ digitalPulse: { LF: 1 } }) }]],
    ends: [comfort({ digitalPulse: { LF: 1 } })],
  },
  {
    code: 'hoof-testers',
    level: 'vet',
    raises: [comfort({ hoofTesters: { LF: { place: 'toe', grade: 3 } } })],
    shortOf: [[comfort({ hoofTesters: { LF: { place: 'toe', grade: 2 } } })]],
    ends: [
      comfort({ hoofTesters: { LF: { place: 'toe', grade: 2 } } }),
      comfort({ hoofTesters: { LF: { place: 'whole foot', grade: 0 } } }),
    ],
    keeps: [comfort({ hoofTesters: { LF: { place: 'sole', grade: 0 } } })],
  },
  {
    code: 'sole-depth-critical',
    level: 'stop',
    holds: true,
    raises: [{ before: { 'sole-depth': 6.5 } }],
    shortOf: [[{ before: { 'sole-depth': 7 } }]],
    ends: [{ before: { 'sole-depth': 7 } }],
    keeps: [{ before: { 'sole-depth': 6.9 } }],
  },
  {
    code: 'sole-depth-low',
    level: 'vet',
    raises: [{ before: { 'sole-depth': 9.5 } }],
    shortOf: [[{ before: { 'sole-depth': 10 } }]],
    ends: [{ before: { 'sole-depth': 10 } }],
  },
  {
    code: 'sole-depth-falling',
    level: 'vet',
    raises: [{ before: { 'sole-depth': 15 } }, { before: { 'sole-depth': 11 } }],
    shortOf: [[{ before: { 'sole-depth': 15 } }, { before: { 'sole-depth': 11.1 } }]],
    ends: [{ before: { 'sole-depth': 14 } }],
  },
  {
    code: 'condition-low',
    level: 'vet',
    wide: true,
    raises: [{ body: { condition: 2 } }],
    shortOf: [[{ body: { condition: 2.5 } }]],
    ends: [{ body: { condition: 3 } }],
  },
  {
    code: 'condition-very-high',
    level: 'vet',
    wide: true,
    raises: [{ body: { condition: 8 } }],
    shortOf: [[{ body: { condition: 7.5 } }]],
    ends: [{ body: { condition: 7 } }],
  },
  {
    code: 'condition-high',
    level: 'mind',
    wide: true,
    raises: [{ body: { condition: 7 } }],
    shortOf: [[{ body: { condition: 6.5 } }]],
    ends: [{ body: { condition: 6 } }],
  },
  {
    code: 'crest-high',
    level: 'vet',
    wide: true,
    raises: [{ body: { crest: 3 } }],
    shortOf: [[{ body: { crest: 2 } }]],
    ends: [{ body: { crest: 2 } }],
  },
  {
    code: 'weight-loss',
    level: 'vet',
    wide: true,
    // Five weeks apart: 5 % a month are 28.7 kg of 500.
    raises: [{ body: { weightKg: 500 } }, { body: { weightKg: 470 } }],
    shortOf: [
      [{ body: { weightKg: 500 } }, { body: { weightKg: 472 } }],
      // 6 % of a small pony, within the error of the tape.
      [{ body: { weightKg: 200 } }, { body: { weightKg: 188 } }],
    ],
    ends: [{ body: { weightKg: 470 } }],
  },
  {
    code: 'tetanus-not-covered',
    level: 'mind',
    wide: true,
    raises: [findings('LF puncture, coronet, 1')],
    shortOf: [[findings('LF drainage, toe, 1')]],
    ends: [findings('LF puncture, coronet, 0')],
  },
  {
    code: 'tetanus-not-covered',
    level: 'mind',
    wide: true,
    horse: { tetanus: '2023-12-31' },
    raises: [findings('LF coronet injury, coronet, 1')],
    shortOf: [],
    ends: [findings('LF coronet injury, coronet, 0')],
  },
  {
    code: 'finding-worsening',
    level: 'vet',
    raises: [findings('LF flare, toe, 1'), findings('LF flare, toe, 2'), findings('LF flare, toe, 3')],
    shortOf: [
      [findings('LF flare, toe, 1'), findings('LF flare, toe, 2')],
      [findings('LF flare, toe, 1'), findings('LF flare, toe, 2'), findings('LF flare, toe, 2')],
      [findings('LF flare, toe, 1'), findings('RF flare, toe, 2'), findings('LF flare, toe, 3')],
    ],
    ends: [findings('LF flare, toe, 2')],
    keeps: [findings('LF flare, toe, 3')],
  },
  found('sole-flat', 'mind', 'flat sole', 'sole'),
  found('sole-thin', 'mind', 'thin sole', 'sole'),
  {
    code: 'sole-thin',
    level: 'mind',
    raises: [{ before: { 'sole-depth': 14 } }],
    shortOf: [[{ before: { 'sole-depth': 15 } }]],
    ends: [{ before: { 'sole-depth': 15 } }],
  },
  {
    code: 'sole-thin',
    level: 'mind',
    raises: [{ before: { 'groove-apex': 0 } }],
    shortOf: [[{ before: { 'groove-apex': 1 } }]],
    ends: [{ before: { 'groove-apex': 1 } }],
  },
  {
    code: 'toe-shortened-much',
    level: 'mind',
    raises: [{ before: { 'toe-length': 100 }, after: { 'toe-length': 89.5 } }],
    shortOf: [
      [{ before: { 'toe-length': 100 }, after: { 'toe-length': 90 } }],
      [{ before: { 'toe-length': 100 } }],
    ],
    ends: [{ before: { 'toe-length': 95 }, after: { 'toe-length': 90 } }],
  },
  {
    code: 'heels-lowered-much',
    level: 'mind',
    raises: [{ before: { 'heel-lateral': 40 }, after: { 'heel-lateral': 33.5 } }],
    shortOf: [[{ before: { 'heel-lateral': 40 }, after: { 'heel-lateral': 34 } }]],
    ends: [{ before: { 'heel-lateral': 36 }, after: { 'heel-lateral': 34 } }],
  },
  {
    code: 'toe-angle-changed-much',
    level: 'mind',
    raises: [{ before: { 'toe-angle': 46 }, after: { 'toe-angle': 50.5 } }],
    shortOf: [[{ before: { 'toe-angle': 46 }, after: { 'toe-angle': 50 } }]],
    ends: [{ before: { 'toe-angle': 50 }, after: { 'toe-angle': 51 } }],
  },
  {
    code: 'pair-uneven-after-trim',
    level: 'mind',
    wide: true,
    raises: [{ after: { 'toe-angle': { LH: 55, RH: 49 } } }],
    shortOf: [
      [{ after: { 'toe-angle': { LH: 55, RH: 50 } } }],
      [{ before: { 'toe-angle': { LH: 55, RH: 49 } } }],
    ],
    ends: [{ after: { 'toe-angle': { LH: 54, RH: 51 } } }],
  },
]
