import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { casesWanted, coarsen, type ProfiledCase } from '../../src/pages/portfolio/coarsen.ts'
import { patientOf } from '../../src/pages/portfolio/patient.ts'
import {
  type FineProfile,
  type Levels,
  silent,
  type ToldProfile,
  toldAt,
  traits,
} from '../../src/pages/portfolio/profile.ts'
import { english } from '../english.ts'

const orNothing = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 8 })
const profile: fc.Arbitrary<FineProfile> = fc.record({
  age: orNothing(fc.integer({ min: 0, max: 35 })),
  kind: orNothing(fc.constantFrom('pony', 'cob', 'horse', 'draught', 'donkey', 'mule')),
  sex: orNothing(fc.constantFrom('mare', 'gelding', 'stallion')),
  heightCm: orNothing(fc.integer({ min: 90, max: 185 })),
  weightKg: orNothing(fc.integer({ min: 120, max: 900 })),
})
const portfolioOf = (n: number): fc.Arbitrary<readonly ProfiledCase[]> =>
  fc
    .array(profile, { minLength: n, maxLength: n })
    .map((profiles) => profiles.map((one, i) => ({ horse: `horse-${i}`, profile: one })))

const keyOf = (told: ToldProfile | undefined) => JSON.stringify(told)
const everyLevel = (trait: keyof FineProfile) =>
  Array.from({ length: silent(trait) + 1 }, (_, level) => level)
const closest: Levels = { age: 0, kind: 0, sex: 0, heightCm: 0, weightKg: 0 }

/** The level at which a trait of a case is told, the closest of those that tell the same. */
const levelOf = (of: FineProfile, told: ToldProfile, trait: keyof FineProfile): number =>
  everyLevel(trait).find(
    (level) =>
      JSON.stringify(toldAt(of, { ...closest, [trait]: level })[trait]) === JSON.stringify(told[trait]),
  ) ?? -1

describe.each([1, 4, 5, 12, 50])('a portfolio of %i cases', (n) => {
  it('tells each case as as many others are told, and counts them rightly', () => {
    fc.assert(
      fc.property(portfolioOf(n), (cases) => {
        const told = coarsen(cases)
        expect(told.size).toBe(n)
        for (const { horse } of cases) {
          const one = told.get(horse)
          const same = cases.filter((other) => keyOf(told.get(other.horse)?.profile) === keyOf(one?.profile))
          expect(one?.alike).toBe(same.length)
          expect(same.length).toBeGreaterThanOrEqual(Math.min(casesWanted, n))
        }
      }),
      { numRuns: 60 },
    )
  })

  it('tells nothing that is not so, and all who are told alike at the same levels', () => {
    fc.assert(
      fc.property(portfolioOf(n), (cases) => {
        const told = coarsen(cases)
        for (const { horse, profile: fine } of cases) {
          const shown = told.get(horse)?.profile
          if (shown === undefined) throw new Error(`${horse} is not told`)
          for (const trait of traits) expect(levelOf(fine, shown, trait)).toBeGreaterThanOrEqual(0)
        }
      }),
      { numRuns: 40 },
    )
  })

  it('gives the same whatever the order of cases', () => {
    fc.assert(
      fc.property(
        portfolioOf(n).chain((cases) =>
          fc.tuple(fc.constant(cases), fc.shuffledSubarray([...cases], { minLength: n, maxLength: n })),
        ),
        ([cases, shuffled]) => {
          const [a, b] = [coarsen(cases), coarsen(shuffled)]
          for (const { horse } of cases) expect(b.get(horse)).toEqual(a.get(horse))
        },
      ),
      { numRuns: 40 },
    )
  })
})

it('a coarser level never sets two horses apart that a closer one tells alike', () => {
  fc.assert(
    fc.property(profile, profile, (a, b) => {
      for (const trait of traits) {
        const alike = everyLevel(trait).map((level) => {
          const at = { ...closest, [trait]: level }
          return JSON.stringify(toldAt(a, at)[trait]) === JSON.stringify(toldAt(b, at)[trait])
        })
        expect(alike).toEqual([...alike].sort((x, y) => Number(x) - Number(y)))
        expect(alike.at(-1)).toBe(true)
      }
    }),
  )
})

describe('known portfolios', () => {
  const mare: FineProfile = { age: 11, kind: 'cob', sex: 'mare', heightCm: 147.3, weightKg: 455 }
  const named = (profiles: readonly FineProfile[]) =>
    profiles.map((one, i) => ({ horse: `h${i}`, profile: one }))
  const shown = (profiles: readonly FineProfile[]) =>
    [...coarsen(named(profiles)).values()].map((told) => patientOf(told, english.portfolio).facts)

  it('tells five that are alike in the closest bands, and never an exact figure', () => {
    expect(shown([mare, { ...mare, age: 13 }, mare, { ...mare, weightKg: 499 }, mare])[0]).toEqual([
      { name: 'Kind', value: 'cob' },
      { name: 'Sex', value: 'mare' },
      { name: 'Age at the first visit', value: '9 to 13 years' },
      { name: 'Height', value: '140 to 149 cm' },
      { name: 'Weight', value: '450 to 499 kg' },
    ])
  })

  it('coarsens only what differs', () => {
    const four = [mare, mare, mare, mare]
    const [first] = shown([...four, { ...mare, age: 6, sex: 'gelding' as const }])
    expect(first).toEqual([
      { name: 'Kind', value: 'cob' },
      { name: 'Age at the first visit', value: '4 to 13 years' },
      { name: 'Height', value: '140 to 149 cm' },
      { name: 'Weight', value: '450 to 499 kg' },
      { name: 'Not told', value: 'sex' },
    ])
  })

  it('lets one odd horse cost only the few that it is put with', () => {
    const foal: FineProfile = { age: 0, kind: 'donkey', sex: 'stallion', heightCm: 95, weightKg: 60 }
    const gelding: FineProfile = { age: 20, kind: 'horse', sex: 'gelding', heightCm: 165, weightKg: 610 }
    const told = shown([
      ...Array.from({ length: 6 }, () => mare),
      ...Array.from({ length: 5 }, () => gelding),
      foal,
    ])
    expect(told.filter((facts) => facts.some(({ name }) => name === 'Not told')).length).toBe(6)
    expect(told.filter((facts) => facts.length === 5).length).toBe(6)
  })

  it('tells one alone in the widest bands', () => {
    expect(shown([mare])[0]).toEqual([
      { name: 'Kind', value: 'horse or pony' },
      { name: 'Sex', value: 'mare' },
      { name: 'Age at the first visit', value: '4 years or more' },
      { name: 'Height', value: 'under 150 cm' },
      { name: 'Weight', value: '400 kg or more' },
    ])
  })
})
