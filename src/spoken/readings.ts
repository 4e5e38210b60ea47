/** Readings: a measure, its numbers, and the feet that they are of. */
import { pairOf } from '../hoof/feet.ts'
import { flush, nameOf, stageNow } from './give-readings.ts'
import { type Hearing, type MeasureContext, rangeOfTokens } from './hearing.ts'
import { isElsewhere, isNoMeasurement, rangeEnd } from './number-context.ts'
import { ask, feetNamedAt, footEntry, hearStage, isStageAt, type Scan, stretch } from './scan.ts'
import { addValue, everyFoot } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import { changeLast, families, type Group, hasValues, startGroup, type Value } from './value-group.ts'

/**
 * Takes the values that follow a measure, from a token on.
 *
 * @returns the first token that is none of them
 */
export function hearValues(hearing: Hearing, scan: Scan, measure: MeasureContext, from: number): number {
  const { tokens } = scan
  const group = startGroup(measure, from)
  let at = from
  for (let next: number | null = at; next !== null && at < tokens.length; ) {
    next = takeOne(hearing, scan, group, at)
    if (next !== null) at = next
  }
  flush(hearing, scan, group, at, stageNow(hearing))
  return at
}

/** Takes one token into the group: the next one to look at, or null where the group ends. */
function takeOne(hearing: Hearing, scan: Scan, group: Group, at: number): number | null {
  const { tokens } = scan
  const token = tokens[at] as Token
  if (token.number) return takeNumber(hearing, scan, group, at)
  const named = feetNamedAt(hearing, tokens, at, group.mentioned)
  if (named) return takeFeet(hearing, scan, group, at, named)
  if (as(token, 'both')) return takeBoth(hearing, group, at)
  if (as(token, 'all') && group.entries.length === 0) {
    group.entries.push(everyFoot)
    return at + 1
  }
  if (as(token, 'except')) {
    group.isUnclear = true
    return at + 1
  }
  if (isStageAt(tokens, at)) return takeStage(hearing, scan, group, at)
  if (as(token, 'inward') && families.has(group.measure.measured)) return takeSide(group, at, token)
  if (isA(token, 'correct', 'no')) return takeCorrection(scan, group, at)
  if (as(token, 'doubt')) return takeDoubt(scan, group, at)
  if (isA(token, 'today', 'elsewhere', 'compared', 'still', 'range')) return at + 1
  if (as(token, 'and')) return at + 1
  if (token.isCode || token.senses.length > 0 || hasValues(group) || group.strange > 1) return null
  group.strange++
  return at + 1
}

function takeNumber(hearing: Hearing, scan: Scan, group: Group, at: number): number | null {
  const { tokens } = scan
  const token = tokens[at] as Token
  if (!token.number || isNoMeasurement(tokens, at)) return null
  // A list has nothing between its numbers: "ninety-five, that was ninety" is none.
  if (token.lead.length > 0 && (tokens[at - 1]?.number || isA(tokens[at - 1], 'unit')) && hasValues(group))
    return null
  const end = rangeEnd(tokens, at)
  if (end !== null) {
    ask(hearing, `Which is it: ${nameOf(group.measure.measured)}?`, [
      group.measure.from,
      stretch(scan, Math.max(0, at - 1), Math.min(end, tokens.length) - 1),
    ])
    for (let index = at; index < end; index++) scan.used.add(index)
    group.open = end
    return end
  }
  const unit = token.pause === 'none' ? as(tokens[at + 1], 'unit') : null
  const next = at + (unit ? 2 : 1)
  if (isElsewhere(tokens, at)) {
    scan.used.add(at)
    group.open = next
    return next
  }
  const { measured } = group.measure
  if (as(tokens[next], 'down') && measured !== 'new-length' && tokens[next - 1]?.pause === 'none') return null
  // "Toe ninety-six, forty-five degrees": its length, and then its angle.
  const isOtherKind = measured === 'toe' && unit?.unit === 'deg' && hasValues(group)
  if (isOtherKind) flush(hearing, scan, group, at, stageNow(hearing))
  const value: Value = {
    amount: { number: token.number, unit: unit?.unit ?? null },
    side: group.sideFirst === false ? null : group.side,
    isDoubted: group.isDoubted,
    from: stretch(scan, Math.min(group.open, at), next - 1),
  }
  if (unit && unit.unit !== 'deg') hearing.unitsSaid.add(unit.unit)
  group.isDoubted = false
  group.open = next
  addValue(group.entries, value)
  scan.used.add(at)
  return next
}

function takeFeet(
  hearing: Hearing,
  scan: Scan,
  group: Group,
  at: number,
  named: NonNullable<ReturnType<typeof feetNamedAt>>,
): number | null {
  const entry = footEntry(scan.tokens, at, named)
  group.entries.push(entry)
  if (entry.heads) return null
  group.mentioned.push(...named.feet)
  group.feetFrom = stretch(scan, at, at)
  const [first] = named.feet
  if (first) hearing.pair = pairOf(first)
  return at + 1
}

/** "Forty-six both": one value for each foot of the pair. */
function takeBoth(hearing: Hearing, group: Group, at: number): number | null {
  const { feet } = hearing
  const named = group.entries.findLast(({ kind }) => kind === 'feet')
  const pair = named?.kind === 'feet' ? named.feet : (feet?.feet ?? [])
  if (pair.length < 2) return null
  if (named?.kind === 'feet') {
    group.entries[group.entries.indexOf(named)] = { ...named, each: true }
    return at + 1
  }
  if (feet) hearing.feet = { ...feet, each: true }
  return at + 1
}

function takeStage(hearing: Hearing, scan: Scan, group: Group, at: number): number | null {
  const token = scan.tokens[at] as Token
  const stage = as(token, 'stage')
  if (!stage) return null
  const next = token.pause === 'none' ? scan.tokens[at + 1] : undefined
  const followsValue =
    hasValues(group) && token.pauseBefore === 'none' && (!next || isA(next, 'and') || next.number !== null)
  // A stage that was said in front holds for what follows it, and so does the next.
  const isFirst = hearing.stage?.sentence !== scan.sentence
  group.stagesLast ??= followsValue && isFirst
  if (followsValue && group.stagesLast) {
    scan.used.add(at)
    flush(hearing, scan, group, at + 1, stage.stage)
    return at + 1
  }
  flush(hearing, scan, group, at, stageNow(hearing))
  group.stagesLast = false
  hearStage(hearing, scan, at)
  return at + 1
}

function takeSide(group: Group, at: number, token: Token): number | null {
  const side = as(token, 'inward')?.side ?? null
  const last = group.entries.at(-1)
  group.sideFirst ??= last?.kind !== 'values'
  group.side = side
  if (!group.sideFirst) changeLast(group, { side })
  return at + 1
}

/** "Ninety-four, no, ninety-six": the second takes the place of the first. */
function takeCorrection(scan: Scan, group: Group, at: number): number | null {
  const { tokens } = scan
  let next = at
  while (isA(tokens[next], 'correct', 'no')) next++
  const last = group.entries.at(-1)
  if (!tokens[next]?.number || isNoMeasurement(tokens, next) || last?.kind !== 'values') return null
  const values = last.values.slice(0, -1)
  group.open = Math.min(group.open, at)
  if (values.length === 0) group.entries.pop()
  else group.entries[group.entries.length - 1] = { ...last, values }
  return next
}

function takeDoubt(scan: Scan, group: Group, at: number): number | null {
  const isNext = scan.tokens[at + 1]?.number != null
  if (isNext || group.entries.at(-1)?.kind !== 'values') group.isDoubted = true
  else changeLast(group, { isDoubted: true })
  return at + 1
}

/**
 * A number whose measure follows it, and after that perhaps its foot.
 *
 * @param end the first token after the measure
 * @returns the first token that is none of it
 */
export function hearOneValue(
  hearing: Hearing,
  scan: Scan,
  measure: MeasureContext,
  at: number,
  end: number,
): number {
  const { tokens } = scan
  const number = tokens[at]?.number
  if (!number) return at + 1
  const group = startGroup(measure, at)
  const unit = as(tokens[at + 1], 'unit')?.unit ?? null
  addValue(group.entries, {
    amount: { number, unit },
    side: null,
    isDoubted: false,
    from: stretch(scan, at, end - 1),
  })
  group.open = end
  scan.used.add(at)
  const named = feetNamedAt(hearing, tokens, end)
  const next =
    named && tokens[end]?.pauseBefore === 'none' ? takeFeet(hearing, scan, group, end, named) : null
  flush(hearing, scan, group, next ?? end, stageNow(hearing))
  return next ?? end
}

/**
 * A sentence of feet and numbers alone, after one that named its measures: the same measures again, one number each.
 *
 * @returns whether it was understood so
 */
export function hearAgain(
  hearing: Hearing,
  scan: Scan,
  measuresBefore: readonly MeasureContext[],
  from: number,
): boolean {
  const { tokens } = scan
  const numbers = tokens.flatMap((token, index) => (index >= from && token.number ? [index] : []))
  const isPlain = tokens.slice(from).every((token) => token.number || isA(token, 'and', 'unit'))
  const isMeant = numbers.every((index) => !isNoMeasurement(tokens, index) && !isElsewhere(tokens, index))
  if (numbers.length !== measuresBefore.length || !isPlain || !isMeant || hearing.feet?.feet.length !== 1)
    return false
  for (const [index, at] of numbers.entries()) {
    const measure = measuresBefore[index]
    const token = tokens[at]
    if (!measure || !token?.number) continue
    const unit = as(tokens[at + 1], 'unit')?.unit ?? null
    const group = startGroup({ ...measure, from: rangeOfTokens(token) }, at)
    addValue(group.entries, {
      amount: { number: token.number, unit },
      side: null,
      isDoubted: false,
      from: rangeOfTokens(token),
    })
    scan.used.add(at)
    flush(hearing, scan, group, at + (unit ? 2 : 1), stageNow(hearing))
  }
  return true
}
