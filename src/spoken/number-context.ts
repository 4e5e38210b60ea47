/** What the words round a number, or a finding, make of it: a wrong reading is worse than a missed one. */
import { as, isA, type Token } from './tokens.ts'

/** Words that are looked at on either side. */
const farLeft = 9
const farRight = 4

/** Of things counted, time, money, a label; a code; a grade out of five; a weight. */
export function isNoMeasurement(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at]
  if (!token?.number || token.isTorn || token.number.value > 1000 || isYear(tokens, at)) return true
  const next = token.pause === 'none' ? tokens[at + 1] : undefined
  const before = token.pauseBefore === 'none' ? tokens[at - 1] : undefined
  if (isA(next, 'counted', 'out-of-five', 'mass') || isA(before, 'labelled')) return true
  if (next?.isCode || before?.isCode) return true
  // "Five of the horses", "two of us", "three to four": counted all the same.
  if (next?.lead.includes('of') && !isA(next, 'unit', 'feet')) return true
  // A number right before an unknown word counts it, if it is one that things are counted by.
  const isUnknown = next !== undefined && next.senses.length === 0 && !next.number && next.lead.length === 0
  return isUnknown && token.number.value < 20
}

/** Whether it is said of another day or another horse; of a number, also whether it is what another is held against. */
export function isElsewhere(
  tokens: readonly Token[],
  at: number,
  of: 'number' | 'finding' = 'number',
): boolean {
  const kinds = of === 'number' ? (['elsewhere', 'compared'] as const) : (['elsewhere'] as const)
  if (isA(tokens[at - 1], 'not') && tokens[at]?.pauseBefore === 'none') return true
  for (let left = at - 1; left >= 0 && left > at - farLeft; left--) {
    const token = tokens[left] as Token
    // "Last time the toe was ninety-eight and the angle forty-four": both were then.
    if (isA(token, 'today') || (token.number && !isA(tokens[left + 1], 'and'))) break
    if (isA(token, ...kinds)) return true
    const before = tokens[left - 1]
    // "Last time, the toe was ninety-eight": what opens a clause holds for the next.
    const isOpening = before?.pauseBefore !== 'none' && isA(before, ...kinds)
    if (token.pauseBefore === 'comma' && !isOpening) break
  }
  for (let right = at + 1; right < tokens.length && right <= at + farRight; right++) {
    const token = tokens[right] as Token
    if (token.pauseBefore !== 'none') break
    if (isYear(tokens, right)) return true
    if (token.number || isA(token, 'measure', 'finding', 'today')) break
    if (isA(token, ...kinds)) {
      const next = tokens[right + 1]
      return token.pause !== 'none' || !next?.number
    }
  }
  return false
}

/** Whether it is feared, treated, asked or supposed, in the same breath, rather than said to be so. */
export function isHypothetical(tokens: readonly Token[], at: number, since: number): boolean {
  for (let near = at - 1; near >= since && near > at - 7; near--) {
    const token = tokens[near] as Token
    if (token.pause === 'comma') break
    if (isA(token, 'hypothetical')) return true
  }
  return false
}

/** "In twenty nineteen", "since 2019". */
function isYear(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at]
  const value = token?.number?.value
  if (!token || value === undefined || !token.lead.some((word) => word === 'in' || word === 'since'))
    return false
  const next = token.pause === 'none' ? tokens[at + 1]?.number?.value : undefined
  return (value > 1980 && value < 2100) || ((value === 20 || value === 19) && next !== undefined && next > 9)
}

/** "Between forty-four and forty-six", "44 to 46", "44 or 45": the token after it, or null. */
export function rangeEnd(tokens: readonly Token[], at: number): number | null {
  const begins = isA(tokens[at - 1], 'range')
  let next = at + 1
  if (as(tokens[next], 'unit')) next++
  const joint = isA(tokens[next], 'or') || (begins && isA(tokens[next], 'and')) ? next + 1 : next
  const other = tokens[joint]
  if (!other?.number) return begins ? at + 1 : null
  if (isA(tokens[next], 'or') || begins) return joint + 1
  const isTo = joint === next && other.pauseBefore === 'none' && other.lead.at(-1) === 'to'
  return isTo ? joint + 1 : null
}
