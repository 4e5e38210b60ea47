/** What a case is about, in the words of the vocabulary alone: never as the practitioner wrote it. */
import { findingNamed } from '../../casebook/finding-words.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { CaseContext } from './context.ts'
import { outsideBand } from './first-readings.ts'

/** One kind of problem with the feet that have it. */
export interface ProblemKind {
  readonly measure: AnyMeasureId | null
  readonly name: string
  readonly feet: readonly Foot[]
}

/** A case is about a handful; of what the first visit shows, so many are findings. */
const mostKinds = 5
const mostFindings = 3

/**
 * The problems that the practitioner wrote down, as measures and findings; else those of the first visit: findings, the
 * gravest first, and readings outside their bands, the furthest first. Those that the engine chooses look at the last
 * visit, and would tell how it went before the reader has decided.
 */
export function problemKinds(context: CaseContext): readonly ProblemKind[] {
  const written = writtenKinds(context)
  return merged(written.length > 0 ? written : kindsAtFirst(context)).slice(0, mostKinds)
}

const isKnown = (what: string): boolean => findingNamed(what, {}) !== null

function writtenKinds({ assessment, format }: CaseContext): readonly ProblemKind[] {
  return assessment.problems.flatMap(({ from, foot, about }): readonly ProblemKind[] => {
    if (from !== 'written' || foot === null || about.kind === 'words') return []
    if (about.kind === 'measure')
      return [{ measure: about.measure, name: format.name(about.measure), feet: [foot] }]
    return isKnown(about.what) ? [{ measure: null, name: about.what, feet: [foot] }] : []
  })
}

function kindsAtFirst(context: CaseContext): readonly ProblemKind[] {
  const { first, format } = context
  const found = first.findings
    .filter(({ what, grade }) => grade > 0 && isKnown(what))
    .toSorted((a, b) => b.grade - a.grade)
    .map(({ what, foot }) => ({ measure: null, name: what, feet: [foot] }))
  const measured = outsideBand(context).map(({ reading: { measure, foot } }) => ({
    measure,
    name: format.name(measure),
    feet: [foot],
  }))
  return [...merged(found).slice(0, mostFindings), ...measured]
}

/** Kinds of one name as one, in the order in which they come. */
function merged(kinds: readonly ProblemKind[]): readonly ProblemKind[] {
  const byName = new Map<string, ProblemKind>()
  for (const kind of kinds) {
    const known = byName.get(kind.name)
    const all = [...(known?.feet ?? []), ...kind.feet]
    byName.set(kind.name, { ...kind, feet: feet.filter((foot) => all.includes(foot)) })
  }
  return [...byName.values()]
}
