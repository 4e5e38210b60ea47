/** What its owner should look for in one horse: what is open on its feet, and what to take care of. */
import type { Visit } from '../../casebook/model.ts'
import { daysBetween } from '../../hoof/dates.ts'
import { feet } from '../../hoof/feet.ts'
import { type FindingName, isFindingName } from '../../hoof/findings.ts'
import { type Assessment, type Caution, type CautionCode, openFindings } from '../../trend/assessment.ts'
import { cautionLines, standingCautions, wordsOf } from '../shared/caution-lines.ts'
import { capital, type OwnerFormatter } from '../shared/format.ts'
import { findingName } from './findings.ts'

/** So many open findings are told, by name, and every one that is more than mild. */
const mostFindings = 5

/** Cautions that speak of laminitis, whether or not they still stand: who had it may have it again. */
const ofLaminitis: ReadonlySet<CautionCode> = new Set<CautionCode>([
  'obel',
  'pulse-bounding',
  'pulse-pair',
  'leaning-back-sore',
  'leaning-back',
  'coronet-depression',
])
const laminitis: ReadonlySet<string> = new Set(['laminitis', 'founder', 'rotation', 'sinking'])

const isOfLaminitis = ({ code, facts }: Caution): boolean =>
  ofLaminitis.has(code) || ('named' in facts && laminitis.has(facts.named))

/** What a great step at one trim asks for is asked for some days. */
const afterATrim: ReadonlySet<CautionCode> = new Set<CautionCode>([
  'toe-shortened-much',
  'heels-lowered-much',
  'toe-angle-changed-much',
])
const someDays = 28

/** Findings that a caution speaks of under a name of its own. */
const spokenOf: Partial<Record<CautionCode, FindingName>> = {
  'sole-flat': 'flat sole',
  'sole-thin': 'thin sole',
}

export interface LookFor {
  readonly lines: readonly string[]
  /** What was asked for some days after a trim that is longer ago. */
  readonly past: readonly string[]
}

/** Cautions that ask for care, and advice on what is open; what must be done at once stands on top of the page. */
export function lookForOf(
  { cautions, heldFeet, asOf }: Assessment,
  visits: readonly Visit[],
  format: OwnerFormatter,
): LookFor {
  const { owner: words } = format.words
  const standing = standingCautions(cautions)
  const mild = standing.filter(({ level, code }) => level === 'mind' && code !== 'visit-overdue')
  const isPast = ({ code, date }: Caution) => afterATrim.has(code) && daysBetween(date, asOf) > someDays
  const linesOf = (some: readonly Caution[]) =>
    cautionLines(some, format, (one) => wordsOf(format, one).owner(one.facts, format)).map(
      ({ text, visit, date, folded }) =>
        folded > 0 || visit === visits.at(-1)?.id ? text : words.since(text, format.date(date)),
    )
  const cautioned = new Set<unknown>(
    standing.flatMap(({ code, facts }) => [spokenOf[code], 'finding' in facts ? facts.finding : undefined]),
  )
  // What to do for a foot that waits for the vet is the vet's to say.
  const open = openFindings(visits).filter(
    ({ finding }) => !cautioned.has(finding.what) && !heldFeet.includes(finding.foot),
  )
  return {
    lines: [
      ...(cautions.some(isOfLaminitis) ? [words.lookForLaminitis] : []),
      ...foundLines(open, visits.at(-1)?.id, format),
      ...linesOf(mild.filter((one) => !isPast(one))),
    ],
    past: linesOf(mild.filter(isPast)),
  }
}

/** A line for each open finding, with the feet that have it. */
function foundLines(
  open: ReturnType<typeof openFindings>,
  lastVisit: string | undefined,
  format: OwnerFormatter,
): readonly string[] {
  const { owner: words } = format.words
  const byName = new Map<string, ReturnType<typeof openFindings>>()
  for (const one of open) byName.set(one.finding.what, [...(byName.get(one.finding.what) ?? []), one])
  const gravest = (some: ReturnType<typeof openFindings>) =>
    Math.max(...some.map(({ finding }) => finding.grade))
  return [...byName]
    .sort(([, a], [, b]) => gravest(b) - gravest(a))
    .filter(([, some], i) => i < mostFindings || gravest(some) > 1)
    .map(([what, some]) => {
      const at = feet.flatMap((foot) => {
        const here = some.filter(({ finding }) => finding.foot === foot)
        const [latest] = here.toSorted((a, b) => b.finding.grade - a.finding.grade)
        if (latest === undefined) return []
        const { finding, visit } = latest
        const grade = words.grades[finding.grade] ?? ''
        return visit.id === lastVisit
          ? [words.at(format.foot(foot), grade)]
          : [words.atBefore(format.foot(foot), grade, format.date(visit.date))]
      })
      const advice = isFindingName(what) ? words.lookFor[what] : words.lookForOwnTerm
      return words.foundAt(capital(findingName(what, format)), at.join(words.between), advice)
    })
}
