/** Rows of the signs in `src/trend/cautions/body.ts`. */
import { diagnosis, findings, type SignRow } from './sign-row.ts'

export const bodyRows: readonly SignRow[] = [
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
]
