/** "Today": what the practitioner wrote last, what the plan allows, what should be where on the wall. */
import type { Plan } from '../../trend/assessment.ts'
import { groundText } from './ahead.ts'
import { atNow } from './drawings.ts'
import { findingName } from './findings.ts'
import { footTitle, type HorseCase, type Link, visitHref } from './horse-case.ts'
import { heldText, limitTexts } from './profile.ts'

export interface TodayPart {
  readonly note: {
    readonly text: string
    readonly visit: Link
    /** Only its beginning is shown; the visit's page has the whole. */
    readonly isLong: boolean
  } | null
  /** What may come off, a line a foot; or that no plan runs. */
  readonly allowed: readonly string[]
  readonly wall: readonly string[]
}

/** Of a longer note the beginning is shown. */
const longNote = 340

export function todayPart(of: HorseCase): TodayPart {
  const { assessment, words } = of
  const plans = assessment.plans.map((plan) => planLine(of, plan))
  const limits = limitTexts(of)
  return {
    note: noteOf(of),
    allowed: [
      ...heldText(of),
      ...(plans.length > 0 || assessment.heldFeet.length > 0 ? plans : [words.next.noPlan]),
      ...(limits.length === 0 ? [] : [words.next.limits(limits.join('; '))]),
    ],
    wall: wallLines(of),
  }
}

function noteOf({ visits, words, format }: HorseCase): TodayPart['note'] {
  const last = visits.at(-1)
  const text = last?.body.own.trim() ?? ''
  if (last === undefined || text === '') return null
  return {
    text,
    visit: { text: words.horse.noteOf(format.date(last.date)), href: visitHref(last.id) },
    isLong: text.length > longNote,
  }
}

const planLine = (of: HorseCase, plan: Plan): string =>
  of.format.words.base.remark(footTitle(of, plan.foot), of.assessmentWords.offSentence(plan, of.format))

/** Where each followed feature should be today. The day at the ground stands with the problem, where it is one. */
function wallLines(of: HorseCase): readonly string[] {
  const { assessment, format, words } = of
  const w = words.next
  const problems = assessment.problems.flatMap(({ about }) =>
    about.kind === 'grow-out' ? about.growOut : [],
  )
  return assessment.growOut
    .filter(({ state }) => state !== 'grown out')
    .map((one) => {
      const name = `${footTitle(of, one.foot)} ${findingName({ what: one.feature, place: one.place })}`
      const ground = problems.includes(one) ? null : groundText(of, one)
      const at =
        one.wallLength === null
          ? w.atNow(format.length(atNow(one)))
          : w.atNowOf(format.length(atNow(one)), format.length(one.wallLength))
      return format.words.base.remark(name, ground === null ? `${at}.` : `${at}; ${ground}.`)
    })
}
