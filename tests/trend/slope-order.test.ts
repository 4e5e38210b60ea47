import { describe, expect, it } from 'vitest'
import {
  type Ordering,
  orderingFor,
  setHeights,
  sortByHeight,
  turnedPairs,
} from '../../src/trend/slope-order.ts'
import { seeded } from './random.ts'

function fill(ordering: Ordering, days: readonly number[], values: readonly number[]): void {
  ordering.n = days.length
  ordering.days.set(days)
  ordering.values.set(values)
}

/** The order and the pairs that it turns round, looked at one by one. */
function naive({ n, heights }: Ordering) {
  const all = Array.from({ length: n }, (_, i) => i)
  const height = (i: number) => heights[i] ?? Number.NaN
  const order = all.toSorted((a, b) => height(a) - height(b) || a - b)
  const turned = all.flatMap((j) => all.slice(0, j).filter((i) => height(i) > height(j))).length
  return { order, turned }
}

const random = seeded(2024)
const kinds: Readonly<Record<string, (i: number) => number>> = {
  'fine readings': () => 50 + 1.5 * random.normal(),
  'whole millimetres': () => Math.round(50 + 1.5 * random.normal()),
  'one value': () => 50,
  'a straight line': (i) => 40 + 0.5 * i,
  'one wild reading': (i) => (i === 3 ? 5000 : 50 + random.normal()),
  'two levels': (i) => (i % 2 === 0 ? 10 : 90) + 0.01 * random.normal(),
}

describe('the order above a line', () => {
  it.each(Object.entries(kinds))(
    'is that of the heights, and its turned pairs are counted: %s',
    (_, value) => {
      // One ordering for all, as the engine uses it: what a longer series left behind does no harm.
      const ordering = orderingFor(200)
      for (const n of [200, 1, 2, 31, 32, 33, 64, 150]) {
        const days = Array.from({ length: n }, (_, i) => 35 * i)
        fill(
          ordering,
          days,
          Array.from(days, (_, i) => value(i)),
        )
        for (const slope of [0, 0.5 / 35, -0.02, 3]) {
          setHeights(ordering, slope)
          sortByHeight(ordering)
          const { order, turned } = naive(ordering)
          expect([...ordering.order.subarray(0, n)]).toEqual(order)
          expect(turnedPairs(ordering)).toBe(turned)
        }
      }
    },
  )

  it('turns round just the pairs whose slopes lie under that of the line', () => {
    const ordering = orderingFor(4)
    fill(ordering, [0, 10, 20, 30], [0, 30, 20, 60])
    // Slopes a day: 3, 1, 2, -1, 1.5, 4.
    for (const [slope, under] of [
      [-2, 0],
      [0.5, 1],
      [1.2, 2],
      [1.7, 3],
      [2.5, 4],
      [5, 6],
    ] as const) {
      setHeights(ordering, slope)
      sortByHeight(ordering)
      expect(turnedPairs(ordering)).toBe(under)
    }
  })
})
