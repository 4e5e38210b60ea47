/** Pulses and landings: levels and feet in a row. */
import type { Foot } from '../hoof/feet.ts'
import { alsoFrom, contextRanges, feetBefore, type Hearing, merged } from './hearing.ts'
import { isElsewhere, isHypothetical } from './number-context.ts'
import { ask, feetNamedAt, footEntry, type Scan, stretch } from './scan.ts'
import { addValue, type Entry, everyFoot, shareOut } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import type { PerFootScale, WordRange } from './understood.ts'

type RowScale = 'digital pulse' | 'landing'

/** The scale as the vocabulary has it. */
const nameIn = { 'digital pulse': 'pulse', landing: 'landing' } as const

/**
 * Takes the levels and feet that belong to a scale.
 *
 * @param start where its words begin
 * @param from the first token that may be a level or a foot
 * @returns the first token that is none of them
 */
export function hearRow(hearing: Hearing, scan: Scan, start: number, scale: RowScale, from: number): number {
  const { entries, end } = rowFrom(hearing, scan.tokens, scale, from)
  if (!entries.some(({ kind }) => kind === 'values')) return from
  if (isElsewhere(scan.tokens, start) || isHypothetical(scan.tokens, start, 0)) return end
  const words = [stretch(scan, start, Math.min(end, scan.tokens.length) - 1)]
  const isOfAll = isSaidOfAll(hearing, scan, entries, start)
  const shares =
    isTorn(hearing, entries) || goesOn(scan.tokens, end, scale)
      ? null
      : shareOut(
          isOfAll ? [everyFoot, ...entries] : entries,
          feetBefore(hearing.feet, scan.sentence),
          hearing.known.feetOrder,
        )
  if (shares) give(hearing, scale, shares, null, words)
  else ask(hearing, `Which foot is which: ${scale}?`, words)
  return end
}

/** "No digital pulses", of no foot in the same sentence, is said of all. */
function isSaidOfAll(
  hearing: Hearing,
  scan: Scan,
  entries: readonly Entry<string>[],
  start: number,
): boolean {
  const [only, ...more] = entries
  const isOne = only?.kind === 'values' && only.values.length === 1 && more.length === 0
  return isOne && hearing.feet?.sentence !== scan.sentence && /pulses$/.test(scan.tokens[start]?.text ?? '')
}

/** "Bounding on Monday, faint today": a level after other words, which may be the one that counts. */
function goesOn(tokens: readonly Token[], end: number, scale: RowScale): boolean {
  for (let at = end; at < tokens.length; at++) {
    const token = tokens[at] as Token
    if (isA(token, 'scale', 'measure', 'finding', 'feet')) return false
    // "Flat" and "clear" are said of more than landings and pulses.
    const level = token.senses.find((sense) => sense.kind === 'level')
    if (level?.kind === 'level' && level.scale === nameIn[scale] && token.senses.length === 1) return true
  }
  return false
}

/** "Pulse faint both fronts landing flat", in one breath: the feet may be of either. */
function isTorn(hearing: Hearing, entries: readonly Entry<string>[]): boolean {
  const last = entries.at(-1)
  const isOpen = last?.kind === 'feet' && last.heads && last.pauseBefore === 'none'
  return isOpen && entries[0]?.kind === 'values' && hearing.feet?.used === true
}

function rowFrom(
  hearing: Hearing,
  tokens: readonly Token[],
  scale: RowScale,
  from: number,
): { readonly entries: readonly Entry<string>[]; readonly end: number } {
  const entries: Entry<string>[] = []
  const mentioned: Foot[] = []
  let strange = 0
  for (let at = from; at < tokens.length; at++) {
    const token = tokens[at] as Token
    const named = feetNamedAt(hearing, tokens, at, mentioned)
    const level = levelAt(tokens, at, scale)
    if (level !== null) {
      addValue(entries, level)
      strange = 0
    } else if (named) {
      const entry = footEntry(tokens, at, named)
      entries.push(entry)
      if (entry.heads) return { entries, end: at }
      mentioned.push(...named.feet)
    } else if (!isBetween(token, scale)) {
      const isUnknown = token.senses.length === 0 && !token.number && !token.isCode
      if (!isUnknown || strange > 0 || token.pause !== 'none') return { entries, end: at }
      strange++
    }
  }
  return { entries, end: tokens.length }
}

/** What may stand between a level and its foot. */
function isBetween(token: Token, scale: RowScale): boolean {
  const other = as(token, 'scale')?.scale
  if (other !== undefined) return other === nameIn[scale]
  return isA(token, 'and', 'both', 'today', 'judge', 'doubt')
}

function levelAt(tokens: readonly Token[], at: number, scale: RowScale): string | null {
  const token = tokens[at] as Token
  const level = token.senses.find((sense) => sense.kind === 'level' && sense.scale === nameIn[scale])
  if (level?.kind === 'level') return level.level
  if (scale === 'digital pulse') {
    if (isA(token, 'no', 'not') && token.pause !== 'none') return '0'
    const value = token.number?.value
    return value !== undefined && [0, 1, 2, 3].includes(value) && !as(tokens[at + 1], 'out-of-five')
      ? String(value)
      : null
  }
  // In a list of landings a part of the foot alone is enough.
  const measured = as(token, 'measure')?.measure
  if (measured === 'heel' || measured === 'heels') return 'heel'
  if (measured === 'toe') return 'toe'
  return as(token, 'inward')?.side ?? null
}

/** Levels that are sure; another level of the same foot is asked about. */
export function give(
  hearing: Hearing,
  scale: PerFootScale,
  shares: readonly { readonly foot: Foot; readonly value: string }[],
  by: 'vet' | 'practitioner' | null,
  words: readonly WordRange[],
): void {
  const context = contextRanges(hearing)
  for (const [index, { foot, value }] of shares.entries()) {
    const from = merged(index === 0 ? [...context, ...words] : words)
    const before = hearing.comfort.find((one) => one.scale === scale && one.foot === foot)
    if (!before) {
      hearing.comfort.push({ scale, foot, level: value, by, from, doubt: null })
      continue
    }
    before.from = alsoFrom(before.from, from)
    if (before.level === value) continue
    ask(hearing, `${foot} ${scale}: ${before.level} or ${value}?`, before.from)
    before.level = '_'
  }
}
