/** Measures as they are named: before their number or after it, by a word that leaves open which, or left out. */
import { type Hearing, type MeasureContext, rangeOfTokens } from './hearing.ts'
import { isElsewhere, isNoMeasurement } from './number-context.ts'
import { hearAgain, hearOneValue, hearValues } from './readings.ts'
import { hasNumberSoon, type Scan } from './scan.ts'
import { as, isA, type Token } from './tokens.ts'
import type { Measured } from './vocabulary/sense.ts'

/** "Right fore ninety-six" after a measure of the same sentence, or as many numbers as it had measures. */
export function hearElliptic(hearing: Hearing, scan: Scan, at: number): number {
  const { tokens } = scan
  const since = hearing.measuresNow
  const [only, ...more] = since
  if (!only || !hasNumberSoon(tokens, at + 1) || !tokens[at + 1]?.number) return at + 1
  if (more.length === 0)
    return hearValues(hearing, scan, { ...only, from: rangeOfTokens(tokens[at] as Token) }, at + 1)
  hearAgain(hearing, scan, since, at + 1)
  return at + 1
}

/** "Heel medial thirty-one, lateral thirty": the other side of what was read last. */
export function otherSide(hearing: Hearing, tokens: readonly Token[], at: number): Measured | null {
  const side = as(tokens[at], 'inward')?.side
  const part = /^(heel|quarter)-/.exec(hearing.measuresNow.at(-1)?.measured ?? '')?.[1]
  if (!side || !tokens[at + 1]?.number) return null
  return part === 'heel' ? `heel-${side}` : part === 'quarter' ? `quarter-${side}` : null
}

/** "Eighty-nine toe", "a hundred and six on the toe": the measure after its number, and no other number after that. */
export function hearNumberFirst(hearing: Hearing, scan: Scan, at: number): number | null {
  const { tokens } = scan
  const unit = as(tokens[at + 1], 'unit')
  const named = at + (unit ? 2 : 1)
  const token = tokens[named]
  const measure = as(token, 'measure')
  const before = tokens[named - 1]
  if (!token || !measure || before?.pause !== 'none') return null
  const next = token.pause === 'none' ? tokens[named + 1] : undefined
  const isFree =
    !next ||
    (!hasNumberSoon(tokens, named + 1) && (isA(next, 'feet', 'and', 'side') || next.lead.length > 0)) ||
    (isA(next, 'today') && next.pause !== 'none')
  if (!isFree || isNoMeasurement(tokens, at) || isElsewhere(tokens, at)) return null
  const measured = meant(tokens, named, measure.measure)
  if (measured === null) return null
  const context: MeasureContext = { measured, sentence: scan.sentence, from: rangeOfTokens(token) }
  hearing.measuresNow = [...hearing.measuresNow, context]
  const end = hearOneValue(hearing, scan, context, at, named + 1)
  // "Eighty-eight toe, fifty-one degrees": the toe's angle.
  const from = as(tokens[end], 'and') ? end + 1 : end
  const isAngle = tokens[from]?.number && as(tokens[from + 1], 'unit')?.unit === 'deg'
  return measured === 'toe' && isAngle ? hearValues(hearing, scan, context, from) : end
}

export function hearMeasure(hearing: Hearing, scan: Scan, at: number, named: Measured): number {
  const { tokens } = scan
  const token = tokens[at] as Token
  if (isPlaceHere(tokens, at)) return at + 1
  const measured = meant(tokens, at, named)
  if (measured === null) return at + 1
  const measure: MeasureContext = { measured, sentence: scan.sentence, from: rangeOfTokens(token) }
  const heard = hearing.readings.length
  const asked = hearing.questions.length
  const end = hearValues(hearing, scan, measure, at + 1)
  const isHeard = hearing.readings.length > heard || hearing.questions.length > asked
  if (isHeard) {
    scan.used.add(at)
    hearing.measuresNow = [...hearing.measuresNow.filter((one) => one.measured !== measured), measure]
  } else if (end >= tokens.length) hearing.heading = measure
  return Math.max(end, at + 1)
}

/** "A crack at the toe", "out of the outside quarter": the toe is where the finding is. */
function isPlaceHere(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at] as Token
  if (!as(token, 'measure')?.place) return false
  const isLed = token.lead.some((word) => ['at', 'in', 'on', 'of', 'round', 'the'].includes(word))
  for (let near = at - 1; near >= 0 && near > at - 4; near--) {
    const before = tokens[near] as Token
    if (before.number || before.pause === 'stop') return false
    if (isA(before, 'finding', 'quality'))
      return isLed || isGrade(tokens[at + 1]) || !hasNumberSoon(tokens, at + 1)
  }
  const next = token.pause === 'none' ? tokens[at + 1] : undefined
  return isA(next, 'finding', 'quality') && as(token, 'measure')?.measure !== 'toe'
}

/** A bare figure that can be the grade of a finding. */
const isGrade = (token: Token | undefined): boolean =>
  token?.number != null && [0, 1, 2, 3].includes(token.number.value)

/** Words that leave the measure open, by what was named right before them. */
function meant(tokens: readonly Token[], at: number, named: Measured): Measured | null {
  const token = tokens[at] as Token
  const before = tokens[at - 1]
  const part = as(before, 'place')?.part
  const measured = as(before, 'measure')?.measure
  if (named === 'any-length') {
    if (part === 'frog') return 'frog-length'
    return measured === 'toe' ? 'toe-length' : null
  }
  if (named === 'any-width' || named === 'width') {
    const isFrog = tokens
      .slice(Math.max(0, at - 4), at)
      .some((one) => as(one, 'place')?.part === 'frog' || as(one, 'measure')?.measure === 'frog-length')
    return isFrog && token.text === 'width' ? null : 'width'
  }
  if (named === 'toe-angle' && /^angles?$|^angels?$/.test(token.text)) {
    if (measured === 'heel' || measured === 'heels') return 'heel-angle'
    if (part === 'pastern') return 'pastern-angle'
    if (part === 'coronet') return 'coronet-angle'
  }
  return named
}
