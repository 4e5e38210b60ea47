/** What is followed as it grows down the wall: "nail holes thirty-five down at the toe". */
import type { Foot } from '../hoof/feet.ts'
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
    if (what === null) continue
    if (isDownTo || !isElsewhere(tokens, at)) hearOne(hearing, scan, what, at, end)
    // "Should be forty down by now" says of nothing that it is there.
    else scan.used.add(what)
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
  const { tokens, used } = scan
  const finding = as(tokens[what], 'finding')
  const number = tokens[at]?.number
  if (!finding || !number) return
  const first = Math.min(what, at)
  const found = placeOf(tokens, first, Math.max(what, down), down)
  const place = finding.where ?? found.place
  const named = feetOf(tokens, first, found.last)
  const context = named || hearing.feet === null ? null : hearing.feet
  const feet = named?.feet ?? context?.feet ?? []
  const name = tokens[what]?.text ?? finding.what
  const words = stretch(scan, Math.min(first, named?.at ?? first), Math.max(found.last, named?.at ?? 0))
  const unit = as(tokens[at + 1], 'unit')?.unit ?? null
  const length = unit === 'deg' ? null : (unit ?? (number.isFraction ? 'in' : hearing.known.units))
  for (let index = first; index <= found.last; index++) used.add(index)
  const isNear = length !== null && toMillimetres(number.value, length) <= mostWall
  if (length === null || !isNear || feet.length === 0 || (feet.length > 1 && !named?.each)) {
    ask(hearing, `On which foot, and how far down: ${name}, ${figure(number.value)}?`, [words])
    return
  }
  for (const foot of feet) {
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
      from: merged([...(context && !context.used ? [context.from] : []), words]),
      doubt: null,
    })
  }
  if (context) context.used = true
}

/** The place named between what is followed and its number, or soon after. */
function placeOf(
  tokens: readonly Token[],
  first: number,
  end: number,
  down: number,
): { readonly place: string | null; readonly last: number } {
  for (let index = Math.max(0, first - 1); index < Math.min(tokens.length, end + 4); index++) {
    const token = tokens[index] as Token
    if (index > end && (token.number || isA(token, 'finding', 'scale'))) break
    const place = as(token, 'place')?.place ?? as(token, 'measure')?.place ?? null
    if (place !== null && index !== down && (index > first || token.pause === 'none')) {
      return { place, last: Math.max(end, index) }
    }
  }
  return { place: null, last: end }
}

interface NamedFeet {
  readonly feet: readonly Foot[]
  readonly each: boolean
  readonly at: number
}

/** The feet named among its words or right after, else the last ones named before it in the sentence. */
function feetOf(tokens: readonly Token[], first: number, last: number): NamedFeet | null {
  for (let index = first; index < Math.min(tokens.length, last + 4); index++) {
    const named = as(tokens[index], 'feet')
    if (named && !(index > last && headsOther(tokens, index)))
      return { feet: named.feet, each: named.each, at: index }
    if (index > last && tokens[index]?.number) break
  }
  for (let index = first - 1; index >= 0; index--) {
    const named = as(tokens[index], 'feet')
    if (named) return { feet: named.feet, each: named.each, at: index }
  }
  return null
}

const headsOther = (tokens: readonly Token[], at: number): boolean =>
  isA(tokens[at + 1], 'measure', 'finding', 'scale')

/** One spelling for names of features, singular and plural alike. */
const isSame = (one: string, other: string): boolean => stem(one) === stem(other)
const stem = (text: string): string => text.toLowerCase().replaceAll('-', ' ').replace(/s$/, '').trim()
