/** How the horse goes and what flesh it carries: pulses, landing, lameness, surfaces, scores, weight. */
import { feetBefore, type Hearing, merged } from './hearing.ts'
import { give, hearRow } from './level-rows.ts'
import { isElsewhere, isHypothetical } from './number-context.ts'
import { figure } from './quantity.ts'
import { ask, feetNamedAt, footEntry, type Scan, stretch } from './scan.ts'
import { type Entry, shareOut } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import type { WordRange } from './understood.ts'

/** @returns the first token that is none of it, or null where nothing of the kind begins here */
export function hearComfort(hearing: Hearing, scan: Scan, at: number): number | null {
  const { tokens } = scan
  const token = tokens[at]
  const scale = as(token, 'scale')?.scale
  const level = as(token, 'level')
  if (
    level?.scale === 'pulse' &&
    (/pulse/.test(token?.text ?? '') || as(tokens[at + 1], 'scale')?.scale === 'pulse')
  ) {
    return hearRow(hearing, scan, at, 'digital pulse', at)
  }
  if (scale === 'pulse') return hearRow(hearing, scan, at, 'digital pulse', at + 1)
  if (scale === 'landing') return hearRow(hearing, scan, at, 'landing', at + 1)
  if (scale === 'condition') return hearScore(hearing, scan, at, 'condition', 1, 9)
  if (scale === 'crest') return hearScore(hearing, scan, at, 'crest', 0, 5)
  if (scale === 'lame') return hearLame(hearing, scan, at, at + 1)
  if (token?.number && isGraded(tokens, at)) return hearLame(hearing, scan, at, at)
  if (token?.number && as(tokens[at + 1], 'mass')) return hearWeight(hearing, scan, at)
  if (level?.scale === 'ease') return hearEase(hearing, scan, at)
  return null
}

/** "Two out of five", "two lame". */
const isGraded = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.pause === 'none' &&
  (as(tokens[at + 1], 'out-of-five') !== null || as(tokens[at + 1], 'scale')?.scale === 'lame')

function hearScore(
  hearing: Hearing,
  scan: Scan,
  start: number,
  key: 'condition' | 'crest',
  low: number,
  high: number,
): number | null {
  const { tokens } = scan
  let at = start + 1
  while (isA(tokens[at], 'scale', 'doubt', 'grade-next', 'today')) at++
  const number = tokens[at]?.number
  if (!number || isElsewhere(tokens, at) || tokens[at]?.isCode) return null
  const { value } = number
  const words = [stretch(scan, start, at)]
  scan.used.add(at)
  if (value < low || value > high || !Number.isInteger(value * 2)) {
    ask(hearing, `What is the ${key}?`, words)
    return at + 1
  }
  addBody(hearing, key, figure(value), words)
  return as(tokens[at + 1], 'out-of-five') ? at + 2 : at + 1
}

/** Kilograms or pounds that a horse can weigh, spoken of as its weight. */
function hearWeight(hearing: Hearing, scan: Scan, at: number): number | null {
  const { tokens } = scan
  const number = tokens[at]?.number
  const mass = as(tokens[at + 1], 'mass')
  if (!number || !mass || isElsewhere(tokens, at)) return null
  const scaleAt = [at - 3, at - 2, at - 1, at + 2, at + 3].find(
    (index) => as(tokens[index], 'scale')?.scale === 'weight',
  )
  const [low, high] = mass.unit === 'kg' ? [60, 1300] : [130, 2900]
  if (scaleAt === undefined || number.value < low || number.value > high) return null
  scan.used.add(at)
  addBody(hearing, 'weight', `${figure(number.value)} ${mass.unit}`, [
    stretch(scan, Math.max(0, Math.min(at, scaleAt)), Math.max(at + 1, scaleAt)),
  ])
  return at + 2
}

function addBody(
  hearing: Hearing,
  key: 'weight' | 'condition' | 'crest',
  text: string,
  from: readonly WordRange[],
): void {
  const before = hearing.body.findIndex((one) => one.key === key)
  if (before === -1) {
    hearing.body.push({ key, text, from, doubt: null })
    return
  }
  const old = hearing.body[before]
  if (!old || old.text === text) return
  const all = merged([...old.from, ...from])
  ask(hearing, `What is the ${key}: ${old.text} or ${text}?`, all)
  hearing.body[before] = { ...old, text: '_', from: all }
}

/** A grade of lameness, on the feet said beside it, by whom it is said to be judged. */
function hearLame(hearing: Hearing, scan: Scan, start: number, from: number): number | null {
  const { tokens } = scan
  let at = from
  while (isA(tokens[at], 'grade-next', 'feet', 'doubt', 'scale', 'judge')) at++
  const token = tokens[at]
  const value = token?.number?.value
  if (!token?.number || value === undefined || !Number.isInteger(value) || value > 5) return null
  if (isNotLameness(tokens, at)) return null
  const isNumberFirst = start === at
  let end = at + 1
  while (as(tokens[end], 'out-of-five') || as(tokens[end], 'scale')?.scale === 'lame') end++
  if (isNumberFirst && end === at + 1) return null
  scan.used.add(at)
  if (isHypothetical(tokens, start, 0)) return end
  if (isElsewhere(tokens, at) || isElsewhere(tokens, end - 1) || isPast(tokens, end)) return end
  const entries: Entry<string>[] = []
  for (let index = start; index < at; index++) {
    const named = feetNamedAt(hearing, tokens, index)
    if (named) entries.push(footEntry(tokens, index, named))
  }
  entries.push({ kind: 'values', values: [String(value)] })
  while (isA(tokens[end], 'judge', 'today')) end++
  const named = feetNamedAt(hearing, tokens, end)
  if (named && entries.length === 1) {
    entries.push(footEntry(tokens, end, named))
    end++
  }
  const words = [stretch(scan, start, end - 1)]
  const shares = shareOut(entries, feetBefore(hearing.feet, scan.sentence), hearing.known.feetOrder)
  if (shares === null) ask(hearing, 'On which foot is the lameness?', words)
  else give(hearing, 'lameness', shares, judgeOf(tokens, at), words)
  return end
}

const isNotLameness = (tokens: readonly Token[], at: number): boolean =>
  [at - 1, at - 2, at - 3].some((index) => {
    const scale = as(tokens[index], 'scale')?.scale
    return scale === 'crest' || scale === 'condition'
  })

/** "On the left fore last week": feet between the grade and its day. */
function isPast(tokens: readonly Token[], end: number): boolean {
  for (let at = end; at < end + 3; at++) {
    if (isA(tokens[at], 'elsewhere')) return true
    if (!isA(tokens[at], 'feet') || tokens[at]?.pause !== 'none') return false
  }
  return false
}

/** The judge named in the same clause before the grade, else after it. */
function judgeOf(tokens: readonly Token[], at: number): 'vet' | 'practitioner' | null {
  for (let near = at - 1; near >= 0; near--) {
    const token = tokens[near] as Token
    if (token.pause !== 'none' || token.number) break
    const judge = as(token, 'judge')
    if (judge) return judge.by
  }
  for (let near = at + 1; near < tokens.length; near++) {
    const token = tokens[near] as Token
    if (token.number) break
    const judge = as(token, 'judge')
    // "Two lame at trot, in my eyes": a clause of its own.
    if (judge && (token.pauseBefore === 'none' || token.pause !== 'none')) return judge.by
  }
  return null
}

/** "Short on gravel", "on gravel he is short". */
function hearEase(hearing: Hearing, scan: Scan, at: number): number | null {
  const { tokens } = scan
  const token = tokens[at] as Token
  const level = token.senses.find((sense) => sense.kind === 'level' && sense.scale === 'ease')
  if (level?.kind !== 'level') return null
  if (isA(tokens[at - 1], 'no', 'not')) return null
  const next = tokens[at + 1]
  const isOn = next?.lead.includes('on') === true || next?.text.startsWith('on ') === true
  const isAfter = token.pause === 'none' && as(next, 'surface') !== null && isOn
  const place = isAfter ? at + 1 : surfaceBefore(tokens, at)
  const surface = place === null ? null : as(tokens[place], 'surface')
  if (place === null || !surface || isElsewhere(tokens, at)) return null
  const words = [stretch(scan, Math.min(place, at), Math.max(place, at))]
  if (hearing.surfaces.some((one) => one.surface === surface.surface && one.level !== level.level)) {
    ask(hearing, `How does it go on ${surface.surface}?`, words)
  } else if (!hearing.surfaces.some((one) => one.surface === surface.surface)) {
    hearing.surfaces.push({ surface: surface.surface, level: level.level, from: words, doubt: null })
  }
  return Math.max(place, at) + 1
}

function surfaceBefore(tokens: readonly Token[], at: number): number | null {
  for (let near = at - 1; near >= 0 && near > at - 5; near--) {
    if (as(tokens[near], 'surface')) return near
    if (tokens[near]?.senses.some((sense) => sense.kind === 'level')) return null
  }
  return null
}
