import { describe, expect, it } from 'vitest'
import { findingAliases, findingMeanings, places, wallOf } from '../../src/hoof/findings.ts'
import { publishedGrowth, wallBelief } from '../../src/hoof/growth.ts'
import { derivedIds, derivedMeasures, measureIds, measures } from '../../src/hoof/measures.ts'
import { scales } from '../../src/hoof/scales.ts'
import { sources } from '../../src/hoof/sources.ts'

describe('the vocabulary', () => {
  it('defines every measure once, with a range, a repeatability and what matters', () => {
    for (const id of measureIds) {
      const measure = measures[id]
      expect(measure.id).toBe(id)
      expect(measure.likely[0]).toBeLessThan(measure.likely[1])
      expect(measure.sd).toBeGreaterThan(0)
      expect(measure.matters).toBeGreaterThanOrEqual(measure.sd)
      expect(measure.how.length).toBeGreaterThan(10)
    }
  })

  it('builds derived measures from entered ones only', () => {
    for (const id of derivedIds) {
      for (const part of derivedMeasures[id].parts) expect(measureIds).toContain(part)
    }
  })

  it('names a source for whatever is called published, from memory or second hand', () => {
    const evidence = [
      ...measureIds.map((id) => measures[id].sdEvidence),
      ...derivedIds.flatMap((id) => derivedMeasures[id].evidence),
      ...Object.values(scales).map((scale) => scale.evidence),
      ...publishedGrowth.map((figure) => figure.evidence),
    ] as { mark: string; source?: keyof typeof sources }[]
    for (const { mark, source } of evidence) {
      if (mark === 'common practice') expect(source).toBeUndefined()
      else expect(sources[source ?? ('' as keyof typeof sources)]?.cite.length).toBeGreaterThan(5)
    }
  })

  it('gives places on the wall their stretch of wall, and others none', () => {
    const onWall = places.filter((place) => wallOf(place) !== null)
    expect(onWall).toEqual([
      'toe',
      'medial toe',
      'lateral toe',
      'medial quarter',
      'lateral quarter',
      'medial heel',
      'lateral heel',
    ])
    expect(wallOf('heel bulbs')).toBeNull()
  })

  it('sends every other word for a finding to a known one', () => {
    for (const [alias, name] of Object.entries(findingAliases)) {
      expect(findingMeanings[name]).toBeDefined()
      expect(Object.keys(findingMeanings)).not.toContain(alias)
    }
  })

  it('keeps the growth prior within the published range and gives foals their own', () => {
    const { mean, sd } = wallBelief(12)
    // Lungwitz & Adams 1897: 1/6 to 1/2 inch a month.
    expect(mean - 1.96 * sd).toBeCloseTo(25.4 / 6, 0)
    expect(mean + 1.96 * sd).toBeCloseTo(25.4 / 2, 0)
    expect(wallBelief(0.5).mean).toBeGreaterThan(mean)
    expect(wallBelief(null).mean).toBe(mean)
  })
})
