/**
 * Who the patient is, by what a neighbour would know it: age, kind, sex, height, weight. Each can be told at several
 * levels, from bands that are close enough to teach by to nothing at all.
 */
import { ageOn } from '../shared/age.ts'
import type { AgeBand, KindClass, SexClass } from '../words/keys.ts'
import type { CaseContext } from './context.ts'
import { type Kind, kindNamed, type Sex, sexNamed } from './kind.ts'

/** As the record has it, with nothing coarsened but age to whole years. It stays with the program. */
export interface FineProfile {
  readonly age: number | null
  readonly kind: Kind | null
  readonly sex: Sex | null
  readonly heightCm: number | null
  readonly weightKg: number | null
}

/** Whole numbers; null where there is no limit. */
export interface Band {
  readonly low: number | null
  readonly high: number | null
}

/** `null`: not recorded. `'not told'`: it would set the horse apart. */
type Told<T> = T | null | 'not told'

export interface ToldProfile {
  readonly age: Told<AgeBand>
  readonly kind: Told<KindClass>
  readonly sex: Told<SexClass>
  readonly heightCm: Told<Band>
  readonly weightKg: Told<Band>
}

export type Trait = keyof FineProfile

/** Level of each trait: 0 is the closest. */
export type Levels = Readonly<Record<Trait, number>>

export function fineProfile({ horse, first }: CaseContext): FineProfile {
  return {
    age: horse.born === null ? null : ageOn(horse.born, first.date),
    kind: kindNamed(horse.kind, horse.heightCm),
    sex: sexNamed(horse.sex),
    heightCm: horse.heightCm,
    weightKg: horse.weightKg ?? first.bodyState.weightKg,
  }
}

/** How a value of a trait is told, from the closest on; nothing at all comes after the last. */
type Telling<V, T> = readonly ((value: V) => T)[]

type Tellings = {
  readonly [K in Trait]: Telling<NonNullable<FineProfile[K]>, Exclude<ToldProfile[K], null | 'not told'>>
}

/** Each level holds whole groups of the one before, so that a coarser level never sets two apart that a closer one does not. */
const tellings: Tellings = {
  age: [
    (years) =>
      years < 1
        ? '0'
        : years < 4
          ? '1-3'
          : years < 9
            ? '4-8'
            : years < 14
              ? '9-13'
              : years < 19
                ? '14-18'
                : '19-',
    (years) => (years < 4 ? '0-3' : years < 14 ? '4-13' : '14-'),
    (years) => (years < 4 ? '0-3' : '4-'),
  ],
  kind: [
    (kind) => kind,
    (kind) => pairs[kind],
    (kind) => (pairs[kind] === 'donkey or mule' ? 'donkey or mule' : 'horse or pony'),
  ],
  sex: [(sex) => sex, (sex) => (sex === 'mare' ? 'mare' : 'male')],
  // 150 cm is an edge at every level.
  heightCm: [banded(10, 0), banded(20, 10), (cm) => halved(cm, 150)],
  weightKg: [banded(50, 0), banded(100, 0), (kg) => halved(kg, 400)],
}

const pairs = {
  pony: 'pony or cob',
  cob: 'pony or cob',
  horse: 'horse or draught',
  draught: 'horse or draught',
  donkey: 'donkey or mule',
  mule: 'donkey or mule',
} as const satisfies Record<Kind, KindClass>

function banded(step: number, from: number): (value: number) => Band {
  return (value) => {
    const low = Math.floor((Math.round(value) - from) / step) * step + from
    return { low, high: low + step - 1 }
  }
}

const halved = (value: number, at: number): Band =>
  Math.round(value) < at ? { low: null, high: at - 1 } : { low: at, high: null }

export const traits = Object.keys(tellings) as readonly Trait[]

/** The level of a trait at which nothing is told. */
export const silent = (trait: Trait): number => tellings[trait].length

/** One trait of a horse at a level. What is not recorded is known to be so at the closest level only. */
function told<K extends Trait>(trait: K, profile: FineProfile, level: number): ToldProfile[K] {
  const value = profile[trait]
  if (value === null) return (level === 0 ? null : 'not told') as ToldProfile[K]
  const tell = tellings[trait][level] as ((value: unknown) => ToldProfile[K]) | undefined
  return tell === undefined ? ('not told' as ToldProfile[K]) : tell(value)
}

export const toldAt = (profile: FineProfile, levels: Levels): ToldProfile => ({
  age: told('age', profile, levels.age),
  kind: told('kind', profile, levels.kind),
  sex: told('sex', profile, levels.sex),
  heightCm: told('heightCm', profile, levels.heightCm),
  weightKg: told('weightKg', profile, levels.weightKg),
})
