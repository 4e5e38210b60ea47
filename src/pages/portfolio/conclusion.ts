/** What came of a case, in a few sentences and two tables: by what clearly moved, never by first against last. */
import { grouped } from '../../casebook/grouped.ts'
import { type AnyMeasureId, isDerivedId } from '../../hoof/measures.ts'
import { standingOf, type Trend } from '../../trend/assessment.ts'
import { lineOn } from '../../trend/trends.ts'
import { feetListed } from '../shared/caution-lines.ts'
import type { Table } from '../shared/figures.ts'
import { type FindingStory, findingName, findingStories } from '../shared/findings.ts'
import { capital } from '../shared/format.ts'
import type { CaseContext } from './context.ts'
import { problemKinds } from './problems.ts'

const mostRows = 6

/** What got worse first; then what got better, what only moved, and how much did neither. */
export function conclusionOf(context: CaseContext): readonly string[] {
  const { assessment, words, visits } = context
  const { trends } = assessment
  const clear = trends.filter(({ isClear }) => isClear)
  const stories = findingStories(visits)
  const measured = (which: (trend: Trend) => boolean) => measuresText(clear.filter(which), context)
  const found = (which: (story: FindingStory) => boolean) => findingsText(stories.filter(which), context)
  const change = ({ first, last }: FindingStory) => last.grade - first.grade
  const lines: readonly (readonly [string | null, (matters: string) => string])[] = [
    [measured(({ verdict }) => verdict === 'worsening'), words.movedAway],
    [
      found((story) => story.last.grade > 0 && (change(story) > 0 || story.first.index > 0)),
      words.foundWorse,
    ],
    [measured(({ verdict }) => verdict === 'improving'), words.movedToward],
    [measured((trend) => isReached(trend)), words.movedInto],
    [found(({ last }) => last.grade === 0), words.foundGone],
    [found((story) => story.last.grade > 0 && change(story) < 0), words.foundBetter],
  ]
  return [
    ...lines.flatMap(([matters, sentence]) => (matters === null ? [] : [sentence(matters)])),
    words.movedOf(clear.length, trends.length),
  ]
}

const movesOnly = ({ verdict }: Trend) => verdict !== 'worsening' && verdict !== 'improving'
const isReached = (trend: Trend) => movesOnly(trend) && standingOf(trend) === 'on target'

/** `toe angle (left fore and right fore), heel balance (right hind)`; null for none. */
function measuresText(trends: readonly Trend[], { format, words }: CaseContext): string | null {
  const names = [...new Set(trends.map(({ measure }) => measure))]
  if (names.length === 0) return null
  return format.list(
    names.map((measure) =>
      words.atFeet(
        format.name(measure),
        feetListed(
          format,
          trends.filter((one) => one.measure === measure).map(({ foot }) => foot),
        ),
      ),
    ),
  )
}

function findingsText(stories: readonly FindingStory[], context: CaseContext): string | null {
  const { format, anonymous, words } = context
  const names = [...new Set(stories.map(({ what }) => what))]
  if (names.length === 0) return null
  return format.list(
    names.map((what) =>
      words.atFeet(
        anonymous(what),
        feetListed(
          format,
          stories.filter((one) => one.what === what).map(({ foot }) => foot),
        ),
      ),
    ),
  )
}

/** Of the measures that the case is about, then of what clearly moved: the line at its ends, and what can be said of it. */
export function problemsTable(context: CaseContext): Table | null {
  const { assessment, format, words } = context
  const named = problemKinds(context).flatMap(({ measure }) => (measure === null ? [] : [measure]))
  const rank = ({ measure }: { readonly measure: AnyMeasureId }) => {
    const place = named.indexOf(measure)
    return place < 0 ? named.length : place
  }
  const shown = assessment.trends
    .filter(
      ({ fit, isClear, measure }) =>
        fit !== null &&
        (named.includes(measure) || (isClear && (!isDerivedId(measure) || measure === 'heel-balance'))),
    )
    .toSorted((a, b) => rank(a) - rank(b) || Number(b.isClear) - Number(a.isClear))
    .slice(0, mostRows)
  if (shown.length === 0) return null
  return {
    caption: words.problemsCaption,
    head: words.problemsHead,
    rows: shown.map((trend) => {
      const { fit, measure, first, last } = trend
      const level = (date: string) => (fit === null ? '' : format.measure(measure, lineOn(fit, date).value))
      return [
        words.footMeasure(format.foot(trend.foot), format.name(measure)),
        words.alongLine(level(first.date), level(last.date)),
        words.said(words.verdicts[standingOf(trend)], trend.isClear ? words.clear : words.unclear),
      ]
    }),
  }
}

/** Each finding at first and at last, what got graver first; the same at several feet stands once. */
export function foundTable({ visits, format, anonymous, timeOf, time, words }: CaseContext): Table | null {
  const stories = findingStories(visits)
  if (stories.length === 0) return null
  const cell = ({ grade, date }: FindingStory['first']) =>
    words.readAt(words.grades[grade] ?? '', time.at(timeOf(date)))
  const rows = stories
    .toSorted(
      (a, b) => b.last.grade - b.first.grade - (a.last.grade - a.first.grade) || b.last.grade - a.last.grade,
    )
    .map((story) => ({
      story,
      cells: [
        findingName({ what: anonymous(story.what), place: anonymous(story.place) }),
        cell(story.first),
        cell(story.last),
      ],
    }))
  return {
    caption: words.foundCaption,
    head: words.foundHead,
    rows: [...grouped(rows, ({ cells }) => cells.join('|')).values()].flatMap((some) => {
      const at = feetListed(
        format,
        some.map(({ story }) => story.foot),
      )
      const [name = '', ...others] = some[0]?.cells ?? []
      return [[words.atFeet(name, at), ...others]]
    }),
  }
}

/** `Toe angle (left fore and right fore), thrush (left hind).` Empty where nothing is known. */
export function problemsText(context: CaseContext): string {
  const { format, words } = context
  const kinds = problemKinds(context).map(({ name, feet: at }) => words.atFeet(name, feetListed(format, at)))
  return kinds.length === 0 ? '' : words.problemsAre(capital(kinds.join(', ')))
}
