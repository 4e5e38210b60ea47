/**
 * What a person has approved to leave for the portfolio: `approvals.txt` of the casebook. A line is a case and a hash of
 * one sentence as it is published, or of the bytes of one photograph. Lines are sorted, each stands for itself and none
 * is ever changed, so that git, a synced folder or a person may put two copies together in any order.
 *
 * An approval holds in its own case alone: `He came from across the river` tells nothing of one horse and everything of
 * another. What belongs to the practice, such as its name, is approved once.
 */
import { controlsShown } from '../casebook/control-characters.ts'
import { type Report, reportOn } from '../casebook/report.ts'

export const approvalsFile = 'approvals.txt'

/** In the place of a case: what belongs to the practice. No folder of a horse can be called so. */
export const practiceScope = 'practice.md'

export interface Approvals {
  /** Hashes by case. */
  readonly byCase: ReadonlyMap<string, ReadonlySet<string>>
  /** Remarks at the head, and lines that are no approvals: kept as they are. */
  readonly others: readonly string[]
}

/** SHA-256 of a text, in 43 letters, digits, `-` and `_`; handed in, since not every place has the same. */
export type Digest = (text: string) => string

/** The hash by which this very text is approved in this case. */
export const sentenceApproval = (digest: Digest, scope: string, published: string): string =>
  digest(JSON.stringify([scope, 'sentence', published]))

/** @param content hash of the photograph's bytes */
export const photoApproval = (digest: Digest, scope: string, content: string): string =>
  digest(JSON.stringify([scope, 'photograph', content]))

const approvalLine = /^([a-z0-9]+(?:-[a-z0-9]+)*|practice\.md) +([\w-]{43})$/
/** What git leaves where two copies differ: both count. */
const conflictLine = /^(?:<{7}|={7}|>{7}|\|{7})(?: |$)/

const head = [
  '# What may leave for the portfolio, as approved with: growdown review',
  '# A case, and a hash of one sentence as published or of one photograph. The order means nothing:',
  '# two copies may be put together. Delete a line to take an approval back.',
]

/** @param text of the file; null where there is none */
export function readApprovals(text: string | null): Approvals & { readonly report: Report } {
  const report = reportOn(approvalsFile, text ?? '')
  const byCase = new Map<string, Set<string>>()
  const others: string[] = []
  let at = 0
  for (const raw of text?.split('\n') ?? []) {
    const line = raw.replace(/^\uFEFF/, '').trim()
    const [, scope, hash] = approvalLine.exec(line) ?? []
    if (scope !== undefined && hash !== undefined)
      byCase.set(scope, (byCase.get(scope) ?? new Set()).add(hash))
    else if (line.startsWith('#')) others.push(line)
    else if (line !== '' && !conflictLine.test(line)) {
      others.push(line)
      damaged(line, { start: at, end: at + raw.length }, report)
    }
    at += raw.length + 1
  }
  return { byCase, others: text === null ? head : others, report }
}

function damaged(line: string, range: { start: number; end: number }, report: Report): void {
  const shown = line.length > 60 ? `${line.slice(0, 60)} …` : line
  report.warning(
    'approval-unreadable',
    range,
    `"${controlsShown(shown)}" is no approval, so it approves nothing.`,
    {
      expected: 'the folder of a horse, a space and a hash of 43 letters and digits',
      advice: 'delete the line; growdown review asks again for what it stood for',
    },
  )
}

/** The text of the file. */
export function printApprovals({ byCase, others }: Approvals): string {
  const lines = [...byCase].flatMap(([scope, hashes]) => [...hashes].map((hash) => `${scope} ${hash}`))
  return [...others, ...lines.sort(), ''].join('\n')
}

/** All that is approved in a case. */
export const approvedIn = ({ byCase }: Approvals, id: string): ReadonlySet<string> =>
  new Set([...(byCase.get(id) ?? []), ...(byCase.get(practiceScope) ?? [])])

export interface Approval {
  readonly scope: string
  readonly hash: string
}

/** With these, or without them. */
export function withApprovals(
  approvals: Approvals,
  given: readonly Approval[],
  isApproved: boolean,
): Approvals {
  const byCase = new Map([...approvals.byCase].map(([scope, hashes]) => [scope, new Set(hashes)]))
  for (const { scope, hash } of given) {
    const hashes = byCase.get(scope) ?? new Set()
    if (isApproved) hashes.add(hash)
    else hashes.delete(hash)
    byCase.set(scope, hashes)
  }
  return { ...approvals, byCase }
}

/** What of a horse waits or is approved, for one kind of reader. */
export interface Reviewed {
  readonly items: readonly Approval[]
  /** Names what its pages are made under now, and under what they may have been made to stay while anything waits. */
  readonly madeUnder: string
  readonly mayStay: readonly string[]
  /** Hash by which a photograph in the horse's folder is approved; null where there is none. */
  photoHash(file: string): string | null
}
