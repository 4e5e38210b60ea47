/** Who the horse is: one line for a heading, and the facts in full. */
import type { Horse, Visit } from '../../../casebook/model.ts'
import { type Foot, feet, type PerFoot } from '../../../hoof/feet.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import { inchesPerHand, mmPerInch, toPounds } from '../../../hoof/units.ts'
import { isVet } from '../../../trend/cautions/record.ts'
import { ageOn } from '../../shared/age.ts'
import { capital } from '../../shared/format.ts'
import type { HorseCase } from './horse-case.ts'

export interface Fact {
  readonly name: string
  readonly text: string
}

/** `Cob, mare, 11 years old`. */
export function identityLine(of: HorseCase): string {
  const { horse } = of
  const parts = [horse.kind, horse.sex, ageText(of)].filter((part) => part !== null && part !== '')
  return capital(parts.join(', '))
}

const ageText = ({ horse, assessment, words }: HorseCase): string | null =>
  horse.born === null ? null : words.horse.age(ageOn(horse.born, assessment.asOf))

export function profileFacts(of: HorseCase): readonly Fact[] {
  const { horse, practice, format, words } = of
  const name = words.horse.facts
  const fact = (label: string, text: string | null): readonly Fact[] =>
    text === null || text === '' ? [] : [{ name: label, text }]
  return [
    ...fact(name.owner, ownerName(horse, practice.owners)),
    ...fact(name.kind, horse.kind),
    ...fact(name.sex, horse.sex),
    ...fact(name.born, horse.born === null ? null : bornText(of, horse.born)),
    ...fact(name.height, horse.heightCm === null ? null : heightText(of, horse.heightCm)),
    ...fact(name.weight, horse.weightKg === null ? null : weightText(of, horse.weightKg)),
    ...fact(name.started, horse.started === null ? null : format.date(horse.started)),
    ...fact(name.vet, vetText(of)),
    ...fact(name.targets, targetTexts(of).join('; ')),
    ...fact(name.limits, limitTexts(of).join('; ')),
    ...fact(name.alias, horse.alias),
    ...fact(name.consent, consentText(of)),
  ]
}

const bornText = ({ format }: HorseCase, born: string) => (born.length === 4 ? born : format.date(born))

function heightText({ words }: HorseCase, cm: number): string {
  const inches = (cm * 10) / mmPerInch
  const quarter = Math.round(inches * 4) / 4
  const hands = Math.floor(quarter / inchesPerHand)
  const rest = quarter - hands * inchesPerHand
  return words.horse.hands(
    `${hands}.${Math.floor(rest)}${fractions[(rest % 1) * 4] ?? ''}`,
    String(Math.round(cm)),
  )
}

const fractions = ['', ' 1/4', ' 1/2', ' 3/4']

export const weightText = ({ words }: HorseCase, kg: number): string =>
  words.horse.weight(String(Math.round(kg)), String(Math.round(toPounds(kg))))

export function vetText({ horse, visits, words }: HorseCase): string {
  if (!horse.vet.involved && !visits.some(hasVetsWord)) return words.horse.vetNot
  return horse.vet.diagnosis === null ? words.horse.vetInvolved : words.horse.vetSaid(horse.vet.diagnosis)
}

/** A visit at which a vet judged, or had cleared something. */
const hasVetsWord = ({ comfort, cleared }: Visit): boolean =>
  isVet(comfort.lamenessBy ?? '') || cleared.all !== null || Object.keys(cleared.feet).length > 0

function consentText({ horse, format, words }: HorseCase): string {
  const { consent } = horse
  const given = (['ownerSite', 'portfolio', 'photos'] as const).filter((key) => consent[key])
  if (given.length === 0) return words.horse.consentNone
  const what = given.map((key) => words.horse.consentOf[key]).join(', ')
  return consent.given === null ? what : words.horse.consentGiven(what, format.date(consent.given))
}

/** The same text for all four feet stands once, without their names. */
function perFoot<T>(of: HorseCase, values: PerFoot<T>, text: (value: T) => string): readonly string[] {
  const said = feet.flatMap((foot): readonly [Foot, string][] => {
    const value = values[foot]
    return value === undefined ? [] : [[foot, text(value)]]
  })
  const different = new Set(said.map(([, one]) => one))
  if (said.length === feet.length && different.size === 1) return [...different]
  // Feet of which the same is said stand together.
  return [...different].map((text) => {
    const about = said.filter(([, one]) => one === text).map(([foot]) => of.format.foot(foot))
    return of.words.horse.targetAt(of.format.list(about), text)
  })
}

/** The practitioner's targets, a text each. */
function targetTexts(of: HorseCase): readonly string[] {
  const { horse, format, words } = of
  const ids = Object.keys(horse.targets) as AnyMeasureId[]
  return ids.map((id) => {
    const bands = perFoot(of, horse.targets[id] ?? {}, (band) => format.band(id, band))
    return words.horse.targetOf(capital(format.name(id)), bands.join(', '))
  })
}

export const limitTexts = (of: HorseCase): readonly string[] => [
  ...perFoot(of, of.horse.trimLimits.sole, (one) => of.words.horse.sole[one]).map(capital),
  ...mostText(of),
]

/** All targets in one line, and all limits; no line where there are none. */
export const targetLine = (of: HorseCase): readonly string[] => {
  const all = targetTexts(of)
  return all.length === 0 ? [] : [of.format.words.base.remark(of.words.horse.facts.targets, all.join('; '))]
}
export const limitLine = (of: HorseCase): readonly string[] => {
  const all = limitTexts(of)
  return all.length === 0 ? [] : [of.format.words.base.remark(of.words.horse.facts.limits, all.join('; '))]
}

/** The most at one trim; a foot that waits for a vet has none. */
function mostText({ horse, format, words, assessment }: HorseCase): readonly string[] {
  const { mostPerTrim } = horse.trimLimits
  const free = feet.filter((foot) => !assessment.heldFeet.includes(foot))
  if (mostPerTrim === null || free.length === 0) return []
  const most = words.horse.mostPerTrim(format.amount(mostPerTrim))
  return free.length === feet.length
    ? [capital(most)]
    : [format.words.base.remark(capital(format.list(free.map(format.foot))), most)]
}

/** Which feet have no plan while a caution waits for the vet. */
export const heldText = ({ assessment, format, words }: HorseCase): readonly string[] =>
  assessment.heldFeet.length === 0
    ? []
    : [words.horse.plansHeld(capital(format.list(assessment.heldFeet.map(format.foot))))]

export const ownerName = (horse: Horse, owners: HorseCase['practice']['owners']): string | null =>
  owners.find(({ id }) => id === horse.owner)?.name ?? horse.owner
