/**
 * The sheet by which drawings are judged: feet of every kind in every view, each finding at each grade, small and large.
 * `scripts/drawing-sheet.mjs` runs it.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Foot } from '../src/hoof/feet.ts'
import { type FindingName, findingMeanings } from '../src/hoof/findings.ts'
import { measureIds } from '../src/hoof/measures.ts'
import type { FootMeasures } from '../src/hoof/stand-ins.ts'
import { practiceLanguage, wordsFor } from '../src/pages/words/index.ts'
import { behindView } from '../src/render/drawings/behind.ts'
import type { Flares } from '../src/render/drawings/behind-shape.ts'
import { measureDrawing } from '../src/render/drawings/measure.ts'
import { middling } from '../src/render/drawings/measure-marks.ts'
import { sideView } from '../src/render/drawings/side.ts'
import { soleView } from '../src/render/drawings/sole.ts'
import { wallView } from '../src/render/drawings/wall.ts'
import { figureWords } from '../src/render/figure-words.ts'

interface Sample {
  readonly name: string
  readonly foot: Foot
  readonly now: FootMeasures
  readonly first?: FootMeasures
  readonly trim?: { readonly toe: number; readonly heel: number }
  readonly flares?: Flares
  readonly dish?: number
}

const heels = (medial: number, lateral = medial) => ({ 'heel-medial': medial, 'heel-lateral': lateral })

/** Invented feet. */
const samples: readonly Sample[] = [
  { name: 'middling', foot: 'LF', now: middling },
  {
    name: 'long toe, low heels; what a trim would take',
    foot: 'LF',
    now: {
      ...middling,
      'toe-length': 106,
      'toe-angle': 43,
      'heel-angle': 26,
      ...heels(26),
      'bearing-length': 118,
    },
    trim: { toe: 12, heel: 3 },
    dish: 4,
  },
  {
    name: 'the same after a year, over what it was',
    foot: 'LF',
    now: middling,
    first: {
      ...middling,
      'toe-length': 106,
      'toe-angle': 43,
      'heel-angle': 26,
      ...heels(26),
      'bearing-length': 130,
    },
  },
  {
    name: 'upright',
    foot: 'LF',
    now: {
      ...middling,
      'toe-length': 88,
      'toe-angle': 63,
      'heel-angle': 61,
      ...heels(58),
      'bearing-length': 100,
    },
  },
  { name: '8 mm of heel difference', foot: 'LF', now: { ...middling, ...heels(42, 34) } },
  { name: 'the same, right foot', foot: 'RF', now: { ...middling, ...heels(42, 34) } },
  { name: 'a flare', foot: 'LF', now: middling, flares: { medial: 0, lateral: 13 } },
  {
    name: 'contracted frog, deep sulcus',
    foot: 'LF',
    now: { ...middling, 'frog-width': 26, 'sulcus-depth': 22, width: 118 },
  },
  {
    name: 'pony',
    foot: 'LF',
    now: {
      'toe-length': 62,
      'toe-angle': 55,
      'heel-angle': 52,
      ...heels(30),
      'bearing-length': 82,
      width: 84,
      'frog-length': 54,
      'frog-width': 32,
      breakover: 24,
    },
  },
  {
    name: 'heavy horse',
    foot: 'LF',
    now: {
      'toe-length': 128,
      'toe-angle': 49,
      'heel-angle': 42,
      ...heels(52),
      'bearing-length': 172,
      width: 184,
      'frog-length': 112,
      'frog-width': 72,
      breakover: 50,
    },
  },
  {
    name: 'hind',
    foot: 'LH',
    now: { ...middling, 'toe-angle': 54, 'heel-angle': 51, width: 113, 'bearing-length': 114 },
  },
  {
    name: 'only toe length, toe angle and one heel read',
    foot: 'RH',
    now: { 'toe-length': 84, 'toe-angle': 52, 'heel-medial': 36 },
  },
]

const sides = { medial: 'inner', lateral: 'outer' }
const named = (name: string) => ({ 'aria-label': name })

const features = [
  { what: 'ring', place: 'whole foot', at: 24, ahead: [34, 44], wallLength: null, sign: 'a' },
  { what: 'old abscess', place: 'medial toe', at: 40, ahead: [], wallLength: null, sign: 'b' },
  { what: 'nail holes', place: 'medial quarter', at: 58, ahead: [], wallLength: 75, sign: 'c' },
  { what: 'crack', place: 'lateral toe', at: 46, ahead: [], wallLength: null, sign: 'd' },
]

function viewsOf({ name, foot, now, first, trim, flares, dish }: Sample): readonly string[] {
  const difference = Math.abs((now['heel-medial'] ?? 0) - (now['heel-lateral'] ?? 0))
  return [
    sideView({ foot, now, first, trim, dish }, named(`${name}, side`)),
    behindView({ foot, now, label: `${difference} mm`, sides, flares }, named(`${name}, behind`)),
    soleView({ foot, now, findings: [], sides, first, flares }, named(`${name}, sole`)),
    wallView({ foot, now, features, sides, flares }, named(`${name}, wall`)),
  ]
}

/** Where each finding is mostly seen. */
const usualPlace: Readonly<Partial<Record<FindingName, string>>> = {
  flare: 'lateral quarter',
  'wall separation': 'lateral toe',
  'white line stretched': 'toe',
  'white-line disease': 'medial quarter',
  crack: 'toe',
  chip: 'medial toe',
  ring: 'toe',
  dish: 'toe',
  'nail hole': 'lateral quarter',
  'nail in white line': 'lateral toe',
  thrush: 'medial groove',
  canker: 'central sulcus',
  'sulcus split': 'central sulcus',
  'contracted heels': 'heel bulbs',
  'underrun heels': 'whole foot',
  'sheared heels': 'heel bulbs',
  'bar laid over': 'lateral bar',
  'twisted frog': 'frog',
  'overgrown frog': 'frog',
  'ragged frog': 'frog',
  keratoma: 'toe',
  'coronet injury': 'coronet',
  'coronet depression': 'coronet',
  swelling: 'coronet',
  heat: 'whole foot',
  tenderness: 'medial heel',
}

const findingSoles = (what: FindingName): readonly string[] =>
  ([0, 1, 2, 3] as const).map((grade) => {
    const place = usualPlace[what] ?? 'sole'
    const finding = { what, place, grade, sign: '' }
    return soleView(
      { foot: 'LF', now: middling, findings: [finding], sides },
      named(`${what}, ${place}, ${grade}`),
    )
  })

const manyFindings = soleView(
  {
    foot: 'RF',
    now: middling,
    sides,
    findings: [
      { what: 'flare', place: 'medial quarter', grade: 2, sign: '1' },
      { what: 'thrush', place: 'central sulcus', grade: 3, sign: '2' },
      { what: 'thrush', place: 'lateral groove', grade: 2, sign: '3' },
      { what: 'wall separation', place: 'lateral toe', grade: 2, sign: '4' },
      { what: 'bruise', place: 'sole', grade: 1, sign: '5' },
      { what: 'crack', place: 'toe', grade: 1, sign: '6' },
      { what: 'underrun heels', place: 'medial heel', grade: 2, sign: '7' },
      { what: 'scar', place: 'heel bulbs', grade: 2, sign: '8' },
    ],
  },
  named('many findings'),
)

const row = (name: string, drawings: readonly string[]) =>
  `<section><h2>${name}</h2><div class="row-of">${drawings.map((one) => `<div class="drawn">${one}</div>`).join('')}</div></section>`

const measureRows = (): readonly string[] => {
  const drawn = measureIds.map((measure) =>
    measureDrawing(
      { kind: 'measure', measure, description: measure },
      figureWords(wordsFor(practiceLanguage)),
    ),
  )
  return Array.from({ length: Math.ceil(drawn.length / 4) }, (_, i) =>
    row(measureIds.slice(4 * i, 4 * i + 4).join(', '), drawn.slice(4 * i, 4 * i + 4)),
  )
}

const sheets: Readonly<Record<string, () => readonly string[]>> = {
  feet: () => [
    ...samples.map((sample) => row(sample.name, viewsOf(sample))),
    row('many findings', [manyFindings]),
  ],
  measures: measureRows,
  findings: () =>
    (Object.keys(findingMeanings) as FindingName[]).map((what) =>
      row(`${what}: resolved, mild, moderate, severe`, findingSoles(what)),
    ),
}

function page(style: string, width: number, rows: readonly string[]): string {
  const own = `body{margin:1rem}h2{font-size:1rem;margin:1rem 0 0}.row-of{display:grid;grid-template-columns:repeat(4,${width}px);gap:1.2rem;align-items:end}`
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>Drawings, ${width} px</title><style>${style}${own}</style><body>${rows.join('\n')}</body></html>`
}

/** What a screen or printer would choose, made the rule. */
const modes: Readonly<Record<string, (style: string) => string>> = {
  light: (style) => style,
  dark: (style) => style.replaceAll('@media (prefers-color-scheme: dark)', '@media all'),
  print: (style) => `${style.replaceAll('@media print', '@media all')}html{filter:grayscale(1)}`,
}

const folder = join(process.argv[2] ?? 'dist', 'drawings')
const style = ['growdown', 'drawings']
  .map((name) => readFileSync(`templates/styles/${name}.css`, 'utf8'))
  .join('')
mkdirSync(folder, { recursive: true })
for (const [mode, change] of Object.entries(modes)) {
  for (const width of [170, 800]) {
    for (const [name, rows] of Object.entries(sheets)) {
      const path = join(folder, `${name}-${width}-${mode}.html`)
      writeFileSync(path, page(change(style), width, rows()))
      console.log(path)
    }
  }
}
