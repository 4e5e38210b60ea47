/**
 * Wording of what the engine says. Each sentence is made from facts and a formatter, and stands by itself;
 * which foot it is about is said beside it. Plain words, no diagnosis.
 */
import { daysBetween } from '../../../hoof/dates.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import type {
  CautionLevel,
  Check,
  CheckFacts,
  CheckKind,
  GrowOut,
  Growth,
  NextVisit,
  PaceChange,
  Plan,
  Standing,
} from '../../../trend/assessment.ts'
import type { Formats } from '../formats.ts'

type Say<T> = (about: T, f: Formats) => string

const plural = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

const checks: { readonly [Kind in CheckKind]: Say<CheckFacts[Kind]> } = {
  'entered against photo': ({ measure, stage, entered, photo, difference, explained }, f) =>
    `${f.name(measure)}, ${stage} the trim: ${f.measure(measure, entered)} by hand, ${f.measure(measure, photo)} from the photo, a difference of ${f.change(measure, difference)}, ${explained ? 'within the errors of both' : 'more than the errors of both explain'}. The hand reading is used.`,
  'readings do not close': ({ stage, computed, measured, within }, f) =>
    `These readings do not close: angles and lengths ${stage} the trim put the hairline at ${f.angle(computed)}, it was read as ${f.angle(measured)}. Up to ${f.angle(within)} apart would be within their errors. One of them may be wrong.`,
  'left out': ({ measure, stage, value }, f) =>
    `${f.name(measure)} ${stage} the trim, ${f.measure(measure, value)}: no error explains this reading, so it is left out of the trend. A slip, or another foot?`,
  'pace has changed': ({ measure, earlierPerMonth, laterPerMonth }, f) =>
    `The pace of ${f.name(measure)} has changed since this visit: ${f.rate(measure, earlierPerMonth)} before, ${f.rate(measure, laterPerMonth)} after.`,
  'growth out of range': ({ measure, ratePerMonth, slowest, fastest }, f) =>
    `${f.name(measure)}: growth of ${f.rate(measure, ratePerMonth)} lies outside the published ${f.interval(measure, slowest, fastest)} a month. Wear, trimming by someone else or a misread length can be behind it.`,
  'toe length for weight': ({ value, guide }, f) =>
    `Toe length ${f.length(value)}; the guide for this weight, given from memory, is ${f.length(guide)}.`,
  'broken axis': ({ value }, f) =>
    `Pastern and hoof are not in one line: broken ${value > 0 ? 'back' : 'forward'} by ${f.angle(Math.abs(value))}.`,
  'heel gap': ({ value, limit }, f) =>
    `The heel angle is ${f.angle(value)} less than the toe angle. One published definition calls heels underrun from ${f.angle(limit)} on. Sound feet average about ${f.fine('heel-gap', 8.7)} in another study, so this is a remark and no alarm.`,
  'sheared heels': ({ value, limit }, f) =>
    `The ${value > 0 ? 'inner' : 'outer'} heel is ${f.length(Math.abs(value))} higher. From ${f.length(limit)} on a published definition speaks of sheared heels.`,
  'frog ratio': ({ value, limit }, f) =>
    `The frog is ${f.fine('frog-ratio', value)} times as wide as it is long. Below ${f.figure('frog-ratio', limit)} a published definition speaks of contracted heels.`,
  'pair mismatch': ({ value, limit }, f) =>
    `Left and right toe angle differ by ${f.angle(Math.abs(value))}. From ${f.angle(limit)} on the pair is called mismatched (a figure from memory, uncertain).`,
  'load index': ({ value, limit }, f) =>
    `${f.measure('load-index', value)} on the foot: above ${f.figure('load-index', limit)} a published limit speaks of small feet for the weight.`,
}

/** A remark of a kind that was explained above it. */
const checksAgain: { readonly [Kind in CheckKind]: Say<CheckFacts[Kind]> } = {
  'entered against photo': ({ measure, entered, photo }, f) =>
    `${f.name(measure)} ${f.measure(measure, entered)} by hand, ${f.measure(measure, photo)} from the photo.`,
  'readings do not close': ({ computed, measured }, f) =>
    `the hairline at ${f.angle(computed)} by the other readings, read as ${f.angle(measured)}.`,
  'left out': ({ measure, value }, f) => `${f.name(measure)} ${f.measure(measure, value)} left out as well.`,
  'pace has changed': ({ measure, earlierPerMonth, laterPerMonth }, f) =>
    `${f.name(measure)}, ${f.rate(measure, earlierPerMonth)} before, ${f.rate(measure, laterPerMonth)} after.`,
  'growth out of range': ({ measure, ratePerMonth }, f) =>
    `${f.name(measure)}, growth of ${f.rate(measure, ratePerMonth)}.`,
  'toe length for weight': ({ value, guide }, f) =>
    `toe length ${f.length(value)}, guide ${f.length(guide)}.`,
  'broken axis': ({ value }, f) => `broken ${value > 0 ? 'back' : 'forward'} by ${f.angle(Math.abs(value))}.`,
  'heel gap': ({ value }, f) => `the heel angle ${f.angle(value)} less than the toe angle.`,
  'sheared heels': ({ value }, f) =>
    `the ${value > 0 ? 'inner' : 'outer'} heel ${f.length(Math.abs(value))} higher.`,
  'frog ratio': ({ value }, f) => `the frog ${f.fine('frog-ratio', value)} times as wide as long.`,
  'pair mismatch': ({ value }, f) => `toe angles ${f.angle(Math.abs(value))} apart.`,
  'load index': ({ value }, f) => `${f.measure('load-index', value)}.`,
}

/** A remark in words; each kind's words fit its own facts. */
const checkSentence = ({ kind, facts }: Check, f: Formats): string =>
  (checks[kind] as Say<Check['facts']>)(facts, f)

/** A remark whose kind was explained above it: what it reads. */
const checkAgain = ({ kind, facts }: Check, f: Formats): string =>
  (checksAgain[kind] as Say<Check['facts']>)(facts, f)

const standings: Readonly<Record<Standing, string>> = {
  'on target': 'on target',
  held: 'waits for the vet',
  improving: 'improving',
  worsening: 'worsening',
  steady: 'steady',
  rising: 'rising',
  falling: 'falling',
  'not worsening': 'not getting worse',
  'not improving': 'not getting better',
  'too early to tell': 'too early to tell',
}

const paceSentence = (pace: PaceChange, id: AnyMeasureId, f: Formats): string =>
  `The pace has changed: ${f.rate(id, pace.earlierPerMonth)} in the first half, ${f.rate(id, pace.laterPerMonth)} in the second.`

/** What the hoof did and what the trims did, apart. */
const growthHidden: Readonly<Record<NonNullable<Growth['hidden']>, string>> = {
  'not read on arrival': 'Growth is not known: nothing was read on arrival, so the trims hide it.',
  'not read after the trim': 'Growth is not known: nothing was read after the trims, so they hide it.',
  'too few readings': 'Growth is not known yet: no stretch between two visits was read at both ends.',
}

function growOutSentence(out: GrowOut, f: Formats): string {
  const rate = `${f.interval('toe-length', out.rateLow, out.rateHigh)} a month, ${out.rateFrom === 'practice' ? 'as horn grows in this practice and as published' : 'from what this wall has shown, and the practice'}`
  if (out.state === 'wall length unknown')
    return `${f.length(out.distance)} from the hairline; the wall there was not measured, so no date can be given (${rate}).`
  if (out.state === 'grown out') return 'Should have grown out; look.'
  if (out.state === 'due' && out.date !== null)
    return `Was expected at the ground by ${f.date(out.date)}${out.latest === null ? '' : `, by ${f.date(out.latest)} at the latest`}; look at the next visit.`
  if (out.date === null) return `${f.length(out.distance)} from the hairline; no date within ten years.`
  const range = `${out.earliest === null ? '' : f.date(out.earliest)} to ${out.latest === null ? 'more than ten years' : f.date(out.latest)}`
  return `${f.length(out.distance)} from the hairline; reaches the ground about ${f.date(out.date)} (95 % interval ${range}; ${rate}).`
}

const heelName = { medial: 'inner', lateral: 'outer' } as const

/** What is over, how it comes down, and until when. */
function planSentence(plan: Plan, f: Formats): string {
  const what =
    plan.side === 'toe'
      ? `The toe is ${f.length(plan.excess)} over its target of ${f.length(plan.limit)}.`
      : `The ${heelName[plan.side]} heel is ${f.length(plan.now)} higher, ${f.length(plan.excess)} over the limit of ${f.length(plan.limit)}.`
  const step = `${f.amount(plan.perTrim)} a trim beyond what grows (${perTrimFrom[plan.perTrimFrom]})`
  const last = plan.steps.at(-1)
  if (last === undefined || plan.shownOn === null) return what
  const inAll = f.span(daysBetween(plan.readOn, plan.shownOn))
  return `${what} ${plural(plan.trims, 'trim')}, at most ${step}, to about ${f.date(last.date)}. Whether it holds shows at the visit after the last, about ${f.date(plan.shownOn)}: ${inAll} in all.`
}

/** The next trim in plain amounts: what comes off in all, of what it is made, and what that leaves. */
function offSentence({ side, next, readOn }: Plan, f: Formats): string {
  const { total, grown, grownFrom, step, leaves, careFrom } = next
  const by = grownFrom === 'measured' ? 'at this foot’s own pace' : 'at the published pace'
  const made = `${f.amount(grown)} grown since ${f.date(readOn)} ${by}, and ${f.amount(step)} more`
  const care =
    careFrom === null
      ? ''
      : ` That is more than ${f.length(careFrom)}: better in two trims, some weeks apart.`
  if (side === 'toe')
    return `Off the toe, at most: ${f.amount(total)} (${made}). That leaves ${f.length(leaves)}.${care}`
  const other = side === 'medial' ? 'outer' : 'inner'
  return `Off the ${heelName[side]} heel, at most: ${f.amount(total)} (${made}), and off the ${other} heel only what has grown. That leaves ${f.length(leaves)} between them.${care}`
}

const perTrimFrom: Readonly<Record<Plan['perTrimFrom'], string>> = {
  'trim limits': "the horse's own limit",
  'flat sole': 'flat sole',
  'cupped sole': 'cupped sole',
  'sole not said, taken as flat': 'sole not said, taken as flat',
}

const planStanding: Readonly<Record<Plan['standing'], string>> = {
  'on plan': 'on plan',
  ahead: 'ahead of the plan',
  behind: 'behind the plan',
  'just begun': 'the plan has just begun',
}

function nextVisitSentence(next: NextVisit, f: Formats): string {
  if (next.due === null || next.overdueDays === null) return 'No visit yet.'
  const from = next.from === 'trim cycle' ? ', by the trim cycle' : ''
  if (next.overdueDays > 0)
    return `Was due on ${f.date(next.due)}${from}, overdue by ${f.span(next.overdueDays)}.`
  return `Due on ${f.date(next.due)}${from}.`
}

const levels: Readonly<Record<CautionLevel, string>> = {
  stop: 'Ask a vet before any more work',
  vet: 'Tell the vet',
  mind: 'Take care',
}

/** A caution where no word of its level stands beside it. */
const cautionAlone = (sentence: string, level: CautionLevel): string => `${sentence} ${levels[level]}.`

/** These stand on every edition and on paper. The law named is the Farriers (Registration) Act 1975, section 16. */
const always: readonly string[] = [
  'This record supports the people who care for the horse. It replaces no examination, and a trimmer does not diagnose.',
  'Who may trim, shoe or treat is set by local law. In Great Britain preparing a foot for a shoe is reserved to registered farriers and vets: Farriers (Registration) Act 1975, section 16.',
  'Follow product labels.',
  'Handle safely: a horse in pain can kick or strike. Work with a capable handler, on firm level ground, with protective wear, sharp tools sheathed. Stop when the horse cannot stand on the other feet.',
]

export const assessment = {
  cautionAlone,
  checks,
  checkSentence,
  checkAgain,
  standings,
  levels,
  always,
  perTrimFrom,
  planStanding,
  paceSentence,
  growthHidden,
  growOutSentence,
  planSentence,
  offSentence,
  nextVisitSentence,
}
