/** Readings: a measure, its numbers, and the feet that they are of. */
import type { Foot } from '../hoof/feet.ts'
import { measures } from '../hoof/measures.ts'
import {
  contextRanges,
  feetBefore,
  type Hearing,
  type MeasureContext,
  merged,
  rangeOfTokens,
  setFeet,
} from './hearing.ts'
import { isElsewhere, isNoMeasurement, rangeEnd } from './number-context.ts'
import { type Amount, quantityOf } from './quantity.ts'
import { ask, feetNamedAt, footEntry, hearStage, isStageAt, type Scan, stretch } from './scan.ts'
import { type Entry, shareOut } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import type { Changeable, SpokenReading, Stage, WordRange } from './understood.ts'
import type { Inward, Measured } from './vocabulary/sense.ts'

interface Value {
  readonly amount: Amount
  readonly side: Inward | null
  readonly isDoubted: boolean
  /** From what was said before it to its own last word. */
  readonly from: WordRange
}

/** A measure's values and feet as they are gathered. */
interface Group {
  readonly measure: MeasureContext
  readonly entries: Entry<Value>[]
  readonly mentioned: Foot[]
  side: Inward | null
  sideFirst: boolean | null
  isDoubted: boolean
  /** Unknown words between the measure and its first value. */
  strange: number
  /** First token that no value's words hold yet. */
  open: number
  /** The foot named last. */
  feetFrom: WordRange | null
  /** Stage said after the values of this group, rather than before them. */
  stagesLast: boolean | null
}

const families: ReadonlySet<Measured> = new Set<Measured>(['heels', 'quarters', 'heel'])

/**
 * Takes the values that follow a measure, from a token on.
 *
 * @returns the first token that is none of them
 */
export function hearValues(hearing: Hearing, scan: Scan, measure: MeasureContext, from: number): number {
  const { tokens } = scan
  const group: Group = {
    measure,
    entries: [],
    mentioned: [],
    side: null,
    sideFirst: null,
    isDoubted: false,
    strange: 0,
    open: from,
    feetFrom: null,
    stagesLast: null,
  }
  let at = from
  for (let next: number | null = at; next !== null && at < tokens.length; ) {
    next = takeOne(hearing, scan, group, at)
    if (next !== null) at = next
  }
  flush(hearing, scan, group, at, stageNow(hearing))
  return at
}

const stageNow = (hearing: Hearing): Stage => hearing.stage?.stage ?? 'before'

const hasValues = (group: Group): boolean => group.entries.some(({ kind }) => kind === 'values')

/** Takes one token into the group: the next one to look at, or null where the group ends. */
function takeOne(hearing: Hearing, scan: Scan, group: Group, at: number): number | null {
  const { tokens } = scan
  const token = tokens[at] as Token
  if (token.number) return takeNumber(hearing, scan, group, at)
  const named = feetNamedAt(hearing, tokens, at, group.mentioned)
  if (named) return takeFeet(hearing, scan, group, at, named)
  if (as(token, 'both')) return takeBoth(hearing, group, at)
  if (isStageAt(tokens, at)) return takeStage(hearing, scan, group, at)
  if (as(token, 'inward') && families.has(group.measure.measured)) return takeSide(group, at, token)
  if (isA(token, 'correct', 'no')) return takeCorrection(scan, group, at)
  if (as(token, 'doubt')) return takeDoubt(scan, group, at)
  if (isA(token, 'today', 'elsewhere', 'still', 'range')) return at + 1
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
  // After a break, figures that begin anew belong to nothing that is known.
  const value: Value = {
    amount: { number: token.number, unit: unit?.unit ?? null },
    side: group.sideFirst === false ? null : group.side,
    isDoubted: group.isDoubted,
    from: stretch(scan, Math.min(group.open, at), next - 1),
  }
  if (unit && unit.unit !== 'deg') hearing.unitsSaid.add(unit.unit)
  group.isDoubted = false
  group.open = next
  add(group, value)
  scan.used.add(at)
  return next
}

function add(group: Group, value: Value): void {
  const last = group.entries.at(-1)
  if (last?.kind === 'values')
    group.entries[group.entries.length - 1] = { ...last, values: [...last.values, value] }
  else group.entries.push({ kind: 'values', values: [value] })
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
  if (first) hearing.pair = first[1] === 'F' ? 'fore' : 'hind'
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
  group.stagesLast ??= followsValue && group.stagesLast !== false
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
  if (!group.sideFirst && last?.kind === 'values') {
    const values = last.values.map((value, index) =>
      index === last.values.length - 1 ? { ...value, side } : value,
    )
    group.entries[group.entries.length - 1] = { ...last, values }
  }
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
  const last = group.entries.at(-1)
  const isNext = scan.tokens[at + 1]?.number != null
  if (isNext || last?.kind !== 'values') {
    group.isDoubted = true
    return at + 1
  }
  const values = last.values.map((value, index) =>
    index === last.values.length - 1 ? { ...value, isDoubted: true } : value,
  )
  group.entries[group.entries.length - 1] = { ...last, values }
  return at + 1
}

/** Gives what was gathered to its feet, and begins anew. */
function flush(hearing: Hearing, scan: Scan, group: Group, end: number, stage: Stage): void {
  const entries = group.entries.splice(0)
  const { measured } = group.measure
  const all = entries.flatMap((entry) => (entry.kind === 'values' ? entry.values : []))
  const feetNamed = entries.findLast((entry) => entry.kind === 'feet' && !entry.heads)
  if (all.length > 0) {
    const closing = Math.min(end, scan.tokens.length) - 1
    const tail = group.open <= closing ? [stretch(scan, group.open, closing)] : []
    const from = [group.measure.from, ...all.map((value) => value.from), ...tail]
    const before = feetBefore(hearing.feet, scan.sentence)
    const order = hearing.known.feetOrder
    if (group.strange > 0 && !isSureDespite(all, measured, group.strange)) {
      ask(hearing, `Is this ${nameOf(measured)}?`, from)
    } else {
      const isPacked = families.has(measured) && !isListOfOneSide(all)
      const shares = isPacked
        ? shareOut(entries.map(packed), before, order)?.flatMap(({ foot, value }) => unpacked(foot, value))
        : shareOut(entries, before, order)
      if (!shares || shares.some((share) => share === null))
        ask(hearing, `Which foot is which: ${nameOf(measured)}?`, from)
      else emitAll(hearing, group, scan.sentence, stage, shares as readonly Given[], tail)
    }
  }
  group.open = Math.max(group.open, end)
  if (feetNamed?.kind === 'feet') {
    setFeet(hearing, feetNamed.feet, feetNamed.each, group.feetFrom ?? group.measure.from, scan.sentence)
    if (hearing.feet) hearing.feet.used = all.length > 0
  }
}

interface Given {
  readonly foot: Foot
  readonly value: Value
}

const isSureDespite = (values: readonly Value[], measured: Measured, strange: number): boolean =>
  values.every(({ amount }) => amount.unit !== null) || (strange === 1 && Object.hasOwn(measures, measured))

const isListOfOneSide = (values: readonly Value[]): boolean =>
  values.length > 2 && values[0]?.side !== null && values.every(({ side }) => side === values[0]?.side)

/** What is said of one foot's heels is one thing to be given to a foot. */
function packed(entry: Entry<Value>): Entry<readonly Value[]> {
  return entry.kind === 'values' ? { kind: 'values', values: [entry.values] } : entry
}

/** Inner before outer, where nobody says which; null for any other number of them. */
function unpacked(foot: Foot, values: readonly Value[]): readonly (Given | null)[] {
  const isSided = values.every(({ side, amount }) => side !== null || amount.unit === 'deg')
  if (isSided) return values.map((value) => ({ foot, value }))
  const [inner, outer] = values
  if (!inner || !outer || values.length !== 2 || values.some(({ side }) => side !== null)) return [null]
  return [
    { foot, value: { ...inner, side: 'medial' } },
    { foot, value: { ...outer, side: 'lateral' } },
  ]
}

function emitAll(
  hearing: Hearing,
  group: Group,
  sentence: number,
  stage: Stage,
  shares: readonly Given[],
  tail: readonly WordRange[],
): void {
  const { measured, from } = group.measure
  const context = contextRanges(hearing)
  const items: Changeable<SpokenReading>[] = []
  const lastValue = shares.at(-1)?.value
  for (const [index, { foot, value }] of shares.entries()) {
    const ranges = merged([
      ...(index === 0 ? [...context, from] : []),
      value.from,
      ...(value === lastValue ? tail : []),
    ])
    const item = emit(hearing, measured, foot, stage, value, ranges)
    if (item && value === lastValue) items.push(item)
  }
  hearing.last = items.length > 0 ? { kind: 'readings', items, measured, sentence } : null
}

function emit(
  hearing: Hearing,
  measured: Measured,
  foot: Foot,
  stage: Stage,
  value: Value,
  from: readonly WordRange[],
): Changeable<SpokenReading> | null {
  const quantity = quantityOf(value.amount, measured, hearing.known.units, hearing.unitsSaid, value.side)
  if (!quantity) {
    ask(hearing, `${foot} ${nameOf(measured)}: what is ${value.amount.number.value}?`, from)
    return null
  }
  const isUnclear = stage === 'after' && !isAfterHere(hearing, foot, quantity.measure)
  if (isUnclear) {
    ask(
      hearing,
      `${foot} ${measures[quantity.measure].name} ${quantity.text}: before or after the trim?`,
      from,
    )
    return null
  }
  const doubt = [
    ...(value.isDoubted ? ['said with doubt'] : []),
    ...(quantity.supplied ? [quantity.supplied] : []),
  ]
  const reading: Changeable<SpokenReading> = {
    stage,
    foot,
    measure: quantity.measure,
    value: quantity.value,
    text: quantity.text,
    from,
    doubt: doubt.join('; ') || null,
  }
  return kept(hearing, reading)
}

/** One reading a foot, measure and stage: the same again is the same, another one is asked about. */
function kept(hearing: Hearing, reading: Changeable<SpokenReading>): Changeable<SpokenReading> | null {
  const before = hearing.readings.find(
    ({ stage, foot, measure }) =>
      stage === reading.stage && foot === reading.foot && measure === reading.measure,
  )
  if (!before) {
    hearing.readings.push(reading)
    return reading
  }
  before.from = merged([...before.from, ...reading.from])
  if (before.value !== null && reading.value !== null && Math.abs(before.value - reading.value) < 0.01)
    return before
  ask(
    hearing,
    `${reading.foot} ${measures[reading.measure].name} ${reading.stage} the trim: ${before.text === '_' ? '' : `${before.text} or `}${reading.text}?`,
    before.from,
  )
  before.value = null
  before.text = '_'
  return null
}

/**
 * Where "after" was said of one foot, the next foot may be at its beginning again: it is after only where its own reading
 * of before has been said, or none was of any foot.
 */
function isAfterHere(hearing: Hearing, foot: Foot, measure: SpokenReading['measure']): boolean {
  const { stage } = hearing
  if (stage?.stage !== 'after' || stage.feet === null || stage.feet.includes(foot)) return true
  const before = hearing.readings.filter((one) => one.stage === 'before' && one.measure === measure)
  return before.length === 0 || before.some((one) => one.foot === foot)
}

export const nameOf = (measured: Measured): string =>
  Object.hasOwn(measures, measured)
    ? measures[measured as keyof typeof measures].name
    : {
        toe: 'toe',
        heel: 'heel',
        heels: 'heels',
        quarters: 'quarters',
        'any-width': 'width',
        'any-length': 'length',
      }[measured as 'toe']

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
    const group: Group = {
      measure: { ...measure, from: rangeOfTokens(token) },
      entries: [],
      mentioned: [],
      side: null,
      sideFirst: null,
      isDoubted: false,
      strange: 0,
      open: at,
      feetFrom: null,
      stagesLast: null,
    }
    add(group, {
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
