/** One sentence being gone through, and what its words mean where they stand. */
import { feet as allFeet, type Foot, feetOf, type Pair, pairOf } from '../hoof/feet.ts'
import { type FeetContext, type Hearing, merged, rangeOfTokens } from './hearing.ts'
import { isNoMeasurement } from './number-context.ts'
import type { FootEntry } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import type { WordRange } from './understood.ts'

export interface Scan {
  readonly tokens: readonly Token[]
  /** Which sentence it is. */
  readonly sentence: number
  /** Tokens that something was understood of. */
  readonly used: Set<number>
  /** The feet of the context in front of each token. */
  readonly feetAt: (FeetContext | null)[]
}

/** The words from one token to another, whatever stands between. */
export const stretch = (scan: Scan, from: number, to: number): WordRange => {
  const first = scan.tokens[from] as Token
  const last = scan.tokens[to] as Token
  return rangeOfTokens(first, last)
}

/** A question with its words. Of the feet that are spoken of something was said by that, sure or not. */
export function ask(hearing: Hearing, question: string, from: readonly WordRange[]): void {
  hearing.questions.push({ ask: question, from: merged(from) })
  if (hearing.feet) hearing.feet.used = true
}

/** The feet named at a token, or null; `left` alone is a foot only of a pair that was named, and beside a number. */
export function feetNamedAt(
  hearing: Hearing,
  tokens: readonly Token[],
  at: number,
  mentioned: readonly Foot[] = [],
): { readonly feet: readonly Foot[]; readonly each: boolean } | null {
  const token = tokens[at]
  const named = as(token, 'feet')
  if (named) return { feet: named.feet, each: named.each }
  const other = as(token, 'other-foot')
  if (other) return otherFoot(hearing, other.pair)
  if (as(token, 'pair')) return hearing.pair && { feet: feetOf(hearing.pair), each: true }
  if (as(token, 'others')) return { feet: allFeet.filter((foot) => !mentioned.includes(foot)), each: true }
  const side = as(token, 'side')
  const last = mentioned.at(-1)
  const pair = hearing.pair ?? (last ? pairOf(last) : null)
  if (!token || !side || pair === null) return null
  // "He was off", "near the gate": these are sides only as "on the near", "on the off".
  if (/^(?:near|off)/.test(token.text) && !token.lead.includes('the')) return null
  const beside = tokens[at - 1]
  const next = tokens[at + 1]
  const isAfter =
    token.pauseBefore === 'none' &&
    beside !== undefined &&
    (beside.number !== null || isA(beside, 'unit', 'level', 'grade'))
  const isBefore =
    token.pause !== 'stop' &&
    next?.number != null &&
    next.lead.length === 0 &&
    !isNoMeasurement(tokens, at + 1)
  // "The left's got more flare": but not "the right way", "the left shoulder".
  const isNoun = token.pause === 'none' && next !== undefined && next.senses.length === 0 && !next.number
  // "Hinds. Left toe length eighty-eight."
  const isMeasured = hearing.isBySide && token.pause === 'none' && isA(next, 'measure')
  const isSubject = token.lead.includes('the') && !(isNoun && next?.lead.length === 0)
  return isAfter || isBefore || isSubject || isMeasured
    ? { feet: [feetOf(pair)[side.side === 'left' ? 0 : 1]], each: false }
    : null
}

/** The other fore of the one that is spoken of. */
function otherFoot(
  hearing: Hearing,
  pair: Pair,
): { readonly feet: readonly Foot[]; readonly each: boolean } | null {
  const [foot, ...more] = hearing.feet?.feet ?? []
  const both = feetOf(pair)
  if (foot === undefined || more.length > 0 || !both.includes(foot)) return null
  return { feet: both.filter((one) => one !== foot), each: false }
}

/** A foot as a part of a row of values and feet. */
export function footEntry(
  tokens: readonly Token[],
  at: number,
  named: { readonly feet: readonly Foot[]; readonly each: boolean },
): FootEntry {
  const token = tokens[at] as Token
  const isOn = token.lead.some((word) => ['on', 'in', 'at', 'of'].includes(word))
  return {
    kind: 'feet',
    feet: named.feet,
    each: named.each,
    isOn,
    pauseBefore: token.pauseBefore,
    heads: headsNext(tokens, at),
  }
}

/** Whether what comes next may be said of the foot at this token. */
export function headsNext(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at]
  if (isA(tokens[at + 1], 'stage', 'today') && token?.pause === 'none') return headsNext(tokens, at + 1)
  const next = tokens[at + 1]
  if (!token || !next || token.pause === 'stop') return false
  if (token.pause === 'comma' && token.pauseBefore === 'none') return false
  if (isA(next, 'finding', 'scale')) return true
  return isA(next, 'measure') && !(as(next, 'measure')?.place && !hasNumberSoon(tokens, at + 2))
}

/** Whether a number follows, at once or after feet, a side, doubt. */
export function hasNumberSoon(tokens: readonly Token[], from: number): boolean {
  for (let at = from; at < from + 4; at++) {
    const token = tokens[at]
    if (!token) return false
    if (token.number) return !isNoMeasurement(tokens, at)
    if (!isA(token, 'feet', 'side', 'inward', 'doubt', 'stage', 'today')) return false
  }
  return false
}

const speakers = new Set(['i', 'he', 'she', 'we', 'they', 'you', "i've", "i'd", 'that', 'this', 'at'])

/** Whether `before`, `after`, `done` name the stage here, and do no other work in the sentence. */
export function isStageAt(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at]
  const stage = as(token, 'stage')
  if (!token || !stage) return false
  if (stage.sure) return true
  const before = token.pauseBefore === 'none' ? tokens[at - 1] : undefined
  // "After a look round, ...": more than a stage.
  if (token.isTrailed) return false
  if (before && !before.number && !isA(before, 'feet', 'unit', 'measure', 'and', 'side')) return false
  const next = token.pause === 'none' ? tokens[at + 1] : undefined
  if (!next) return true
  if (next.lead.some((word) => speakers.has(word))) return false
  if (next.number) return !isNoMeasurement(tokens, at + 1)
  return isA(next, 'measure', 'feet', 'side', 'inward', 'scale', 'doubt', 'and', 'today')
}

/** Sets the stage from here on. */
export function hearStage(hearing: Hearing, scan: Scan, at: number): void {
  const token = scan.tokens[at] as Token
  const stage = as(token, 'stage')
  if (!stage) return
  const { feet } = hearing
  hearing.stage = {
    stage: stage.stage,
    feet: stage.all || feet === null || feet.feet.length === allFeet.length ? null : feet.feet,
    sentence: scan.sentence,
    from: rangeOfTokens(token),
    used: false,
  }
  scan.used.add(at)
}
