/** Findings: what, where, how bad, on which foot; and what is gone. */
import type { Foot } from '../hoof/feet.ts'
import {
  type Around,
  afterAside,
  belongsToNext,
  type FoundPlace,
  findingAt,
  type Grade,
  gradeBefore,
  gradeNumber,
  isHypothetical,
  isNoun,
  isUnknown,
  leadOf,
  type Named,
  negations,
  placeAt,
} from './finding-tokens.ts'
import { alsoFrom, type FeetContext, feetBefore, type Hearing, merged, rangeOfTokens } from './hearing.ts'
import { isElsewhere } from './number-context.ts'
import { ask, feetNamedAt, footEntry, type Scan, stretch } from './scan.ts'
import { type Entry, shareOut } from './share-out.ts'
import { as, isA, type Token } from './tokens.ts'
import type { Changeable, SpokenFinding, WordRange } from './understood.ts'
import { naturalPlace } from './vocabulary/findings.ts'

/** All findings of a sentence, in order. */
export function hearFindings(hearing: Hearing, scan: Scan): void {
  const { tokens } = scan
  const named = tokens.flatMap((token, at) => {
    const found = scan.used.has(at) ? null : findingAt(tokens, at)
    return found && !isNoun(token, tokens, at) ? [found] : []
  })
  const gradesFirst = named[0] !== undefined && gradeBefore(tokens, named[0].at) !== null
  const negated = negations(tokens, named)
  let since = 0
  for (const [index, one] of named.entries()) {
    const end = named[index + 1]?.at ?? tokens.length
    const isNegated = negated[index] ?? null
    // "No thrush, cracks" may go on with what there is, or with what there is not.
    if (isNegated === null) continue
    since = hearOne(hearing, scan, one, { since, end, isNegated, gradesFirst }) + 1
  }
}

/** "A bit of thrush in the left fore, only slight": a grade said twice, with one foot between, is one grade. */
function withoutRestated(entries: readonly Entry<Grade>[]): readonly Entry<Grade>[] {
  const [first, feet, last, ...more] = entries
  const isSame = first?.kind === 'values' && last?.kind === 'values' && first.values[0] === last.values[0]
  return isSame && feet && more.length === 0 ? [first, feet] : entries
}

/** @returns the last token that is said of it */
function hearOne(hearing: Hearing, scan: Scan, named: Named, around: Around): number {
  if (isHypothetical(scan.tokens, named.at, around.since)) return named.at
  const gathered = gather(hearing, scan, named, around)
  settle(hearing, scan, named, around, gathered)
  return gathered.last
}

function settle(hearing: Hearing, scan: Scan, named: Named, around: Around, gathered: Gathered): void {
  const { tokens } = scan
  const before = feetBeforeFinding(scan, named.at)
  const words = [stretch(scan, gathered.first, gathered.last)]
  const place = named.where ?? gathered.place
  if (around.isNegated || gathered.isGone) {
    hearGone(hearing, scan, named, place, gathered, before, words)
    return
  }
  if (isElsewhere(tokens, named.at)) return
  const graded = gathered.entries.some(({ kind }) => kind === 'values')
  const entries: readonly Entry<Grade>[] = graded
    ? gathered.entries
    : [{ kind: 'values', values: [null] }, ...gathered.entries]
  const shares = shareOut(
    withoutRestated(entries),
    before && feetBefore(before, scan.sentence),
    hearing.known.feetOrder,
  )
  if (shares === null || gathered.isMixed) {
    ask(hearing, `On which foot: ${named.what}?`, words)
    return
  }
  const context = before && !before.used ? [before.from] : []
  if (before) before.used = true
  const items = shares.map(({ foot, value }, index) =>
    keep(
      hearing,
      {
        foot,
        what: named.what,
        place:
          place ??
          openPlace(hearing, foot, named.what) ??
          (gathered.isPartUnclear ? null : naturalPlace(named.what)),
        grade: value,
        from: merged(index === 0 ? [...context, ...words] : words),
        doubt: gathered.isDoubted ? 'said with doubt' : null,
      },
      place !== null,
    ),
  )
  scan.used.add(named.at)
  if (items.length > 0) hearing.last = { kind: 'findings', items, sentence: scan.sentence }
}

interface Gathered {
  readonly entries: readonly Entry<Grade>[]
  readonly place: string | null
  /** A part was named that is more than one place. */
  readonly isPartUnclear: boolean
  readonly isGone: boolean
  readonly isDoubted: boolean
  /** Two places were named, and two feet: which is where is not sure. */
  readonly isMixed: boolean
  readonly first: number
  readonly last: number
}

/** Unknown words within one breath after which nothing more belongs to the finding. */
const mostStrange = 2

function gather(hearing: Hearing, scan: Scan, named: Named, around: Around): Gathered {
  const { tokens } = scan
  const lead = leadOf(tokens, named.at, around.since)
  const entries: Entry<Grade>[] = lead.grade === null ? [] : [{ kind: 'values', values: [lead.grade] }]
  let { place, isPartUnclear } = lead
  let part: FoundPlace['part'] = lead.part
  let isMixed = false
  let isGone = false
  let isDoubted = lead.isDoubted
  let last = named.at
  let strange = 0
  const mentioned: Foot[] = []
  for (let at = named.at + 1; at < around.end; at++) {
    const token = tokens[at] as Token
    const feet = feetNamedAt(hearing, tokens, at, mentioned)
    const number = gradeNumber(tokens, at)
    const grade = number ?? as(token, 'grade')?.grade ?? null
    const found = placeAt(tokens, at)
    const isGraded = entries.some(({ kind }) => kind === 'values')
    const hasOwn = grade === null ? place !== null || naturalPlace(named.what) !== null : isGraded
    if (belongsToNext(tokens, at, around, hasOwn)) break
    if (feet) {
      const entry = footEntry(tokens, at, feet)
      entries.push(entry)
      if (entry.heads) break
      mentioned.push(...feet.feet)
    } else if (grade !== null) {
      if (strange > 0 && token.pause === 'none' && number === null && !isA(tokens[at + 1], 'feet')) break
      pushGrade(entries, grade, isA(tokens[at - 1], 'no', 'correct'))
    } else if (found && place === null && (!isPartUnclear || found.place !== null) && mentioned.length < 2) {
      place = found.place
      isPartUnclear = found.place === null
      part = found.part
    } else if (as(token, 'inward') && place === null && part !== null) {
      place = `${as(token, 'inward')?.side} ${part}`
      isPartUnclear = false
    } else if (found && mentioned.length > 0 && found.place !== place) isMixed = true
    else if (as(token, 'gone'))
      isGone = !isA(tokens[at - 1], 'doubt', 'not', 'no') && !isUnknown(tokens[at - 1])
    else if (as(token, 'doubt')) isDoubted = true
    else if (
      found ||
      isA(token, 'correct', 'no', 'still', 'and', 'today', 'grade-next', 'both', 'place', 'inward')
    ) {
      if (isA(token, 'no') && token.pauseBefore !== 'none' && !isA(tokens[at + 1], 'grade')) break
      if (found || isA(token, 'both', 'place', 'inward')) continue
    } else if (as(token, 'judge') && !as(token, 'stage')) continue
    else if (
      token.senses.length === 0 &&
      !token.number &&
      !token.isCode &&
      strange < mostStrange &&
      token.pauseBefore === 'none'
    ) {
      strange++
      continue
    } else {
      const after = token.pauseBefore === 'none' ? null : afterAside(tokens, at, around.end)
      if (after === null) break
      at = after - 1
      strange = 0
      continue
    }
    last = at
  }
  while (last > named.at && isA(tokens[last], 'correct', 'no', 'and', 'today')) last--
  return { entries, place, isPartUnclear, isGone, isDoubted, isMixed, first: lead.first, last }
}

function pushGrade(entries: Entry<Grade>[], grade: Grade, isCorrected: boolean): void {
  const last = entries.at(-1)
  if (last?.kind !== 'values') entries.push({ kind: 'values', values: [grade] })
  else if (isCorrected) entries[entries.length - 1] = { kind: 'values', values: [grade] }
  else entries[entries.length - 1] = { kind: 'values', values: last.values }
}

/** The feet that were spoken of when the finding was named. */
const feetBeforeFinding = (scan: Scan, at: number): FeetContext | null => scan.feetAt[at] ?? null

const openOn = (hearing: Hearing, what: string, feet: readonly Foot[] | null) =>
  hearing.known.openFindings.filter((one) => one.what === what && (feet === null || feet.includes(one.foot)))

/** Where the finding is that an earlier visit left open, if there is one such place. */
function openPlace(hearing: Hearing, foot: Foot, what: string): string | null {
  const places = new Set(openOn(hearing, what, [foot]).map(({ place }) => place))
  return places.size === 1 ? ([...places][0] ?? null) : null
}

/** Grade 0 where it was open; what was never there needs no line. */
function hearGone(
  hearing: Hearing,
  scan: Scan,
  named: Named,
  place: string | null,
  gathered: Gathered,
  before: FeetContext | null,
  words: readonly WordRange[],
): void {
  const { tokens } = scan
  if (isElsewhere(tokens, named.at)) return
  const after = gathered.entries.flatMap((entry) => (entry.kind === 'feet' && !entry.heads ? entry.feet : []))
  const feet = after.length > 0 ? after : (before?.feet ?? null)
  const open = openOn(hearing, named.what, feet).filter((one) => place === null || one.place === place)
  if (open.length === 0) return
  if (feet === null && open.length > 1) {
    ask(hearing, `On which foot is it gone: ${named.what}?`, words)
    return
  }
  const context = before && !before.used ? [before.from] : []
  if (before) before.used = true
  const items = open.map((one) =>
    keep(
      hearing,
      {
        foot: one.foot,
        what: named.what,
        place: one.place,
        grade: 0,
        from: merged([...context, ...words]),
        doubt: null,
      },
      true,
    ),
  )
  scan.used.add(named.at)
  hearing.last = { kind: 'findings', items, sentence: scan.sentence }
}

/** One line a finding, foot and place: a grade said later fills it in, another grade is asked about. */
function keep(
  hearing: Hearing,
  finding: Changeable<SpokenFinding>,
  isPlaceSaid: boolean,
): Changeable<SpokenFinding> {
  const same = hearing.findings.find(
    ({ foot, what, place }) =>
      foot === finding.foot &&
      what === finding.what &&
      (place === finding.place || place === null || !isPlaceSaid || place === naturalPlace(finding.what)),
  )
  if (!same) {
    hearing.findings.push(finding)
    return finding
  }
  same.from = alsoFrom(same.from, finding.from)
  if (isPlaceSaid) same.place = finding.place
  if (same.grade === null) same.grade = finding.grade
  else if (finding.grade !== null && finding.grade !== same.grade) {
    ask(hearing, `${finding.foot} ${finding.what}: grade ${same.grade} or ${finding.grade}?`, same.from)
    same.grade = null
  }
  return same
}

/** A sentence that only says how bad it is, after one that named a finding without. */
export function hearGradeAlone(hearing: Hearing, scan: Scan): boolean {
  const { last } = hearing
  const [token, ...more] = scan.tokens
  const grade = as(token, 'grade')
  if (!token || !grade || more.length > 0 || last?.kind !== 'findings' || scan.sentence - last.sentence > 1)
    return false
  const open = last.items.filter((item) => item.grade === null)
  for (const item of open) {
    item.grade = grade.grade
    item.from = merged([...item.from, rangeOfTokens(token)])
  }
  return open.length > 0
}
