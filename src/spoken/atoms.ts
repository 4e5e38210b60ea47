/** Words taken apart into what the vocabulary and the numbers are made of: `ninety-eight,` is `ninety`, `eight` and a pause. */
import type { Word } from './words.ts'

/** How strongly what follows is set off: not at all, as by a comma, as by a full stop. */
export type Pause = 'none' | 'comma' | 'stop'

export interface Atom {
  /** Lower case, apostrophes straight. */
  readonly text: string
  /** Index of its word. */
  readonly word: number
  readonly pause: Pause
  /** Whether a question mark ends it. */
  readonly asks: boolean
  /** Joined to the one before it by nothing or by a hyphen. */
  readonly glued: boolean
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\u2018\u2019\u02bc\u0060]/g, "'")
    .replace(/[\u2010\u2011]/g, '-')

/** Short forms that in small letters are other words: "of", "oh", "ta", "ha". */
const initials: Readonly<Record<string, string>> = {
  NF: 'LF',
  OF: 'RF',
  NH: 'LH',
  OH: 'RH',
  TL: 'toelength',
  TA: 'toeangle',
  HA: 'heelangle',
}
const capitals = /^(?:NF|OF|NH|OH|TL|TA|HA)(?![\p{L}\p{N}])/u

/** Figures with point, decimal comma or thousands, fractions; letters with their apostrophe; signs that mean something. */
const piece =
  /\d+\/\d+|\d{1,3}(?:,\d{3})+(?!\d)|\d+(?:\.\d+|,\d(?!\d))?|\p{L}[\p{L}\p{M}]*(?:n't|'(?!s\b)\p{L}+)?|'s\b|[£$€%°"″½¼¾⅛⅜⅝⅞@]/gu

export function atomsOf(words: readonly Word[]): readonly Atom[] {
  const atoms: Atom[] = []
  const isShouted =
    words.some((word) => /\p{Lu}{3}/u.test(word.text)) && !words.some((word) => /\p{Ll}/u.test(word.text))
  for (const [index, word] of words.entries()) {
    const text = plain(isShouted ? word.text : word.text.replace(capitals, (name) => initials[name] ?? name))
    const found = [...text.matchAll(piece)]
    const before = atoms.at(-1)
    if (before && word.opens) atoms[atoms.length - 1] = { ...before, pause: 'stop' }
    if (found.length === 0) {
      // A dash or stop that stands alone.
      const last = atoms.at(-1)
      if (last) atoms[atoms.length - 1] = { ...last, ...paused(text, last) }
      continue
    }
    for (const [at, match] of found.entries()) {
      const next = found[at + 1]
      const end = match.index + match[0].length
      const between = text.slice(end, next?.index ?? text.length)
      const last = found[at - 1]
      const lead = last ? text.slice(last.index + last[0].length, match.index) : ' '
      atoms.push({
        text: match[0],
        word: index,
        glued: at > 0 && /^-?$/.test(lead),
        ...paused(next && between === '-' ? '' : between, null),
      })
    }
  }
  const last = atoms.at(-1)
  if (last) atoms[atoms.length - 1] = { ...last, pause: 'stop' }
  return atoms
}

function paused(signs: string, before: Atom | null): Pick<Atom, 'pause' | 'asks'> {
  const asks = signs.includes('?') || before?.asks === true
  if (/\.\.\.|…/.test(signs)) return { pause: before?.pause === 'stop' ? 'stop' : 'comma', asks }
  if (/[.!?;]/.test(signs)) return { pause: 'stop', asks }
  if (/[,:()\-–—/]/.test(signs)) return { pause: before?.pause === 'stop' ? 'stop' : 'comma', asks }
  return { pause: before?.pause ?? 'none', asks }
}
