/**
 * Spoken notes to what they say of a visit.
 *
 * The words go through a running context of feet, stage, measure and unit, sentence by sentence; a reading takes what it
 * lacks from the context. A wrong reading is worse than a missed one: whatever could be two things becomes a question.
 */
import { atomsOf } from './atoms.ts'
import { careOf, hearNextVisit } from './care.ts'
import { hearComfort } from './comfort.ts'
import { hearCorrection } from './corrections.ts'
import { hearFeatures } from './features.ts'
import { hearFindings, hearGradeAlone } from './findings.ts'
import { hearElliptic, hearMeasure, hearNumberFirst, otherSide } from './hear-measures.ts'
import { type Hearing, type MeasureContext, rangeOfTokens, setFeet, startHearing } from './hearing.ts'
import type { Lexicon } from './lexicon.ts'
import { isElsewhere, isNoMeasurement } from './number-context.ts'
import { hearAgain, hearValues } from './readings.ts'
import { ask, feetNamedAt, hearStage, isStageAt, type Scan } from './scan.ts'
import { as, isA, type Sentence, sentencesOf, type Token } from './tokens.ts'
import type { Known, Understood } from './understood.ts'
import { accounted } from './used-words.ts'
import { formatOf, type NotesFormat, type Word, wordsOf } from './words.ts'

/**
 * What the text says so far. Nothing is kept between calls, so that it may be called again at each new word.
 *
 * @param text what a person dictated: plain text, WebVTT or SubRip
 * @param known how the practice writes, and what earlier visits left open
 */
export function understand(
  text: string,
  known: Known,
  lexicon: Lexicon,
  format: NotesFormat = formatOf(text),
): Understood {
  const words = wordsOf(text, format)
  const hearing = startHearing(known)
  const sentences = sentencesOf(atomsOf(words), lexicon)
  let isAnswered = false
  for (const [index, sentence] of sentences.entries()) {
    const next = sentences[index + 1]
    isAnswered =
      next !== undefined &&
      (/^(?:yes|yeah|yep)\b/i.test(words[next.firstWord]?.text ?? '') || isNumberAlone(next.tokens))
    hearSentence(hearing, sentence, index, words, isAnswered)
  }
  askOfBlanks(hearing)
  return accounted(hearing, words, sentences)
}

function hearSentence(
  hearing: Hearing,
  sentence: Sentence,
  index: number,
  words: readonly Word[],
  isAnswered: boolean,
): void {
  const { tokens } = sentence
  const scan: Scan = { tokens, sentence: index, used: new Set(), feetAt: [] }
  const care = careOf(sentence, words)
  if (care !== null) {
    hearing.care.push({
      text: care,
      from: [{ first: sentence.firstWord, last: sentence.lastWord }],
      doubt: null,
    })
    return
  }
  if (sentence.asks) {
    const from = questionFrom(sentence, words)
    if (from > 0)
      hearSentence(hearing, { ...sentence, tokens: tokens.slice(0, from), asks: false }, index, words, false)
    hearQuestion(hearing, { ...scan, tokens: tokens.slice(from) }, isAnswered)
    return
  }
  if (hearGradeAlone(hearing, scan)) return
  const { heading, measuresBefore } = hearing
  hearing.heading = null
  hearing.measuresNow = []
  hearFeatures(hearing, scan)
  let at = 0
  if (isPlain(tokens)) at = hearPlain(hearing, scan, heading ? [heading] : measuresBefore)
  const isContinued = at > 0
  while (at < tokens.length) {
    for (let passed = scan.feetAt.length; passed <= at; passed++) scan.feetAt[passed] = hearing.feet
    at = hearToken(hearing, scan, at, words)
  }
  hearFindings(hearing, scan)
  askOfNumbers(hearing, scan)
  if (hearing.measuresNow.length > 0) hearing.measuresBefore = hearing.measuresNow
  else if (!isContinued && tokens.some((token) => !isA(token, 'feet', 'stage'))) hearing.measuresBefore = []
  if (isContinued && heading) hearing.measuresBefore = [heading]
}

const askers =
  /^(?:is|are|was|were|did|does|do|can|could|shall|should|will|would|what|when|how|who|why|where|which|have|has|if|so)\b/i

/** Where the question begins: with the sentence, or with its last clause. */
function questionFrom({ tokens, firstWord }: Sentence, words: readonly Word[]): number {
  if (askers.test(words[firstWord]?.text ?? '')) return 0
  const at = tokens.findLastIndex((token, index) => token.pause === 'comma' && index < tokens.length - 1)
  // "Right fore, toe?" has nothing before its question but a foot.
  return tokens.slice(0, at + 1).some((token) => token.number) ? at + 1 : 0
}

const isNumberAlone = (tokens: readonly Token[]): boolean =>
  tokens.some((token) => token.number) && tokens.every((token) => token.number || isA(token, 'unit', 'doubt'))

/** Someone asks: nothing in it is said to be so. A foot in it is one only where the answer is yes, or a number. */
function hearQuestion(hearing: Hearing, scan: Scan, isAnswered: boolean): void {
  const last = scan.tokens.at(-1)
  const asked = as(last, 'measure')
  hearing.heading = null
  // "And the angle?" asks a helper for the number that comes next.
  if (last && asked && !scan.tokens.some((token) => isA(token, 'elsewhere', 'compared', 'hypothetical'))) {
    hearing.heading = { measured: asked.measure, sentence: scan.sentence, from: rangeOfTokens(last) }
  }
  const at = scan.tokens.findIndex((token) => as(token, 'feet'))
  const named = at === -1 ? null : feetNamedAt(hearing, scan.tokens, at)
  if (!named) return
  if (isAnswered)
    setFeet(hearing, named.feet, named.each, rangeOfTokens(scan.tokens[at] as Token), scan.sentence)
  else hearing.feet = null
}

/** Feet, numbers, and what belongs to them. */
const isPlain = (tokens: readonly Token[]): boolean =>
  tokens.some((token) => token.number) &&
  tokens.every(
    (token) =>
      token.number ||
      isA(
        token,
        'feet',
        'unit',
        'side',
        'both',
        'others',
        'doubt',
        'inward',
        'and',
        'today',
        'stage',
        'correct',
        'no',
      ),
  )

/** A sentence that takes its measure from the one before: the first token that was not taken. */
function hearPlain(hearing: Hearing, scan: Scan, measures: readonly MeasureContext[]): number {
  const { tokens } = scan
  if (measures.length === 0 || isA(tokens[0], 'correct', 'no')) return 0
  const [first, ...more] = measures
  if (more.length > 0) {
    const named = feetNamedAt(hearing, tokens, 0)
    if (named?.feet.length !== 1) return 0
    setFeet(hearing, named.feet, named.each, rangeOfTokens(tokens[0] as Token), scan.sentence)
    return hearAgain(hearing, scan, measures, 1) ? tokens.length : 1
  }
  if (!first) return 0
  return hearValues(hearing, scan, first, 0)
}

/** Hears what begins at a token: the first token after it. */
function hearToken(hearing: Hearing, scan: Scan, at: number, words: readonly Word[]): number {
  const { tokens } = scan
  const token = tokens[at] as Token
  if (scan.used.has(at)) return at + 1
  const next = hearNextVisit(hearing, scan, at, words) ?? hearComfort(hearing, scan, at)
  if (next !== null) return next
  if (isStageAt(tokens, at)) {
    hearStage(hearing, scan, at)
    return at + 1
  }
  const isPassing = as(token, 'others') !== null || as(token, 'feet')?.passing === true
  const feet = isPassing ? null : feetNamedAt(hearing, tokens, at)
  if (feet) {
    setFeet(hearing, feet.feet, feet.each, rangeOfTokens(token), scan.sentence, as(token, 'side') !== null)
    return hearElliptic(hearing, scan, at)
  }
  // Of no one foot that is spoken of, the other is any.
  if (as(token, 'other-foot')) hearing.feet = null
  // "Left hind. Right toe length ninety": "right" may be a foot, or a word like "well".
  if (as(token, 'side') && token.pause === 'none' && isA(tokens[at + 1], 'measure')) hearing.feet = null
  if (isA(token, 'correct', 'no')) return hearCorrection(hearing, scan, at)
  if (token.number) return hearNumberFirst(hearing, scan, at) ?? at + 1
  const other = otherSide(hearing, tokens, at)
  if (other) return hearMeasure(hearing, scan, at, other)
  const measure = as(token, 'measure')
  if (measure) return hearMeasure(hearing, scan, at, measure.measure)
  return at + 1
}

/** What a finding lacks: its line has a blank, which is asked for once. */
function askOfBlanks(hearing: Hearing): void {
  const asked = new Set(hearing.questions.map(({ ask }) => ask.split(': grade')[0]))
  for (const { foot, what, place, grade, from } of hearing.findings) {
    const name = `${foot} ${what}`
    if (place === null) ask(hearing, `${name}: where on the foot?`, from)
    if (grade === null && !asked.has(name)) ask(hearing, `${name}: how bad, 0 to 3?`, from)
  }
}

/** A length or an angle that nothing was made of, in a sentence about feet. */
function askOfNumbers(hearing: Hearing, { tokens, used }: Scan): void {
  const isAboutFeet = tokens.some((token) => isA(token, 'measure'))
  for (const [at, token] of tokens.entries()) {
    if (!token.number || used.has(at) || isNoMeasurement(tokens, at) || isElsewhere(tokens, at)) continue
    const hasUnit = token.pause === 'none' && as(tokens[at + 1], 'unit') !== null
    const isLikely = isAboutFeet && token.number.value >= 20
    if (!hasUnit && !isLikely) continue
    const words = rangeOfTokens(
      tokens[Math.max(0, at - 3)] as Token,
      tokens[Math.min(tokens.length - 1, at + (hasUnit ? 1 : 0))],
    )
    ask(hearing, `What is ${token.text}?`, [words])
  }
}
