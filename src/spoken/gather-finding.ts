/** What is said of one finding: its feet, place and grade, from the words round its name. */
import type { Foot } from '../hoof/feet.ts'
import {
  type Around,
  afterAside,
  belongsToNext,
  type FoundPlace,
  type Grade,
  gradeNumber,
  isUnknown,
  leadOf,
  type Named,
  placeAt,
} from './finding-tokens.ts'
import type { Hearing } from './hearing.ts'
import { feetNamedAt, footEntry, type Scan } from './scan.ts'
import type { Entry } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import { naturalPlace } from './vocabulary/findings.ts'

export interface Gathered {
  /** Grades and feet in the order in which they were said. */
  readonly entries: Entry<Grade>[]
  place: string | null
  /** The part that was named and has an inner and an outer one. */
  part: FoundPlace['part']
  /** A part was named that is more than one place. */
  isPartUnclear: boolean
  isGone: boolean
  /** It is on a part of the horse that is no part of the foot. */
  isOffFoot: boolean
  isDoubted: boolean
  /** Two places were named, and two feet: which is where is not sure. */
  isMixed: boolean
  /** The grade is one of manner, "a bit of", which a plain one replaces. */
  isWeak: boolean
  /** Unknown words since something was understood. */
  strange: number
  readonly mentioned: Foot[]
  readonly first: number
  last: number
}

/** Unknown words within one breath after which nothing more belongs to the finding. */
const mostStrange = 2

/** Gathers up to the next finding, or to what is of another matter. */
export function gather(hearing: Hearing, scan: Scan, named: Named, around: Around): Gathered {
  const { tokens } = scan
  const lead = leadOf(tokens, named.at, around.since)
  const gathered: Gathered = {
    entries: lead.hasGrade ? [{ kind: 'values', values: [lead.grade] }] : [],
    place: lead.place,
    part: named.what === 'bar laid over' ? 'bar' : lead.part,
    isPartUnclear: lead.isPartUnclear,
    isGone: false,
    isOffFoot: false,
    isDoubted: lead.isDoubted,
    isMixed: false,
    isWeak: lead.isWeak,
    strange: 0,
    mentioned: [],
    first: lead.first,
    last: named.at,
  }
  for (let at = named.at + 1; at < around.end; ) {
    if (belongsToNext(tokens, at, around, hasOwn(tokens, at, named, gathered))) break
    const next = takeOne(hearing, scan, gathered, around, at)
    if (next === null) break
    at = next
  }
  while (gathered.last > named.at && isA(tokens[gathered.last], 'correct', 'no', 'and', 'today'))
    gathered.last--
  return gathered
}

/** Whether the finding has what the token would give it. */
function hasOwn(tokens: readonly Token[], at: number, named: Named, { entries, place }: Gathered): boolean {
  const isGrade = as(tokens[at], 'grade') !== null || gradeNumber(tokens, at) !== null
  return isGrade
    ? entries.some(({ kind }) => kind === 'values')
    : place !== null || naturalPlace(named.what) !== null
}

/** Takes one token: the next one to look at, or null where the finding ends. */
function takeOne(
  hearing: Hearing,
  scan: Scan,
  gathered: Gathered,
  around: Around,
  at: number,
): number | null {
  const { tokens } = scan
  const token = tokens[at] as Token
  const feet = feetNamedAt(hearing, tokens, at, gathered.mentioned)
  if (feet && !isRoundTheFoot(hearing, token)) {
    const entry = footEntry(tokens, at, feet)
    gathered.entries.push(entry)
    if (entry.heads) return null
    gathered.mentioned.push(...feet.feet)
    return taken(gathered, at)
  }
  const number = gradeNumber(tokens, at)
  if (number !== null || as(token, 'grade')) return takeGrade(gathered, tokens, at, number)
  const found = placeAt(tokens, at)
  if (found || as(token, 'inward')) return takePlace(gathered, token, found, at)
  if (as(token, 'gone')) {
    const before = tokens[at - 1]
    gathered.isGone = !isA(before, 'doubt', 'not', 'no') && !isUnknown(before)
    return taken(gathered, at)
  }
  if (as(token, 'body-part')) {
    gathered.isOffFoot = true
    return taken(gathered, at)
  }
  if (as(token, 'doubt')) {
    gathered.isDoubted = true
    return taken(gathered, at)
  }
  if (isA(token, 'no') && token.pauseBefore !== 'none' && !isA(tokens[at + 1], 'grade')) return null
  if (isA(token, 'correct', 'no', 'still', 'and', 'today', 'grade-next')) return taken(gathered, at)
  if (feet || isA(token, 'both', 'place', 'judge', 'compared', 'down')) return at + 1
  return takeStrange(gathered, tokens, around, at)
}

function taken(gathered: Gathered, at: number): number {
  gathered.last = at
  return at + 1
}

/** "Event lines all round": round the one foot that is spoken of. */
const isRoundTheFoot = (hearing: Hearing, token: Token): boolean =>
  /^(?:all )?(?:round|around)$/.test(token.text) && hearing.feet?.feet.length === 1

function takeGrade(gathered: Gathered, tokens: readonly Token[], at: number, number: Grade): number | null {
  const token = tokens[at] as Token
  const degree = as(token, 'grade')
  const isGraded = gathered.entries.some(({ kind }) => kind === 'values')
  // "Moderate now where it was severe", "down from severe to mild".
  const isPast = token.lead.some((word) => word === 'was' || word === 'were') && isGraded
  if (isPast || tokens[at - 1]?.text === 'down from') return at + 1
  if (
    gathered.strange > 0 &&
    token.pause === 'none' &&
    number === null &&
    !isA(tokens[at + 1], 'feet', 'today')
  )
    return null
  const grade = number ?? degree?.grade ?? null
  const isCorrected = isA(tokens[at - 1], 'no', 'correct') || gathered.isWeak
  const last = gathered.entries.at(-1)
  const isWeak = number === null && degree?.weak === true
  if (last?.kind !== 'values') gathered.entries.push({ kind: 'values', values: [grade] })
  else if (isCorrected) gathered.entries[gathered.entries.length - 1] = { kind: 'values', values: [grade] }
  // Mild, and then moderate, of one thing: neither is sure.
  else if (last.values[0] !== grade && !isWeak) {
    gathered.entries[gathered.entries.length - 1] = { kind: 'values', values: [null] }
  }
  gathered.isWeak = isWeak
  return taken(gathered, at)
}

function takePlace(gathered: Gathered, token: Token, found: FoundPlace | null, at: number): number {
  const side = as(token, 'inward')?.side
  const { place, part, isPartUnclear, mentioned } = gathered
  if (found && place === null && (!isPartUnclear || found.place !== null) && mentioned.length < 2) {
    gathered.place = found.place
    gathered.isPartUnclear = found.place === null
    gathered.part = found.part
    return taken(gathered, at)
  }
  if (side && place === null && part !== null) {
    gathered.place = `${side} ${part}`
    gathered.isPartUnclear = false
    return taken(gathered, at)
  }
  if (found && mentioned.length > 0 && found.place !== place) gathered.isMixed = true
  return at + 1
}

/** A word or two that mean nothing here, or an aside before a grade that stands alone. */
function takeStrange(
  gathered: Gathered,
  tokens: readonly Token[],
  around: Around,
  at: number,
): number | null {
  const token = tokens[at] as Token
  if (isUnknown(token) && !token.isCode && gathered.strange < mostStrange && token.pauseBefore === 'none') {
    gathered.strange++
    return at + 1
  }
  gathered.strange = 0
  return token.pauseBefore === 'none' ? null : afterAside(tokens, at, around.end)
}
