/** Warnings where a case could be told from the numbers that the portfolio shows. */
import type { Diagnostic } from '../../casebook/diagnostic.ts'
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

/** A line for each case that shares its profile with too few others. */
export function aloneWarnings(
  cases: readonly KeptCase[],
  told: ReadonlyMap<string, ToldCase>,
): readonly Diagnostic[] {
  return cases.flatMap(({ horse, summary }) => {
    const one = told.get(horse)
    if (one === undefined || one.alike >= casesWanted) return []
    const apart = traits
      .filter((trait) => one.profile[trait] !== 'not told' && one.profile[trait] !== null)
      .map((trait) => traitNames[trait])
    const by = apart.length === 0 ? '' : `, by ${listed(apart)}`
    const shared =
      one.alike === 1
        ? 'is like no other'
        : `is like ${one.alike - 1} other${one.alike === 2 ? '' : 's'} only`
    return warning(
      horse,
      'portfolio-alone',
      `In the portfolio the case ${summary.alias} ${shared}${by}: whoever knows the horse may know it there.`,
      `${casesWanted} cases that are told alike`,
      apart.length === 0
        ? 'show more cases, or wait with this one'
        : `show more cases, wait with this one, or leave ${listed(apart)} out of horse.md`,
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
