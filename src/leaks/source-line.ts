/** Where in the casebook a sentence came from: found again by the words around what slipped into a page. */
import { wordsOf } from '../identity/words.ts'
import { plainText } from './plain-text.ts'

export interface CaseText {
  /** Path within the casebook. */
  readonly path: string
  readonly text: string
}

export interface SourceLine {
  readonly file: string
  readonly line: number
  /** The line as it stands there. */
  readonly text: string
}

/** Words on each side that are compared: enough to tell one sentence from another. */
const around = 8

interface Vote {
  readonly text: CaseText
  /** Place in the text as it was written. */
  readonly at: number
  readonly votes: number
}

/** Fewer pairs of words stand together in two texts by chance. */
const fewest = 2

/**
 * The line that holds the place of a page, judged by the words round it that stand together in both: what slipped can
 * stand there in another form, and other words of the sentence can have been rewritten.
 * @param page plain text of the page
 * @param at where in it the hit begins
 * @returns null where nothing in the casebook reads like that
 */
export function sourceLine(page: string, at: number, texts: readonly CaseText[]): SourceLine | null {
  const words = wordsOf(page)
  const hit = words.findIndex(({ end }) => end > at)
  if (hit < 0) return null
  const first = Math.max(0, hit - around)
  const context = words.slice(first, hit + around + 1).map(({ folded }) => folded)
  let best: Vote | null = null
  for (const text of texts) {
    const vote = bestIn(text, context, hit - first)
    if (vote !== null && vote.votes > (best?.votes ?? 0)) best = vote
  }
  return best && lineAt(best)
}

/** Letters of a page round a hit in which its sentence stands, markup included. */
const letters = 1500

/** The plain text round a place of a file, and where in it that place is. */
export function textRound(file: string, line: number, column: number): { text: string; at: number } {
  const start = file.split('\n', line - 1).reduce((sum, one) => sum + one.length + 1, 0) + column - 1
  const [before, after] = [
    file.slice(Math.max(0, start - letters), start),
    file.slice(start, start + letters),
  ]
  // A tag that is cut off at an end is no text.
  const head = plainText(before.replace(/^[^<]*?>/, '').replace(/<[^<>]*>/g, ' ')).text
  return { text: head + plainText(after.replace(/<[^<>]*(?:>|$)/g, ' ')).text, at: head.length }
}

/** Each pair of words in both texts votes for where the hit would stand; the place with most votes wins. */
function bestIn(text: CaseText, context: readonly string[], hit: number): Vote | null {
  const pairs = new Map<string, number[]>()
  for (let i = 0; i + 1 < context.length; i++) {
    const pair = `${context[i]} ${context[i + 1]}`
    pairs.set(pair, [...(pairs.get(pair) ?? []), i])
  }
  const plain = plainText(text.text)
  const words = wordsOf(plain.text)
  const votes = new Map<number, number>()
  for (let i = 0; i + 1 < words.length; i++) {
    for (const place of pairs.get(`${words[i]?.folded} ${words[i + 1]?.folded}`) ?? []) {
      // What stands before the hit gives its place more surely than what stands after a form of several words.
      const isSure = place < hit
      const at = i - place + hit
      votes.set(at, (votes.get(at) ?? 0) + (isSure ? 1.1 : 1))
    }
  }
  const [at, most] = [...votes].reduce((a, b) => (b[1] > a[1] ? b : a), [-1, 0])
  const word = words[Math.min(Math.max(at, 0), words.length - 1)]
  return word === undefined || most < fewest ? null : { text, at: plain.origin(word.start), votes: most }
}

function lineAt({ text: { path, text }, at }: Vote): SourceLine {
  const line = text.slice(0, at).split('\n').length
  return { file: path, line, text: text.split('\n')[line - 1]?.trim() ?? '' }
}
