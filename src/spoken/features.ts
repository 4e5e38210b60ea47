/** What is followed as it grows down the wall: "nail holes thirty-five down at the toe". */
import { toMillimetres } from '../hoof/units.ts'
import { type Hearing, merged } from './hearing.ts'
import { isElsewhere, isNoMeasurement } from './number-context.ts'
import { figure, written } from './quantity.ts'
import { ask, type Scan, stretch } from './scan.ts'
import { as, isA, type Token } from './tokens.ts'
import { naturalPlace } from './vocabulary/findings.ts'

/** Tokens between what is followed and how far down it is. */
const near = 10
/** No wall is longer, in millimetres. */
const mostWall = 160

/** Takes the features of a sentence out of it, before its readings and findings are looked for. */
export function hearFeatures(hearing: Hearing, scan: Scan): void {
  const { tokens } = scan
  for (const [at, token] of tokens.entries()) {
    if (!token.number || isNoMeasurement(tokens, at)) continue
    const unit = token.pause === 'none' ? as(tokens[at + 1], 'unit') : null
    const down = at + (unit ? 2 : 1)
    const isDown = as(tokens[down], 'down') !== null && tokens[down - 1]?.pause === 'none'
    // "The nail holes have come down to forty-one."
    const isDownTo = tokens[at - 1]?.text === 'down to' && token.pauseBefore === 'none'
    if (!isDown && !isDownTo) continue
    const end = isDown ? down : down - 1
    const what = featureNear(scan, at, end)
    if (what !== null && (isDownTo || !isElsewhere(tokens, at))) hearOne(hearing, scan, what, at, end)
  }
}

/** The nearest finding before the number, else right after it; a measure or another number between ends the search. */
function featureNear({ tokens, used }: Scan, at: number, down: number): number | null {
  for (let before = at - 1; before >= 0 && before > at - near; before--) {
    const token = tokens[before] as Token
    if (isA(token, 'finding')) return used.has(before) ? null : before
    if (token.number || (as(token, 'measure') && !as(token, 'measure')?.place)) return null
  }
  for (let after = down + 1; after < tokens.length && after < down + 5; after++) {
    const token = tokens[after] as Token
    if (isA(token, 'finding')) return after
    if (token.number || isA(token, 'feet')) return null
  }
  return null
}

function hearOne(hearing: Hearing, scan: Scan, what: number, at: number, down: number): void {
  const { tokens } = scan
  const finding = as(tokens[what], 'finding')
  const number = tokens[at]?.number
  if (!finding || !number) return
  const first = Math.min(what, at)
  let last = Math.max(what, down)
  let place: string | null = finding.where
  const named: { foot: ReturnType<typeof footAt>; at: number }[] = []
  for (let index = Math.max(0, first - 3); index < Math.min(tokens.length, last + 4); index++) {
    const token = tokens[index] as Token
    if (index > last && (token.number || isA(token, 'finding', 'scale'))) break
    const found = as(token, 'place')?.place ?? as(token, 'measure')?.place ?? null
    const isHere = index > first || token.pause === 'none'
    if (place === null && found !== null && isHere && index !== down) {
      place = found
      if (index > last) last = index
    }
    const foot = footAt(tokens, index)
    if (foot && !(index > last && headsOther(tokens, index))) named.push({ foot, at: index })
  }
  const near = named.at(-1)
  const context = hearing.feet
  const foot = near?.foot ?? (context?.feet.length === 1 ? context.feet[0] : undefined)
  const words = stretch(scan, Math.min(first, near?.at ?? first), Math.max(last, near?.at ?? last))
  if (foot === undefined || foot === null) {
    ask(hearing, `On which foot: ${tokens[what]?.text ?? finding.what}, ${figure(number.value)} down?`, [
      words,
    ])
    return
  }
  const unit = as(tokens[at + 1], 'unit')?.unit ?? null
  const length = unit === 'deg' ? null : (unit ?? (number.isFraction ? 'in' : hearing.known.units))
  const millimetres = length === null ? null : toMillimetres(number.value, length)
  if (length === null || millimetres === null || millimetres > mostWall) {
    ask(hearing, `${foot} ${finding.what}: how far down is it?`, [words])
    return
  }
  const name = tokens[what]?.text ?? finding.what
  const known = hearing.known.features.filter(
    (one) =>
      one.foot === foot &&
      (isSame(one.what, name) || isSame(one.what, finding.what)) &&
      (place === null || one.place === place),
  )
  const [only] = known.length === 1 ? known : []
  hearing.features.push({
    foot,
    what: only?.what ?? name,
    place: only?.place ?? place ?? naturalPlace(finding.what),
    text: written(number, length, hearing.known.units),
    from: merged([...(near || !context || context.used ? [] : [context.from]), words]),
    doubt: null,
  })
  if (context && !near) context.used = true
  for (let index = first; index <= last; index++) scan.used.add(index)
}

function footAt(tokens: readonly Token[], at: number) {
  const feet = as(tokens[at], 'feet')?.feet
  return feet?.length === 1 ? (feet[0] ?? null) : null
}

const headsOther = (tokens: readonly Token[], at: number): boolean =>
  isA(tokens[at + 1], 'measure', 'finding', 'scale')

/** One spelling for names of features, singular and plural alike. */
const isSame = (one: string, other: string): boolean => stem(one) === stem(other)
const stem = (text: string): string => text.toLowerCase().replaceAll('-', ' ').replace(/s$/, '').trim()
