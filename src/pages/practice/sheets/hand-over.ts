/** Hand-over for the vet or farrier: one printed side. */
import { feet } from '../../../hoof/feet.ts'
import { type AnyMeasureId, derivedIds, measureIds } from '../../../hoof/measures.ts'
import type { Trend } from '../../../trend/assessment.ts'
import { feetText, standingCautions, wordsOf } from '../../shared/caution-lines.ts'
import { findingName } from '../../shared/findings.ts'
import { capital } from '../../shared/format.ts'
import type { PageView } from '../../shared/page.ts'
import { telling } from '../../shared/telling.ts'
import type { HorseCase } from '../case/horse-case.ts'
import { heldText, identityLine, ownerName, profileFacts, targetLine, vetText } from '../case/profile.ts'
import { shownEnd } from '../case/shown-reading.ts'
import { findingDate, gradeName, openFindingsOf } from '../parts/findings.ts'
import { problemsPart } from '../parts/problems.ts'
import { isTold } from '../parts/real.ts'
import { trimChanges } from '../parts/visit-table.ts'
import type { Block, ReadingRow } from './paper-sides.ts'
import { blockOf, type SheetPage, sheetPage } from './sheet.ts'

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
    toWriteIn: 20,
    wide: [...blockOf(w.questions, questionLines(of)), ...readingsBlock(of)],
    left: [
      ...blockOf(words.problem.heading, problemLines(of)),
      ...blockOf(w.findings, findingLines(of)),
      ...blockOf(w.plan, planLines(of)),
    ],
    right: [...doneBlock(of), ...blockOf(w.history, horse.history)],
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

/** Rows of readings on the sheet; *All measures* has every one. */
const mostRows = 10

/** Latest value and change of what the case is about, what tells most, and what has clearly moved. */
function readingsBlock(of: HorseCase): readonly Block[] {
  const { words, format, assessment, visits } = of
  const { trends, problems } = assessment
  if (trends.length === 0) return []
  const last = visits.at(-1)?.date ?? assessment.asOf
  const asked = problems.flatMap(({ about }) => (about.kind === 'measure' ? [about.measure] : []))
  const moved = trends.filter(isTold).map(({ measure }) => measure)
  const chosen = [...new Set([...asked, ...telling, ...moved])].filter((id) =>
    trends.some(({ measure }) => measure === id),
  )
  const kept = chosen.slice(0, mostRows)
  const ids = [...measureIds, ...derivedIds].filter((id) => kept.includes(id))
  return [
    {
      kind: 'readings',
      heading: words.sheets.latest(format.date(last)),
      note: words.sheets.latestHow,
      feet,
      items: ids.map((id) => readingRow(of, id, last)),
    },
  ]
}

function readingRow(of: HorseCase, id: AnyMeasureId, lastVisit: string): ReadingRow {
  const { format, assessment } = of
  const trends = assessment.trends.filter(({ measure }) => measure === id)
  const dates = new Set(trends.map(({ last }) => last.date))
  const [date = ''] = dates
  const old = dates.size === 1 && date !== lastVisit
  const unit = format.unit(id)
  const name = [capital(format.name(id)), ...(unit === '' ? [] : [unit])].join(', ')
  return {
    name: old ? `${name} (${format.shortDate(date)})` : name,
    cells: feet.map((foot) =>
      readingCell(
        of,
        trends.find((trend) => trend.foot === foot),
        old ? date : lastVisit,
      ),
    ),
  }
}

function readingCell(of: HorseCase, trend: Trend | undefined, date: string): ReadingRow['cells'][number] {
  if (trend === undefined) return null
  const { format } = of
  const { measure, change, points, last } = trend
  const now = shownEnd(of, trend, 'last', (_, id, value) => format.figure(id, value))
  return {
    now: last.date === date ? now : { ...now, text: `${now.text} (${format.shortDate(last.date)})` },
    change: points.length > 1 ? `${format.changeFigure(measure, change)}${isTold(trend) ? '*' : ''}` : '',
  }
}

/** What the case is about, a line each, the closed ones at the end. */
function problemLines(of: HorseCase): readonly string[] {
  const { words } = of
  const { open, more, closed } = problemsPart(of)
  return [
    ...[...open, ...more].map(({ foot, name, first, now, since, readOn, standing, expected }) => {
      const values =
        now === null
          ? []
          : [first === null ? now.text : words.problem.fromTo(first.text, now.text), readOn ?? '']
      const said = [
        [...values, since ?? ''].filter((part) => part !== '').join(' '),
        standing?.text ?? '',
        expected ?? '',
      ].filter((part) => part !== '')
      const about = [foot ?? '', name].filter((part) => part !== '').join(' ')
      return said.length === 0 ? about : of.format.words.base.remark(about, said.join('; '))
    }),
    ...closed,
  ]
}

/** Those of a foot in one line. */
function findingLines(of: HorseCase): readonly string[] {
  const open = openFindingsOf(of)
  return feet.flatMap((foot) => {
    const here = open
      .filter((finding) => finding.foot === foot)
      .map((finding) => {
        const date = findingDate(of, finding)
        const grade = gradeName(of, finding.grade)
        const said = finding.words === null ? '' : `: ${finding.words}`
        return `${findingName(finding)}, ${date === null ? grade : of.words.horse.gradeOn(grade, date)}${said}`
      })
    return here.length === 0 ? [] : [of.format.words.base.remark(foot, here.join('; '))]
  })
}

/** What the last trim changed, by measure. */
function doneBlock(of: HorseCase): readonly Block[] {
  const { visits, format, words } = of
  const last = visits.at(-1)
  if (last === undefined) return []
  const trims = trimChanges(of, last.id)
    .filter(({ feet: changed }) => changed.some(({ change }) => /[1-9]/.test(change)))
    .map(({ measure, feet: changed }) =>
      words.sheets.doneTrim(
        [capital(format.name(measure)), format.unit(measure)].join(', '),
        changed.map(({ foot, figure }) => `${foot} ${figure}`).join(', '),
      ),
    )
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
  ...targetLine(of),
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
