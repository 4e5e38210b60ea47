/** One visit's file: its block by key, its body by reader. */
import { addDays, type PlainDate, parseDate } from '../hoof/dates.ts'
import type { PerFoot } from '../hoof/feet.ts'
import { readBody } from './body.ts'
import { cellsByFoot, feetOrder } from './by-foot.ts'
import { bodyState, comfort, noBodyState, noComfort, stance } from './comfort.ts'
import { field, gapIn, type ParseContext, type Reader, readFields, wrongForm } from './fields.ts'
import { findings, growOut, type PlacedFeature } from './findings.ts'
import type { CaseFile } from './front-matter.ts'
import type { BodyState, Cleared, Comfort, Finding, Stage, Stance, Visit, YardOrigin } from './model.ts'
import { person } from './people.ts'
import { type HorseFolder, type PlacedPhoto, readPhotos } from './photos.ts'
import { date, intervalMeant, likelyDate, lines, parseInterval, text, yesNo } from './readers.ts'
import { type PlacedReading, readStage } from './readings.ts'
import type { Report, TextRange } from './report.ts'
import { normal } from './words.ts'
import { isUnfilled, readYamlTree, type YamlMap, type YamlNode } from './yaml-tree.ts'
import { yardKey } from './yard-key.ts'

/** A visit with the places of what it says, for remarks that need several visits. */
export interface PlacedVisit {
  readonly visit: Visit
  readonly readings: readonly PlacedReading[]
  readonly features: readonly PlacedFeature[]
  readonly photos: readonly PlacedPhoto[]
  readonly report: Report
  readonly dateRange: TextRange | null
  readonly weightRange: TextRange | null
  readonly clearedRange: TextRange | null
  /** Where the names of the two stages stand. */
  readonly stageKeys: Readonly<Record<Stage, TextRange | null>>
}

/** Left as written, for what needs more than its own text to be read. */
const asWritten: Reader<YamlNode> = (value) => value
const nothing: YamlNode = { kind: 'nothing', said: true, start: 0, end: 0 }

const noneCleared: Cleared = { feet: {}, all: null }

/** `{LH: 2026-11-20}` or `{all: 2026-11-20}`: the day is the vet's. */
const cleared: Reader<Cleared> = (value, context, name) => {
  let all: PlainDate | null = null
  const readAll = (written: YamlNode) => {
    if (!gapIn(written, name, context)) all = date(written, context, `${name} all`) ?? null
  }
  const cells =
    value.kind === 'map'
      ? cellsByFoot(value, context, name, { all: readAll })
      : wrongForm(
          value,
          context,
          name,
          'a foot and the day on which the vet cleared it: {LH: 2026-11-20}, or {all: 2026-11-20}',
        )
  const days: PerFoot<PlainDate> = {}
  for (const cell of cells ?? []) {
    const day = date(cell.value, context, `${name} ${cell.foot}`)
    if (day !== undefined) days[cell.foot] = day
  }
  return { feet: days, all }
}

/** An all-clear cannot be older than the vet's word: a day after the visit is refused. */
function clearedBy(read: Cleared, day: PlainDate, map: YamlMap, report: Report): Cleared {
  const late = [...Object.values(read.feet), read.all].filter((one) => one !== null && one > day)
  if (late.length === 0) return read
  report.error(
    'cleared-late',
    rangeOf(map, 'cleared'),
    `The vet's all-clear of ${late[0]} lies after the visit, ${day}.`,
    {
      expected: `a day up to ${day}`,
    },
  )
  return noneCleared
}

/** What began, or was given, cannot have done so after the visit that tells of it. */
function remarkDaysAfter(read: Comfort, day: PlainDate, map: YamlMap, report: Report): void {
  const written = rangeOf(map, 'comfort')
  if (written?.kind !== 'map') return
  for (const key of ['onset', 'painkillers'] as const) {
    const told = read[key]
    if (told === null || told <= day) continue
    report.warning(
      'day-after-visit',
      rangeOf(written, key),
      `The day of ${key}, ${told}, lies after the visit, ${day}.`,
      {
        expected: `a day up to ${day}`,
        advice: 'check the day, the month and the year',
      },
    )
  }
}

const visitFields = {
  date: field<PlainDate | null>(date, null),
  draft: field<boolean | null>(yesNo, null),
  by: field<string | null>(person, null),
  yard: field<YardOrigin | null>(yardKey, null),
  feet: field<YamlNode>(asWritten, nothing),
  footing: field<string | null>(text, null),
  before: field<readonly PlacedReading[]>(readStage('before'), []),
  after: field<readonly PlacedReading[]>(readStage('after'), []),
  findings: field<readonly Finding[]>(findings, []),
  'grow out': field<readonly PlacedFeature[]>(growOut, []),
  comfort: field<Comfort>(comfort, noComfort),
  body: field<BodyState>(bodyState, noBodyState),
  stance: field<PerFoot<Stance>>(stance, {}),
  cleared: field<Cleared>(cleared, noneCleared),
  photos: field<YamlNode>(asWritten, nothing),
  care: field<readonly string[]>(lines, []),
  'next visit': field<YamlNode>(asWritten, nothing),
}

export type VisitKey = keyof typeof visitFields

/** Reads an opened visit file; null when its block or its date is unusable (reported). */
export function readVisit(
  file: CaseFile,
  folder: HorseFolder,
  practice: Omit<ParseContext, 'report'>,
): PlacedVisit | null {
  const { report } = file
  const map = readYamlTree(file.text, file.blockStart, file.blockEnd, report)
  if (!map) return null
  const context = contextOf(map, { ...practice, report })
  const read = readFields(map, visitFields, context, 'of a visit')
  const id = visitIdOf(report.file)
  const day = read.date ?? parseDate(id.slice(0, 10))
  if (!day) return null
  remarkDaysAfter(read.comfort, day, map, report)
  const readings = [...read.before, ...read.after]
  const photos = readPhotos(read.photos, context, folder)
  return {
    visit: {
      id,
      date: day,
      file: report.file,
      draft: isDraft(read.draft, map, report),
      by: read.by,
      yard: read.yard,
      footing: read.footing,
      readings: readings.map((placed) => placed.reading),
      findings: read.findings,
      growOut: read['grow out'].map((placed) => placed.feature),
      comfort: read.comfort,
      bodyState: read.body,
      stance: read.stance,
      cleared: clearedBy(read.cleared, day, map, report),
      photos: photos.map(({ photo }) => photo),
      care: read.care,
      nextVisit: nextVisitOf(read['next visit'], day, context),
      body: readBody(file.text, file.bodyStart, report),
    },
    readings,
    features: read['grow out'],
    photos,
    report,
    dateRange: rangeOf(map, 'date'),
    weightRange: weightSpotOf(map),
    clearedRange: rangeOf(map, 'cleared'),
    stageKeys: { before: keySpotOf(map, 'before'), after: keySpotOf(map, 'after') },
  }
}

/** Only a plain `no`, or no such line, lets a visit out. */
function isDraft(read: boolean | null, map: YamlMap, report: Report): boolean {
  const written = rangeOf(map, 'draft')
  if (read === true) {
    report.warning('draft', written, 'This visit is a draft: the pages of the practice alone show it.', {
      advice: 'delete the line once the visit may be shown',
    })
  }
  return written !== null && read !== false
}

const visitIdOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.md$/, '')

/** The context with the visit's own order of feet, if it sets one. The order must be known before any list is read. */
function contextOf(map: YamlMap, context: ParseContext): ParseContext {
  const written = map.entries.find((entry) => normal(entry.key.text) === 'feet')?.value
  if (!written || written.kind === 'nothing' || isUnfilled(written)) return context
  const order = feetOrder(written, context, 'feet')
  return order ? { ...context, feetOrder: order } : context
}

function weightSpotOf(map: YamlMap): TextRange | null {
  const body = rangeOf(map, 'body')
  return body?.kind === 'map' ? rangeOf(body, 'weight') : null
}

const keySpotOf = (map: YamlMap, name: string): TextRange | null =>
  map.entries.find((entry) => normal(entry.key.text) === name)?.key ?? null

/** Where the value of a key stands. */
export const rangeOf = (map: YamlMap, name: string): YamlNode | null =>
  map.entries.find((entry) => normal(entry.key.text) === name)?.value ?? null

/** A next visit that far ahead, in days, is no slip of the year. */
const mostWait = 200

/** `in 5 weeks` from the visit's date, or a date. One that lies before the visit is doubted and not used. */
function nextVisitOf(value: YamlNode, day: PlainDate, context: ParseContext): PlainDate | null {
  if (value.kind === 'nothing') return null
  const days = value.kind === 'text' ? parseInterval(value.text) : null
  if (days !== null) return addDays(day, days)
  if (value.kind !== 'text' || !/^\d{4}\D|^\d{8}$/.test(value.text)) {
    const meant = value.kind === 'text' ? (intervalMeant(value.text) ?? likelyDate(value.text)) : null
    const fix = meant && (!parseDate(meant) || meant > day) ? meant : null
    return wrongForm(value, context, 'next visit', 'in 5 weeks, or a date: 2026-04-18', { fix }) ?? null
  }
  const next = date(value, context, 'next visit') ?? null
  if (next !== null && next <= day) {
    const later = parseDate(`${Number(next.slice(0, 4)) + 1}${next.slice(4)}`)
    const nextYear = later && later > day && later < addDays(day, mostWait) ? later : null
    context.report.warning(
      'next-visit-early',
      value,
      `The next visit, ${next}, is not after the visit itself, ${day}.`,
      {
        expected: `a date after ${day}`,
        fix: nextYear,
        advice: nextYear ? null : 'check the year and the month, or write in 5 weeks',
      },
    )
    return null
  }
  return next
}
