/** Warnings where a case could be told from the numbers that the portfolio shows. */
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { grouped } from '../../casebook/grouped.ts'
import type { Practice } from '../../casebook/model.ts'
import { reportOn } from '../../casebook/report.ts'
import { listed } from '../../casebook/words.ts'
import { casesWanted, type ToldCase } from '../../pages/portfolio/coarsen.ts'
import { type Trait, traits } from '../../pages/portfolio/profile.ts'
import { sharedTimes } from '../../pages/portfolio/visit-times.ts'
import type { KeptCase } from './kept-case.ts'

const traitNames: Readonly<Record<Trait, string>> = {
  age: 'age',
  kind: 'kind',
  sex: 'sex',
  heightCm: 'height',
  weightKg: 'weight',
}

/** A line for each few cases that share a profile with too few others. */
export function aloneWarnings(
  cases: readonly KeptCase[],
  told: ReadonlyMap<string, ToldCase>,
): readonly Diagnostic[] {
  const small = cases.filter(({ horse }) => (told.get(horse)?.alike ?? casesWanted) < casesWanted)
  const groups = grouped(small, ({ horse }) => JSON.stringify(told.get(horse)?.profile))
  return [...groups.values()].flatMap((group) => {
    const [first] = group
    const profile = first === undefined ? undefined : told.get(first.horse)?.profile
    if (first === undefined || profile === undefined) return []
    const apart = traits.filter((trait) => profile[trait] !== 'not told' && profile[trait] !== null)
    const by = apart.length === 0 ? 'nothing' : listed(apart.map((trait) => traitNames[trait]))
    const aliases = listed(group.map(({ summary }) => summary.alias).sort())
    const alike = group.length === 1 ? 'no other case is told like' : 'no more cases are told alike than'
    return warning(
      first.horse,
      'portfolio-alone',
      `In the portfolio ${alike} ${aliases}, known by ${by}: whoever knows the horse may know it there.`,
      `${casesWanted} cases that are told alike`,
      'show more cases, wait with these, or leave out of horse.md what need not be told',
    )
  })
}

/** A line for each case that can be told to stand with others of its owner by when they were seen. */
export function sharedTimesWarnings(
  cases: readonly KeptCase[],
  { portfolio }: Practice,
): readonly Diagnostic[] {
  const aliasOf = new Map(cases.map(({ horse, summary }) => [horse, summary.alias]))
  const unit = portfolio.time
  return sharedTimes(cases).flatMap(({ horse, others, intervals, cases: count }) =>
    warning(
      horse,
      'portfolio-same-times',
      `In the portfolio the case ${aliasOf.get(horse)} was seen at the same intervals as ${listed(others.map((other) => aliasOf.get(other) ?? other))}, of the same owner: ${intervals.join(', ')} ${unit}. ${count} cases in all show them, so a reader may tell that they stand together.`,
      `intervals that ${casesWanted} cases show, or none`,
      unit === 'days'
        ? 'count in weeks (portfolio: {days: weeks} in practice.md), or show one of them only'
        : 'show one of them only, or wait with one',
    ),
  )
}

function warning(
  horse: string,
  code: string,
  message: string,
  expected: string,
  advice: string,
): readonly Diagnostic[] {
  const report = reportOn(`${horse}/horse.md`, '')
  report.warning(code, null, message, { expected, advice })
  return report.diagnostics
}
