/**
 * Growth of horn. Lungwitz & Adams, A Text-Book of Horseshoeing, 1897: 1/6 to 1/2 inch a month, mean 1/3; the toe is
 * renewed in 11 to 13 months, the sides in 6 to 8, the heels in 3 to 5. Josseck 1995, Equine Vet J 27: 175-182: renewal
 * in 11 months. Kolstrung 2012, Med Weter 68: 426-429: 2.1 mm a week. Curtis 2014, Vet J: foals 145 days, mature
 * 270 to 365 days.
 */
import { describe, expect, it } from 'vitest'
import { daysPerMonth } from '../../src/hoof/dates.ts'
import { adultPrior, foalPrior, publishedGrowth, publishedRenewal } from '../../src/hoof/growth.ts'
import { assess } from '../../src/trend/assess.ts'
import { learnGrowOut } from '../../src/trend/model/grow-out-rates.ts'
import { z975 } from '../../src/trend/student.ts'
import { buildHorse, practice } from '../trend/build-horse.ts'

const literature = learnGrowOut([])
/** 95 % limits of a practice's mean rate before it has followed anything. */
const range = {
  low: literature.mean - z975 * literature.meanSd,
  high: literature.mean + z975 * literature.meanSd,
}

describe('the prior', () => {
  it("is Lungwitz's: a third of an inch a month, and 1/6 to 1/2 inch as the 95 % range of a practice's mean", () => {
    expect(literature.mean).toBeCloseTo(25.4 / 3, 1)
    expect(Math.abs(range.low - 25.4 / 6)).toBeLessThan(0.2)
    expect(Math.abs(range.high - 25.4 / 2)).toBeLessThan(0.2)
    expect(literature.mean).toBeCloseTo(adultPrior.mean, 9)
    expect(literature.meanSd).toBeCloseTo(adultPrior.sd, 9)
  })

  it('holds every published adult rate within its 95 % range', () => {
    for (const { who, perMonth, figure } of publishedGrowth) {
      if (who.startsWith('yearling')) continue
      expect(Math.max(...perMonth), figure).toBeLessThanOrEqual(range.high + 0.1)
      expect(Math.min(...perMonth), figure).toBeGreaterThanOrEqual(range.low - 0.2)
    }
  })

  it("for foals renews the foot of one in Curtis's 145 days", () => {
    // A foal's toe of 55 mm: our figure, common practice; the paper gives days, not lengths.
    expect((55 / foalPrior.mean) * daysPerMonth).toBeCloseTo(145, -1)
  })
})

describe('renewal of a whole capsule, from wall length and the prior', () => {
  // Wall lengths of a sound light horse, common practice: toe to heel as 3 to 2 to 1, the proportion that the book's
  // own months imply (12 : 7 : 4).
  const horse = buildHorse({
    visits: [
      {
        date: '2026-01-01',
        after: {
          'toe-length': 98,
          'quarter-medial': 58,
          'quarter-lateral': 60,
          'heel-medial': 33,
          'heel-lateral': 34,
        },
      },
    ],
  })
  const { capsules } = assess(horse, practice(), '2026-01-02')

  it.each(['toe', 'quarter', 'heel'] as const)('falls within the published months at the %s', (place) => {
    const capsule = capsules.find((one) => one.place === place)
    const months = (capsule?.renewalDays ?? Number.NaN) / daysPerMonth
    const lungwitz = publishedRenewal.find(
      ({ place: at, evidence }) => at === place && evidence.source === 'lungwitz',
    )
    expect(months).toBeGreaterThanOrEqual(lungwitz?.months[0] ?? Number.NaN)
    expect(months).toBeLessThanOrEqual(lungwitz?.months[1] ?? Number.NaN)
  })

  it('lies within Curtis for mature horses and within a month of Josseck at the toe', () => {
    const toe = capsules.find(({ place }) => place === 'toe')?.renewalDays ?? Number.NaN
    expect(toe).toBeGreaterThanOrEqual(270)
    expect(toe).toBeLessThanOrEqual(365)
    expect(Math.abs(toe / daysPerMonth - 11)).toBeLessThan(1)
  })
})

describe('a feature followed at a published rate', () => {
  it('is found to grow at that rate: Kolstrung, 13 mm in six weeks', () => {
    const growOut = [10, 23, 36, 49].map((distance) => [`LF ring, toe, ${distance}`])
    const dates = ['2026-01-01', '2026-02-12', '2026-03-26', '2026-05-07']
    const horse = buildHorse({ visits: dates.map((date, i) => ({ date, growOut: growOut[i] ?? [] })) })
    const [ring] = assess(horse, practice(), '2026-05-07').growOut
    const published = (13 / 42) * daysPerMonth
    expect(ring?.rateFrom).toBe('measured')
    expect(Math.abs((ring?.ratePerMonth ?? 0) - published)).toBeLessThan(0.15)
    expect(ring?.rateLow).toBeLessThan(published)
    expect(ring?.rateHigh).toBeGreaterThan(published)
  })
})
