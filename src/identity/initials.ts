/**
 * Initials of a horse or an owner. They are taken for a name only where nothing else can be meant: the trade's own
 * abbreviations and lettered things stand in every other sentence of a note.
 */
import { beginsSentence, readsAsName } from './sentence.ts'
import { isAbbreviation, letteredThings } from './trade-words.ts'

export interface Initials {
  readonly start: number
  readonly end: number
  /** Whether they can only be the name; else a person is asked. */
  readonly isSure: boolean
}

const lettersOf = (name: string) =>
  name
    .split(/[\s-]+/)
    .map((part) => part.slice(0, 1).toUpperCase())
    .filter((letter) => /\p{Lu}/u.test(letter))

const titled = '(?<=(?:^|[^\\p{L}])(?:Mr|Mrs|Ms|Miss|Mx|Dr)\\.?[\\s\\u00A0]{1,2})'
const free = "(?<![\\p{L}\\p{N}.'’&/-])"

/** Where the initials of this name stand: `J.`, `J's`, `Mrs K`, `A.K.`, `AK's`; bare `AK` for a person to judge. */
export function initialsIn(text: string, name: string): readonly Initials[] {
  const letters = lettersOf(name)
  const found: Initials[] = []
  const take = (pattern: RegExp, isSure: (start: number, end: number, taken: string) => boolean) => {
    for (const match of text.matchAll(pattern)) {
      const end = match.index + match[0].length
      if (isAbbreviation(match[0])) continue
      found.push({ start: match.index, end, isSure: isSure(match.index, end, match[0]) })
    }
  }
  if (letters.length > 1) {
    take(
      new RegExp(`${free}${letters.map((letter) => `${letter}\\.`).join('\\s?')}(?![\\p{L}\\p{N}])`, 'gu'),
      () => true,
    )
    take(new RegExp(`${free}${letters.join('')}(?![\\p{L}\\p{N}/&-])`, 'gu'), (_start, end) =>
      /^['’]s(?!\p{L})/u.test(text.slice(end, end + 3)),
    )
  }
  for (const letter of new Set(letters)) {
    take(new RegExp(`${titled}${letter}(?![\\p{L}\\p{N}])\\.?`, 'gu'), () => true)
    take(new RegExp(`${free}${letter}(?=['’]s(?!\\p{L}))`, 'gu'), (start) => !isLettered(text, start))
    take(
      new RegExp(`${free}${letter}\\.(?=\\s|$|,)`, 'gu'),
      (start, end) => beginsSentence(text, start) && readsAsName(text, end),
    )
  }
  return found.filter(({ start }) => !isLettered(text, start))
}

/** `vitamin A`, `grade A's`: the letter belongs to the word before it. */
function isLettered(text: string, start: number): boolean {
  const word =
    /(\p{L}+)s?[\s\u00A0]+$/u.exec(text.slice(Math.max(0, start - 24), start))?.[1]?.toLowerCase() ?? ''
  return letteredThings.has(word) || letteredThings.has(word.replace(/s$/, ''))
}
