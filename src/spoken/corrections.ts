/** "No, ninety-six", "scratch that", "sorry, right fore": what was understood last is put right, or taken back. */
import { type Hearing, merged, setFeet } from './hearing.ts'
import { isNoMeasurement } from './number-context.ts'
import { quantityOf } from './quantity.ts'
import { ask, feetNamedAt, type Scan, stretch } from './scan.ts'
import { as, isA } from './tokens.ts'

/** Sentences that may lie between what was said and its correction. */
const near = 1

/** @returns the first token that is no part of the correction */
export function hearCorrection(hearing: Hearing, scan: Scan, at: number): number {
  const { tokens } = scan
  let next = at
  let isCorrection = false
  let isStrong = false
  while (isA(tokens[next], 'correct', 'no')) {
    const correct = as(tokens[next], 'correct')
    isCorrection ||= correct !== null
    isStrong ||= correct?.strong === true
    next++
  }
  const { last } = hearing
  if (!last || scan.sentence - last.sentence > near) return next
  const token = tokens[next]
  if (token?.number && last.kind === 'readings' && !isNoMeasurement(tokens, next))
    return replaceValue(hearing, scan, at, next)
  const again = saidAgain(hearing, scan, at, next)
  if (again !== null) return again
  const grade = as(token, 'grade')
  if (grade && last.kind === 'findings') {
    for (const item of last.items) {
      item.grade = grade.grade
      item.from = merged([...item.from, stretch(scan, at, next)])
    }
    scan.used.add(next)
    return next + 1
  }
  if (isStrong) {
    takeBack(hearing)
    return next
  }
  const named = isCorrection ? feetNamedAt(hearing, tokens, next) : null
  const ends =
    tokens[next + 1] === undefined ||
    (token?.pause !== 'none' && !isA(tokens[next + 1], 'measure') && !tokens[next + 1]?.number)
  const [only, ...more] = last.items
  if (isCorrection && !named && last.sentence === scan.sentence && tokens[at - 1]?.number) {
    ask(hearing, 'Was this taken back?', [
      ...last.items.flatMap((item) => item.from),
      stretch(scan, at, next - 1),
    ])
    takeBack(hearing)
    return next
  }
  if (!named || !ends || !token || named.feet.length !== 1 || !only) return next
  const [foot] = named.feet
  // Said of several things at once, it may mean the last of them or all.
  if (more.length > 0 || foot === undefined) {
    ask(hearing, 'Which of these is of another foot?', [
      ...last.items.flatMap((item) => item.from),
      stretch(scan, at, next),
    ])
    return next
  }
  // What stands there already was said of that foot: one of the two is wrong.
  const isTaken =
    'measure' in only &&
    hearing.readings.some(
      (one) => one.foot === foot && one.stage === only.stage && one.measure === only.measure,
    )
  if (isTaken) {
    ask(hearing, `Is this of ${foot}, which has one?`, [...only.from, stretch(scan, at, next)])
    takeBack(hearing)
    return next
  }
  only.foot = foot
  only.from = merged([...only.from, stretch(scan, at, next)])
  setFeet(hearing, named.feet, false, stretch(scan, next, next), scan.sentence)
  return next + 1
}

/**
 * "RH 49. Sorry, RH 48": the reading with its foot once more. Of the same foot it is another value; with the same value
 * it is another foot.
 * @returns the first token after it, null where it is no such thing
 */
function saidAgain(hearing: Hearing, scan: Scan, at: number, next: number): number | null {
  const { tokens } = scan
  const { last } = hearing
  const value = tokens[next + 1]?.number
  if (last?.kind !== 'readings' || last.items.length !== 1 || !value) return null
  if (isNoMeasurement(tokens, next + 1)) return null
  const [only] = last.items
  const [foot, ...more] = feetNamedAt(hearing, tokens, next)?.feet ?? []
  if (only === undefined || foot === undefined || more.length > 0) return null
  const before = only.value
  const isSameFoot = only.foot === foot
  if (
    !isSameFoot &&
    hearing.readings.some(
      (one) => one !== only && one.foot === foot && one.measure === only.measure && one.stage === only.stage,
    )
  )
    return null
  const words = [...only.from]
  const end = replaceValue(hearing, scan, at, next + 1)
  scan.used.add(next)
  // What comes after it goes on where the sentence before it was.
  if (hearing.measuresNow.length === 0) hearing.measuresNow.push(...hearing.measuresBefore)
  if (isSameFoot) return end
  if (only.value !== before) {
    ask(hearing, `Is ${only.text} of ${foot}, or of ${only.foot}?`, [...words, stretch(scan, at, end - 1)])
    takeBack(hearing)
    return end
  }
  only.foot = foot
  setFeet(hearing, [foot], false, stretch(scan, next, next), scan.sentence)
  return end
}

function replaceValue(hearing: Hearing, scan: Scan, at: number, next: number): number {
  const { tokens } = scan
  const { last } = hearing
  const token = tokens[next]
  if (last?.kind !== 'readings' || !token?.number) return next
  const unit = token.pause === 'none' ? (as(tokens[next + 1], 'unit')?.unit ?? null) : null
  const end = next + (unit ? 2 : 1)
  const [first] = last.items
  const quantity =
    first && quantityOf({ number: token.number, unit }, first.measure, hearing.known.units, hearing.unitsSaid)
  const words = stretch(scan, at, end - 1)
  scan.used.add(next)
  if (!quantity) {
    ask(hearing, 'Was this a correction?', [words])
    return end
  }
  for (const item of last.items) {
    item.value = quantity.value
    item.text = quantity.text
    item.from = merged([...item.from, words])
  }
  return end
}

/** Removes what was understood last; its words stay in the notes. */
function takeBack(hearing: Hearing): void {
  const { last } = hearing
  if (!last) return
  const gone = new Set<object>(last.items)
  const kept = hearing.readings.filter((one) => !gone.has(one))
  hearing.readings.splice(0, Infinity, ...kept)
  const others = hearing.findings.filter((one) => !gone.has(one))
  hearing.findings.splice(0, Infinity, ...others)
  hearing.last = null
}
