/** Signs that are findings on a foot, and those that a finding makes together with something else. */
import type { Finding } from '../../casebook/model.ts'
import { feet } from '../../hoof/feet.ts'
import { groundSide } from '../../hoof/findings.ts'
import { type CareRecord, gravest, type LastWord } from './record.ts'
import { every, type Look, sign } from './sign.ts'

export type FindingFacts = {
  readonly finding: string
  readonly place: string
  readonly grade: number
}

const factsOf = ({ what, place, grade }: Finding): FindingFacts => ({ finding: what, place, grade })

interface Asked {
  /** Grade from which it counts; 1 where not said. */
  readonly from?: number
  readonly at?: (place: string) => boolean
  /** What the words of the finding, or the rest of the record, must say. Said once, it holds until the grade falls. */
  readonly when?: (finding: Finding, record: CareRecord) => boolean
}

/** Speaks of the findings of one name; each place of a foot is a matter of its own. */
const finding =
  (what: string, { from = 1, at: counts = () => true, when }: Asked = {}) =>
  (record: CareRecord): Look<FindingFacts> | null => {
    if (!record.names.has(what)) return null
    /** Grade at which the matter was last found, by foot and place. */
    const found = new Map<string, number>()
    return ({ findings }, speak) => {
      for (const { foot, finding: one } of findings) {
        if (one.what !== what) continue
        if (one.grade === 0) speak(foot, 'gone', one.place === 'whole foot' ? every : one.place)
        else if (counts(one.place) && one.grade >= from) {
          const key = `${foot}|${one.place}`
          if (when === undefined || when(one, record)) {
            found.set(key, one.grade)
            speak(foot, factsOf(one), one.place)
          } else speak(foot, one.grade < (found.get(key) ?? 0) ? 'lower' : 'same', one.place)
        } else speak(foot, 'lower', one.place)
      }
    }
  }

/** Whether the words of a finding say something, clause by clause: `part thickness, does not move` does not say "moves". */
export function wordsSay(words: string | null, what: RegExp): boolean {
  return (words ?? '')
    .split(/[,;.]|\b(?:and|but)\b/)
    .some((clause) => what.test(clause) && !/\b(?:no|not|never|without|none|nothing)\b|n't\b/i.test(clause))
}

const cracked = /full[- ]?thickness|through|\bble(?:e?d)|\bmov(?:e|es|ed|ing|ement)\b/i
const deepInBulbs = /\bdeep|\bbulbs?\b/i
const sore = /\btender|\bsore|\bflinch/i

const throughCrack = ({ words }: Finding): boolean => wordsSay(words, cracked)
const deepSplit = ({ place, grade, words }: Finding): boolean =>
  place === 'heel bulbs' || grade === 3 || wordsSay(words, deepInBulbs)

/** Blood that comes from the sole or the toe comes from where the bone lies nearest. */
const soleOrToe = (place: string): boolean =>
  place === 'sole' || place === 'whole foot' || place === 'toe' || place.endsWith(' toe')

const inGround = (place: string): boolean => groundSide.has(place)

/** A nail, or its hole, in the white line of a foot that is tender. */
const tenderNail = (record: CareRecord): Look<FindingFacts> | null => {
  const { names, known } = record
  if (!names.has('nail in white line') && !names.has('nail hole')) return null
  return ({ visit }, speak) => {
    for (const foot of new Set(visit.findings.map((one) => one.foot))) {
      const nails = [...known.of[foot].findings.values()]
        .map((said) => said.finding)
        .filter(
          ({ what, place }) =>
            what === 'nail in white line' || (what === 'nail hole' && place === 'white line'),
        )
      const tender = gravest(known.of[foot], 'tenderness') !== null || (known.of[foot].testers ?? 0) > 0
      for (const nail of nails) {
        const matter = `${nail.what}, ${nail.place}`
        if (nail.grade === 0) speak(foot, 'gone', matter)
        else if (tender || wordsSay(nail.words, sore)) speak(foot, factsOf(nail), matter)
        else speak(foot, 'lower', matter)
      }
    }
  }
}

/** Heat together with something else that is known of the foot. */
const heatWith =
  <F extends FindingFacts>(
    spokenOf: 'lameness' | 'digitalPulse',
    found: (heat: FindingFacts, word: LastWord) => F | null,
    otherIsGone: (word: LastWord) => boolean,
  ) =>
  (record: CareRecord): Look<F> | null => {
    if (!record.names.has('heat')) return null
    return ({ visit }, speak) => {
      for (const foot of feet) {
        const spoken =
          visit.comfort[spokenOf][foot] !== undefined ||
          visit.findings.some((one) => one.foot === foot && one.what === 'heat')
        if (!spoken) continue
        const word = record.known.of[foot]
        const heat = gravest(word, 'heat')
        const facts = heat === null ? null : found(factsOf(heat), word)
        if (facts !== null) speak(foot, facts)
        // Either half of it gone is the all-clear; silence on one is not.
        else speak(foot, heat === null || otherIsGone(word) ? 'gone' : 'lower')
      }
    }
  }

/** Tenderness that is severe, or that goes with heat or a clear pulse. */
const tenderFoot = (
  record: CareRecord,
): Look<FindingFacts & { readonly with: 'heat' | 'pulse' | null }> | null => {
  if (!record.names.has('tenderness')) return null
  return ({ visit }, speak) => {
    for (const foot of feet) {
      const spoken =
        visit.comfort.digitalPulse[foot] !== undefined ||
        visit.findings.some((one) => one.foot === foot && (one.what === 'tenderness' || one.what === 'heat'))
      if (!spoken) continue
      const word = record.known.of[foot]
      const tender = gravest(word, 'tenderness')
      if (tender === null) {
        speak(foot, 'gone')
        continue
      }
      const beside =
        gravest(word, 'heat') !== null ? 'heat' : (word.pulse ?? 0) >= clearPulse ? ('pulse' as const) : null
      if (tender.grade === 3 || beside !== null) speak(foot, { ...factsOf(tender), with: beside })
      else speak(foot, 'lower')
    }
  }
}

/** A digital pulse that is clear, or more. */
export const clearPulse = 2

/** Findings whose grade has risen twice running, over three visits that spoke of them. */
const worsening = (): Look<FindingFacts & { readonly first: number; readonly middle: number }> => {
  const grades = new Map<string, readonly number[]>()
  return ({ findings }, speak) => {
    for (const { foot, finding: one } of findings) {
      const key = `${one.what}|${one.place}`
      const before = grades.get(foot + key) ?? []
      const [first, middle] = before.slice(-2)
      grades.set(foot + key, [...before.slice(-2), one.grade])
      const matter = `${one.what}, ${one.place}`
      if (first !== undefined && middle !== undefined && first < middle && middle < one.grade)
        speak(foot, { ...factsOf(one), first, middle }, matter)
      else if (middle !== undefined)
        speak(foot, one.grade >= middle ? 'same' : one.grade === 0 ? 'gone' : 'lower', matter)
    }
  }
}

/** Months for which a tetanus vaccination is taken to hold. Common practice, no source. */
const tetanusMonths = 24
const needsTetanus: ReadonlySet<string> = new Set(['puncture', 'coronet injury', 'fresh blood'])

const tetanus = (record: CareRecord): Look<FindingFacts & { readonly months: number }> | null => {
  const { names, horse, known } = record
  if (![...needsTetanus].some((what) => names.has(what))) return null
  return ({ visit }, speak) => {
    if (!visit.findings.some(({ what }) => needsTetanus.has(what))) return
    const until = horse.tetanus === null ? '' : monthsLater(horse.tetanus, tetanusMonths)
    const open = feet
      .flatMap((foot) => [...known.of[foot].findings.values()])
      .find(({ finding: { what, grade } }) => needsTetanus.has(what) && grade > 0)
    if (open === undefined || until >= visit.date) speak('horse', 'gone')
    else speak('horse', { ...factsOf(open.finding), months: tetanusMonths })
  }
}

const monthsLater = (date: string, months: number): string =>
  `${Number(date.slice(0, 4)) + months / 12}${date.slice(4)}`

export const findingSigns = [
  sign({ code: 'abscess', level: 'stop', over: finding('abscess') }),
  sign({ code: 'drainage', level: 'stop', over: finding('drainage') }),
  sign({ code: 'fresh-blood-sole-toe', level: 'stop', over: finding('fresh blood', { at: soleOrToe }) }),
  sign({
    code: 'fresh-blood-elsewhere',
    level: 'vet',
    over: finding('fresh blood', { at: (place) => !soleOrToe(place) }),
  }),
  sign({ code: 'puncture', level: 'stop', over: finding('puncture', { at: inGround }) }),
  sign({
    code: 'puncture-elsewhere',
    level: 'vet',
    over: finding('puncture', { at: (place) => !inGround(place) }),
  }),
  sign({ code: 'nail-in-white-line-tender', level: 'vet', over: tenderNail }),
  sign({
    code: 'heat-with-lameness',
    level: 'stop',
    family: 'heat',
    over: heatWith(
      'lameness',
      (heat, { lameness }) => (lameness === null || lameness < 1 ? null : { ...heat, lameness }),
      ({ lamenessGone }) => lamenessGone,
    ),
  }),
  sign({
    code: 'heat-with-pulse',
    level: 'stop',
    family: 'heat',
    over: heatWith(
      'digitalPulse',
      (heat, { pulse }) => (pulse === null || pulse < clearPulse ? null : { ...heat, pulse }),
      ({ pulse }) => pulse !== null && pulse < clearPulse,
    ),
  }),
  sign({ code: 'heat-severe', level: 'stop', family: 'heat', over: finding('heat', { from: 3 }) }),
  sign({ code: 'heat', level: 'vet', family: 'heat', over: finding('heat') }),
  sign({ code: 'coronet-depression', level: 'stop', over: finding('coronet depression') }),
  sign({ code: 'sole-prolapse', level: 'stop', over: finding('sole prolapse') }),
  sign({ code: 'canker', level: 'vet', over: finding('canker') }),
  sign({ code: 'keratoma', level: 'vet', over: finding('keratoma') }),
  sign({ code: 'proud-flesh', level: 'vet', over: finding('proud tissue') }),
  sign({ code: 'swelling', level: 'vet', over: finding('swelling') }),
  sign({ code: 'growth', level: 'vet', over: finding('growth') }),
  sign({ code: 'separation-severe', level: 'vet', over: finding('wall separation', { from: 3 }) }),
  sign({ code: 'white-line-severe', level: 'vet', over: finding('white line stretched', { from: 3 }) }),
  sign({ code: 'white-line-disease-severe', level: 'vet', over: finding('white-line disease', { from: 3 }) }),
  sign({ code: 'thrush-severe', level: 'vet', over: finding('thrush', { from: 3 }) }),
  sign({ code: 'sulcus-split-deep', level: 'vet', over: finding('sulcus split', { when: deepSplit }) }),
  sign({ code: 'bruise-severe', level: 'vet', over: finding('bruise', { from: 3 }) }),
  sign({
    code: 'crack-severe',
    level: 'vet',
    over: finding('crack', { from: 3, when: (one) => !throughCrack(one) }),
  }),
  sign({ code: 'crack-full-thickness', level: 'vet', over: finding('crack', { when: throughCrack }) }),
  sign({ code: 'coronet-injury-severe', level: 'vet', over: finding('coronet injury', { from: 3 }) }),
  sign({ code: 'tenderness', level: 'vet', over: tenderFoot }),
  sign({ code: 'finding-worsening', level: 'vet', over: worsening }),
  sign({ code: 'tetanus-not-covered', level: 'mind', over: tetanus }),
] as const
