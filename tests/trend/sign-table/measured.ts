/** Rows of the signs in `src/trend/cautions/measured.ts`. */
import { found, type SignRow } from './sign-row.ts'

export const measuredRows: readonly SignRow[] = [
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
