/** Hand-over for the vet or farrier: one printed side. */
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../hoof/measures.ts'
import type { Trend } from '../../trend/assessment.ts'
import { feetText, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import { capital } from '../shared/format.ts'
import type { PageView } from '../shared/page.ts'
import { findingDate, findingName, gradeName, openFindingsOf } from './findings.ts'
import type { HorseCase } from './horse-case.ts'
import type { Block, ReadingRow } from './paper-sides.ts'
import { heldText, identityLine, ownerName, profileFacts, targetTexts, vetText } from './profile.ts'
import { blockOf, type SheetPage, sheetPage } from './sheet.ts'
import { visitRows } from './visit-table.ts'

export interface HandOverPage extends SheetPage {
  readonly from: string
  readonly identity: readonly string[]
}

export function handOver(of: HorseCase): PageView {
  const { horse, practice, words, format, assessment } = of
  const w = words.sheets
  const from = w.handOverFrom(practice.name, format.date(assessment.asOf))
  const identity = identityLines(of)
  const sheet = sheetPage(of, w.handOverTitle(horse.name), [from, ...identity], {
    wide: [],
    left: [readingsBlock(of), ...blockOf(w.trends, trendLines(of), w.trendsHow)],
    right: [
      ...blockOf(w.questions, questionLines(of)),
      ...blockOf(w.findings, findingLines(of)),
      ...doneBlock(of),
      ...blockOf(w.plan, planLines(of)),
      ...blockOf(w.history, horse.history),
    ],
  })
  const model: HandOverPage = { ...sheet, from, identity }
  return { path: `${horse.id}/hand-over.html`, template: 'practice/hand-over', model }
}

function identityLines(of: HorseCase): readonly string[] {
  const { horse, practice, words } = of
  const facts = profileFacts(of)
  const text = (name: string) => facts.find((fact) => fact.name === name)?.text ?? ''
  const { height, weight } = words.horse.facts
  const owner = ownerName(horse, practice.owners)
  const who = [
    identityLine(of),
    text(height),
    text(weight),
    owner === null ? '' : `${words.horse.facts.owner}: ${owner}`,
  ]
  return [who.filter((part) => part !== '').join(' · '), `${words.horse.facts.vet}: ${vetText(of)}`]
}

/** Latest value of each measure at each foot, and its change since the first. */
function readingsBlock(of: HorseCase): Block {
  const { words, format, assessment, visits } = of
  const last = visits.at(-1)?.date ?? assessment.asOf
  const ids: readonly AnyMeasureId[] = [...measureIds, ...derivedIds]
  return {
    kind: 'readings',
    heading: words.sheets.latest(format.date(last)),
    note: words.sheets.latestHow,
    feet,
    items: ids.flatMap((id) => readingRow(of, id, last)),
  }
}

function readingRow(of: HorseCase, id: AnyMeasureId, lastVisit: string): readonly ReadingRow[] {
  const { format, assessment } = of
  const trends = assessment.trends.filter(({ measure }) => measure === id)
  if (trends.length === 0) return []
  const dates = new Set(trends.map(({ last }) => last.date))
  const [date = ''] = dates
  const old = dates.size === 1 && date !== lastVisit
  const unit = format.unit(id)
  const name = [capital(format.name(id)), ...(unit === '' ? [] : [unit])].join(', ')
  return [
    {
      name: old ? `${name} (${format.shortDate(date)})` : name,
      cells: feet.map((foot) =>
        readingCell(
          of,
          trends.find((trend) => trend.foot === foot),
          old ? date : lastVisit,
        ),
      ),
    },
  ]
}

function readingCell({ format }: HorseCase, trend: Trend | undefined, date: string): string {
  if (trend === undefined) return ''
  const { measure, change, isClear, points } = trend
  const { date: read, value } = trend.last
  const moved = points.length > 1 ? [`${format.changeFigure(measure, change)}${isClear ? '*' : ''}`] : []
  const when = read === date ? [] : [`(${format.shortDate(read)})`]
  return [format.figure(measure, value), ...moved, ...when].join(' ')
}

const carried: ReadonlySet<Trend['verdict']> = new Set(['improving', 'worsening', 'rising', 'falling'])

function trendLines({ assessment, format, words, assessmentWords }: HorseCase): readonly string[] {
  return assessment.trends.flatMap(({ foot, measure, fit, verdict }) =>
    fit === null || !carried.has(verdict)
      ? []
      : [
          words.sheets.trendOf(
            foot,
            format.name(measure),
            format.rate(measure, fit.slopePerMonth),
            format.interval(measure, fit.slopeLow, fit.slopeHigh),
            assessmentWords.standings[verdict],
          ),
        ],
  )
}

const findingLines = (of: HorseCase): readonly string[] =>
  openFindingsOf(of).map((finding) => {
    const date = findingDate(of, finding)
    const grade = gradeName(of, finding.grade)
    const said = finding.words === null ? '' : `: ${finding.words}`
    return `${finding.foot} ${findingName(finding)}, ${date === null ? grade : of.words.horse.gradeOn(grade, date)}${said}`
  })

/** What the last trim changed, by measure. */
function doneBlock(of: HorseCase): readonly Block[] {
  const { visits, format, words } = of
  const last = visits.at(-1)
  if (last === undefined) return []
  const trims = visitRows(of, last.id)
    .filter(({ note }) => note === null)
    .flatMap(({ name, unit, cells }) => {
      const steps = feet.flatMap((foot: Foot, i) => {
        const change = cells[i]?.change ?? null
        return change === null ? [] : [`${foot} ${change}`]
      })
      return !steps.some((step) => /[1-9]/.test(step))
        ? []
        : [words.sheets.doneTrim(unit === '' ? name : `${name}, ${unit}`, steps.join(', '))]
    })
  return [
    ...blockOf(
      words.sheets.done(format.date(last.date)),
      trims.length === 0 ? [words.sheets.doneNone] : trims,
    ),
    ...blockOf(words.sheets.care, last.care),
  ]
}

const planLines = (of: HorseCase): readonly string[] => [
  ...heldText(of),
  ...of.assessment.plans.map((plan) =>
    of.format.words.base.remark(
      plan.foot,
      `${of.assessmentWords.planSentence(plan, of.format)} ${of.assessmentWords.offSentence(plan, of.format)}`,
    ),
  ),
  ...targetTexts(of),
]

/** What the record asks of the one who takes over: one question a matter, none of them an answer. */
function questionLines(of: HorseCase): readonly string[] {
  const { format, readings } = of
  const seen = readings.of('sole-depth').length > 0
  const asked = standingCautions(of.assessment.cautions)
    .filter(
      ({ level, code }) => level !== 'mind' || (!seen && (code === 'sole-flat' || code === 'sole-thin')),
    )
    .map((caution) => ({ caution, question: wordsOf(format, caution).question }))
  const questions = [...new Set(asked.map(({ question }) => question))]
  return questions.map((question) => {
    const about = asked.filter((one) => one.question === question).flatMap(({ caution }) => caution.feet)
    const every = feet.every((foot) => about.includes(foot))
    return every ? question : format.words.base.remark(feetText(format, about), question)
  })
}
