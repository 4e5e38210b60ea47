import { feet } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { findingStories } from '../shared/findings.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import type { CaseLength } from '../words/keys.ts'
import {
  bandsTable,
  cautionsAtFirst,
  cautionsAtLast,
  comfortAtFirst,
  findingsTable,
  readingsTable,
  sidesAtFirst,
  solesAtFirst,
  timelineOf,
} from './baseline.ts'
import { type CaseContext, caseContext, inCaseTime } from './context.ts'
import { readingsCsv } from './csv.ts'
import { discussionOf } from './discussion.ts'
import {
  chartsOf,
  gridOf,
  growOutLines,
  growthLines,
  outcomeOf,
  planLines,
  shownAlways,
  sidesOverTime,
  trendsTable,
  trimTables,
} from './follow-up.ts'
import { type FineProfile, fineProfile } from './profile.ts'
import { caseShots } from './shots.ts'
import type { CaseChange, CaseSummary, PortfolioCase } from './view.ts'

export interface MadeCase {
  readonly page: PortfolioCase
  readonly summary: CaseSummary
  /** Never shown as it is: how closely it may be told depends on all other cases. */
  readonly profile: FineProfile
  /** Of each visit, as the page counts them. */
  readonly times: readonly number[]
  /** The readings shown, as text of a CSV file. */
  readonly csv: string
}

/** The case as anyone may see it; null without consent, alias or visits. */
export function presentPortfolioCase(input: HorseInput, own: OwnWords): MadeCase | null {
  const context = caseContext(input, own)
  if (context === null) return null
  const summary = summaryOf(context)
  const shots = caseShots(context, input.pictures)
  const { alias, visits, timeOf, time, horse, words } = context
  return {
    summary,
    profile: fineProfile(context),
    times: visits.map(({ date }) => timeOf(date)),
    csv: readingsCsv(context),
    page: {
      title: words.caseTitle(summary.findings),
      head: words.caseHead(alias),
      keyFacts: words.keyFacts(visits.length, summary.span),
      findings: {
        list: findingsTable(context),
        soles: solesAtFirst(context),
        sides: sidesAtFirst(context),
        readings: readingsTable(context),
        comfort: comfortAtFirst(context),
        shots: shots.first,
      },
      timeline: timelineOf(context),
      assessment: { bands: bandsTable(context), cautions: cautionsAtFirst(context) },
      done: { trims: trimTables(context), plans: planLines(context) },
      outcome: {
        label: words.outcomes[summary.outcome],
        cautions: cautionsAtLast(context),
        sides: sidesOverTime(context),
        charts: chartsOf(context),
        trends: trendsTable(context),
        grid: gridOf(context),
        growth: growthLines(context),
        growOut: growOutLines(context),
        shots: shots.later,
      },
      ...discussionOf(context),
      consent: horse.consent.photos ? words.consentWith : words.consentWithout,
      csv: 'readings.csv',
      csvNote: time.csvNote,
    },
  }
}

function summaryOf(context: CaseContext): CaseSummary {
  const { visits, assessment, practice, anonymous, days, time } = context
  const stories = findingStories(visits)
  const withData = new Set([...stories.map(({ foot }) => foot), ...assessment.trends.map(({ foot }) => foot)])
  return {
    slug: context.slug,
    alias: context.alias,
    visits: visits.length,
    span: time.span(inCaseTime(days, practice)),
    length: lengthOf(days),
    outcome: outcomeOf(assessment),
    findings: [...new Set(stories.map(({ what }) => anonymous(what)))].sort(),
    feet: feet.filter((foot) => withData.has(foot)),
    changes: changesOf(context),
  }
}

const lengthOf = (days: number): CaseLength =>
  days <= 92 ? 'short' : days <= 183 ? 'half' : days <= 366 ? 'year' : 'long'

const compared: readonly AnyMeasureId[] = [
  ...shownAlways,
  'heel-angle',
  'frog-ratio',
  'sulcus-depth',
  'width',
]

/** For heel balance the distance from level counts, whichever heel is the higher. */
function changesOf({ assessment }: CaseContext): CaseChange[] {
  return compared.flatMap((measure) => {
    const trends = assessment.trends.filter(
      (trend) => trend.measure === measure && trend.family === 'gauge' && trend.points.length >= 2,
    )
    if (trends.length === 0) return []
    const level = measure === 'heel-balance'
    const moves = trends.map(({ first, last, isClear }) => ({
      by: level ? Math.abs(last.value) - Math.abs(first.value) : last.value - first.value,
      isClear,
    }))
    const count = (which: (move: { by: number; isClear: boolean }) => boolean) => moves.filter(which).length
    return [
      {
        measure,
        mean: moves.reduce((sum, { by }) => sum + by, 0) / moves.length,
        feet: moves.length,
        up: count(({ by, isClear }) => isClear && by > 0),
        down: count(({ by, isClear }) => isClear && by < 0),
        within: count(({ by, isClear }) => !isClear || by === 0),
      },
    ]
  })
}
