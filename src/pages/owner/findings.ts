import { type Foot, feet } from '../../hoof/feet.ts'
import { findingMeanings } from '../../hoof/findings.ts'
import type { FindingStory } from '../shared/findings.ts'
import type { Formatter } from '../shared/format.ts'
import { owner as words } from '../words/en/owner.ts'
import type { OwnerFinding } from './view.ts'

/**
 * What was found on each foot and where it stands, with each word's meaning where it is first used.
 * @param terms the practice's own finding names and their meanings
 * @param lastVisit index of the latest visit
 */
export function ownerFindings(
  stories: readonly FindingStory[],
  terms: Readonly<Record<string, string>>,
  lastVisit: number,
  format: Formatter,
): { foot: string; lines: OwnerFinding[] }[] {
  const explained = new Set<string>()
  const meaningOf = (what: string): string | null => {
    if (explained.has(what)) return null
    explained.add(what)
    const known: Readonly<Record<string, string>> = findingMeanings
    const meaning = Object.hasOwn(known, what) ? known[what] : terms[what]
    return meaning === undefined ? null : words.meaning(meaning)
  }
  return feet.flatMap((foot: Foot) => {
    const lines = stories
      .filter((story) => story.foot === foot)
      .map((story) => ({ ...line(story, lastVisit, format), meaning: meaningOf(story.what) }))
    return lines.length === 0 ? [] : [{ foot: format.foot(foot), lines }]
  })
}

/** Against the grade before it: what is worse than it was last is worse, whatever it was at first. */
function line(
  { what, place, changes, last }: FindingStory,
  lastVisit: number,
  format: Formatter,
): Omit<OwnerFinding, 'meaning'> {
  const where = what.includes(place) ? '' : (words.places[place] ?? place)
  const name = where === '' ? what : `${what} ${where}`
  const now = changes.at(-1)
  const before = changes.at(-2)
  const grade = (of: number) => words.grades[of] ?? ''
  const to = grade(last.grade)
  if (last.grade === 0) return { mood: 'good', text: words.findingGone(name) }
  if (now === undefined || last.index < lastVisit) {
    const mood = before !== undefined && last.grade > before.grade ? 'bad' : 'steady'
    return { mood, text: words.findingSeen(name, to, format.date(last.date)) }
  }
  if (before === undefined) {
    if (now.index < last.index) return { mood: 'steady', text: words.findingSame(name, to) }
    return lastVisit === 0
      ? { mood: 'steady', text: words.findingSeen(name, to, format.date(last.date)) }
      : { mood: 'bad', text: words.findingNew(name, to) }
  }
  const from = grade(before.grade)
  if (now.index < last.index)
    return {
      mood: now.grade > before.grade ? 'bad' : 'steady',
      text: words.findingStill(name, to, from, format.date(before.date)),
    }
  return now.grade < before.grade
    ? { mood: 'good', text: words.findingBetter(name, from, to) }
    : { mood: 'bad', text: words.findingWorse(name, from, to) }
}
