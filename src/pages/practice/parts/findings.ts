/** Findings: which are open, and the grid of them all over time. */
import type { Finding, Visit } from '../../../casebook/model.ts'
import { openFindings } from '../../../trend/assessment.ts'
import type { FindingsGrid, Table } from '../../shared/figures.ts'
import { type FindingStory, findingName, findingStories } from '../../shared/findings.ts'
import type { HorseCase } from '../case/horse-case.ts'

export interface OpenFinding extends Finding {
  /** The visit that last spoke of it. */
  readonly visit: Visit
}

/** Findings not yet said to be gone. */
export const openFindingsOf = ({ visits }: HorseCase): readonly OpenFinding[] =>
  openFindings(visits).map(({ finding, visit }) => ({ ...finding, visit }))

/** The day of an older visit, where the last one did not speak of it. */
export const findingDate = ({ format, visits }: HorseCase, { visit }: OpenFinding): string | null =>
  visit.id === visits.at(-1)?.id ? null : format.shortDate(visit.date)

/** The finding as an earlier visit last saw it. */
export const seenBefore = (earlier: readonly Visit[], { foot, what, place }: Finding): Finding | undefined =>
  earlier
    .flatMap(({ findings }) => findings)
    .findLast((one) => one.foot === foot && one.what === what && one.place === place)

export const gradeName = ({ words }: HorseCase, grade: number): string => words.visit.grades[grade] ?? ''

/** On the horse's own page: of the latest visits so many, and so many findings, open ones first. */
const lately = { visits: 10, rows: 6 }

/** Foot and finding down, visits across: of late, for the horse's own page. All of them are a table elsewhere. */
export function findingsGrid(of: HorseCase): FindingsGrid | null {
  const { visits } = of
  const { chart } = of.words
  const every = visits.filter(({ findings }) => findings.length > 0)
  const noted = every.slice(-lately.visits)
  const open = openFindingsOf(of)
  const isOpen = (story: { readonly foot: string; readonly what: string; readonly place: string }) =>
    open.some(({ foot, what, place }) => foot === story.foot && what === story.what && place === story.place)
  const all = findingStories(noted)
  const stories = all.toSorted((a, b) => Number(isOpen(b)) - Number(isOpen(a))).slice(0, lately.rows)
  if (stories.length === 0) return null
  const gone = findingStories(every).filter((story) => !isOpen(story))
  const rows = stories.map((story) => ({ foot: story.foot, label: labelOf(story), grades: story.grades }))
  return {
    kind: 'findings',
    id: 'findings-grid',
    title: chart.findingsTitle(open.length, gone.length, stories.length < all.length ? stories.length : null),
    description: chart.findingsSays(
      rows
        .map(({ label, grades }) =>
          chart.findingsRow(label, grades.map((grade) => gradeText(of, grade)).join(' ')),
        )
        .join(' '),
    ),
    table: null,
    visits: noted.map(({ date }) => of.format.shortDate(date)),
    rows,
  }
}

/** Every grade of every finding, visits across; null where nothing was ever found. */
export function findingsTable(of: HorseCase): Table | null {
  const noted = of.visits.filter(({ findings }) => findings.length > 0)
  if (noted.length === 0) return null
  const { chart } = of.words
  return {
    caption: chart.findingsCaption,
    head: [chart.findingsHead, ...noted.map(({ date }) => of.format.shortDate(date))],
    rows: findingStories(noted).map((story) => [
      labelOf(story),
      ...story.grades.map((grade) => gradeText(of, grade)),
    ]),
  }
}

const labelOf = ({ foot, what, place }: FindingStory): string => `${foot} ${findingName({ what, place })}`

const gradeText = ({ words }: HorseCase, grade: number | null): string =>
  grade === null ? words.chart.notNoted : String(grade)
