/**
 * A new visit's file, written from the last one: the same keys with blanks, what was read then as remarks,
 * the findings still open, and where each followed feature should be by now.
 */
import type { Comfort, Horse, Practice, Reading, Stage, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet, type PerFoot } from '../../hoof/feet.ts'
import { type MeasureId, measures } from '../../hoof/measures.ts'
import { type Assessment, type GrowOut, openFindings } from '../../trend/assessment.ts'
import type { Formatter } from '../shared/format.ts'
import type { Words } from '../words/index.ts'
import { blank, partsLine, remarked, scalar, sectionHeadings } from './lines.ts'

type StarterWords = Words['starter']

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
  format: Formatter,
): string {
  const w = format.words.starter
  const past = horse.visits.filter((visit) => visit.date <= date)
  const last = past.at(-1) ?? null
  const order = practice.feetOrder
  return [
    '---',
    `date: ${date}`,
    ...byLine(practice, w),
    ...textLine('footing', last?.footing ?? null, last === null, w),
    ...readingLines('before', past, order, format),
    ...readingLines('after', past, order, format),
    ...findingLines(past, assessment, format),
    ...growOutLines(assessment.growOut, format),
    ...comfortLines(past, assessment, order, w),
    ...bodyLines(last, w),
    ...stanceLines(past, order, w),
    ...clearedLines(assessment, order, w),
    remarked('care:', w.care),
    `  - ${blank}`,
    `next visit: in ${Math.round(practice.trimCycleDays / 7) || 1} weeks`,
    '---',
    w.noteOwn,
    '',
    `## ${sectionHeadings.forOwner}`,
    '',
    ...(horse.consent.portfolio ? [`## ${sectionHeadings.forTeaching}`, ''] : []),
  ].join('\n')
}

/** Asked for where more than one could have taken the readings. */
const byLine = ({ people }: Practice, w: StarterWords): string[] =>
  people.length < 2 ? [] : [remarked(`by: ${blank}`, w.by(people.map(({ id }) => id).join(', ')))]

const textLine = (key: string, last: string | null, always: boolean, w: StarterWords): string[] =>
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
  const { starter: w } = format.words
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
  const { starter: w } = format.words
  const value = (foot: Foot) =>
    visit.readings.find((r: Reading) => r.foot === foot && r.measure === measure && r.stage === stage)?.value
  const text = order
    .map((foot) => [foot, value(foot)] as const)
    .filter(([, read]) => read !== undefined)
    .map(([foot, read]) => `${foot} ${format.measure(measure, read ?? 0)}`)
    .join(', ')
  return (stage === 'after' ? w.lastAfter : w.lastBefore)(format.shortDate(visit.date), text)
}

/** Every finding not yet said to be gone, the ones that a caution stands on first: one stroke clears each. */
function findingLines(past: readonly Visit[], { cautions }: Assessment, format: Formatter): string[] {
  const { starter: w } = format.words
  const open = openFindings(past)
  const standing = cautions.filter(({ standing: stands, level }) => stands && level !== 'mind')
  const isAsked = ({ finding: { foot, what } }: (typeof open)[number]) =>
    standing.some(
      ({ feet: about, facts }) => about.includes(foot) && 'finding' in facts && facts.finding === what,
    )
  const lines = feet.flatMap((foot) => {
    const here = open.filter(({ finding }) => finding.foot === foot)
    if (here.length === 0) return []
    const asked = here.filter(isAsked)
    return [
      `  ${foot}:`,
      ...[...asked, ...here.filter((one) => !asked.includes(one))].map((one) =>
        remarked(
          `    ${partsLine(one.finding.what, one.finding.place, blank)}`,
          w.lastOn(String(one.finding.grade), format.shortDate(one.visit.date), asked.includes(one)),
        ),
      ),
    ]
  })
  return lines.length === 0 ? [] : [remarked('findings:', w.findings), ...lines]
}

function growOutLines(features: readonly GrowOut[], format: Formatter): string[] {
  const { starter: w } = format.words
  const going = features.filter((feature) => feature.state !== 'grown out')
  const lines = feet.flatMap((foot) => {
    const here = going.filter((feature) => feature.foot === foot)
    if (here.length === 0) return []
    return [
      `  ${foot}:`,
      ...here.map((f) => remarked(`    ${partsLine(f.feature, f.place, blank)}`, featureRemark(f, format))),
    ]
  })
  return lines.length === 0 ? [] : [remarked('grow-out:', w.growOut), ...lines]
}

function featureRemark(feature: GrowOut, format: Formatter): string | null {
  const { starter: w } = format.words
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

/** The latest visit that says anything of it. */
const lastSaying = <T>(
  past: readonly Visit[],
  read: (visit: Visit) => T,
  isSaid: (value: T) => boolean,
): T | null => {
  const visit = past.findLast((one) => isSaid(read(one)))
  return visit === undefined ? null : read(visit)
}

const anySaid = (values: object): boolean => Object.keys(values).length > 0

/** What the last visit judged, and what a caution that still stands asks about, however long ago it was judged. */
function comfortLines(
  past: readonly Visit[],
  { cautions }: Assessment,
  order: readonly Foot[],
  w: StarterWords,
): string[] {
  const last = past.at(-1)?.comfort ?? null
  if (last === null) return []
  const asked = (codes: RegExp) => cautions.some(({ standing, code }) => standing && codes.test(code))
  const latest = <K extends keyof Comfort>(key: K, codes: RegExp): Comfort[K] | null =>
    asked(codes)
      ? lastSaying(
          past,
          ({ comfort }) => comfort[key],
          (value) => value !== null && anySaid(Object(value)),
        )
      : last[key]
  const lines: string[] = []
  const lameness = latest('lameness', /^lameness|^heat-with-lameness/) ?? {}
  if (footed(lameness).size > 0) {
    const map = order.filter((foot) => lameness[foot] !== undefined).map((foot) => `${foot}: ${blank}`)
    lines.push(remarked(`  lameness: {${[...map, `by: ${blank}`].join(', ')}}`, w.last(footText(lameness))))
  }
  const testers = latest('hoofTesters', /^hoof-testers/) ?? {}
  for (const [key, values] of [
    ['landing', last.landing],
    ['digital pulse', latest('digitalPulse', /pulse|^leaning|^tenderness/) ?? {}],
    ['hoof testers', mapped(testers, ({ place, grade }) => `${place} ${grade}`)],
  ] as const) {
    if (footed(values).size > 0)
      lines.push(remarked(`  ${key}: ${blanks(footed(values), order)}`, w.last(footText(values))))
  }
  const obel = asked(/^obel/)
    ? lastSaying(
        past,
        ({ comfort }) => comfort.obel,
        (value) => value !== null,
      )
    : last.obel
  if (obel !== null) lines.push(remarked(`  obel: ${blank}`, w.last(String(obel))))
  const surfaces = Object.entries(latest('surfaces', /^unwilling/) ?? {})
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

const mapped = <T>(values: PerFoot<T>, text: (value: T) => string): PerFoot<string> =>
  Object.fromEntries(
    feet.flatMap((foot) => {
      const value = values[foot]
      return value === undefined ? [] : [[foot, text(value)]]
    }),
  )

function bodyLines(last: Visit | null, w: StarterWords): string[] {
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

function stanceLines(past: readonly Visit[], order: readonly Foot[], w: StarterWords): string[] {
  const stance = lastSaying(past, (visit) => visit.stance, anySaid)
  if (stance === null) return []
  return [
    remarked(
      `stance: ${blanks(footed(stance), order)}`,
      w.last(footText(mapped(stance, ({ position }) => position))),
    ),
  ]
}

/** A vet's all-clear for the feet that wait for it. */
function clearedLines({ heldFeet }: Assessment, order: readonly Foot[], w: StarterWords): string[] {
  if (heldFeet.length === 0) return []
  const map = order.filter((foot) => heldFeet.includes(foot)).map((foot) => `${foot}: ${blank}`)
  return [remarked(`cleared: {${map.join(', ')}}`, w.cleared)]
}
