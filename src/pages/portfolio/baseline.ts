/** The first visit: what was found, how it stood against its bands. */
import { type Band, inBand } from '../../hoof/bands.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import { soleMeasures } from '../../hoof/stand-ins.ts'
import { type AssessedReading, type Caution, withoutCovered } from '../../trend/assessment.ts'
import { columnsOf, families } from '../../trend/columns.ts'
import { sideViewAt } from '../../trend/side-views.ts'
import { cautionLevels, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import type { SideDrawing, SoleDrawing, Table } from '../shared/figures.ts'
import { footMeasures } from '../shared/foot-measures.ts'
import { sideDrawing } from '../shared/side.ts'
import { standInNote } from '../shared/stand-in-note.ts'
import type { CaseContext } from './context.ts'
import type { CaseCaution, PortfolioCase } from './view.ts'

export function findingsTable({ first, format, anonymous, words }: CaseContext): Table | null {
  if (first.findings.length === 0) return null
  return {
    caption: words.findings,
    head: words.findingHead,
    rows: first.findings.map(({ foot, what, place, grade }) => [
      format.foot(foot),
      anonymous(what),
      anonymous(place),
      words.grades[grade] ?? '',
    ]),
  }
}

export function solesAtFirst({ assessment, first, format, anonymous, words }: CaseContext): SoleDrawing[] {
  return feet.flatMap((foot) => {
    const findings = first.findings.filter((finding) => finding.foot === foot)
    if (findings.length === 0) return []
    const name = format.foot(foot)
    const marks = findings.map(({ what, place, grade }, i) => ({
      what: anonymous(what),
      place: anonymous(place),
      grade,
      sign: String(i + 1),
    }))
    const rows = marks.map(({ sign, what, place, grade }) => [sign, what, place, words.grades[grade] ?? ''])
    const measures = footMeasures(assessment.readings, foot, first.id)
    return [
      {
        kind: 'sole' as const,
        id: `sole-${foot.toLowerCase()}`,
        foot,
        title: words.solePicture(name, findings.length),
        description: words.soleSays(name, rows.map((row) => `${row.join(', ')}.`).join(' ')),
        table: { caption: words.solePicture(name, findings.length), head: words.soleHead, rows },
        unread: standInNote(format, soleMeasures(measures).assumed, measures),
        measures,
        marks,
      },
    ]
  })
}

/** Each foot as it came, before anything was taken: from the gauge where it was read so, else from pictures. */
export function sidesAtFirst({ horse, first, format, words, time }: CaseContext): SideDrawing[] {
  const columns = columnsOf(horse, [first])
  return feet.flatMap((foot) => {
    const view = families.flatMap((family) => sideViewAt(columns, family, 'before', foot, 0) ?? [])[0]
    if (view === undefined) return []
    const drawing = sideDrawing({ foot, first: view, latest: view }, format, words, () => time.at(0))
    const title = words.sideTitle(format.foot(foot))
    return [{ ...drawing, id: `first-${drawing.id}`, title, table: { ...drawing.table, caption: title } }]
  })
}

const measureOrder: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]

/** Readings of the first visit: before the trim where they were taken so, else after. */
export function firstReadings({ assessment, first }: CaseContext): AssessedReading[] {
  const all = assessment.readings.filter(({ visit }) => visit === first.id)
  const key = ({ foot, measure }: AssessedReading) => `${foot}|${measure}`
  const chosen = new Map<string, AssessedReading>()
  for (const stage of ['after', 'before'] as const) {
    for (const source of ['photo', 'derived', 'entered'] as const) {
      for (const reading of all)
        if (reading.stage === stage && reading.source === source) chosen.set(key(reading), reading)
    }
  }
  const order = ({ foot, measure }: AssessedReading) =>
    feet.indexOf(foot) * 100 + measureOrder.indexOf(measure)
  return [...chosen.values()].sort((a, b) => order(a) - order(b))
}

export function readingsTable(context: CaseContext): Table | null {
  const { format, words } = context
  const readings = firstReadings(context)
  const rows = measureOrder.flatMap((measure) => {
    const some = readings.filter((reading) => reading.measure === measure)
    if (some.length === 0) return []
    const unit = format.unit(measure)
    const cells = feet.map((foot) => {
      const reading = some.find((one) => one.foot === foot)
      return reading === undefined ? format.words.base.notRead : format.figure(measure, reading.value)
    })
    return [[unit === '' ? format.name(measure) : `${format.name(measure)}, ${unit}`, ...cells]]
  })
  if (rows.length === 0) return null
  return {
    caption: words.readingsCaption,
    head: words.readingsHead(feet.map((foot) => format.foot(foot))),
    rows,
  }
}

export function comfortAtFirst({ first, format, words }: CaseContext): PortfolioCase['findings']['comfort'] {
  const { lameness, landing, digitalPulse } = first.comfort
  return feet.flatMap((foot: Foot) => {
    const parts = [
      lameness[foot] === undefined ? null : words.lameness(lameness[foot]),
      landing[foot] === undefined ? null : words.landing(landing[foot]),
      digitalPulse[foot] === undefined ? null : words.pulse(digitalPulse[foot]),
    ].filter((part) => part !== null)
    return parts.length === 0 ? [] : [{ foot: format.foot(foot), text: parts.join('; ') }]
  })
}

/** Readings of the first visit against the bands that the engine judged by. */
export function bandsTable(context: CaseContext): Table | null {
  const { assessment, format, words } = context
  const rows = firstReadings(context).flatMap((reading) => {
    const trend = assessment.trends.find(
      ({ foot, measure, target }) => foot === reading.foot && measure === reading.measure && target !== null,
    )
    if (!trend?.target) return []
    const { low, high } = trend.target
    const text = (value: number | null) => (value === null ? null : format.measure(reading.measure, value))
    return [
      [
        format.foot(reading.foot),
        format.name(reading.measure),
        format.measure(reading.measure, reading.value),
        words.band(text(low), text(high)),
        standing(reading, trend.target, context),
      ],
    ]
  })
  return rows.length === 0 ? null : { caption: words.assessmentCaption, head: words.assessmentHead, rows }
}

function standing({ measure, value }: AssessedReading, band: Band, { format, words }: CaseContext): string {
  if (inBand(value, band)) return words.inBand
  return band.low !== null && value < band.low
    ? words.belowBand(format.measure(measure, band.low - value))
    : words.aboveBand(format.measure(measure, value - (band.high ?? value)))
}

/** What the first visit found, as it found it. */
export function cautionsAtFirst(context: CaseContext): readonly CaseCaution[] {
  const { assessment, first } = context
  const found = assessment.cautions.flatMap((caution): readonly Caution[] => {
    const here = caution.seen.find(({ visit }) => visit === first.id)
    return here === undefined ? [] : [{ ...caution, facts: here.facts } as Caution]
  })
  return caseCautions(context, withoutCovered(found))
}

/** What stood when the case was last seen: the end of a case is no calmer than its middle. */
export const cautionsAtLast = (context: CaseContext): readonly CaseCaution[] =>
  caseCautions(
    context,
    standingCautions(context.assessment.cautions).filter(({ seen }) => seen.length > 0),
  )

const caseCautions = (
  { format, anonymous, words }: CaseContext,
  cautions: readonly Caution[],
): readonly CaseCaution[] =>
  cautionLevels.flatMap((level) => {
    const texts = cautions
      .filter((caution) => caution.level === level)
      .map((caution) => {
        const text = wordsOf(format, caution).portfolio(caution.facts, format)
        return caution.feet.length === feet.length
          ? text
          : format.words.base.remark(format.list(caution.feet.map(format.foot)), text)
      })
    return [...new Set(texts)].map((text, i) => ({
      level,
      word: i === 0 ? words.levels[level] : null,
      text: anonymous(text),
    }))
  })

export function timelineOf({ visits, timeOf, time }: CaseContext): Table {
  return {
    caption: time.timelineCaption,
    head: time.timelineHead,
    rows: visits.map((visit, i) => {
      const before = visits[i - 1]
      const at = timeOf(visit.date)
      return [String(i + 1), String(at), before === undefined ? '\u2013' : String(at - timeOf(before.date))]
    }),
  }
}
