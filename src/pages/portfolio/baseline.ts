/** The first visit: what was found, how it stood against its bands. */
import { grouped } from '../../casebook/grouped.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { soleMeasures } from '../../hoof/stand-ins.ts'
import { type Caution, withoutCovered } from '../../trend/assessment.ts'
import { columnsOf, families } from '../../trend/columns.ts'
import { sideViewAt } from '../../trend/side-views.ts'
import { cautionLevels, feetListed, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import type { SideDrawing, SoleDrawing, Table } from '../shared/figures.ts'
import { findingName } from '../shared/findings.ts'
import { footMeasures } from '../shared/foot-measures.ts'
import { sideDrawing } from '../shared/side.ts'
import { standInNote } from '../shared/stand-in-note.ts'
import type { CaseContext } from './context.ts'
import { firstReadings, measureOrder, outsideBand } from './first-readings.ts'
import { medianOf } from './median.ts'
import type { CaseCaution, PortfolioCase } from './view.ts'

/** The same at several feet stands once, the gravest first. */
export function findingsTable({ first, format, anonymous, words }: CaseContext): Table | null {
  if (first.findings.length === 0) return null
  const alike = grouped(first.findings, ({ what, place, grade }) => [what, place, grade].join('|'))
  return {
    caption: words.findings,
    head: words.findingHead,
    rows: [...alike.values()]
      .toSorted(([a], [b]) => (b?.grade ?? 0) - (a?.grade ?? 0))
      .flatMap((some) => {
        const [one] = some
        if (one === undefined) return []
        const name = findingName({ what: anonymous(one.what), place: anonymous(one.place) })
        const at = feetListed(
          format,
          some.map(({ foot }) => foot),
        )
        return [[name, at, words.grades[one.grade] ?? '']]
      }),
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

/** Feet of which the same is said stand together. */
export function comfortAtFirst({ first, format, words }: CaseContext): PortfolioCase['findings']['comfort'] {
  const { lameness, landing, digitalPulse } = first.comfort
  const byText = new Map<string, Foot[]>()
  for (const foot of feet) {
    const parts = [
      lameness[foot] === undefined ? null : words.lameness(lameness[foot]),
      landing[foot] === undefined ? null : words.landing(landing[foot]),
      digitalPulse[foot] === undefined ? null : words.pulse(digitalPulse[foot]),
    ].filter((part) => part !== null)
    const text = parts.join('; ')
    if (text !== '') byText.set(text, [...(byText.get(text) ?? []), foot])
  }
  return [...byText].map(([text, at]) => ({ feet: feetListed(format, at), text }))
}

/** So many readings outside their bands are told; all of them stand among the readings. */
const mostOutside = 6

/** Readings of the first visit that lay outside the bands that the engine judged by, the furthest first. */
export function bandsTable(context: CaseContext): Table | null {
  const { format, words } = context
  const rows = outsideBand(context)
    .slice(0, mostOutside)
    .map(({ reading: { foot, measure, value }, trend, edge }) => {
      const off = format.measure(measure, Math.abs(value - edge))
      const { low = null, high = null } = trend.target ?? {}
      const text = (limit: number | null) => (limit === null ? null : format.measure(measure, limit))
      return [
        words.footMeasure(format.foot(foot), format.name(measure)),
        words.readOff(
          format.measure(measure, value),
          value < edge ? words.belowBand(off) : words.aboveBand(off),
        ),
        words.band(text(low), text(high)),
      ]
    })
  return rows.length === 0 ? null : { caption: words.assessmentCaption, head: words.assessmentHead, rows }
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

/** What is said of several feet stands once. */
const caseCautions = (
  { format, anonymous, words }: CaseContext,
  cautions: readonly Caution[],
): readonly CaseCaution[] =>
  cautionLevels.flatMap((level) => {
    const byText = new Map<string, Foot[]>()
    for (const caution of cautions) {
      if (caution.level !== level) continue
      const text = wordsOf(format, caution).portfolio(caution.facts, format)
      byText.set(text, [...(byText.get(text) ?? []), ...caution.feet])
    }
    return [...byText].map(([text, about], i) => {
      const isOfAll = feet.every((foot) => about.includes(foot))
      const said = isOfAll ? text : format.words.base.remark(feetListed(format, about), text)
      return { level, word: i === 0 ? words.levels[level] : null, text: anonymous(said) }
    })
  })

/** How often, in a sentence; each visit behind a fold. */
export function timelineOf({ visits, timeOf, time }: CaseContext): PortfolioCase['timeline'] {
  const times = visits.map(({ date }) => timeOf(date))
  const apart = times.slice(1).map((at, i) => at - (times[i] ?? 0))
  const sorted = apart.toSorted((a, b) => a - b)
  const [shortest, longest] = [sorted[0], sorted.at(-1)]
  return {
    text:
      shortest === undefined || longest === undefined
        ? time.once
        : time.rhythm(visits.length, Math.round(medianOf(sorted)), shortest, longest),
    visits: {
      caption: time.timelineCaption,
      head: time.timelineHead,
      rows: times.map((at, i) => [String(i + 1), String(at), i === 0 ? '\u2013' : String(apart[i - 1])]),
    },
  }
}
