/** Signs in how the horse goes and stands: lameness, digital pulse, surfaces, stance, hoof testers. */
import type { Visit } from '../../casebook/model.ts'
import { type Foot, feet, feetOf, pairs } from '../../hoof/feet.ts'
import { clearPulse } from './found.ts'
import { type CareRecord, gravest, judgeOf, mayClear } from './record.ts'
import { type Look, sign } from './sign.ts'

type Grade = { readonly grade: number }

/** A lameness of these grades. A lower grade under a painkiller, which hides it, clears nothing. */
const lameness =
  (counts: (grade: number) => boolean) =>
  ({ known }: CareRecord): Look<Grade> => {
    const foundBy = new Map<Foot, string>()
    return ({ visit }, speak) => {
      for (const foot of feet) {
        const grade = visit.comfort.lameness[foot]
        if (grade === undefined) continue
        if (counts(grade)) {
          foundBy.set(foot, judgeOf(visit))
          speak(foot, { grade })
        } else if (!known.underPainkiller(visit.date))
          speak(foot, grade === 0 && mayClear(judgeOf(visit), foundBy.get(foot) ?? null) ? 'gone' : 'lower')
      }
    }
  }

/** A grade or more above the last one. It stands until the lameness is lower again. */
const lamenessRising = ({ known }: CareRecord): Look<Grade & { readonly before: number }> => {
  const last = new Map<Foot, number>()
  return ({ visit }, speak) => {
    for (const foot of feet) {
      const grade = visit.comfort.lameness[foot]
      if (grade === undefined) continue
      const before = last.get(foot) ?? null
      if (before !== null && grade < before && known.underPainkiller(visit.date)) continue
      last.set(foot, grade)
      if (before === null) continue
      if (grade > before) speak(foot, { grade, before })
      else speak(foot, grade === before ? 'same' : grade === 0 ? 'gone' : 'lower')
    }
  }
}

/** `digital pulse` 0 or 1 is gone. */
const pulse =
  (from: number) =>
  (): Look<Grade> =>
  ({ visit }, speak) => {
    for (const foot of feet) {
      const grade = visit.comfort.digitalPulse[foot]
      if (grade !== undefined) speak(foot, grade >= from ? { grade } : grade < clearPulse ? 'gone' : 'lower')
    }
  }

const pulsePair =
  ({ known }: CareRecord): Look<{ readonly left: number; readonly right: number; readonly from: number }> =>
  ({ visit }, speak) => {
    for (const pair of pairs) {
      const both = feetOf(pair)
      if (both.every((foot) => visit.comfort.digitalPulse[foot] === undefined)) continue
      const [left, right] = both.map((foot) => known.of[foot].pulse)
      if (left == null || right == null) continue
      speak(pair, left >= clearPulse && right >= clearPulse ? { left, right, from: clearPulse } : 'gone')
    }
  }

/** Where the horse has become unwilling to go. A surface on which it was unwilling before is no news. */
const unwilling = (): Look<{ readonly surfaces: string }> => {
  const levels = new Map<string, string>()
  return ({ visit: { comfort } }, speak) => {
    const said = Object.entries(comfort.surfaces)
    if (said.length === 0) return
    const fresh = said.filter(([name, level]) => level === 'unwilling' && levels.get(name) !== 'unwilling')
    for (const [name, level] of said) levels.set(name, level)
    const unwillingOn = [...levels].filter(([, level]) => level === 'unwilling').map(([name]) => name)
    if (fresh.length > 0) speak('horse', { surfaces: unwillingOn.join(', ') })
    else if (unwillingOn.length === 0) speak('horse', 'gone')
    else if (said.some(([, level]) => level === 'unwilling')) speak('horse', 'same')
  }
}

const obel =
  (): Look<Grade> =>
  ({ visit: { comfort } }, speak) => {
    if (comfort.obel !== null) speak('horse', comfort.obel >= 1 ? { grade: comfort.obel } : 'gone')
  }

const leaningFeet = ({ known }: CareRecord): readonly Foot[] =>
  feet.filter((foot) => known.of[foot].stance === 'leaning back')

const speaksOfStance = ({ stance }: Visit): boolean => Object.keys(stance).length > 0

type Leaning = { readonly grade: null }

const leaningBack =
  (record: CareRecord): Look<Leaning> =>
  ({ visit }, speak) => {
    if (speaksOfStance(visit)) speak('horse', leaningFeet(record).length > 0 ? { grade: null } : 'gone')
  }

/** Leaning back with heat or a clear pulse in any foot. */
const leaningBackSore =
  (record: CareRecord): Look<{ readonly with: 'pulse' | 'heat' }> =>
  ({ visit }, speak) => {
    const spoken =
      speaksOfStance(visit) ||
      Object.keys(visit.comfort.digitalPulse).length > 0 ||
      visit.findings.some(({ what }) => what === 'heat')
    if (!spoken) return
    const words = feet.map((foot) => record.known.of[foot])
    const beating = words.some((word) => (word.pulse ?? 0) >= clearPulse)
    const hot = words.some((word) => gravest(word, 'heat') !== null)
    if (leaningFeet(record).length > 0 && (beating || hot))
      speak('horse', { with: beating ? 'pulse' : 'heat' })
    else speak('horse', 'gone')
  }

const testersFrom = 3

const hoofTesters =
  (): Look<{ readonly place: string; readonly grade: number }> =>
  ({ visit: { comfort } }, speak) => {
    for (const foot of feet) {
      const met = comfort.hoofTesters[foot]
      if (met !== undefined) speak(foot, met.grade >= testersFrom ? met : met.grade === 0 ? 'gone' : 'lower')
    }
  }

export const goingSigns = [
  sign({ code: 'lameness-severe', level: 'stop', family: 'lameness', over: lameness((grade) => grade >= 4) }),
  sign({ code: 'pulse-bounding', level: 'stop', family: 'pulse', over: pulse(3) }),
  sign({ code: 'pulse-pair', level: 'stop', family: 'pulse', over: pulsePair }),
  sign({ code: 'obel', level: 'stop', over: obel }),
  sign({ code: 'unwilling-to-move', level: 'stop', over: unwilling }),
  sign({ code: 'leaning-back-sore', level: 'stop', family: 'leaning', over: leaningBackSore }),
  sign({
    code: 'lameness-marked',
    level: 'vet',
    holdsPlan: true,
    family: 'lameness',
    over: lameness((grade) => grade === 3),
  }),
  sign({
    code: 'lameness-moderate',
    level: 'vet',
    family: 'lameness',
    over: lameness((grade) => grade === 2),
  }),
  sign({ code: 'lameness-rising', level: 'vet', family: 'lameness', over: lamenessRising }),
  sign({ code: 'pulse-clear', level: 'vet', family: 'pulse', over: pulse(clearPulse) }),
  sign({ code: 'leaning-back', level: 'vet', family: 'leaning', over: leaningBack }),
  sign({ code: 'hoof-testers', level: 'vet', over: hoofTesters }),
] as const
