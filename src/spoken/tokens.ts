/** Atoms to tokens: numbers, phrases of the vocabulary, and words that are neither; in sentences. */
import type { Atom, Pause } from './atoms.ts'
import type { Lexicon } from './lexicon.ts'
import { codeAt, numberAt, type SpokenNumber } from './numbers.ts'
import type { Sense } from './vocabulary/sense.ts'

export interface Token {
  /** All that it can mean; empty for a word of no meaning here. */
  readonly senses: readonly Sense[]
  readonly number: SpokenNumber | null
  /** A telephone number or another row of digits. */
  readonly isCode: boolean
  /** "Ninety. Five toe angle": a stop may have torn it from its last figure. */
  readonly isTorn: boolean
  /** Words of no weight stand between it and the pause after it. */
  readonly isTrailed: boolean
  /** First and last word. */
  readonly first: number
  readonly last: number
  /** What follows, words of no weight between left out. */
  readonly pause: Pause
  readonly pauseBefore: Pause
  /** Words of no weight that stand right before it. */
  readonly lead: readonly string[]
  readonly text: string
}

export interface Sentence {
  readonly tokens: readonly Token[]
  readonly firstWord: number
  readonly lastWord: number
  readonly asks: boolean
}

export type OfKind<K extends Sense['kind']> = Extract<Sense, { kind: K }>

/** The token in this sense, if it can have it. */
export const as = <K extends Sense['kind']>(token: Token | undefined, kind: K): OfKind<K> | null =>
  (token?.senses.find((sense) => sense.kind === kind) as OfKind<K> | undefined) ?? null

export const isA = (token: Token | undefined, ...kinds: readonly Sense['kind'][]): boolean =>
  token?.senses.some((sense) => kinds.includes(sense.kind)) === true

export function sentencesOf(atoms: readonly Atom[], lexicon: Lexicon): readonly Sentence[] {
  const sentences: Sentence[] = []
  let tokens: Token[] = []
  let lead: string[] = []
  let pauseBefore: Pause = 'stop'
  let firstWord = 0
  for (let at = 0; at < atoms.length; ) {
    const made = tokenAt(atoms, at, lexicon)
    const lastAtom = atoms[made.end - 1] as Atom
    const [sense] = made.senses
    const isNeutral =
      made.number === null && !made.isCode && (sense?.kind === 'neutral' || sense?.kind === 'pause')
    const pause = sense?.kind === 'pause' && lastAtom.pause !== 'stop' ? sense.pause : lastAtom.pause
    if (isNeutral) {
      if (pause === 'none') lead.push(...made.text.split(' '))
      else lead = []
      const before = tokens.at(-1)
      // The pause after words of no weight is the pause after what stands before them.
      if (before && pause !== 'none') tokens[tokens.length - 1] = { ...before, pause, isTrailed: true }
      if (pause !== 'none') pauseBefore = pause
    } else {
      tokens.push({ ...made, pause, pauseBefore, lead, isTorn: isTorn(atoms, made), isTrailed: false })
      lead = []
      pauseBefore = pause
    }
    at = made.end
    if (pause === 'stop') {
      const asks = atoms.slice(at - 1, at).some((atom) => atom.asks)
      sentences.push({ tokens: joinedFeet(tokens), firstWord, lastWord: lastAtom.word, asks })
      tokens = []
      lead = []
      pauseBefore = 'stop'
      firstWord = lastAtom.word + 1
    }
  }
  return sentences
}

/** Tens in words before a stop, and after it one figure in words that goes on with something else. */
function isTorn(atoms: readonly Atom[], { number, end }: Made): boolean {
  if (number === null || atoms[end - 1]?.pause !== 'stop' || !/ty$/.test(atoms[end - 1]?.text ?? ''))
    return false
  const next = numberAt(atoms, end)
  return (
    next !== null &&
    next.end === end + 1 &&
    next.value > 0 &&
    next.value < 10 &&
    !/^\d/.test(atoms[end]?.text ?? '')
  )
}

/** "Left fore and right fore" are feet that are named together. */
function joinedFeet(tokens: readonly Token[]): readonly Token[] {
  const joined: Token[] = []
  for (const token of tokens) {
    const [one, and] = joined.slice(-2)
    const first = as(one, 'feet')
    const second = as(token, 'feet')
    const isJoined = one?.pause === 'none' && and?.pause === 'none' && isA(and, 'and')
    if (!one || !first || !second || !isJoined || first.passing || second.passing) {
      joined.push(token)
      continue
    }
    const feet = [...new Set([...first.feet, ...second.feet])]
    joined.splice(-2, 2, {
      ...one,
      senses: [{ kind: 'feet', feet, each: true, passing: false }],
      last: token.last,
      pause: token.pause,
      isTrailed: token.isTrailed,
      text: `${one.text} and ${token.text}`,
    })
  }
  return joined
}

type Made = Pick<Token, 'senses' | 'number' | 'isCode' | 'first' | 'last' | 'text'> & { readonly end: number }

function tokenAt(atoms: readonly Atom[], at: number, lexicon: Lexicon): Made {
  const match = lexicon.match(atoms, at)
  const code = codeAt(atoms, at)
  const number = code === null ? numberAt(atoms, at) : null
  const numberEnd = code ?? number?.end ?? 0
  const isPhrase = match !== null && match.end >= numberEnd && match.senses[0]?.kind !== 'neutral'
  const end = isPhrase ? match.end : numberEnd > 0 ? numberEnd : (match?.end ?? at + 1)
  return {
    senses: isPhrase || numberEnd === 0 ? (match?.senses ?? []) : [],
    number: isPhrase ? null : number,
    isCode: !isPhrase && code !== null,
    first: atoms[at]?.word ?? 0,
    last: atoms[end - 1]?.word ?? 0,
    text: atoms
      .slice(at, end)
      .map((atom) => atom.text)
      .join(' '),
    end,
  }
}
