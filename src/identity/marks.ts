/** What a person should look at in a sentence before it is published. */
import type { OwnWords } from './common-words.ts'
import { finderOf } from './finder.ts'
import type { Identifier } from './identifiers.ts'
import { findDates } from './written-dates.ts'

export interface Mark {
  readonly start: number
  readonly end: number
  /** As it stands in the text. */
  readonly text: string
  readonly why: 'name' | 'pattern' | 'date' | 'likely name' | 'title' | 'place'
}

/** What the nets know. */
export interface MarkContext {
  readonly identifiers: readonly Identifier[]
  readonly own: OwnWords
}

/** Every place of a text that names somebody or looks as if it did, in order, none across another. */
export function marksIn(text: string, about: MarkContext): readonly Mark[] {
  const names = finderOf(about.identifiers)
    .find(text)
    .map(({ start, end, text: found }): Mark => ({ start, end, text: found, why: 'name' }))
  const dates = findDates(text).map(
    ({ start, end, text: found }): Mark => ({ start, end, text: found, why: 'date' }),
  )
  const inOrder = [...names, ...dates].sort((a, b) => a.start - b.start || b.end - a.end)
  return inOrder.filter((mark, i) => inOrder.slice(0, i).every(({ end }) => end <= mark.start))
}
