import { describe, expect, it } from 'vitest'
import { sharedTimes, type TimedCase } from '../../src/pages/portfolio/visit-times.ts'

const one = (horse: string, owner: string | null, ...times: readonly number[]): TimedCase => ({
  horse,
  owner,
  times,
})

describe('times that tell who stands together', () => {
  it('are those of one owner that few cases show, wherever in the case they begin', () => {
    const cases = [
      one('ash', 'abel', 0, 5, 11, 18, 22),
      one('bay', 'abel', 0, 6, 11, 17, 24, 28),
      one('fern', 'ines', 0, 5, 10, 15, 20),
    ]
    const found = [{ horse: 'ash', others: ['bay'], intervals: [5, 6, 7, 4], cases: 2 }]
    expect(sharedTimes(cases)).toEqual(found)
    expect(sharedTimes([...cases].reverse())).toEqual(found)
  })

  it('are told once for a yard', () => {
    const cases = ['ash', 'bay', 'elm'].map((horse) => one(horse, 'abel', 0, 5, 11, 18))
    expect(sharedTimes(cases)).toEqual([
      { horse: 'ash', others: ['bay', 'elm'], intervals: [5, 6, 7], cases: 3 },
    ])
  })

  it.each<[string, readonly TimedCase[]]>([
    ['of two owners', [one('ash', 'abel', 0, 5, 11, 18), one('bay', 'ines', 0, 5, 11, 18)]],
    ['of no owner', [one('ash', null, 0, 5, 11, 18), one('bay', null, 0, 5, 11, 18)]],
    ['too short to mean anything', [one('ash', 'abel', 0, 5, 11), one('bay', 'abel', 0, 5, 11)]],
    [
      'that five cases show',
      [
        one('ash', 'abel', 0, 5, 10, 15),
        one('bay', 'abel', 0, 5, 10, 15),
        ...['c', 'd', 'e'].map((horse) => one(horse, horse, 0, 4, 9, 14, 19)),
      ],
    ],
  ])('are not those %s', (_, cases) => {
    expect(sharedTimes(cases)).toEqual([])
  })
})
