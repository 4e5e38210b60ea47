/** What the words of a sentence say of findings: names, places, grades, and what is denied. */
import { as, isA, type OfKind, type Token } from './tokens.ts'
import type { SpokenFinding } from './understood.ts'

export type Grade = SpokenFinding['grade']

/** A finding named in a sentence. */
export interface Named {
  readonly what: string
  readonly where: string | null
  readonly at: number
}

/** Where the words round a finding end. */
export interface Around {
  readonly since: number
  readonly end: number
  readonly isNegated: boolean
  /** Whether grades stand before what they are of. */
  readonly gradesFirst: boolean
}

/** The finding that a token names, or an adjective whose noun is near. */
export function findingAt(tokens: readonly Token[], at: number): Named | null {
  const token = tokens[at]
  const finding = as(token, 'finding')
  // "Ring" is a finding where a place follows, and else what one does with a telephone.
  if (finding && !finding.sure && (token?.pause === 'stop' || !placeAt(tokens, at + 1))) return null
  if (finding) return { what: finding.what, where: finding.where, at }
  const quality = as(token, 'quality')
  if (!quality) return null
  for (let near = at - 1; near >= 0 && near > at - 5; near--) {
    const before = tokens[near] as Token
    if (before.pause !== 'none' && near < at - 1) break
    if (isPart(before, quality.of)) return { what: quality.what, where: null, at }
    if (before.pause !== 'none' || isA(before, 'scale', 'finding')) break
  }
  const next = token?.pause === 'none' ? tokens[at + 1] : undefined
  return next && isPart(next, quality.of) ? { what: quality.what, where: null, at } : null
}

function isPart(token: Token, of: readonly string[]): boolean {
  const part = as(token, 'place')?.part
  if (part !== undefined && of.includes(part)) return true
  const measured = as(token, 'measure')?.measure
  return (
    (of.includes('heel') && (measured === 'heel' || measured === 'heels')) ||
    (of.includes('white line') && measured === 'white-line')
  )
}

/** "Thrush spray", "nail hole number": a finding's name that belongs to the noun after it. */
export function isNoun(token: Token, tokens: readonly Token[], at: number): boolean {
  return token.pause === 'none' && isA(tokens[at + 1], 'hypothetical') && tokens[at + 1]?.lead.length === 0
}

/**
 * Which findings are said not to be there; null where that is not sure. "No thrush, cracks or bruises" is none of the
 * three; "no thrush, a crack at the toe" has one.
 */
export function negations(tokens: readonly Token[], named: readonly Named[]): readonly (boolean | null)[] {
  const result: (boolean | null)[] = named.map(({ at }) => isNo(tokens, at))
  for (const [index, { at }] of named.entries()) {
    const before = named[index - 1]
    if (!before || result[index] !== false || result[index - 1] === false) continue
    const between = tokens.slice(before.at + 1, at)
    if (!between.every((token) => isA(token, 'or', 'and', 'place') || isPlaceLike(token))) continue
    if (between.some((token) => isA(token, 'or'))) {
      for (let back = index; back > 0 && result[back] !== true; back--) result[back] = true
    } else if (tokens[at - 1]?.pause === 'comma' && between.length === 0) result[index] = null
  }
  return result
}

/** Whether it is denied right before it; null where something else stands between, or a denial right after. */
function isNo(tokens: readonly Token[], at: number): boolean | null {
  let isNear = true
  for (let near = at - 1; near >= 0 && near > at - 7; near--) {
    const token = tokens[near] as Token
    if (token.pause !== 'none' || token.number || isA(token, 'finding', 'measure')) break
    if (isA(token, 'no', 'not')) return isNear ? true : null
    if (!isA(token, 'grade', 'place') && !isPlaceLike(token)) isNear = false
  }
  for (let near = at + 1; near < tokens.length && near < at + 4; near++) {
    const token = tokens[near] as Token
    // "Thrush, no. Cracks, none."
    if (near === at + 1 && token.pauseBefore === 'comma' && token.pause !== 'none' && isA(token, 'no', 'not'))
      return true
    if (token.pauseBefore !== 'none' || isA(token, 'finding')) return false
    if (as(token, 'not')) return isA(tokens[near + 1], 'finding') ? false : null
  }
  return false
}

export const isUnknown = (token: Token | undefined): boolean => token?.senses.length === 0 && !token.number

const isPlaceLike = (token: Token): boolean => as(token, 'measure')?.place != null

/** Whether a word between two findings is said of the second: "thrush mild, bad crack", "thrush in the frog, sole a bit flat". */
export function belongsToNext(
  tokens: readonly Token[],
  at: number,
  { since, end, gradesFirst }: Around,
  hasOwn: boolean,
): boolean {
  if (end >= tokens.length) return false
  const { first } = leadOf(tokens, end, since)
  if (at < first) return false
  const token = tokens[at] as Token
  if (token.pauseBefore === 'none' && placeAt(tokens, at) && isLed(token)) return false
  return at > first || gradesFirst || hasOwn || token.pauseBefore !== 'none'
}

const isLed = (token: Token): boolean => token.lead.some((word) => ['in', 'at', 'on', 'of'].includes(word))

interface Lead {
  readonly hasGrade: boolean
  readonly grade: Grade
  readonly isWeak: boolean
  readonly place: string | null
  readonly isPartUnclear: boolean
  readonly part: FoundPlace['part']
  readonly isDoubted: boolean
  readonly first: number
}

/** What stands right before the finding: "moderate outside quarter flare", "the frog's a bit ragged". */
export function leadOf(tokens: readonly Token[], at: number, since: number): Lead {
  let degree: OfKind<'grade'> | null = null
  let place: string | null = null
  let part: FoundPlace['part'] = null
  let isDoubted = false
  let first = at
  for (let near = at - 1; near >= since && near > at - 5; near--) {
    const token = tokens[near] as Token
    if (token.pause !== 'none' && !isPlaceAlone(tokens, near, at)) break
    const found = placeAt(tokens, near)
    const graded = as(token, 'grade')
    if (found && place === null && (degree === null || isA(tokens[at], 'quality'))) {
      place = found.place
      if (found.place === null && found.part === 'quarter') part = 'quarter'
    } else if (graded && degree === null) degree = graded
    else if (as(token, 'doubt')) isDoubted = true
    else if (!isA(token, 'still', 'no', 'judge')) break
    first = near
  }
  return {
    hasGrade: degree !== null,
    grade: degree?.grade ?? null,
    isWeak: degree?.weak === true,
    place,
    isPartUnclear: part !== null,
    part,
    isDoubted,
    first,
  }
}

/** "Left fore sole, bruise": the place, with at most the foot before it, and then the finding. */
function isPlaceAlone(tokens: readonly Token[], near: number, at: number): boolean {
  const before = tokens[near - 1]
  return (
    near === at - 1 &&
    tokens[near]?.pause === 'comma' &&
    placeAt(tokens, near) !== null &&
    (before?.pause !== 'none' || isA(before, 'feet'))
  )
}

export const isGradeBefore = (tokens: readonly Token[], at: number): boolean => leadOf(tokens, at, 0).hasGrade

export interface FoundPlace {
  /** Null where the word fits several. */
  readonly place: string | null
  /** The part that has an inner and an outer one. */
  readonly part: 'heel' | 'quarter' | 'bar' | null
}

/** A place on the foot that a token names. */
export function placeAt(tokens: readonly Token[], at: number): FoundPlace | null {
  const token = tokens[at]
  const place = as(token, 'place')
  if (place?.place) return { place: place.place, part: null }
  if (place) return place.part === 'quarter' ? { place: null, part: 'quarter' } : null
  const measure = as(token, 'measure')
  if (measure?.place) return { place: measure.place, part: null }
  if (measure?.measure === 'heel' || measure?.measure === 'heels') return { place: null, part: 'heel' }
  return measure?.measure === 'quarters' ? { place: null, part: 'quarter' } : null
}

/** "Grade two", or a bare figure of a grade that ends the breath. */
export function gradeNumber(tokens: readonly Token[], at: number): Grade {
  const token = tokens[at]
  const value = token?.number?.value
  if (!token || value === undefined || ![0, 1, 2, 3].includes(value)) return null
  const before = tokens[at - 1]
  const isSaid = isA(before, 'grade-next')
  const isBare =
    token.pause !== 'none' && (isA(before, 'finding', 'place') || as(before, 'measure')?.place != null)
  return isSaid || isBare ? (value as 0 | 1 | 2 | 3) : null
}

/** "Nothing to worry about, mild": the grade that stands alone after an aside, or null. */
export function afterAside(tokens: readonly Token[], from: number, end: number): number | null {
  for (let at = from; at < end; at++) {
    const token = tokens[at] as Token
    if (token.number || isA(token, 'measure', 'feet', 'scale', 'stage')) return null
    if (token.pause === 'none') continue
    const next = tokens[at + 1]
    return at + 1 < end && next && isA(next, 'grade') && next.pause !== 'none' ? at + 1 : null
  }
  return null
}
