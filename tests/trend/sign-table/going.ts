/** Rows of the signs in `src/trend/cautions/going.ts`. */
import { comfort, type SignRow } from './sign-row.ts'

export const goingRows: readonly SignRow[] = [
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
    code: 'obel',
    level: 'stop',
    holds: true,
    wide: true,
    raises: [comfort({ obel: 1 })],
    shortOf: [[comfort({ obel: 0 })]],
    ends: [comfort({ obel: 0 })],
    keeps: [comfort({ lameness: { LF: 0 } }), comfort({ obel: 0, painkillers: '2026-02-08' })],
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
]
