/** The page *Measures and sources*: what the practice has taught, every measure, formula, scale and figure in use, with its source and mark. */
import type { Practice } from '../../../casebook/model.ts'
import type { PlainDate } from '../../../hoof/dates.ts'
import type { Evidence } from '../../../hoof/evidence.ts'
import { findingMeanings } from '../../../hoof/findings.ts'
import { adultPrior, foalPrior, publishedGrowth, publishedRenewal } from '../../../hoof/growth.ts'
import {
  type DerivedMeasure,
  derivedIds,
  derivedMeasures,
  type Measure,
  measureIds,
  measures,
} from '../../../hoof/measures.ts'
import { type ScaleName, scales } from '../../../hoof/scales.ts'
import { type SourceKey, sources } from '../../../hoof/sources.ts'
import type { PracticeLessons } from '../../../trend/model/practice.ts'
import { mostBySole } from '../../../trend/plan.ts'
import type { MeasureDrawing, Table } from '../../shared/figures.ts'
import { capital, type Formatter } from '../../shared/format.ts'
import type { PageView } from '../../shared/page.ts'
import type { PageShell } from '../../shared/shell.ts'
import type { Words } from '../../words/index.ts'
import { type Link, shellOf } from '../case/horse-case.ts'
import { scaleId } from '../parts/comfort.ts'
import { type LessonsPart, lessonsPart } from './lessons-part.ts'

export interface ReferencePage {
  readonly w: Words
  readonly page: PageShell
  readonly index: readonly Link[]
  readonly lessons: LessonsPart
  readonly methods: readonly MethodEntry[]
  readonly measures: readonly MeasureEntry[]
  readonly derived: readonly DerivedEntry[]
  readonly toeAngle: readonly string[]
  readonly photos: string
  readonly notStraight: readonly string[]
  readonly trimStudy: string
  readonly sole: readonly string[]
  readonly growth: readonly string[]
  readonly growthTable: Table
  readonly renewalTable: Table
  readonly findings: readonly Meaning[]
  readonly terms: readonly Meaning[]
  readonly scales: readonly ScaleEntry[]
  readonly sources: readonly { readonly id: string; readonly cite: string }[]
}

interface MethodEntry {
  readonly id: string
  readonly name: string
  readonly formula: string
  readonly text: string
  readonly sources: readonly string[]
}

interface MeasureEntry {
  readonly id: string
  readonly name: string
  readonly drawing: MeasureDrawing
  readonly how: string
  /** Likely range, scatter, and what matters. */
  readonly facts: string
  /** Where the scatter comes from. */
  readonly evidence: string
}

interface DerivedEntry {
  readonly id: string
  readonly name: string
  readonly drawing: MeasureDrawing
  readonly formula: string
  readonly reading: string
  readonly evidence: readonly string[]
}

interface Meaning {
  readonly name: string
  readonly text: string
}

interface ScaleEntry {
  readonly id: string
  readonly name: string
  readonly levels: readonly { readonly level: string; readonly meaning: string }[]
  readonly evidence: string
}

export function referencePage(
  practice: Practice,
  lessons: PracticeLessons,
  asOf: PlainDate,
  format: Formatter,
): PageView {
  const { words } = format
  const w = words.reference
  const model: ReferencePage = {
    w: words,
    page: shellOf(practice, words, format.date(asOf), { title: w.title(practice.name), at: 'reference' }),
    index: indexOf(w),
    lessons: lessonsPart(lessons, practice.people, format),
    methods: methods.map((one) => methodEntry(one, format)),
    measures: measureIds.map((id) => measureEntry(measures[id], format)),
    derived: derivedIds.map((id) => derivedEntry(derivedMeasures[id], format)),
    toeAngle: [sources.toeAngleAdvice.cite, sources.fleming.cite],
    photos: `${sources.sixMethods.cite}, ${w.photosHow}`,
    notStraight: w.notStraightHow.map(({ source, text }) => `${cited(source)}: ${text}`),
    trimStudy: `${sources.trimStudy.cite}: ${w.trimStudyHow}`,
    sole: [capital(`${sources.soleThin.cite}.`), w.soleHow],
    growth: [
      w.growthHow(rateText(adultPrior.mean, format), format.fine('toe-length', adultPrior.sd)),
      w.growthFoal(rateText(foalPrior.mean, format)),
    ],
    growthTable: growthTable(format),
    renewalTable: renewalTable(format),
    findings: Object.entries(findingMeanings).map(([name, text]) => ({ name: capital(name), text })),
    terms: Object.entries(practice.terms).map(([name, text]) => ({ name: capital(name), text })),
    scales: (Object.keys(scales) as ScaleName[]).map((key) => ({
      id: scaleId(key),
      name: scales[key].name,
      levels: scales[key].levels,
      evidence: evidenceText(scales[key].evidence, format),
    })),
    sources: Object.entries(sources).map(([key, { cite }]) => ({ id: `source-${key}`, cite })),
  }
  return { path: 'reference.html', template: 'practice/reference', model }
}

/** The page is long: its first screen leads to every part. */
const indexOf = (w: Words['reference']): readonly Link[] =>
  (
    [
      ['lessons', w.lessons],
      ['read', w.read],
      ['derived', w.derived],
      ['methods', w.methods],
      ['limits', w.limits],
      ['toe-angle-advice', w.toeAngle],
      ['growth', w.growth],
      ['scales', w.scales],
      ['findings', w.findings],
      ['never', w.never],
      ['always', w.standing],
      ['sources', w.sources],
    ] as const
  ).map(([id, text]) => ({ text, href: `#${id}` }))

type MethodId = keyof Words['reference']['method']

/** In order of reading, each with the works that it follows; without any it is our own, or the trade's. */
const methods: readonly (readonly [MethodId, ...SourceKey[]])[] = [
  ['trend'],
  ['practice-teaches', 'pattersonThompson', 'smyth'],
  ['left-out'],
  ['smallest-real-change'],
  ['verdict', 'schuirmann'],
  ['position'],
  ['clear-moves', 'benjaminiHochberg'],
  ['pace'],
  ['forecast', 'fieller'],
  ['growth-and-trim'],
  ['grow-out', 'lungwitz'],
  ['plan'],
  ['side-view', 'trimStudy'],
]

function methodEntry([id, ...from]: (typeof methods)[number], format: Formatter): MethodEntry {
  const { method, planText } = format.words.reference
  const { name, formula, text } = method[id]
  return {
    id,
    name,
    formula,
    text: id === 'plan' ? planText(format.amount(mostBySole.flat), format.amount(mostBySole.cupped)) : text,
    sources: from.map((source) => sources[source].cite),
  }
}

const cited = (key: string): string =>
  Object.hasOwn(sources, key) ? sources[key as keyof typeof sources].cite : key

/** `Turner TA, … (published): the 5 mm`. */
function evidenceText({ mark, source, note }: Evidence, { words }: Formatter): string {
  const w = words.reference
  const text = source === undefined ? w.marks[mark] : w.evidenceBy(w.marks[mark], sources[source].cite)
  return capital(note === undefined ? text : w.noted(text, note))
}

function measureEntry(measure: Measure, format: Formatter): MeasureEntry {
  const { id, how } = measure
  const w = format.words.reference
  const [low, high] = measure.likely
  return {
    id,
    name: capital(format.name(id)),
    drawing: { kind: 'measure', measure: id, description: w.drawingOf(format.name(id), how) },
    how: capital(`${how}.`),
    facts: w.facts(
      format.words.base.fromTo(format.measure(id, low), format.measure(id, high)),
      format.fine(id, measure.sd),
      format.measure(id, measure.matters),
    ),
    evidence: w.scatterFrom(evidenceText(measure.sdEvidence, format)),
  }
}

function derivedEntry(measure: DerivedMeasure, format: Formatter): DerivedEntry {
  const { id, formula, reading, evidence } = measure
  return {
    id,
    name: capital(format.name(id)),
    drawing: {
      kind: 'measure',
      measure: id,
      description: format.words.reference.drawingOf(format.name(id), formula),
    },
    formula,
    reading: capital(`${reading}.`),
    evidence: evidence.map((one) => evidenceText(one, format)),
  }
}

const rateText = (mm: number, format: Formatter) => format.words.base.perMonth(format.fine('toe-length', mm))

function growthTable(format: Formatter): Table {
  const w = format.words.reference
  return {
    caption: w.growthTable,
    head: w.growthHead,
    rows: publishedGrowth.map(({ who, perMonth: [low, high], figure, evidence }) => [
      capital(who),
      low === high ? format.fine('toe-length', low) : format.interval('toe-length', low, high),
      figure,
      evidenceText(evidence, format),
    ]),
  }
}

function renewalTable(format: Formatter): Table {
  const w = format.words.reference
  return {
    caption: w.renewalTable,
    head: w.renewalHead,
    rows: publishedRenewal.map(({ place, months: [low, high], evidence }) => [
      capital(place),
      w.months(String(Math.round(low)), String(Math.round(high))),
      evidenceText(evidence, format),
    ]),
  }
}
