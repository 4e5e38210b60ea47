/** Signs in the horse's body, in what its vet has said, and in the calendar. */
import type { Horse } from '../../casebook/model.ts'
import { daysBetween, daysPerMonth, type PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { NextVisit } from '../assessed-care.ts'
import { weightSd } from '../derived.ts'
import type { CareRecord } from './record.ts'
import { type Look, type Moment, sign } from './sign.ts'

type Score = { readonly grade: number; readonly limit: number }

const score =
  (of: 'condition' | 'crest', limit: number, passes: (grade: number) => boolean) =>
  (): Look<Score> =>
  ({ visit }, speak) => {
    const grade = visit.bodyState[of]
    if (grade !== null) speak('horse', passes(grade) ? { grade, limit } : 'lower')
  }

/** Share of the weight whose loss in a month counts. */
const lossShare = 0.05
/** Beyond this two tapings differ by more than the tape's error, kg: 95 % of differences. */
const tapeError = 1.96 * Math.SQRT2 * weightSd

type Loss = {
  readonly before: number
  readonly now: number
  readonly days: number
  readonly percent: number
}

/** Against every earlier weight: more than 5 % a month, or in less than one, and more than the tape's error. */
const weightLoss = (): Look<Loss> => {
  const weights: { readonly date: PlainDate; readonly kg: number }[] = []
  return ({ visit }, speak) => {
    const now = visit.bodyState.weightKg
    if (now === null) return
    const lost = weights.findLast(({ date, kg }) => {
      if (kg - now <= Math.max(tapeError, lossShare * kg)) return false
      return kg - now > (lossShare * kg * daysBetween(date, visit.date)) / daysPerMonth
    })
    weights.push({ date: visit.date, kg: now })
    if (lost === undefined) speak('horse', 'lower')
    else
      speak('horse', {
        before: lost.kg,
        now,
        days: daysBetween(lost.date, visit.date),
        percent: lossShare * 100,
      })
  }
}

/** What a vet's diagnosis may name that stops all work, each by the word for it. */
const grave: readonly (readonly [name: string, pattern: string])[] = [
  ['laminitis', String.raw`lam+[aie]n+[aie]ti\w*`],
  ['founder', String.raw`founder\w*`],
  ['rotation', String.raw`rotat\w*|penetrat\w*`],
  ['sinking', String.raw`sink\w*|sunk|dropped|distal displacement`],
  ['abscess', String.raw`abscess\w*`],
  ['infection', String.raw`infect\w*|septic|sepsis|pus`],
  ['fracture', String.raw`fractur\w*|broken (?:pedal|coffin|navicular)`],
]

/** Directly before what is named, with an adjective between at most. */
const deniedBefore =
  /\b(?:no (?:(?:evidence|signs?|history) of)?|old|former|past|previous|healed|resolved|history of|free of|negative for|never had|without)\s*(?:\w+\s+)?$/i
/** A list of what is not there, up to its colon. */
const deniedList = /\b(?:ruled out|excluded)\s*:$/i
/** Directly after it, a year between at most. */
const deniedAfter =
  /^(?:\s+(?:in|of|from)?\s*\d{4})?\s*[,(:-]?\s*(?:is |was |has been |now )?(?:ruled out|excluded|healed|resolved|cleared)\b/i
/** It is there all the same. */
const present =
  /\b(?:acute|again|recurr\w*|recurring|back|flar\w+|part(?:ly|ially)|cannot|can't|could(?: not|n't)|yet|not (?:fully|quite|completely|entirely))\b/i
/** As far round what is named as words are looked for that belong to it. */
const nearby = 200
const age = /\b\d+[- ]?(?:years?|yrs?|months?|weeks?|days?)[- ]?old\b/gi

/**
 * Whether the diagnosis names something grave as it stands today, or only with words such as old, healed, ruled out
 * that belong to the very thing. In doubt it stands.
 */
export function graveDiagnosis(
  diagnosis: string,
): { readonly named: string; readonly isPast: boolean } | null {
  let denied: string | null = null
  for (const statement of diagnosis.replace(age, ' ').split(/[;.\n]+/)) {
    const isPresent = present.test(statement)
    for (const [named, pattern] of grave)
      for (const found of statement.matchAll(new RegExp(String.raw`\b(?:${pattern})\b`, 'gi'))) {
        const { index } = found
        const end = index + found[0].length
        const before = statement.slice(Math.max(0, index - nearby), index)
        const colon = statement.slice(0, index).lastIndexOf(':') + 1
        const lead = statement.slice(Math.max(0, colon - nearby), colon)
        const after = statement.slice(end, end + nearby)
        const isDenied = deniedBefore.test(before) || deniedList.test(lead) || deniedAfter.test(after)
        if (!isDenied || isPresent) return { named, isPast: false }
        denied ??= named
      }
  }
  return denied === null ? null : { named: denied, isPast: true }
}

type Diagnosed = { readonly named: string; readonly dated: string | null }

/** Spoken of at the first visit from its day on, or at the last one there is. */
const diagnosis =
  (isPast: boolean) =>
  ({ horse }: CareRecord): Look<Diagnosed> | null => {
    const { diagnosis: said, date, feet: named } = horse.vet
    const found = said === null ? null : graveDiagnosis(said)
    if (found === null || found.isPast !== isPast) return null
    const day = date ?? horse.started ?? ''
    let isReported = false
    return ({ visit, isLast }: Moment, speak) => {
      if (isReported || (visit.date < day && !isLast)) return
      isReported = true
      const facts = { named: found.named, dated: date }
      const subjects: readonly (Foot | 'horse')[] =
        named.length === 0 || named.length === feet.length ? ['horse'] : named
      for (const one of subjects) speak(one, facts, '', day === '' ? visit.date : day)
    }
  }

/** For a horse that nobody has visited yet. */
const diagnosisOnDay =
  (isPast: boolean) =>
  ({ last }: NextVisit, { vet, started }: Horse, asOf: PlainDate) => {
    const found = last !== null || vet.diagnosis === null ? null : graveDiagnosis(vet.diagnosis)
    if (found === null || found.isPast !== isPast) return null
    return {
      date: vet.date ?? started ?? asOf,
      facts: { named: found.named, dated: vet.date },
      feet: vet.feet.length === 0 ? feet : vet.feet,
    }
  }

/** More days past the planned visit than this are told. */
const overdueBy = 14

type Overdue = { readonly due: string; readonly days: number }

export const bodySigns = [
  sign({ code: 'vet-diagnosis', level: 'stop', over: diagnosis(false), onDay: diagnosisOnDay(false) }),
  sign({
    code: 'condition-low',
    level: 'vet',
    family: 'condition',
    over: score('condition', 2, (grade) => grade <= 2),
  }),
  sign({
    code: 'condition-very-high',
    level: 'vet',
    family: 'condition',
    over: score('condition', 8, (grade) => grade >= 8),
  }),
  sign({ code: 'crest-high', level: 'vet', over: score('crest', 3, (grade) => grade >= 3) }),
  sign({ code: 'weight-loss', level: 'vet', over: weightLoss }),
  sign({ code: 'vet-diagnosis-past', level: 'mind', over: diagnosis(true), onDay: diagnosisOnDay(true) }),
  sign({
    code: 'condition-high',
    level: 'mind',
    family: 'condition',
    over: score('condition', 7, (grade) => grade >= 7),
  }),
  sign({
    code: 'visit-overdue',
    level: 'mind',
    over: (): Look<Overdue> | null => null,
    onDay: ({ due, overdueDays }) =>
      due === null || overdueDays === null || overdueDays <= overdueBy
        ? null
        : { date: due, facts: { due, days: overdueDays }, feet },
  }),
] as const
