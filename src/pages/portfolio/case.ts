import { feet } from '../../hoof/feet.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { lineOn } from '../../trend/trends.ts'
import { drawnTogether } from '../shared/drawn-together.ts'
import { findingStories } from '../shared/findings.ts'
import type { HorseInput } from '../shared/horse-input.ts'
import { telling } from '../shared/telling.ts'
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
import { conclusionOf, foundTable, problemsTable, problemsText } from './conclusion.ts'
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
  sideOverTime,
  trendsTable,
  trimsDone,
} from './follow-up.ts'
import { problemKinds } from './problems.ts'
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
  const trims = trimsDone(context)
  const soles = drawnTogether(solesAtFirst(context))
  const sides = drawnTogether(sidesAtFirst(context))
  const [chart = null, ...charts] = chartsOf(context)
  const { alias, visits, timeOf, time, horse, words } = context
  return {
    summary,
    profile: fineProfile(context),
    times: visits.map(({ date }) => timeOf(date)),
    csv: readingsCsv(context),
    page: {
      title: words.caseTitle(summary.kinds),
      head: words.caseHead(alias),
      keyFacts: words.keyFacts(visits.length, summary.span),
      problems: problemsText(context),
      findings: {
        list: findingsTable(context),
        soles: soles.drawings,
        sides: sides.drawings,
        drawnNotes: [...new Set([...sides.notes, ...soles.notes])],
        readings: readingsTable(context),
        comfort: comfortAtFirst(context),
        shots: shots.first,
      },
      timeline: timelineOf(context),
      assessment: { bands: bandsTable(context), cautions: cautionsAtFirst(context) },
      done: { taken: trims.summary, each: trims.each, plans: planLines(context) },
      outcome: {
        label: words.outcomes[summary.outcome],
        conclusion: conclusionOf(context),
        cautions: cautionsAtLast(context),
        problems: problemsTable(context),
        chart,
        side: sideOverTime(context),
        shots: shots.later,
        all: {
          charts,
          trends: trendsTable(context),
          found: foundTable(context),
          grid: gridOf(context),
          growth: growthLines(context),
          growOut: growOutLines(context),
        },
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
    kinds: problemKinds(context).map(({ name }) => name),
    findings: [...new Set(stories.map(({ what }) => anonymous(what)))].sort(),
    feet: feet.filter((foot) => withData.has(foot)),
    changes: changesOf(context),
  }
}

const lengthOf = (days: number): CaseLength =>
  days <= 92 ? 'short' : days <= 183 ? 'half' : days <= 366 ? 'year' : 'long'

const compared = telling.filter((measure) => measure !== 'white-line')

/**
 * Along the line through all readings, from the first to the last of them. For heel balance the distance from level counts,
 * whichever heel is the higher.
 */
function changesOf({ assessment }: CaseContext): CaseChange[] {
  return compared.flatMap((measure) => {
    const moves = assessment.trends.flatMap(({ measure: of, family, fit, first, last, isClear }) => {
      if (of !== measure || family !== 'gauge' || fit === null) return []
      const [from, to] = [lineOn(fit, first.date).value, lineOn(fit, last.date).value]
      return [{ by: measure === 'heel-balance' ? Math.abs(to) - Math.abs(from) : to - from, isClear }]
    })
    if (moves.length === 0) return []
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
