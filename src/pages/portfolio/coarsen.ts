/**
 * How closely each case of a portfolio may be told, so that a profile is shared by as many cases as the portfolio allows
 * (k-anonymity by local recoding: all cases are parted again and again into groups that are large enough, each group is
 * told at the closest level that its members share).
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

/** A case with how it would be told of each trait, level by level, as one word each. */
interface Member extends ProfiledCase {
  readonly tellings: Readonly<Record<Trait, readonly string[]>>
}

type Group = readonly Member[]

/** What a level more costs the reader: age and kind decide what may be expected of a hoof, height and weight follow from kind. */
const worth: Readonly<Record<Trait, number>> = { age: 3, kind: 3, sex: 2, heightCm: 1, weightKg: 1 }

const eachTrait = <T>(of: (trait: Trait) => T): Readonly<Record<Trait, T>> => ({
  age: of('age'),
  kind: of('kind'),
  sex: of('sex'),
  heightCm: of('heightCm'),
  weightKg: of('weightKg'),
})

/** By id of the horse. The same cases give the same profiles, in whatever order they come. */
export function coarsen(cases: readonly ProfiledCase[]): ReadonlyMap<string, ToldCase> {
  // Where the whole portfolio is too small to hide in, each trait is told at the last level that says anything.
  const least = (trait: Trait) => (cases.length < casesWanted ? silent(trait) - 1 : 0)
  const told = parted(cases.map(memberOf)).flatMap((group) => {
    const shared = levelsOf(group)
    const levels = eachTrait((trait) => Math.max(shared[trait], least(trait)))
    return group.map(({ horse, profile }) => ({ horse, profile: toldAt(profile, levels) }))
  })
  const counts = new Map<string, number>()
  for (const { profile } of told) counts.set(keyOf(profile), (counts.get(keyOf(profile)) ?? 0) + 1)
  return new Map(
    told.map(({ horse, profile }) => [horse, { profile, alike: counts.get(keyOf(profile)) ?? 1 }]),
  )
}

const keyOf = (profile: ToldProfile): string => JSON.stringify(traits.map((trait) => profile[trait]))

function memberOf(one: ProfiledCase): Member {
  const closest = eachTrait(() => 0)
  const tellings = eachTrait((trait) =>
    Array.from({ length: silent(trait) }, (_, level) =>
      JSON.stringify(toldAt(one.profile, { ...closest, [trait]: level })[trait]),
    ),
  )
  return { ...one, tellings }
}

/** The group in parts, each large enough, by the partings that leave the most to be told. */
function parted(group: Group): readonly Group[] {
  let best: { readonly parts: readonly [Group, Group]; readonly cost: number } | null = null
  for (const parts of partings(group)) {
    const cost = costOf(parts[0]) + costOf(parts[1])
    if (best === null || cost < best.cost) best = { parts, cost }
  }
  return best === null ? [group] : best.parts.flatMap(parted)
}

/** Those told of a trait in one way at a level, and the rest: by trait, level and telling, so in one order whatever that of cases. */
function* partings(group: Group): Generator<readonly [Group, Group]> {
  if (group.length < 2 * casesWanted) return
  for (const trait of traits) {
    for (let level = 0; level < silent(trait); level++) {
      const tellings = new Set(group.map((member) => member.tellings[trait][level]))
      for (const telling of [...tellings].sort()) {
        const part = group.filter((member) => member.tellings[trait][level] === telling)
        const rest = group.filter((member) => member.tellings[trait][level] !== telling)
        if (part.length >= casesWanted && rest.length >= casesWanted) yield [part, rest]
      }
    }
  }
}

/** The closest level of each trait at which all members are told alike. */
const levelsOf = (group: Group): Levels =>
  eachTrait((trait) => {
    const [first] = group
    let level = 0
    const isShared = () =>
      group.every((member) => member.tellings[trait][level] === first?.tellings[trait][level])
    while (level < silent(trait) && !isShared()) level++
    return level
  })

function costOf(group: Group): number {
  const levels = levelsOf(group)
  return group.length * traits.reduce((sum, trait) => sum + (worth[trait] * levels[trait]) / silent(trait), 0)
}
