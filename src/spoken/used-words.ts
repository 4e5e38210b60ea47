/** Every word is accounted for: a sentence stands whole beside the lines made of it, or stays whole in the notes. */
import { type Hearing, merged } from './hearing.ts'
import type { Sentence } from './tokens.ts'
import type { Changeable, SpokenSentence, Understood, WordRange } from './understood.ts'
import type { Word } from './words.ts'

/** A stretch that is longer is not quoted whole, so that its sentence stays in the notes. */
const longestQuote = 40

interface Heard {
  from: readonly WordRange[]
}

/** What was heard, with each sentence used or not; gaps of a word or two between what was used are filled. */
export function accounted(
  hearing: Hearing,
  words: readonly Word[],
  sentences: readonly Sentence[],
): Understood {
  const items: Changeable<Heard>[] = [
    ...hearing.readings,
    ...hearing.findings,
    ...hearing.features,
    ...hearing.comfort,
    ...hearing.surfaces,
    ...hearing.body,
    ...hearing.care,
    ...(hearing.nextVisit ? [hearing.nextVisit] : []),
  ]
  /** The item that stands for each word. */
  const owner = new Array<Changeable<Heard> | null>(words.length).fill(null)
  for (const item of items) {
    for (const { first, last } of item.from) {
      if (last - first >= longestQuote) continue
      for (let word = first; word <= last; word++) owner[word] ??= item
    }
  }
  const whole = partsOf(words.length, sentences).map(({ first, last }) => wholeSentence(owner, first, last))
  return {
    words,
    readings: hearing.readings,
    findings: hearing.findings,
    features: hearing.features,
    comfort: hearing.comfort,
    surfaces: hearing.surfaces,
    body: hearing.body,
    care: hearing.care,
    nextVisit: hearing.nextVisit,
    questions: hearing.questions,
    sentences: whole,
  }
}

/** The words parted into sentences: signs that stand alone go with the sentence before them. */
function partsOf(count: number, sentences: readonly Sentence[]): readonly WordRange[] {
  const parts: WordRange[] = []
  let first = 0
  for (const [index, { lastWord }] of sentences.entries()) {
    const next = sentences[index + 1]
    const last = next ? Math.max(lastWord, next.firstWord - 1) : count - 1
    if (last >= first) parts.push({ first, last })
    first = Math.max(first, last + 1)
  }
  return sentences.length === 0 && count > 0 ? [{ first: 0, last: count - 1 }] : parts
}

/** Words that may stand unused in a sentence for it to be quoted whole. */
const mostGap = 2

function wholeSentence(owner: (Changeable<Heard> | null)[], first: number, last: number): SpokenSentence {
  const words = owner.slice(first, last + 1)
  const unused = words.filter((item) => item === null).length
  if (words.length === 0 || unused > 0) {
    if (unused > mostGap || unused === words.length) return { first, last, isUsed: false }
    fill(owner, first, last)
  }
  return { first, last, isUsed: true }
}

/** Gives each unused word to the line made of the word before it, else after it. */
function fill(owner: (Changeable<Heard> | null)[], first: number, last: number): void {
  for (let word = first; word <= last; word++) {
    if (owner[word]) continue
    const item =
      owner.slice(first, word).findLast((one) => one !== null) ??
      owner.slice(word, last + 1).find((one) => one !== null)
    if (!item) continue
    owner[word] = item
    item.from = merged([...item.from, { first: word, last: word }])
  }
}
