/**
 * How closely each case of a portfolio may be told, so that a profile is shared by as many cases as the portfolio allows
 * (k-anonymity by local recoding: cases are put together until no group is too small, each group is told at the closest
 * level that its members share).
 */
import {
  type FineProfile,
  type Levels,
  silent,
  type ToldProfile,
  type Trait,
  toldAt,
  traits,
} from './profile.ts'

/** Cases that should share a profile, where the portfolio has as many. */
export const casesWanted = 5

export interface ProfiledCase {
  /** Id of the horse. */
  readonly horse: string
  readonly profile: FineProfile
}

export interface ToldCase {
  readonly profile: ToldProfile
  /** Cases that are told alike, this one among them. */
  readonly alike: number
}

interface Group {
  readonly profiles: readonly FineProfile[]
  /** How the first of its members would be told of each trait, level by level. */
  readonly tellings: Tellings
  /** The closest at which its members are told alike. */
  readonly levels: Levels
  /** Groups in one order, whatever the order of cases. */
  readonly key: string
}

type Tellings = Readonly<Record<Trait, readonly string[]>>

/** What a level more costs the reader: age and kind decide what may be expected of a hoof, height and weight follow from kind. */
const worth: Readonly<Record<Trait, number>> = { age: 3, kind: 3, sex: 2, heightCm: 1, weightKg: 1 }

/** By id of the horse. The same cases give the same profiles, in whatever order they come. */
export function coarsen(cases: readonly ProfiledCase[]): ReadonlyMap<string, ToldCase> {
  const groups = new Set(identical(cases))
  const [first] = groups
  if (first === undefined) return new Map()
  for (;;) {
    const small = chosen(groups, (group) =>
      group.profiles.length < casesWanted ? group.profiles.length : null,
    )
    if (small === null || groups.size === 1) break
    groups.delete(small)
    const partner = chosen(groups, (group) => costOf(merged(small, group)) - costOf(group)) ?? small
    groups.delete(partner)
    groups.add(merged(small, partner))
  }
  return tellAll(cases, [...groups])
}

function identical(cases: readonly ProfiledCase[]): Group[] {
  const byKey = new Map<string, FineProfile[]>()
  for (const { profile } of cases) {
    const key = keyOf(toldAt(profile, closest))
    byKey.set(key, [...(byKey.get(key) ?? []), profile])
  }
  return [...byKey].map(([key, profiles]) => ({
    profiles,
    tellings: tellingsOf(profiles[0]),
    levels: closest,
    key,
  }))
}

const closest: Levels = { age: 0, kind: 0, sex: 0, heightCm: 0, weightKg: 0 }

function tellingsOf(profile: FineProfile | undefined): Tellings {
  const of = (trait: Trait) =>
    profile === undefined
      ? []
      : Array.from({ length: silent(trait) }, (_, level) =>
          JSON.stringify(toldAt(profile, { ...closest, [trait]: level })[trait]),
        )
  return {
    age: of('age'),
    kind: of('kind'),
    sex: of('sex'),
    heightCm: of('heightCm'),
    weightKg: of('weightKg'),
  }
}

const keyOf = (profile: ToldProfile): string => JSON.stringify(traits.map((trait) => profile[trait]))

/** The group of the least weight, the first by key of several; null where none has any. */
function chosen(groups: Iterable<Group>, weightOf: (group: Group) => number | null): Group | null {
  let best: { readonly group: Group; readonly weight: number } | null = null
  for (const group of groups) {
    const weight = weightOf(group)
    if (weight === null) continue
    const isBetter =
      best === null || weight < best.weight || (weight === best.weight && group.key < best.group.key)
    if (isBetter) best = { group, weight }
  }
  return best?.group ?? null
}

function merged(a: Group, b: Group): Group {
  return {
    profiles: [...a.profiles, ...b.profiles],
    tellings: a.tellings,
    levels: levelsShared(a, b),
    key: [a.key, b.key].sort()[0] ?? a.key,
  }
}

/** The closest level of each trait at which the members of both are told alike. */
function levelsShared(a: Group, b: Group): Levels {
  const level = (trait: Trait): number => {
    let at = Math.max(a.levels[trait], b.levels[trait])
    while (at < silent(trait) && a.tellings[trait][at] !== b.tellings[trait][at]) at++
    return at
  }
  return {
    age: level('age'),
    kind: level('kind'),
    sex: level('sex'),
    heightCm: level('heightCm'),
    weightKg: level('weightKg'),
  }
}

const costOf = ({ profiles, levels }: Group): number =>
  profiles.length * traits.reduce((sum, trait) => sum + (worth[trait] * levels[trait]) / silent(trait), 0)

function tellAll(cases: readonly ProfiledCase[], groups: readonly Group[]): ReadonlyMap<string, ToldCase> {
  const levelsOf = new Map(
    groups.flatMap(({ profiles, levels }) => profiles.map((profile) => [profile, levels])),
  )
  const told = cases.map(({ horse, profile }) => {
    const levels = levelsOf.get(profile) ?? closest
    return { horse, profile: toldAt(profile, cases.length < casesWanted ? atLeastCoarse(levels) : levels) }
  })
  const counts = new Map<string, number>()
  for (const { profile } of told) counts.set(keyOf(profile), (counts.get(keyOf(profile)) ?? 0) + 1)
  return new Map(
    told.map(({ horse, profile }) => [horse, { profile, alike: counts.get(keyOf(profile)) ?? 1 }]),
  )
}

/** Where the whole portfolio is too small to hide in, each trait is told at the last level that says anything. */
const atLeastCoarse = (levels: Levels): Levels => ({
  age: Math.max(levels.age, silent('age') - 1),
  kind: Math.max(levels.kind, silent('kind') - 1),
  sex: Math.max(levels.sex, silent('sex') - 1),
  heightCm: Math.max(levels.heightCm, silent('heightCm') - 1),
  weightKg: Math.max(levels.weightKg, silent('weightKg') - 1),
})
