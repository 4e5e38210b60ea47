/** The vocabulary as a tree of words, in which the longest phrase that begins at a word is found. */
import type { Atom } from './atoms.ts'
import { atomsOf } from './atoms.ts'
import { comfortPhrases } from './vocabulary/comfort.ts'
import { footPhrases, stagePhrases } from './vocabulary/feet.ts'
import { findingPhrases } from './vocabulary/findings.ts'
import { mannerPhrases } from './vocabulary/manner.ts'
import { measurePhrases, unitPhrases } from './vocabulary/measures.ts'
import { type Mishearing, mishearings } from './vocabulary/mishearings.ts'
import type { Phrase, Sense } from './vocabulary/sense.ts'
import { wordsOf } from './words.ts'

interface Node {
  readonly next: Map<string, Node>
  readonly senses: Sense[]
}

export interface Match {
  readonly senses: readonly Sense[]
  /** First atom after it. */
  readonly end: number
}

export interface Lexicon {
  /** The longest phrase that begins at this atom; it runs across no pause. */
  match(atoms: readonly Atom[], at: number): Match | null
}

const allPhrases: readonly Phrase[] = [
  ...footPhrases,
  ...stagePhrases,
  ...measurePhrases,
  ...unitPhrases,
  ...findingPhrases,
  ...comfortPhrases,
  ...mannerPhrases,
]

/** What is said by the pieces that a text is taken apart into. */
const piecesOf = (words: string): readonly string[] => atomsOf(wordsOf(words, 'text')).map(({ text }) => text)

/**
 * The words of the trade as they are said.
 *
 * @param terms names of findings that are the practice's own
 */
export function buildLexicon(terms: readonly string[] = []): Lexicon {
  const root: Node = { next: new Map(), senses: [] }
  const own = terms.map((what): Phrase => [what, { kind: 'finding', what, where: null, sure: true }])
  for (const [words, sense] of [...own, ...allPhrases]) {
    const pieces = piecesOf(words)
    add(root, pieces, sense)
    for (const mishearing of mishearings) addMisheard(root, pieces, sense, mishearing)
  }
  return { match: (atoms, at) => longest(root, atoms, at) }
}

function add(root: Node, pieces: readonly string[], sense: Sense): void {
  let node = root
  for (const piece of pieces) {
    let next = node.next.get(piece)
    if (!next) {
      next = { next: new Map(), senses: [] }
      node.next.set(piece, next)
    }
    node = next
  }
  if (!node.senses.some((one) => one.kind === sense.kind)) node.senses.push(sense)
}

function addMisheard(
  root: Node,
  pieces: readonly string[],
  sense: Sense,
  { heard, meant, alone }: Mishearing,
): void {
  if (!pieces.includes(meant) || (pieces.length === 1 && !alone)) return
  add(
    root,
    pieces.map((piece) => (piece === meant ? heard : piece)),
    sense,
  )
}

function longest(root: Node, atoms: readonly Atom[], at: number): Match | null {
  let node: Node | undefined = root
  let found: Match | null = null
  for (let end = at; end < atoms.length; end++) {
    if (end > at && atoms[end - 1]?.pause !== 'none') break
    node = node.next.get(atoms[end]?.text ?? '')
    if (!node) break
    if (node.senses.length > 0) found = { senses: node.senses, end: end + 1 }
  }
  return found
}
