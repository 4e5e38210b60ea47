/**
 * Slips of a tired writer, one a row: what was written, the code that names it, and what the likely fix makes of it, or
 * null where no fix can be sure. Every row is one slip in an otherwise sound casebook, so it must be told of once.
 */
import type { Files } from './apply-fix.ts'

export interface Slip {
  /** What was written, in a line. */
  readonly name: string
  readonly files: Files
  readonly code: string
  /** The casebook once the fix is applied; null where none is given. */
  readonly fixed: Files | null
}

const practice = (block = 'practice: Slow Hoof Practice\nowners: {abel: {name: Abel Moor}}') =>
  `---\n${block}\n---\n`
const horse = (block = 'name: Juno\nowner: abel') => `---\n${block}\n---\n`
const visitPath = 'juno/2026-02-16.md'
const rest = 'stance: [toe-out, straight, toe-out, straight]'
const visit = (block: string) => `---\n${block}\n${rest}\n---\n`
const sound: Files = {
  'practice.md': practice(),
  'juno/horse.md': horse(),
  'juno/2026-01-05.md': visit('footing: hard'),
  'juno/photos/LF-side.jpg': 'x',
}

const oneLine = (text: string) => text.replaceAll('\n', ' / ')

/** A slip in one file of the casebook. */
const inFile =
  (path: string, of: (block: string) => string, others: Files = sound) =>
  (written: string, code: string, fixed: string | null = null): Slip => ({
    name: oneLine(written),
    files: { ...others, [path]: of(written) },
    code,
    fixed: fixed === null ? null : { ...others, [path]: of(fixed) },
  })

const inVisit = inFile(visitPath, visit)
const raw = inFile(visitPath, (text) => text)
const inHorse = inFile('juno/horse.md', (line) => horse(`name: Juno\nowner: abel\n${line}`))
const wholeHorse = inFile('juno/horse.md', horse)
const inPractice = inFile('practice.md', (line) =>
  practice(`practice: Slow Hoof Practice\nowners: {abel: {name: Abel Moor}}\n${line}`),
)
const wholePractice = inFile('practice.md', practice)
/** A practice that works in inches, or centimetres. */
const inUnits = (units: string) =>
  inFile(visitPath, visit, {
    ...sound,
    'practice.md': practice(
      `practice: Slow Hoof Practice\nunits: ${units}\nowners: {abel: {name: Abel Moor}}`,
    ),
  })

const row = (
  name: string,
  path: string,
  code: string,
  fixed: Files | null,
  text = visit('footing: soft'),
): Slip => ({
  name,
  files: { ...sound, [path]: text },
  code,
  fixed,
})
/** A file of that name beside the sound ones, and the name that it should have. */
const named = (path: string, code: string, to: string | null, text = visit('footing: soft')): Slip =>
  row(path, path, code, to === null ? null : { ...sound, [to]: text }, text)

const toe = (values: string, code: string, fixed: string | null = null, use = inVisit): Slip =>
  use(`before:\n  toe length: ${values}`, code, fixed === null ? null : `before:\n  toe length: ${fixed}`)
const angle = (values: string, code: string, fixed: string | null = null): Slip =>
  inVisit(`before:\n  toe angle: ${values}`, code, fixed === null ? null : `before:\n  toe angle: ${fixed}`)
const finding = (line: string, code: string, fixed: string | null = null): Slip =>
  inVisit(`findings:\n  LF:\n    - ${line}`, code, fixed === null ? null : `findings:\n  LF:\n    - ${fixed}`)
const key = (line: string, code: string, fixed: string | null = null): Slip => inVisit(line, code, fixed)

const readings: readonly Slip[] = [
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

const names: readonly Slip[] = [
  ...(
    [
      ['toe lenght', 'toe length'],
      ['toelength', 'toe length'],
      ['heel medail', 'heel medial'],
      ['heel latral', 'heel lateral'],
    ] as const
  ).map(([wrong, right]) =>
    inVisit(
      `before:\n  ${wrong}: [58, 56, 55, 54]`,
      'measure-unknown',
      `before:\n  ${right}: [58, 56, 55, 54]`,
    ),
  ),
  inVisit('before:\n  length: [98, 96, 95, 94]', 'measure-unknown'),
  inVisit('before:\n  heel: [38, 36, 35, 34]', 'measure-unknown'),
  inVisit('before:\n  angle: [48, 46, 45, 44]', 'measure-unknown'),
  inVisit(
    'before:\n  toe angel: [48, 46, 45, 44]',
    'measure-unknown',
    'before:\n  toe angle: [48, 46, 45, 44]',
  ),
  inVisit('before:\n  heel balance: [1, 2, 1, 2]', 'measure-derived'),
  inVisit('before:\n  toe length: [98, 96, 95, 94]\n  toe lenght: [97, 96, 95, 94]', 'measure-unknown'),
  inVisit('before:\n  toe length: [98, 96, 95, 94]\n  Toe Length: [97, 96, 95, 94]', 'key-twice'),
  inVisit('before:\n  toe length: [98, 96, 95, 94]\n  toe length: [97, 96, 95, 94]', 'key-twice'),
  key('footng: soft', 'key-unknown', 'footing: soft'),
  key('befor: {toe length: [98, 96, 95, 94]}', 'key-unknown', 'before: {toe length: [98, 96, 95, 94]}'),
  key('afer: {toe length: [98, 96, 95, 94]}', 'key-unknown', 'after: {toe length: [98, 96, 95, 94]}'),
  key('finding: {LF: [flare, toe, 2]}', 'key-unknown', 'findings: {LF: [flare, toe, 2]}'),
  key('notes: went well', 'key-unknown'),
  key('toe length: [98, 96, 95, 94]', 'key-unknown'),
  key('next: in 5 weeks', 'key-unknown', 'next visit: in 5 weeks'),
  key('nextvisit: in 5 weeks', 'key-unknown', 'next visit: in 5 weeks'),
  key(
    'comfort: {landing: [heal, flat, flat, flat]}',
    'value-form',
    'comfort: {landing: [heel, flat, flat, flat]}',
  ),
  key('comfort: {landing: [toes first, flat, flat, flat]}', 'value-form'),
  key('comfort: {surfaces: {stones: sore}}', 'value-form'),
  key('comfort: {surfaces: {stones: easey}}', 'value-form', 'comfort: {surfaces: {stones: easy}}'),
  key('comfort: {digital pulse: [1, strong, 1, 0]}', 'value-form'),
  key(
    'comfort: {digital pulse: [1, boundng, 1, 0]}',
    'value-form',
    'comfort: {digital pulse: [1, bounding, 1, 0]}',
  ),
  key('comfort: {digital pulse: [1, 4, 1, 0]}', 'grade-impossible'),
  key('comfort: {lameness: {LF: 2/5, by: vet}}', 'value-form', 'comfort: {lameness: {LF: 2, by: vet}}'),
  key('comfort: {lameness: {LF: 1-2, by: vet}}', 'value-form'),
  key('comfort: {lameness: {LF: two, by: vet}}', 'value-form', 'comfort: {lameness: {LF: 2, by: vet}}'),
  key('comfort: {lameness: {LF: 1.5, by: vet}}', 'grade-impossible'),
  key('comfort: {lameness: {LF: grade 2, by: vet}}', 'value-form', 'comfort: {lameness: {LF: 2, by: vet}}'),
  key('body: {condition: fat}', 'value-form'),
  key('body: {condition: 10}', 'grade-impossible'),
  key('body: {condition: 6, cress: 2}', 'key-unknown', 'body: {condition: 6, crest: 2}'),
  key('body: {weight:505 kg, condition: 6}', 'key-unknown', 'body: {weight: 505 kg, condition: 6}'),
  key('body: {weight: 505, condition: 6}', 'value-form', 'body: {weight: 505 kg, condition: 6}'),
  key('body: {weight: 1100, condition: 6}', 'value-form'),
  key('body: {weight: 47 kg}', 'weight-unlikely'),
  key('body: {weight: 5050 kg}', 'weight-unlikely'),
  key('body: {weight: heavy}', 'value-form'),
  inUnits('in')('body: {weight: 505}', 'value-form'),
]

const findings: readonly Slip[] = [
  finding('flare,, medial quarter, 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('separation, toe 2, opened about 5 mm', 'finding-form', 'separation, toe, 2, opened about 5 mm'),
  finding('flar,e medial quarter, 2', 'finding-form'),
  finding('thrush, 2', 'finding-form'),
  finding('thrush, frog', 'finding-form'),
  finding('thrush', 'finding-form'),
  finding('thrush, 2, smelly', 'finding-form'),
  finding('flare medial quarter 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('flare, medial quarter 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('flare medial quarter, 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('flare; medial quarter; 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('flare - medial quarter - 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('flare, 2, medial quarter', 'finding-form', 'flare, medial quarter, 2'),
  finding('medial quarter, flare, 2', 'finding-form', 'flare, medial quarter, 2'),
  finding('2, flare, medial quarter', 'finding-form', 'flare, medial quarter, 2'),
  finding('flare: medial quarter, 2', 'value-form', 'flare, medial quarter, 2'),
  finding('flair, medial quarter, 2', 'finding-unknown', 'flare, medial quarter, 2'),
  finding('seperation, toe, 2', 'finding-unknown', 'separation, toe, 2'),
  finding('thrsh, frog, 2', 'finding-unknown', 'thrush, frog, 2'),
  finding('gremlins, toe, 2', 'finding-unknown'),
  finding('LF flare, toe, 2', 'finding-unknown'),
  finding('LH flare, toe, 2', 'finding-unknown'),
  finding('flare, quarter, 2', 'place-unknown'),
  finding('flare, heel, 2', 'place-unknown'),
  finding('flare, quarters, 2', 'place-unknown'),
  finding('flare, medial quartr, 2', 'place-unknown', 'flare, medial quarter, 2'),
  finding('thrush, central sulcas, 2', 'place-unknown', 'thrush, central sulcus, 2'),
  finding('flare, somewhere, 2', 'place-unknown'),
  finding('flare, toe, bad', 'grade-impossible'),
  finding('flare, toe, 1-2', 'grade-impossible'),
  finding('flare, toe, 1.5', 'grade-impossible'),
  finding('flare, toe, 4', 'grade-impossible'),
  finding('flare, toe, II', 'grade-impossible'),
  finding('flare, toe, medium', 'grade-impossible', 'flare, toe, moderate'),
  finding('flare, toe, slight', 'grade-impossible', 'flare, toe, mild'),
  finding('flare, toe, two', 'grade-impossible', 'flare, toe, 2'),
  finding('flare, toe, 2/3', 'grade-impossible', 'flare, toe, 2'),
  finding('flare, toe, sever', 'grade-impossible', 'flare, toe, severe'),
  finding('flare, toe, getting better', 'grade-impossible'),
  inVisit('findings:\n  LF:\n    - flare, toe, 2\n    - flare, toe, 2', 'written-twice'),
  inVisit('findings:\n  LF:\n    - flare, toe, 2\n    - flare, toe, 1', 'written-twice'),
  inVisit('findings:\n  LF:\n    - separation, toe, 2\n    - wall separation, toe, 2', 'written-twice'),
  inVisit(
    'findings:\n  LF:\n    - flare, toe, 2\n    crack, toe, 1',
    'block-form',
    'findings:\n  LF:\n    - flare, toe, 2\n    - crack, toe, 1',
  ),
  inVisit(
    'findings:\n  LF:\n    flare, toe, 2\n    - crack, toe, 1',
    'dash-missing',
    'findings:\n  LF:\n    - flare, toe, 2\n    - crack, toe, 1',
  ),
  inVisit(
    'findings:\n  LF:\n    - flare, toe, 2\n    -crack, toe, 1',
    'block-form',
    'findings:\n  LF:\n    - flare, toe, 2\n    - crack, toe, 1',
  ),
  inVisit(
    'findings:\n  LF:\n    - flare, toe, 2\n      crack, toe, 1',
    'dash-missing',
    'findings:\n  LF:\n    - flare, toe, 2\n    - crack, toe, 1',
  ),
  inVisit('findings:\n  LF\n    - flare, toe, 2', 'value-form', 'findings:\n  LF:\n    - flare, toe, 2'),
  inVisit('findings:\n  FL:\n    - flare, toe, 2', 'foot-unknown', 'findings:\n  LF:\n    - flare, toe, 2'),
  inVisit('findings:\n  fore:\n    - flare, toe, 2', 'foot-unknown'),
  inVisit('findings:\n  - flare, toe, 2', 'value-form'),
  inVisit('findings:\n  LF:', 'not-filled-in'),
  inVisit('grow-out:\n  LF:\n    - nail holes, toe', 'grow-out-form'),
  inVisit('grow-out:\n  LF:\n    - nail holes, 42 mm', 'grow-out-form'),
  inVisit('grow-out:\n  LF:\n    - nail holes, to, 42 mm', 'place-unknown'),
  inVisit('grow-out:\n  LF:\n    - nail holes, toe, far down', 'value-form'),
  inVisit('grow-out:\n  LF:\n    - nail holes, toe, 420 mm', 'distance-impossible'),
  inVisit('grow-out:\n  LF:\n    - nail holes, toe, 42 mm\n    - nail holes, toe, 44 mm', 'written-twice'),
]

const wordsLost: readonly Slip[] = [
  inVisit('care:\n  - Pick out LF #2 daily', 'words-cut', 'care:\n  - "Pick out LF #2 daily"'),
  inVisit(
    'care:\n  - Keep dry # even when it rains',
    'words-cut',
    'care:\n  - "Keep dry # even when it rains"',
  ),
  inVisit('care:\n  - LF: use bottle #3', 'words-cut', 'care:\n  - LF: "use bottle #3"'),
  inVisit('care:\n  - #2 bottle daily', 'words-cut'),
  key('footing: soft #2 field', 'words-cut', 'footing: "soft #2 field"'),
  key('footing: "soft" field', 'block-form', 'footing: \'"soft" field\''),
  finding('separation, toe, 2, opened #3 nail', 'words-cut', '"separation, toe, 2, opened #3 nail"'),
  finding('flare, toe, 2 #3 nail', 'words-cut'),
  inHorse('history:\n  - Shod until 2024 #4 shoes', 'words-cut', 'history:\n  - "Shod until 2024 #4 shoes"'),
  key(
    'photos: [{file: photos/LF-side.jpg, caption: Left #2}]',
    'block-form',
    'photos: [{file: photos/LF-side.jpg, caption: "Left #2"}]',
  ),
  key('footing:', 'not-filled-in'),
  key('care:', 'not-filled-in'),
  key('next visit:', 'not-filled-in'),
  key('comfort: {lameness: {LF: , by: vet}}', 'not-filled-in'),
]

const form: readonly Slip[] = [
  key(
    'before:\ntoe length: [98, 96, 95, 94]\ntoe angle: [44, 45, 46, 47]',
    'not-moved-in',
    'before:\n  toe length: [98, 96, 95, 94]\n  toe angle: [44, 45, 46, 47]',
  ),
  key(
    'findings:\nLF:\n  - flare, toe, 2\n  - crack, toe, 1',
    'not-moved-in',
    'findings:\n  LF:\n    - flare, toe, 2\n    - crack, toe, 1',
  ),
  key(
    'before:\nbefore:\n  toe length: [98, 96, 95, 94]',
    'key-twice',
    'before:\n  toe length: [98, 96, 95, 94]',
  ),
  key('before:\n  LF: 98\n  RF: 96', 'measure-unknown'),
  key('date:2026-02-16', 'block-form', 'date: 2026-02-16'),
  key('footing:soft', 'block-form', 'footing: soft'),
  key('footing soft', 'block-form'),
  key('date 2026-02-16', 'block-form', 'date: 2026-02-16'),
  key('before\n  toe length: [98, 96, 95, 94]', 'block-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('before:\n  toe length [98, 96, 95, 94]', 'value-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('before:\n  toe length 98, 96, 95, 94', 'value-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('before:\n\ttoe length: [98, 96, 95, 94]', 'block-form', 'before:\n  toe length: [98, 96, 95, 94]'),
  key('findings:\n\tLF:\n\t\t- flare, toe, 2', 'block-form', 'findings:\n  LF:\n    - flare, toe, 2'),
  key(
    'before:\n\u00a0\u00a0toe length: [98, 96, 95, 94]',
    'block-form',
    'before:\n  toe length: [98, 96, 95, 94]',
  ),
  key('before:\n    toe length: [98, 96, 95, 94]\n  toe angle: [44, 45, 46, 47]', 'block-form'),
  key('footing: @ the barn', 'block-form', 'footing: "@ the barn"'),
  key('footing: *very* soft', 'block-form', 'footing: "*very* soft"'),
  key('footing: "soft and wet', 'block-form', 'footing: "soft and wet"'),
  key('footing: soft: wet below', 'block-form', 'footing: "soft: wet below"'),
  key('footing: !important', 'yaml-tag'),
  key('footing: &soft', 'yaml-alias'),
  raw(
    `date: 2026-02-16\n${rest}\n---\nNotes.\n`,
    'block-start',
    `---\ndate: 2026-02-16\n${rest}\n---\nNotes.\n`,
  ),
  raw('date: 2026-02-16\nfooting: soft\n', 'block-start'),
  raw('---\ndate: 2026-02-16\nfootings: soft\n', 'block-end'),
]

const marks = ['\u2014', '\u2013', '\u2014-', '--', '\u2013-', '- - -']
const wholeVisit = (open: string, close: string) => `${open}\ndate: 2026-02-16\n${rest}\n${close}\nNotes.\n`
const fences: readonly Slip[] = [
  ...marks.map((mark) => raw(wholeVisit(mark, '---'), 'block-start', wholeVisit('---', '---'))),
  ...marks.map((mark) => raw(wholeVisit('---', mark), 'block-end', wholeVisit('---', '---'))),
  raw(wholeVisit('----', '---'), 'block-language', wholeVisit('---', '---')),
  raw(wholeVisit('---', '----'), 'block-end', wholeVisit('---', '---')),
  raw(wholeVisit('---yaml x', '---'), 'block-language', wholeVisit('---', '---')),
  raw(wholeVisit('---', '---').replace('---\n', '---'), 'block-language', wholeVisit('---', '---')),
  raw(
    `Juno, second visit\n${wholeVisit('---', '---')}`,
    'block-start',
    `${wholeVisit('---', '---').replace('Notes.', 'Juno, second visit\nNotes.')}`,
  ),
  raw(
    `# Juno\n\n${wholeVisit('---', '---')}`,
    'block-start',
    `${wholeVisit('---', '---').replace('Notes.', '# Juno\nNotes.')}`,
  ),
  raw(` ${wholeVisit('---', '---')}`, 'block-start', wholeVisit('---', '---')),
  raw(`\n${wholeVisit('---', '---')}`, 'block-start', wholeVisit('---', '---')),
]

const dates: readonly Slip[] = [
  key('cleared: {LH: 14 Jan 2026}', 'value-form', 'cleared: {LH: 2026-01-14}'),
  key('cleared: {LH: 2026-12-20}', 'cleared-late'),
  key('cleared: {LG: 2026-01-14}', 'foot-unknown'),
  key('comfort: {onset: 3 Feb 2026}', 'value-form', 'comfort: {onset: 2026-02-03}'),
  key('comfort: {onset: 2062-02-03}', 'day-after-visit'),
  key('comfort: {painkillers: 2026-02-21}', 'day-after-visit'),
  inHorse('tetanus: 2052-05-02', 'date-in-future'),
  key('comfort: {surfaces: {sand, gravel: short}}', 'not-filled-in'),
  key('care:\n  -Pick out\n  - Walk', 'dash-missing', 'care:\n  - Pick out\n  - Walk'),
  key('care:\n  Pick out\n  - Walk', 'dash-missing', 'care:\n  - Pick out\n  - Walk'),
  key('before: {toe length: [91 93, 84, 85]}', 'four-feet', 'before: {toe length: [91, 93, 84, 85]}'),
  inHorse('tetanus: 3.2.2025', 'value-form', 'tetanus: 2025-02-03'),
  ...(
    [
      ['2026-2-16', '2026-02-16'],
      ['2026/02/16', '2026-02-16'],
      ['20260216', '2026-02-16'],
      ['16.2.2026', '2026-02-16'],
      ['16/02/2026', '2026-02-16'],
      ['2/16/2026', '2026-02-16'],
      ['2026-16-02', '2026-02-16'],
      ['16 Feb 2026', '2026-02-16'],
      ['16th February 2026', '2026-02-16'],
      ['February 16, 2026', '2026-02-16'],
      ['2026-02-16T10:00', '2026-02-16'],
      ['2026-02-30', null],
      ['yesterday', null],
      ['16 Feb', null],
      ['2026-02-16 morning', null],
    ] as const
  ).map(([wrong, right]) => key(`date: ${wrong}`, 'value-form', right && `date: ${right}`)),
  key('date: 2026-02-17', 'date-not-file'),
  key('date: 2025-02-16', 'date-not-file'),
  ...(
    [
      ['next visit: in 5 wks', 'next visit: 5 weeks'],
      ['next visit: 6w', 'next visit: 6 weeks'],
      ['next visit: 5', 'next visit: 5 weeks'],
      ['next visit: in 5 weks', 'next visit: 5 weeks'],
      ['next visit: 23 March 2026', 'next visit: 2026-03-23'],
      ['next visit: soon', null],
      ['next visit: in 5-6 weeks', null],
      ['next visit: spring', null],
    ] as const
  ).map(([wrong, right]) => key(wrong, 'value-form', right)),
  key('next visit: 2025-03-23', 'next-visit-early', 'next visit: 2026-03-23'),
  key('next visit: 2026-01-23', 'next-visit-early'),
  inHorse('born: 2.5.2014', 'value-form', 'born: 2014-05-02'),
  inHorse('born: spring 2014', 'value-form'),
  inHorse('born: 2041', 'born-late'),
  inHorse('born: 1914', 'born-early'),
  inHorse('started: 2026-03-01', 'visit-before-start'),
  inHorse('started: 1 Jan 2026', 'value-form', 'started: 2026-01-01'),
]

const horses: readonly Slip[] = [
  wholeHorse('name: Juno\nownr: abel', 'key-unknown', 'name: Juno\nowner: abel'),
  inHorse(
    'consent: {owner site: yes, gven: 2026-01-12}',
    'key-unknown',
    'consent: {owner site: yes, given: 2026-01-12}',
  ),
  wholeHorse('name: Juno\nowner: abell', 'owner-unknown', 'name: Juno\nowner: abel'),
  wholeHorse('name: Juno\nowner: Abel Moor', 'owner-unknown', 'name: Juno\nowner: abel'),
  wholeHorse('name: Juno\nowner: zoe', 'owner-unknown'),
  wholeHorse('name: Juno', 'owner-missing'),
  wholeHorse('name:\nowner: abel', 'key-missing'),
  wholeHorse('nane: Juno\nname: Juno\nowner: abel', 'key-unknown'),
  inHorse('height: 14.2', 'value-form', 'height: 14.2 hh'),
  inHorse('height: 14.5', 'value-form'),
  inHorse('height: 148', 'value-form', 'height: 148 cm'),
  inHorse('height: 14.5 hh', 'value-form'),
  inHorse('height: 480 cm', 'height-unlikely'),
  inHorse('weight: 505', 'value-form', 'weight: 505 kg'),
  inHorse('weight: 47 kg', 'weight-unlikely'),
  inHorse('colour: bay', 'key-unknown'),
  inHorse('hight: 148 cm', 'key-unknown', 'height: 148 cm'),
  inHorse('consent: yes', 'value-form'),
  inHorse(
    'consent: {owner site: yep, given: 2026-01-12}',
    'value-form',
    'consent: {owner site: yes, given: 2026-01-12}',
  ),
  inHorse('consent: {owner site: perhaps}', 'value-form'),
  inHorse('consent: {owner site: yes}', 'consent-undated'),
  inHorse(
    'consent: {ownersite: yes, given: 2026-01-12}',
    'key-unknown',
    'consent: {owner site: yes, given: 2026-01-12}',
  ),
  inHorse('targets: {toe angel: [50, 54]}', 'measure-unknown', 'targets: {toe angle: [50, 54]}'),
  inHorse('targets: {toe angle: [54, 50]}', 'target-reversed', 'targets: {toe angle: [50, 54]}'),
  inHorse('targets: {toe angle: 52}', 'value-form'),
  inHorse('targets: {toe length: [3, 4]}', 'target-unlikely'),
  inHorse('trim limits: {sole: flatt}', 'value-form', 'trim limits: {sole: flat}'),
  inHorse('trim limits: {most per trim: 150 mm}', 'limit-impossible'),
]

const practices: readonly Slip[] = [
  wholePractice(
    'practice: P\nownrs: {abel: {name: Abel Moor}}',
    'key-unknown',
    'practice: P\nowners: {abel: {name: Abel Moor}}',
  ),
  inPractice('units: m', 'value-form'),
  inPractice('units: feet', 'value-form'),
  inPractice('trim cycle: 5 wks', 'value-form', 'trim cycle: 5 weeks'),
  inPractice('trim cycle: 5', 'value-form', 'trim cycle: 5 weeks'),
  inPractice('trim cycle: 35', 'value-form', 'trim cycle: 35 days'),
  inPractice('trim cycl: 5 weeks', 'key-unknown', 'trim cycle: 5 weeks'),
  inPractice('terms: {flare: my own meaning}', 'term-known'),
  inPractice('local rule: none', 'key-unknown', 'local rules: none'),
  wholePractice('owners: {abel: {name: Abel Moor}}', 'key-missing'),
  wholePractice(
    'practice: P\nowners: {abel: {name: Abel Moor}, Bea Ray: {name: Bea}}',
    'owner-id',
    'practice: P\nowners: {abel: {name: Abel Moor}, bea-ray: {name: Bea}}',
  ),
  wholePractice('practice: P\nowners: {abel: {nam: Abel Moor, name: Abel}}', 'key-unknown'),
]

const photos: readonly Slip[] = [
  key('photos: [{fil: photos/LF-side.jpg}]', 'key-unknown', 'photos: [{file: photos/LF-side.jpg}]'),
  ...(
    [
      ['photos/lf-side.jpg', 'photo-case', 'photos/LF-side.jpg'],
      ['photos/LF-side.JPG', 'photo-case', 'photos/LF-side.jpg'],
      ['Photos/LF-side.jpg', 'photo-case', 'photos/LF-side.jpg'],
      ['LF-side.jpg', 'photo-missing', 'photos/LF-side.jpg'],
      ['photos/LF-side.jpeg', 'photo-missing', 'photos/LF-side.jpg'],
      ['photos/LF-sid.jpg', 'photo-missing', 'photos/LF-side.jpg'],
      ['photos/RH-tail.jpg', 'photo-missing', null],
      ['photos\\LF-side.jpg', 'photo-outside', 'photos/LF-side.jpg'],
      ['/home/me/LF-side.jpg', 'photo-outside', 'photos/LF-side.jpg'],
      ['../nell/a.jpg', 'photo-outside', null],
    ] as const
  ).map(([wrong, code, right]) =>
    key(`photos: [{file: ${wrong}}]`, code, right && `photos: [{file: ${right}}]`),
  ),
  key(
    'photos: [{file: photos/LF-side.jpg, view: laterl}]',
    'value-form',
    'photos: [{file: photos/LF-side.jpg, view: lateral}]',
  ),
  key('photos: [{file: photos/LF-side.jpg, view: side}]', 'value-form'),
  key('photos: [{file: photos/LF-side.jpg, foot: left}]', 'value-form'),
  key('photos: [{foot: LF}]', 'key-missing'),
  key('photos: photos/LF-side.jpg', 'value-form'),
]

const fileNames: readonly Slip[] = [
  named('juno/2026-02-16.txt', 'file-ending', 'juno/2026-02-16.md'),
  named('juno/2026-02-16.md.txt', 'file-ending', 'juno/2026-02-16.md'),
  named('juno/2026-02-16.TXT', 'file-ending', 'juno/2026-02-16.md'),
  named('juno/2026-02-16.docx', 'file-ending', null),
  named('juno/2026-02-16.md.docx', 'file-ending', null),
  named('juno/2026-02-16.doc', 'file-ending', null),
  named('juno/2026-02-16.rtf', 'file-ending', null),
  named('juno/2026-02-16.odt', 'file-ending', null),
  named('juno/2026-02-16.pages', 'file-ending', null),
  named('juno/2026-02-16', 'file-ending', 'juno/2026-02-16.md'),
  named('juno/2026-02-16,md', 'file-ending', 'juno/2026-02-16.md'),
  named('juno/2026-02-16.markdown', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/2026-02-16.MD', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/2026-02-16.md.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/2026-2-16.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/20260216.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/2026_02_16.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/16.2.2026.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/16-02-2026.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/2026-02-16 Juno.md', 'stray-file', 'juno/2026-02-16.md'),
  named('juno/2026-02-16 (2).md', 'stray-file', 'juno/2026-02-16-b.md'),
  named('juno/2026-02-16-2.md', 'stray-file', 'juno/2026-02-16-b.md'),
  named('juno/2026-02-16 copy.md', 'stray-file', null),
  named('juno/visits/2026-02-16.md', 'stray-file', 'juno/2026-02-16.md'),
  named('2026-02-16.md', 'stray-file', null),
  named('2026-02-16.txt', 'file-ending', null),
  named('juno/february.md', 'stray-file', null),
  named('juno/notes.md', 'stray-file', null),
  named('juno/2026-02-30.md', 'visit-name', null),
  {
    name: 'a horse in a folder with capitals',
    files: {
      ...sound,
      'Nell/horse.md': horse('name: Nell\nowner: abel'),
      'Nell/2026-02-16.md': visit('footing: soft'),
    },
    code: 'horse-folder',
    fixed: {
      ...sound,
      'nell/horse.md': horse('name: Nell\nowner: abel'),
      'nell/2026-02-16.md': visit('footing: soft'),
    },
  },
  ...['Practice.md', 'practice.txt', 'practice.md.txt'].map((name): Slip => {
    const { 'practice.md': text = '', ...others } = sound
    return { name, files: { ...others, [name]: text }, code: 'practice-missing', fixed: sound }
  }),
  {
    name: 'visits without horse.md',
    files: { ...sound, 'nell/2026-02-16.md': visit('footing: soft') },
    code: 'horse-missing',
    fixed: null,
  },
  {
    name: 'horse.txt beside visits',
    files: { ...sound, 'juno/horse.txt': 'x' },
    code: 'file-ending',
    fixed: null,
  },
  {
    name: 'two horses of one name',
    files: {
      ...sound,
      'juno-2/horse.md': horse('name: juno\nowner: abel'),
      'juno-2/2026-02-16.md': visit('footing: soft'),
    },
    code: 'name-twice',
    fixed: null,
  },
  {
    name: 'a copy of a visit beside it',
    files: {
      ...sound,
      [visitPath]: visit('footing: soft'),
      'juno/2026-02-16 copy.md': visit('footing: soft'),
    },
    code: 'stray-file',
    fixed: null,
  },
  {
    name: 'a second visit as .txt beside the first',
    files: { ...sound, [visitPath]: visit('footing: soft'), 'juno/2026-02-16.txt': visit('footing: soft') },
    code: 'file-ending',
    fixed: null,
  },
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

const exchanged: readonly Slip[] = [
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
]
