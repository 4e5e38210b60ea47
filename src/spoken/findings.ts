/** Findings: what, where, how bad, on which foot; and what is gone. */
import type { Foot } from '../hoof/feet.ts'
import {
  type Around,
  findingAt,
  type Grade,
  isGradeBefore,
  isNoun,
  type Named,
  negations,
} from './finding-tokens.ts'
import { type Gathered, gather } from './gather-finding.ts'
import { alsoFrom, type FeetContext, feetBefore, type Hearing, merged, rangeOfTokens } from './hearing.ts'
import { isElsewhere, isHypothetical } from './number-context.ts'
import { ask, type Scan, stretch } from './scan.ts'
import { type Entry, shareOut } from './share-out.ts'
import { as } from './tokens.ts'
import type { Changeable, SpokenFinding, WordRange } from './understood.ts'
import { naturalPlace } from './vocabulary/findings.ts'

/** All findings of a sentence, in order. */
export function hearFindings(hearing: Hearing, scan: Scan): void {
  const { tokens } = scan
  const named = tokens.flatMap((token, at) => {
    const found = scan.used.has(at) ? null : findingAt(tokens, at)
    return found && !isNoun(token, tokens, at) ? [found] : []
  })
  const gradesFirst = named[0] !== undefined && isGradeBefore(tokens, named[0].at)
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
  if (gathered.isOffFoot) return
  const { tokens } = scan
  const before = feetBeforeFinding(scan, named.at)
  const words = [stretch(scan, gathered.first, gathered.last)]
  const place = named.where ?? gathered.place
  if (around.isNegated || gathered.isGone) {
    hearGone(hearing, scan, named, place, gathered, before, words)
    return
  }
  if (isElsewhere(tokens, named.at, 'finding')) return
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
  // Grade 0 of what was not open says that there is none.
  if (shares.every(({ value }) => value === 0)) {
    hearGone(hearing, scan, named, place, gathered, before, words)
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
  if (isElsewhere(tokens, named.at, 'finding')) return
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
