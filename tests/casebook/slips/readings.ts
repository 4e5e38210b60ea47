/** Slips in readings: forms, numbers, and rows, feet or stages exchanged. */
import { angle, inFile, inUnits, inVisit, type Slip, sound, toe, visit, visitPath } from './slip.ts'

export const readings: readonly Slip[] = [
  toe('[98, n/a, 96, 95]', 'value-form', '[98, ~, 96, 95]'),
  toe('[98, none, 96, 95]', 'value-form', '[98, ~, 96, 95]'),
  toe('[98, x, 96, 95]', 'value-form', '[98, ~, 96, 95]'),
  toe('[98, N/A, 96, 95]', 'value-form', '[98, ~, 96, 95]'),
  toe('[98, -, 96, 95]', 'block-form', '[98, ~, 96, 95]'),
  toe('{LF: 98, RF: -}', 'block-form', '{LF: 98, RF: ~}'),
  toe('[98, --, 96, 95]', 'value-form', '[98, ~, 96, 95]'),
  toe('[98,, 96, 95]', 'block-form', '[98, ~, 96, 95]'),
  toe('[98,, 96, 95, 94]', 'block-form', '[98, 96, 95, 94]'),
  toe('[98, 96, 95]', 'four-feet'),
  toe('[98, 96, 95, 94, 93]', 'four-feet'),
  toe('[98 96 95 94]', 'four-feet', '[98, 96, 95, 94]'),
  toe('[98; 96; 95; 94]', 'four-feet', '[98, 96, 95, 94]'),
  toe('[98/96/95/94]', 'four-feet', '[98, 96, 95, 94]'),
  toe('98, 96, 95, 94', 'value-form', '[98, 96, 95, 94]'),
  toe('98 96 95 94', 'value-form', '[98, 96, 95, 94]'),
  toe('(98, 96, 95, 94)', 'value-form', '[98, 96, 95, 94]'),
  toe('98/96/95/94', 'value-form', '[98, 96, 95, 94]'),
  toe('98', 'value-form'),
  toe('[98, ninety, 96, 95]', 'value-form'),
  toe('[9O, 96, 95, 94]', 'value-form', '[90, 96, 95, 94]'),
  toe('[l04, 96, 95, 94]', 'value-form', '[104, 96, 95, 94]'),
  toe('[98..5, 96, 95, 94]', 'value-form', '[98.5, 96, 95, 94]'),
  toe('[98., 96, 95, 94]', 'value-form', '[98, 96, 95, 94]'),
  toe('[98 mn, 96, 95, 94]', 'value-form', '[98 mm, 96, 95, 94]'),
  toe('[98?, 96, 95, 94]', 'value-form'),
  toe('[ca. 98, 96, 95, 94]', 'value-form'),
  toe('[96-98, 96, 95, 94]', 'value-form'),
  toe('[98 mm LF, 96, 95, 94]', 'value-form'),
  toe('[98 and 97 and 96, 96, 95, 94]', 'read-too-often'),
  toe('[98 and, 96, 95, 94]', 'value-form', '[98, 96, 95, 94]'),
  toe('[98 and ~, 96, 95, 94]', 'value-form', '[98, 96, 95, 94]'),
  toe('[98 and 9O, 96, 95, 94]', 'value-form', '[98 and 90, 96, 95, 94]'),
  toe('[98/97, 96, 95, 94]', 'value-form', '[98 and 97, 96, 95, 94]'),
  toe('[98 + 97, 96, 95, 94]', 'value-form', '[98 and 97, 96, 95, 94]'),
  toe('[[98, 97], 96, 95, 94]', 'value-form', '[98 and 97, 96, 95, 94]'),
  toe('[98 and 79, 96, 95, 94]', 'readings-apart'),
  toe('[9.8 and 97, 96, 95, 94]', 'reading-unlikely', '[9.8 cm and 97, 96, 95, 94]'),
  toe('{LF: 98 and 970}', 'reading-unlikely', '{LF: 98 and 97}'),
  toe('[9.8 and 9.7, 9.6, 9.5, 9.4]', 'reading-unlikely', '[9.8 cm and 9.7 cm, 9.6 cm, 9.5 cm, 9.4 cm]'),
  angle('[44 and 440, 46, 45, 47]', 'reading-impossible', '[44 and 44, 46, 45, 47]'),
  toe('[9.8, 9.6, 9.5, 9.4]', 'reading-unlikely', '[9.8 cm, 9.6 cm, 9.5 cm, 9.4 cm]'),
  toe('[9.8, 96, 95, 94]', 'reading-unlikely', '[9.8 cm, 96, 95, 94]'),
  toe('[3.75, 96, 95, 94]', 'reading-unlikely', '[3.75 in, 96, 95, 94]'),
  toe('[5.5, 5.6, 5.4, 5.3]', 'reading-unlikely'),
  toe('[980, 96, 95, 94]', 'reading-unlikely', '[98, 96, 95, 94]'),
  toe('[1/4", 96, 95, 94]', 'reading-unlikely'),
  toe('[10,3 cm, 96, 95, 94]', 'four-feet', '[10.3 cm, 96, 95, 94]'),
  toe('[98,5, 96,5, 95,5, 94,5]', 'four-feet', '[98.5, 96.5, 95.5, 94.5]'),
  toe('[98,5,96,95,94]', 'four-feet'),
  toe('{LF: 10,3 cm, RF: 96}', 'decimal-comma', '{LF: 10.3 cm, RF: 96}'),
  toe('{LF: 98,5}', 'decimal-comma', '{LF: 98.5}'),
  toe('{LF:98, RF: 96}', 'foot-unknown', '{LF: 98, RF: 96}'),
  toe('{LF 98, RF: 96}', 'foot-unknown', '{LF: 98, RF: 96}'),
  toe('{FL: 98, RF: 96}', 'foot-unknown', '{LF: 98, RF: 96}'),
  toe('{L F: 98, RF: 96}', 'foot-unknown', '{LF: 98, RF: 96}'),
  toe('{front: 98, hind: 96}', 'foot-unknown'),
  toe('LF: 98, RF: 96', 'block-form', '{LF: 98, RF: 96}'),
  toe('{LF: 98, LF: 96}', 'key-twice'),
  toe('[-98, 96, 95, 94]', 'reading-impossible', '[98, 96, 95, 94]'),
  toe('[0, 96, 95, 94]', 'reading-impossible'),
  toe('[2000, 96, 95, 94]', 'reading-impossible'),
  toe('[98, 96, 95, 94] mm', 'block-form', '[98 mm, 96 mm, 95 mm, 94 mm]'),
  toe('[98, 96, 95, 94] wet', 'block-form', '[98, 96, 95, 94]  # wet'),
  toe('[98, 96, 95, 94', 'block-form', '[98, 96, 95, 94]'),
  toe('{LF: 98, RF: 96]', 'block-form', '{LF: 98, RF: 96}'),
  toe('98, 96, 95, 94]', 'value-form', '[98, 96, 95, 94]'),
  toe('', 'not-filled-in'),
  toe('[9.8, 9.6, 9.5, 98]', 'reading-unlikely', '[9.8, 9.6, 9.5, 98 mm]', inUnits('cm')),
  toe('[98, 96, 95, 94]', 'reading-impossible', '[98 mm, 96 mm, 95 mm, 94 mm]', inUnits('in')),
  toe('[3 5/8, 3 3/4, 3 5/8, 9.5]', 'reading-unlikely', '[3 5/8, 3 3/4, 3 5/8, 9.5 cm]', inUnits('in')),
  angle('[440, 45, 46, 47]', 'reading-impossible', '[44, 45, 46, 47]'),
  angle('[4.4, 45, 46, 47]', 'reading-unlikely', '[44, 45, 46, 47]'),
  angle('[44 degres, 45, 46, 47]', 'value-form', '[44 degrees, 45, 46, 47]'),
  angle('[44 mm, 45, 46, 47]', 'value-form'),
  angle('[12, 45, 46, 47]', 'reading-unlikely'),
  inVisit(
    'before:\n  toe angle: [98, 96, 95, 92]',
    'row-misnamed',
    'before:\n  toe length: [98, 96, 95, 92]',
  ),
  inVisit(
    'before:\n  toe length: [44, 45, 48, 47]',
    'row-misnamed',
    'before:\n  toe angle: [44, 45, 48, 47]',
  ),
  inVisit(
    'before:\n  toe length: [44, 45, 48, 47]\n  toe angle: [98, 96, 95, 92]',
    'rows-exchanged',
    'before:\n  toe angle: [44, 45, 48, 47]\n  toe length: [98, 96, 95, 92]',
  ),
  inVisit(
    'before:\n  toe length: [52, 53, 54, 55]\n  toe angle: [98, 96, 95, 92]',
    'rows-exchanged',
    'before:\n  toe angle: [52, 53, 54, 55]\n  toe length: [98, 96, 95, 92]',
  ),
  inVisit(
    'before:\n  toe length: [44°, 45°, 48°, 47°]\n  toe angle: [98 mm, 96 mm, 95 mm, 92 mm]',
    'rows-exchanged',
    'before:\n  toe angle: [44°, 45°, 48°, 47°]\n  toe length: [98 mm, 96 mm, 95 mm, 92 mm]',
  ),
  inVisit('before:\n  toe length: [88, 88, 88, 88]\n  toe angle: [50, 50, 50, 50]', 'feet-copied'),
]

/** The visit before, against which exchanged rows and feet show. */
const earlier = visit(
  'after:\n  toe length: [84, 86, 78, 79]\n  toe angle: [47, 50, 55, 57]\n  heel angle: [45, 47, 52, 54]\n  heel medial: [30, 32, 27, 28]\n  heel lateral: [31, 33, 26, 29]\nbody: {weight: 505 kg}\ngrow-out:\n  LF:\n    - nail holes, toe, 30 mm',
)
const withHistory = inFile(visitPath, visit, { ...sound, 'juno/2026-01-12.md': earlier })
const rows = (lines: Readonly<Record<string, string>>, stage = 'before') =>
  `${stage}:\n${Object.entries(lines)
    .map(([name, values]) => `  ${name}: [${values}]`)
    .join('\n')}`

const good = {
  'toe length': '91, 93, 84, 85',
  'toe angle': '46, 49, 54, 56',
  'heel angle': '44, 46, 51, 53',
  'heel medial': '33, 35, 30, 31',
  'heel lateral': '34, 36, 29, 32',
}
const after = {
  'toe length': '84, 86, 78, 79',
  'toe angle': '47, 50, 55, 57',
  'heel medial': '30, 31, 27, 28',
}

export const exchanged: readonly Slip[] = [
  withHistory(
    rows({ ...good, 'toe length': '9.1, 93, 84, 85' }),
    'reading-unlikely',
    rows({ ...good, 'toe length': '9.1 cm, 93, 84, 85' }),
  ),
  withHistory(
    rows({ ...good, 'toe length': '910, 93, 84, 85' }),
    'reading-unlikely',
    rows({ ...good, 'toe length': '91, 93, 84, 85' }),
  ),
  withHistory(
    rows({ ...good, 'heel angle': '33, 35, 30, 31', 'heel medial': '44, 46, 51, 53' }),
    'rows-exchanged',
    rows(good).replace(
      'heel angle: [44, 46, 51, 53]\n  heel medial: [33, 35, 30, 31]',
      'heel medial: [33, 35, 30, 31]\n  heel angle: [44, 46, 51, 53]',
    ),
  ),
  withHistory(
    rows({
      'toe length': '84, 85, 91, 93',
      'toe angle': '54, 56, 46, 49',
      'heel angle': '51, 53, 44, 46',
      'heel medial': '30, 31, 33, 35',
      'heel lateral': '29, 32, 34, 36',
    }),
    'feet-swapped',
    rows(good),
  ),
  withHistory(rows({ ...good, 'toe angle': '54, 56, 46, 49' }), 'feet-swapped', rows(good)),
  withHistory(
    `${rows(after)}\n${rows(good, 'after')}`,
    'stages-exchanged',
    `${rows(after, 'after')}\n${rows(good)}`,
  ),
  withHistory(
    rows({ ...good, 'toe length': '91, 93, 84, 58' }),
    'jump',
    rows({ ...good, 'toe length': '91, 93, 84, 85' }),
  ),
  withHistory(rows({ ...good, 'toe length': '124, 126, 118, 119' }), 'jump'),
  withHistory(rows({ ...good, 'toe angle': '62, 65, 70, 72' }), 'jump'),
  withHistory(`${rows(good)}\nbody: {weight: 55 kg}`, 'weight-unlikely'),
  withHistory(`${rows(good)}\nbody: {weight: 1050 kg}`, 'weight-jump'),
  withHistory(`${rows(good)}\nbody: {weight: 350 kg}`, 'weight-jump'),
  withHistory(
    `${rows(good)}\ngrow-out:\n  LF:\n    - nail hole, toe, 38 mm`,
    'feature-name',
    `${rows(good)}\ngrow-out:\n  LF:\n    - nail holes, toe, 38 mm`,
  ),
  withHistory(`${rows(good)}\ngrow-out:\n  LF:\n    - nail holes, toe, 15 mm`, 'feature-jump'),
]
