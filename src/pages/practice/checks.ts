/** Remarks on the record itself: those of one kind together, what is true of all of them said once. */
import type { Check } from '../../trend/assessment.ts'
import { footTitle, type HorseCase } from './horse-case.ts'

export interface Remark {
  /** A line a foot and day. */
  readonly lines: readonly string[]
  /** What each of the lines means; null where they say it all. */
  readonly meaning: string | null
}

export function remarksOf(of: HorseCase, checks: readonly Check[]): readonly Remark[] {
  const alike = new Map<string, { lines: string[]; meaning: string | null }>()
  for (const check of checks) {
    const { lead, rest } = parted(of.assessmentWords.checkSentence(check, of.format))
    const remark = alike.get(`${check.kind} ${rest}`) ?? { lines: [], meaning: rest }
    remark.lines.push(aboutOf(of, check, lead))
    alike.set(`${check.kind} ${rest}`, remark)
  }
  return [...alike.values()]
}

/** The first sentence has the figures of the one case; what follows holds for all of the kind. */
function parted(text: string): { readonly lead: string; readonly rest: string | null } {
  const end = /[.!?] (?=\p{Lu})/u.exec(text)
  if (end === null) return { lead: text, rest: null }
  return { lead: text.slice(0, end.index + 1), rest: text.slice(end.index + 2) }
}

function aboutOf(of: HorseCase, { foot, date }: Check, lead: string): string {
  const { format } = of
  const about = [
    ...(foot === null ? [] : [footTitle(of, foot)]),
    ...(date === null ? [] : [format.date(date)]),
  ]
  return about.length === 0 ? lead : format.words.base.remark(about.join(', '), lead)
}
