import type { Finding, Horse, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'

export type Grade = Finding['grade']

/** One finding at one place of one foot through all visits. Holds no words of the practitioner's. */
export interface FindingStory {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  /** By visit, oldest first; null where it was not recorded. */
  readonly grades: readonly (Grade | null)[]
  readonly first: Seen
  readonly last: Seen
  /** Each grade when it was first seen, where it differs from the one before. */
  readonly changes: readonly Seen[]
}

interface Seen {
  readonly index: number
  readonly date: PlainDate
  readonly grade: Grade
}

/** `flare, medial quarter`; the place is left out where it says nothing, or what the name says already. */
export const findingName = ({ what, place }: Pick<Finding, 'what' | 'place'>): string =>
  place === 'whole foot' || what.includes(place) ? what : `${what}, ${place}`

/** Visits that the assessment knows of: up to the day it was made for. */
export const visitsUpTo = (horse: Horse, ids: readonly string[]): readonly Visit[] =>
  horse.visits.filter((visit) => ids.includes(visit.id))

/** Every finding's story, by foot in the usual order, then as first seen. */
export function findingStories(visits: readonly Visit[]): readonly FindingStory[] {
  const stories = new Map<string, { foot: Foot; what: string; place: string; grades: (Grade | null)[] }>()
  visits.forEach((visit, index) => {
    for (const { foot, what, place, grade } of visit.findings) {
      const key = `${foot}|${what}|${place}`
      const story = stories.get(key) ?? { foot, what, place, grades: visits.map(() => null) }
      const known = story.grades[index] ?? null
      story.grades[index] = known === null || grade > known ? grade : known
      stories.set(key, story)
    }
  })
  return [...stories.values()]
    .map((story) => ({
      ...story,
      first: seen(story.grades, visits, 'first'),
      last: seen(story.grades, visits, 'last'),
      changes: changesIn(story.grades, visits),
    }))
    .flatMap(({ first, last, ...story }) => (first && last ? [{ ...story, first, last }] : []))
    .sort((a, b) => feet.indexOf(a.foot) - feet.indexOf(b.foot) || a.first.index - b.first.index)
}

function seen(grades: readonly (Grade | null)[], visits: readonly Visit[], which: 'first' | 'last') {
  const index =
    which === 'first'
      ? grades.findIndex((grade) => grade !== null)
      : grades.findLastIndex((grade) => grade !== null)
  const grade = grades[index] ?? null
  const date = visits[index]?.date
  return grade === null || date === undefined ? null : { index, date, grade }
}

function changesIn(grades: readonly (Grade | null)[], visits: readonly Visit[]): readonly Seen[] {
  const changes: Seen[] = []
  for (const [index, grade] of grades.entries()) {
    const date = visits[index]?.date
    if (grade !== null && date !== undefined && grade !== changes.at(-1)?.grade)
      changes.push({ index, date, grade })
  }
  return changes
}
