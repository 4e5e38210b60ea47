/** Values that were gathered become readings of feet, or questions. */
import type { Foot } from '../hoof/feet.ts'
import { measures } from '../hoof/measures.ts'
import { alsoFrom, contextRanges, feetBefore, type Hearing, merged, setFeet } from './hearing.ts'
import { quantityOf } from './quantity.ts'
import { ask, type Scan, stretch } from './scan.ts'
import { type Entry, shareOut } from './share-out.ts'
import type { Changeable, SpokenReading, Stage, WordRange } from './understood.ts'
import { families, type Group, type Value } from './value-group.ts'
import type { Measured } from './vocabulary/sense.ts'

export const stageNow = (hearing: Hearing): Stage => hearing.stage?.stage ?? 'before'

/** Gives what was gathered to its feet, and begins anew. */
export function flush(hearing: Hearing, scan: Scan, group: Group, end: number, stage: Stage): void {
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
    if (group.isUnclear || (group.strange > 0 && !isSureDespite(all, measured, group.strange))) {
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
    setFeet(
      hearing,
      feetNamed.feet,
      feetNamed.each,
      group.feetFrom ?? group.measure.from,
      scan.sentence,
      hearing.isBySide,
    )
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
  before.from = alsoFrom(before.from, reading.from)
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
