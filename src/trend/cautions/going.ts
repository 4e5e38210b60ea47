/** Signs in how the horse goes and stands: lameness, digital pulse, surfaces, stance, hoof testers. */
import type { Visit } from '../../casebook/model.ts'
import { type Foot, feet, feetOf, pairs } from '../../hoof/feet.ts'
import { clearPulse } from './found.ts'
import { type CareRecord, finderOf, gravest, judgeOf, mayClear } from './record.ts'
import { every, type Look, sign } from './sign.ts'

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
          foundBy.set(foot, finderOf(foundBy.get(foot) ?? null, judgeOf(visit)))
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
      if (left >= clearPulse && right >= clearPulse) speak(pair, { left, right, from: clearPulse })
      else speak(pair, left < clearPulse && right < clearPulse ? 'gone' : 'lower')
    }
  }

/**
 * Where the horse has become unwilling to go. A surface on which it was unwilling before is no news; one on which it
 * goes, yet not easily, is better and not gone. What is judged under a painkiller clears nothing.
 */
const unwilling = ({ known }: CareRecord): Look<{ readonly surfaces: string }> => {
  const levels = new Map<string, string>()
  return ({ visit: { comfort, date } }, speak) => {
    const said = Object.entries(comfort.surfaces)
    const fresh = said.filter(([name, level]) => level === 'unwilling' && levels.get(name) !== 'unwilling')
    const was = [...levels].filter(([, level]) => level !== 'easy').map(([name]) => name)
    const hidden = known.underPainkiller(date)
    for (const [name, level] of said)
      if (level === 'unwilling' || (levels.has(name) && !hidden)) levels.set(name, level)
    if (fresh.length > 0) {
      const all = [...levels].filter(([, level]) => level === 'unwilling').map(([name]) => name)
      speak('horse', { surfaces: all.join(', ') })
    } else if (said.some(([name]) => was.includes(name))) {
      const still = [...levels.values()]
      speak(
        'horse',
        still.includes('unwilling') ? 'same' : still.every((level) => level === 'easy') ? 'gone' : 'lower',
      )
    }
  }
}

const obel =
  ({ known }: CareRecord): Look<Grade> =>
  ({ visit: { comfort, date } }, speak) => {
    if (comfort.obel === null) return
    if (comfort.obel >= 1) speak('horse', { grade: comfort.obel })
    else speak('horse', known.underPainkiller(date) ? 'same' : 'gone')
  }

const leaningFeet = ({ known }: CareRecord): readonly Foot[] =>
  feet.filter((foot) => known.of[foot].stance === 'leaning back')

const speaksOfStance = ({ stance }: Visit): boolean => Object.keys(stance).length > 0

type Leaning = { readonly grade: null }

const leaningBack =
  (record: CareRecord): Look<Leaning> =>
  ({ visit }, speak) => {
    if (!speaksOfStance(visit)) return
    if (leaningFeet(record).length > 0) speak('horse', { grade: null })
    else speak('horse', record.known.underPainkiller(visit.date) ? 'same' : 'gone')
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
    else speak('horse', record.known.underPainkiller(visit.date) ? 'same' : 'gone')
  }

const testersFrom = 3

const hoofTesters =
  (): Look<{ readonly place: string; readonly grade: number }> =>
  ({ visit: { comfort } }, speak) => {
    for (const foot of feet) {
      const met = comfort.hoofTesters[foot]
      if (met === undefined) continue
      const matter = met.grade === 0 && met.place === 'whole foot' ? every : met.place
      speak(foot, met.grade >= testersFrom ? met : met.grade === 0 ? 'gone' : 'lower', matter)
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
