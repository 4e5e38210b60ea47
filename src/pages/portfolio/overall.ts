/** Pages over all cases: the index with its filters, and how much each measure changed. Never a ranking. */
import type { Practice } from '../../casebook/model.ts'
import { feet } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { DistributionChart, Table } from '../shared/figures.ts'
import { drawnValue, type Formatter, kindOf } from '../shared/format.ts'
import type { Words } from '../words/index.ts'
import type { CaseLength, Outcome } from '../words/keys.ts'
import { medianInterval, medianOf } from './median.ts'
import type { CaseChange, CaseSummary } from './view.ts'

export interface PortfolioIndex {
  readonly intro: string
  readonly count: string
  readonly cards: readonly CaseCard[]
  readonly filters: readonly Filter[]
  /** What the line above the list says; `#` stands for a count. */
  readonly shown: { readonly all: string; readonly some: string }
}

export interface CaseCard {
  readonly href: string
  readonly alias: string
  readonly length: string
  readonly outcome: string
  /** Kinds of problem. */
  readonly about: string
  /** What the filters go by, as words with a bar between. */
  readonly tags: {
    readonly finding: string
    readonly foot: string
    readonly length: string
    readonly outcome: string
  }
}

export interface Filter {
  readonly id: 'finding' | 'foot' | 'length' | 'outcome'
  readonly label: string
  readonly choices: readonly { readonly value: string; readonly text: string }[]
}

/** Cases in the order of their aliases, which says nothing of how they went. */
export const inOrder = (cases: readonly CaseSummary[]): CaseSummary[] =>
  [...cases].sort((a, b) => (a.slug < b.slug ? -1 : a.slug > b.slug ? 1 : 0))

export function presentIndex(
  summaries: readonly CaseSummary[],
  { portfolio }: Pick<Practice, 'portfolio'>,
  format: Formatter,
): PortfolioIndex {
  const words = format.words.portfolio
  const cases = inOrder(summaries)
  return {
    intro: words.times[portfolio.time].intro,
    count: words.count(cases.length),
    cards: cases.map((one) => card(one, words)),
    shown: { all: words.shownAll(cases.length), some: words.shownSome(cases.length) },
    filters: cases.length === 0 ? [] : filtersOf(cases, format),
  }
}

const card = (one: CaseSummary, words: Words['portfolio']): CaseCard => ({
  href: `${one.slug}/index.html`,
  alias: one.alias,
  length: words.cardLength(one.visits, one.span),
  outcome: words.outcomes[one.outcome],
  about: one.kinds.length === 0 ? words.cardNoKinds : one.kinds.join(', '),
  tags: {
    finding: one.findings.join('|'),
    foot: one.feet.join('|'),
    length: one.length,
    outcome: one.outcome,
  },
})

function filtersOf(cases: readonly CaseSummary[], format: Formatter): Filter[] {
  const { portfolio: words } = format.words
  const same = (text: string) => ({ value: text, text })
  const findings = [...new Set(cases.flatMap((one) => one.findings))].sort()
  return [
    { id: 'finding', label: words.filterFinding, choices: findings.map(same) },
    {
      id: 'foot',
      label: words.filterFoot,
      choices: feet
        .filter((foot) => cases.some((one) => one.feet.includes(foot)))
        .map((foot) => ({ value: foot, text: format.foot(foot) })),
    },
    {
      id: 'length',
      label: words.filterLength,
      choices: (Object.keys(words.lengths) as CaseLength[])
        .filter((length) => cases.some((one) => one.length === length))
        .map((length) => ({ value: length, text: words.lengths[length] })),
    },
    {
      id: 'outcome',
      label: words.filterOutcome,
      choices: (Object.keys(words.outcomes) as Outcome[])
        .filter((outcome) => cases.some((one) => one.outcome === outcome))
        .map((outcome) => ({ value: outcome, text: words.outcomes[outcome] })),
    },
  ]
}

export interface PortfolioSummary {
  readonly charts: readonly DistributionChart[]
  readonly changes: Table | null
  readonly outcomes: Table
}

interface Pooled {
  readonly measure: AnyMeasureId
  readonly name: string
  readonly changes: readonly CaseChange[]
  readonly values: readonly number[]
  readonly median: number
  readonly interval: { readonly low: number; readonly high: number } | null
}

export function presentSummary(cases: readonly CaseSummary[], format: Formatter): PortfolioSummary {
  const words = format.words.portfolio
  const pooled = pool(cases, format)
  return {
    charts: chartsOf(pooled, format),
    changes: pooled.length === 0 ? null : changesTable(pooled, format),
    outcomes: {
      caption: words.summaryOutcomes,
      head: words.summaryOutcomeHead,
      rows: (Object.keys(words.outcomes) as Outcome[]).map((outcome) => [
        words.outcomes[outcome],
        String(cases.filter((one) => one.outcome === outcome).length),
      ]),
    },
  }
}

/** The values of a measure in order of size: which case gave which cannot be told. */
function pool(cases: readonly CaseSummary[], format: Formatter): Pooled[] {
  const measures = [...new Set(cases.flatMap(({ changes }) => changes.map(({ measure }) => measure)))].sort()
  return measures.map((measure) => {
    const changes = cases.flatMap((one) => one.changes.filter((change) => change.measure === measure))
    const values = changes.map(({ mean }) => mean).sort((a, b) => a - b)
    return {
      measure,
      name: format.name(measure),
      changes,
      values,
      median: medianOf(values),
      interval: medianInterval(values),
    }
  })
}

/** One chart for each unit, so that a scale never mixes two. */
function chartsOf(pooled: readonly Pooled[], format: Formatter): DistributionChart[] {
  const { portfolio: words } = format.words
  const byUnit = new Map<string, Pooled[]>()
  for (const one of pooled) byUnit.set(kindOf(one.measure), [...(byUnit.get(kindOf(one.measure)) ?? []), one])
  return [...byUnit].flatMap(([kind, group]) => {
    const first = group[0]
    if (first === undefined) return []
    const scaled = (value: number) => drawnValue(first.measure, value, format.units)
    const unit = format.unit(first.measure)
    return [
      {
        kind: 'distribution' as const,
        id: `change-${kind}`,
        title: words.summaryChart(group.map(({ name }) => name)),
        description: group.map((one) => sentenceOf(one, format)).join(' '),
        table: {
          caption: words.summaryValues(group.map(({ name }) => name)),
          head: [words.summaryHead[0] ?? '', words.summaryEach],
          rows: group.map(({ name, measure, values }) => [
            name,
            values.map((value) => format.change(measure, value)).join('; '),
          ]),
        },
        unit,
        valueTitle: unit === '' ? words.summaryAxis : `${words.summaryAxis}, ${unit}`,
        rows: group.map(({ name, measure, values, median, interval }) => ({
          label: words.summaryRow(
            name,
            values.length,
            format.change(measure, median),
            intervalText(measure, interval, format),
          ),
          values: values.map(scaled),
          median: scaled(median),
          low: interval === null ? null : scaled(interval.low),
          high: interval === null ? null : scaled(interval.high),
        })),
      },
    ]
  })
}

const sentenceOf = ({ name, measure, values, median, interval }: Pooled, format: Formatter): string =>
  format.words.portfolio.summarySays(
    name,
    values.length,
    format.change(measure, median),
    interval === null
      ? format.words.portfolio.summaryFew
      : format.words.portfolio.summaryInterval(
          format.change(measure, interval.low),
          format.change(measure, interval.high),
        ),
  )

function changesTable(pooled: readonly Pooled[], format: Formatter): Table {
  const { portfolio: words } = format.words
  const sum = (changes: readonly CaseChange[], of: (change: CaseChange) => number) =>
    String(changes.reduce((total, change) => total + of(change), 0))
  return {
    caption: words.summaryCaption,
    head: words.summaryHead,
    rows: pooled.map(({ name, changes }) => [
      name,
      sum(changes, ({ up }) => up),
      sum(changes, ({ down }) => down),
      sum(changes, ({ within }) => within),
      sum(changes, ({ feet: n }) => n),
    ]),
  }
}

const intervalText = (measure: AnyMeasureId, interval: Pooled['interval'], format: Formatter): string =>
  interval === null
    ? format.words.portfolio.tooFew
    : format.words.portfolio.summaryRange(
        format.change(measure, interval.low),
        format.change(measure, interval.high),
      )
