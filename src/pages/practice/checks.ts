/** Remarks on the record itself. Of a kind the first says what it means, the others what they read. */
import type { Check, CheckFacts, CheckKind } from '../../trend/assessment.ts'
import type { Formats } from '../words/formats.ts'
import { footTitle, type HorseCase } from './horse-case.ts'

export function checkTexts(of: HorseCase, checks: readonly Check[]): readonly string[] {
  const { format, assessmentWords, words } = of
  const again = words.measures.again as Readonly<Record<CheckKind, Again>>
  const kinds = [...new Set(checks.map(({ kind }) => kind))]
  return kinds.flatMap((kind) =>
    checks
      .filter((check) => check.kind === kind)
      .map((check, i) => {
        const text = i === 0 ? assessmentWords.checkSentence(check, format) : again[kind](check.facts, format)
        return format.words.base.remark(aboutOf(of, check), text)
      }),
  )
}

/** Each kind's words fit its own facts. */
type Again = (facts: CheckFacts[CheckKind], f: Formats) => string

const aboutOf = (of: HorseCase, { foot, date }: Check): string =>
  [
    foot === null ? of.words.horse.wholeHorse : footTitle(of, foot),
    ...(date === null ? [] : [of.format.date(date)]),
  ].join(', ')
