/**
 * A new visit's file, written from the last one: the same keys with blanks, what was read then as remarks,
 * the findings still open, and where each followed feature should be by now.
 */
import type { Comfort, Horse, Practice, Reading, Stage, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet, type PerFoot } from '../../hoof/feet.ts'
import { type MeasureId, measures } from '../../hoof/measures.ts'
import type { Assessment, GrowOut } from '../../trend/assessment.ts'
import { type Formatter, formatter } from '../shared/format.ts'
import { starter as w } from '../words/en/starter.ts'
import { blank, remarked, scalar } from './lines.ts'

/** What a first visit asks for when there is none to follow. */
const firstMeasures: readonly MeasureId[] = [
  'toe-length',
  'toe-angle',
  'heel-angle',
  'heel-medial',
  'heel-lateral',
]

/**
 * Text of a new visit. Passes the reader once each blank is filled in or its line deleted.
 *
 * @param date the visit's date; only visits before it count as the last
 */
export function startVisit(
  horse: Horse,
  assessment: Assessment,
  practice: Practice,
  date: PlainDate,
): string {
  const format = formatter(practice.units)
  const past = horse.visits.filter((visit) => visit.date <= date)
  const last = past.at(-1) ?? null
  const order = practice.feetOrder
  return [
    '---',
    `date: ${date}`,
    ...textLine('footing', last?.footing ?? null, last === null),
    ...readingLines('before', past, order, format),
    ...readingLines('after', past, order, format),
    ...findingLines(last),
    ...growOutLines(assessment.growOut, format),
    ...comfortLines(last?.comfort ?? null, order),
    ...bodyLines(last),
    ...stanceLines(last, order),
    remarked('care:', w.care),
    `  - ${blank}`,
    `next visit: in ${Math.round(practice.trimCycleDays / 7) || 1} weeks`,
    '---',
    w.noteOwn,
    '',
    `## ${w.ownerHeading}`,
    '',
    ...(horse.consent.portfolio ? [`## ${w.teachingHeading}`, ''] : []),
  ].join('\n')
}

const textLine = (key: string, last: string | null, always: boolean): string[] =>
  last === null && !always ? [] : [remarked(`${key}: ${blank}`, last === null ? null : w.last(last))]

/** A blank for each foot: a list of four, or a map where fewer feet were used. */
function blanks(used: ReadonlySet<Foot>, order: readonly Foot[]): string {
  if (used.size === feet.length || used.size === 0) return `[${order.map(() => blank).join(', ')}]`
  return `{${order
    .filter((foot) => used.has(foot))
    .map((foot) => `${foot}: ${blank}`)
    .join(', ')}}`
}

function readingLines(
  stage: Stage,
  past: readonly Visit[],
  order: readonly Foot[],
  format: Formatter,
): string[] {
  const last = past.at(-1)
  const read = last?.readings.filter((reading) => reading.stage === stage) ?? []
  const used = last === undefined ? firstMeasures : [...new Set(read.map((reading) => reading.measure))]
  if (used.length === 0) return []
  const lines = used.map((measure) => {
    const latest = last === undefined ? null : latestOf(past, measure)
    const footed = new Set(read.filter((reading) => reading.measure === measure).map(({ foot }) => foot))
    return remarked(
      `  ${measures[measure].name}: ${blanks(footed, order)}`,
      latest && latestRemark(latest.visit, latest.stage, measure, order, format),
    )
  })
  return [remarked(`${stage}:`, stage === 'before' ? w.before(order.join(' ')) : w.after), ...lines]
}

/** The last visit and stage at which a measure was read. */
function latestOf(past: readonly Visit[], measure: MeasureId): { visit: Visit; stage: Stage } | null {
  for (const visit of past.toReversed()) {
    for (const stage of ['after', 'before'] as const) {
      if (visit.readings.some((reading) => reading.measure === measure && reading.stage === stage))
        return { visit, stage }
    }
  }
  return null
}

function latestRemark(
  visit: Visit,
  stage: Stage,
  measure: MeasureId,
  order: readonly Foot[],
  format: Formatter,
): string {
  const value = (foot: Foot) =>
    visit.readings.find((r: Reading) => r.foot === foot && r.measure === measure && r.stage === stage)?.value
  const text = order
    .map((foot) => [foot, value(foot)] as const)
    .filter(([, read]) => read !== undefined)
    .map(([foot, read]) => `${foot} ${format.measure(measure, read ?? 0)}`)
    .join(', ')
  return (stage === 'after' ? w.lastAfter : w.lastBefore)(format.shortDate(visit.date), text)
}

function findingLines(last: Visit | null): string[] {
  const open = last?.findings.filter((finding) => finding.grade > 0) ?? []
  const lines = feet.flatMap((foot) => {
    const here = open.filter((finding) => finding.foot === foot)
    if (here.length === 0) return []
    return [
      `  ${foot}:`,
      ...here.map((f) => remarked(`    - ${f.what}, ${f.place}, ${blank}`, w.last(String(f.grade)))),
    ]
  })
  return lines.length === 0 ? [] : [remarked('findings:', w.findings), ...lines]
}

function growOutLines(features: readonly GrowOut[], format: Formatter): string[] {
  const going = features.filter((feature) => feature.state !== 'grown out')
  const lines = feet.flatMap((foot) => {
    const here = going.filter((feature) => feature.foot === foot)
    if (here.length === 0) return []
    return [
      `  ${foot}:`,
      ...here.map((f) => remarked(`    - ${f.feature}, ${f.place}, ${blank}`, featureRemark(f, format))),
    ]
  })
  return lines.length === 0 ? [] : [remarked('grow-out:', w.growOut), ...lines]
}

function featureRemark(feature: GrowOut, format: Formatter): string | null {
  const seen = feature.sightings.at(-1)
  if (seen === undefined) return null
  if (feature.wallLength !== null && feature.expectedNow >= feature.wallLength && feature.date !== null) {
    return w.featureOut(format.shortDate(feature.date))
  }
  return w.feature(
    format.length(seen.distance),
    format.shortDate(seen.date),
    format.length(feature.expectedNow),
  )
}

const footed = (values: PerFoot<unknown>): ReadonlySet<Foot> =>
  new Set(feet.filter((foot) => values[foot] !== undefined))

const footText = (values: PerFoot<string | number>): string =>
  feet.flatMap((foot) => (values[foot] === undefined ? [] : [`${foot} ${values[foot]}`])).join(', ')

function comfortLines(comfort: Comfort | null, order: readonly Foot[]): string[] {
  if (comfort === null) return []
  const lines: string[] = []
  if (footed(comfort.lameness).size > 0) {
    const map = order
      .filter((foot) => comfort.lameness[foot] !== undefined)
      .map((foot) => `${foot}: ${blank}`)
    lines.push(
      remarked(`  lameness: {${[...map, `by: ${blank}`].join(', ')}}`, w.last(footText(comfort.lameness))),
    )
  }
  for (const [key, values] of [
    ['landing', comfort.landing],
    ['digital pulse', comfort.digitalPulse],
  ] as const) {
    if (footed(values).size > 0)
      lines.push(remarked(`  ${key}: ${blanks(footed(values), order)}`, w.last(footText(values))))
  }
  const surfaces = Object.entries(comfort.surfaces)
  if (surfaces.length > 0) {
    const map = surfaces.map(([name]) => `${scalar(name)}: ${blank}`).join(', ')
    lines.push(
      remarked(
        `  surfaces: {${map}}`,
        w.last(surfaces.map(([name, level]) => `${name} ${level}`).join(', ')),
      ),
    )
  }
  return lines.length === 0 ? [] : ['comfort:', ...lines]
}

function bodyLines(last: Visit | null): string[] {
  if (last === null) return []
  const { weightKg, condition, crest } = last.bodyState
  const used = [
    ['weight', weightKg === null ? null : `${Math.round(weightKg)} kg`],
    ['condition', condition],
    ['crest', crest],
  ].filter(([, value]) => value !== null)
  if (used.length === 0) return []
  const map = used.map(([key]) => `${key}: ${blank}`).join(', ')
  return [remarked(`body: {${map}}`, w.last(used.map(([key, value]) => `${key} ${value}`).join(', ')))]
}

function stanceLines(last: Visit | null, order: readonly Foot[]): string[] {
  if (last === null || footed(last.stance).size === 0) return []
  return [remarked(`stance: ${blanks(footed(last.stance), order)}`, w.last(footText(last.stance)))]
}
