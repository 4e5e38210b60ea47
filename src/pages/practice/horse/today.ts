/** "Today": what the practitioner wrote last, what the plan allows, what should be where on the wall. */
import type { Plan } from '../../../trend/assessment.ts'
import { findingName } from '../../shared/findings.ts'
import { groundText } from '../case/ahead.ts'
import { divided } from '../case/divided-note.ts'
import { type HorseCase, type Link, visitHref } from '../case/horse-case.ts'
import { heldText, limitTexts } from '../case/profile.ts'
import { atNow } from '../parts/drawings.ts'

export interface TodayPart {
  readonly note: {
    readonly text: string
    /** The visit's page, which has the whole of it. */
    readonly visit: Link
  } | null
  /** What may come off, a line a foot; or that no plan runs. */
  readonly allowed: readonly string[]
  readonly wall: readonly string[]
}

/** Of a longer note the beginning is shown. */
const longNote = 300

export function todayPart(of: HorseCase): TodayPart {
  const { assessment, words } = of
  const plans = assessment.plans.map((plan) => planLine(of, plan))
  const limits = limitTexts(of)
  return {
    note: noteOf(of),
    allowed: [
      ...heldText(of),
      ...(plans.length > 0 || assessment.heldFeet.length > 0 ? plans : [words.next.noPlan]),
      // A plan keeps to the limits already.
      ...(limits.length === 0 || plans.length > 0 ? [] : [words.next.limits(limits.join('; '))]),
    ],
    wall: wallLines(of),
  }
}

function noteOf({ visits, words, format }: HorseCase): TodayPart['note'] {
  const last = visits.at(-1)
  if (last === undefined || last.body.own.trim() === '') return null
  const { start, rest } = divided(last.body.own, longNote)
  const date = format.date(last.date)
  return {
    text: start,
    visit: {
      text: rest === null ? words.horse.noteOf(date) : words.horse.wholeNote(date),
      href: visitHref(last.id),
    },
  }
}

/** The total off the wall and what that leaves; *All measures* and the field sheet say the rest. */
function planLine({ format, words }: HorseCase, { foot, side, next }: Plan): string {
  const w = words.next
  const { total, grown, leaves, careFrom } = next
  const said = (side === 'toe' ? w.offToe : w.offHeel[side])(
    foot,
    format.amount(total),
    format.amount(grown),
    format.length(leaves),
  )
  return careFrom === null ? said : `${said} ${w.inTwo(format.length(careFrom))}`
}

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
      const name = `${one.foot} ${findingName({ what: one.feature, place: one.place })}`
      const ground = problems.includes(one) ? null : groundText(of, one)
      const at =
        one.wallLength === null
          ? w.atNow(format.length(atNow(one)))
          : w.atNowOf(format.length(atNow(one)), format.length(one.wallLength))
      return format.words.base.remark(name, ground === null ? `${at}.` : `${at}; ${ground}.`)
    })
}
