/** What was found on the feet: what changed, what is open, and the whole course of each. */
import { feet } from '../../hoof/feet.ts'
import { isFindingName } from '../../hoof/findings.ts'
import type { FindingStory } from '../shared/findings.ts'
import { capital, type OwnerFormatter } from '../shared/format.ts'
import { sinceText } from './since.ts'

export interface FindingChange {
  readonly mood: 'good' | 'bad'
  readonly text: string
}

/** What got better is news for so many visits. What got worse is told as long as it stays so. */
const newsFor = 3

/**
 * The last change of a finding's grade, with the grade then and now; null where there is none to tell. Worse is what is
 * graver than it was before, or than it was at first; and what was found for the first time at the last visit.
 * @param lastVisit index of the latest visit
 */
export function findingChange(
  story: FindingStory,
  lastVisit: number,
  asOf: string,
  format: OwnerFormatter,
): FindingChange | null {
  const { owner: words } = format.words
  const { changes, first, last } = story
  const now = changes.at(-1)
  const before = changes.at(-2)
  if (now === undefined) return null
  const name = findingText(story, format)
  const to = words.grades[last.grade] ?? ''
  const isSpokenOf = last.index === lastVisit
  if (before === undefined) {
    const isNew = first.index > 0 && first.index > lastVisit - newsFor && last.grade > 0
    if (!isNew) return null
    const text =
      first.index === lastVisit
        ? words.foundNew(name, to)
        : words.foundNewBefore(name, to, format.date(first.date))
    return { mood: 'bad', text }
  }
  const isWorse = last.grade > before.grade || last.grade > first.grade
  if (!isWorse && now.index <= lastVisit - newsFor) return null
  // Against what it was at first, where it is better than lately and still worse than then.
  const then = last.grade > before.grade ? before : isWorse ? first : before
  const from = words.grades[then.grade] ?? ''
  const when = sinceText(then.date, last.date, asOf, format)
  return {
    mood: isWorse ? 'bad' : 'good',
    text: isSpokenOf
      ? words.foundMoved(name, from, when, to)
      : words.foundMovedBefore(name, from, when, to, format.date(last.date)),
  }
}

/** A finding's name in the language of the page; one of the practice's own as it was written. */
export const findingName = (what: string, { words: { owner: words } }: OwnerFormatter): string =>
  isFindingName(what) ? words.findings[what].name : what

/** `thrush in the frog`; the place is left out where the name holds it. */
export function findingText(
  { what, place }: { readonly what: string; readonly place: string },
  format: OwnerFormatter,
): string {
  const name = findingName(what, format)
  const where = what.includes(place) ? '' : (format.words.owner.places[place] ?? place)
  return where === '' ? name : `${name} ${where}`
}

/** The course of every finding, each grade with its day, by foot. */
export function findingCourses(
  stories: readonly FindingStory[],
  format: OwnerFormatter,
): readonly { readonly foot: string; readonly lines: readonly string[] }[] {
  const { owner: words } = format.words
  return feet.flatMap((foot) => {
    const lines = stories
      .filter((story) => story.foot === foot)
      .map((story) =>
        words.foundOver(
          findingText(story, format),
          story.changes
            .map(({ grade, date }) => words.foundThen(words.grades[grade] ?? '', format.date(date)))
            .join(', '),
        ),
      )
    return lines.length === 0 ? [] : [{ foot: capital(format.foot(foot)), lines }]
  })
}
