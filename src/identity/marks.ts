/** What in a text looks as if it told who or where: shown to a person who decides. */
import type { Finder } from './finder.ts'
import { findDates } from './written-dates.ts'

export interface Mark {
  readonly start: number
  readonly end: number
  /** As it stands in the text. */
  readonly text: string
  readonly why: 'name' | 'pattern' | 'date' | 'likely name' | 'title' | 'place'
}

export interface MarkContext {
  /** Finds every name of the casebook. */
  readonly finder: Finder
}

/** Every such place, in order; none touches another. */
export function marksIn(text: string, { finder }: MarkContext): readonly Mark[] {
  const names = finder
    .find(text)
    .map(({ start, end, text: found }): Mark => ({ start, end, text: found, why: 'name' }))
  const dates = findDates(text).map(
    ({ start, end, text: found }): Mark => ({ start, end, text: found, why: 'date' }),
  )
  const all = [...names, ...dates].sort((a, b) => a.start - b.start || b.end - a.end)
  return all.filter((mark, i) => all.slice(0, i).every(({ end }) => end <= mark.start))
}
