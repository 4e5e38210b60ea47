/** Findings: which are open, and the grid of them all over time. */
import type { Finding, Visit } from '../../casebook/model.ts'
import { openFindings } from '../../trend/assessment.ts'
import type { FindingsGrid } from '../shared/figures.ts'
import { findingStories } from '../shared/findings.ts'
import type { HorseCase } from './horse-case.ts'

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

/** `flare, medial quarter`; the place is left out where it says nothing. */
export const findingName = ({ what, place }: Pick<Finding, 'what' | 'place'>): string =>
  place === 'whole foot' ? what : `${what}, ${place}`

export const gradeName = ({ words }: HorseCase, grade: number): string => words.visit.grades[grade] ?? ''

/** Foot and finding down, visits across. */
export function findingsGrid(of: HorseCase): FindingsGrid | null {
  const { format, visits } = of
  const { chart } = of.words
  const noted = visits.filter(({ findings }) => findings.length > 0)
  const stories = findingStories(noted)
  if (stories.length === 0) return null
  const open = openFindingsOf(of)
  const dates = noted.map(({ date }) => format.shortDate(date))
  const rows = stories.map(({ foot, what, place, grades }) => ({
    foot,
    label: `${foot} ${findingName({ what, place })}`,
    grades,
  }))
  const gone = stories.filter(
    ({ foot, what, place }) =>
      !open.some((one) => one.foot === foot && one.what === what && one.place === place),
  )
  const shown = (grade: number | null) => (grade === null ? chart.notNoted : String(grade))
  return {
    kind: 'findings',
    id: 'findings-grid',
    title: chart.findingsTitle(open.length, gone.length),
    description: chart.findingsSays(
      rows.map((row) => chart.findingsRow(row.label, row.grades.map(shown).join(' '))).join(' '),
    ),
    table: {
      caption: chart.findingsCaption,
      head: [chart.findingsHead, ...dates],
      rows: rows.map((row) => [row.label, ...row.grades.map(shown)]),
    },
    visits: dates,
    rows,
  }
}
