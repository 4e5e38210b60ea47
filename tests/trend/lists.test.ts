/** Lists that are made only when they are asked for, and short cuts past what need not be worked out. */
import { describe, expect, it } from 'vitest'
import { addDays } from '../../src/hoof/dates.ts'
import { feet } from '../../src/hoof/feet.ts'
import { type MeasureId, measureIds, measures } from '../../src/hoof/measures.ts'
import { assess } from '../../src/trend/assess.ts'
import { notClosing } from '../../src/trend/closing.ts'
import { columnsOf, families, stages } from '../../src/trend/columns.ts'
import { lazily } from '../../src/trend/lazily.ts'
import { sideViewAt } from '../../src/trend/side-views.ts'
import { buildHorse, practice, type VisitSketch } from './build-horse.ts'
import { seeded } from './random.ts'

/** Visits with some readings left out, and scatter enough that some side views do not close. */
function visitsOf(seed: number, count: number): readonly VisitSketch[] {
  const random = seeded(seed)
  const sheet = () =>
    Object.fromEntries(
      measureIds
        .filter(() => random.even() < 0.9)
        .map((id: MeasureId) => {
          const { likely, sd } = measures[id]
          const reading = () => (likely[0] + likely[1]) / 2 + 3 * sd * random.normal()
          return [id, Object.fromEntries(feet.map((foot) => [foot, reading()]))]
        }),
    )
  return Array.from({ length: count }, (_, i) => ({
    date: addDays('2026-01-05', i * 35),
    before: sheet(),
    after: sheet(),
  }))
}

describe('lists made when asked for', () => {
  it('are made once', () => {
    let made = 0
    const list = lazily(() => {
      made++
      return [made]
    })
    expect(made).toBe(0)
    expect(list()).toBe(list())
    expect(made).toBe(1)
  })

  it('are to a reader what any other field is: listed, copied, written out, and the same each time', () => {
    const assessment = assess(buildHorse({ visits: visitsOf(1, 6) }), practice(), '2027-01-01')
    expect(Object.keys(assessment)).toContain('readings')
    expect(assessment.readings).toBe(assessment.readings)
    const [trend] = assessment.trends
    const [growth] = assessment.growth
    expect(trend?.points).toBe(trend?.points)
    expect(growth?.phases).toBe(growth?.phases)
    expect(growth?.trims).toBe(growth?.trims)
    expect({ ...growth }).toEqual(growth)
    expect(JSON.stringify(structuredClone(assessment))).toBe(JSON.stringify(assessment))
    expect(JSON.parse(JSON.stringify(assessment)).readings.length).toBe(assessment.readings.length)
  })
})

describe('notClosing', () => {
  it('finds every side view that does not close, and no other', () => {
    let found = 0
    for (let seed = 0; seed < 20; seed++) {
      const horse = buildHorse({ visits: visitsOf(seed, 8) })
      const columns = columnsOf(horse, horse.visits)
      const views = feet.flatMap((foot) =>
        families.flatMap((family) =>
          stages.flatMap((stage) =>
            horse.visits.flatMap((_, place) => {
              const view = sideViewAt(columns, family, stage, foot, place)
              return view?.closes === false ? [[foot, view.visit, stage, view.coronetAngle]] : []
            }),
          ),
        ),
      )
      const checks = notClosing(columns)
      expect(
        checks.map((one) =>
          one.kind === 'readings do not close'
            ? [one.foot, one.visit, one.facts.stage, one.facts.computed]
            : one,
        ),
      ).toEqual(views)
      found += views.length
    }
    expect(found).toBeGreaterThan(50)
  })
})
