/** What the engine would say of the invented horse, by hand, and all that her pages are made from. */
import { daysBetween } from '../../src/hoof/dates.ts'
import type { Foot } from '../../src/hoof/feet.ts'
import type { AnyMeasureId } from '../../src/hoof/measures.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import type {
  Assessment,
  Caution,
  CautionCode,
  FactsOf,
  Position,
  Trend,
  Verdict,
} from '../../src/trend/assessment.ts'
import { untaughtPractice } from '../../src/trend/model/practice.ts'
import { formatIn } from '../english.ts'
import { dates, practice, zoe } from './zoe.ts'

export const caution = <Code extends CautionCode>(
  code: Code,
  level: Caution['level'],
  foot: Foot,
  at: number,
  facts: FactsOf<Code>,
  standing: boolean,
): Caution =>
  ({
    code,
    level,
    family: null,
    foot,
    feet: [foot],
    since: dates[at],
    date: dates[at],
    visit: dates[at],
    facts,
    standing,
    isLower: false,
    silentVisits: 0,
    holdsPlan: level === 'stop',
    seen: [{ visit: dates[at], date: dates[at], facts }],
  }) as unknown as Caution

export interface TrendGiven {
  readonly foot?: Foot
  readonly measure?: AnyMeasureId
  readonly values?: readonly number[]
  readonly verdict?: Verdict
  readonly position?: Position
  readonly isClear?: boolean
  readonly more?: Partial<Trend>
}

const monthsIn = (days: number) => days / 30.4375

/** A trend with one reading a visit; what the engine would compute is given, not computed. Its line joins first and last. */
export function trend({
  foot = 'LF',
  measure = 'toe-length',
  values = [98, 94, 92, 89],
  verdict = 'improving',
  position = 'off target',
  isClear = true,
  more = {},
}: TrendGiven): Trend {
  const points = values.map((value, i) => {
    const date = dates[i] ?? dates[0]
    return { visit: date, date, stage: 'after' as const, value }
  })
  const [first] = points
  const last = points.at(-1)
  if (first === undefined || last === undefined) throw new Error('a trend has a reading')
  const change = last.value - first.value
  const days = daysBetween(first.date, last.date)
  const slope = days === 0 ? 0 : change / monthsIn(days)
  return {
    foot,
    measure,
    stage: 'after',
    family: 'gauge',
    n: values.length,
    points,
    leftOut: [],
    first,
    last,
    change,
    smallestRealChange: 6.3,
    matters: 5,
    fit:
      days === 0
        ? null
        : {
            from: first.date,
            level: first.value,
            levelVariance: 1,
            covariance: 0,
            slopeVariance: 0.3,
            slopePerMonth: slope,
            slopeLow: slope - 1.5,
            slopeHigh: slope + 1.5,
            sd: 2,
            freedom: 12,
            t: 2.179,
            levelAtLast: last.value,
            levelAtLastInterval: { low: last.value - 3, high: last.value + 3 },
          },
    target: null,
    targetFrom: null,
    verdict,
    position,
    chance: isClear ? 0.001 : 0.5,
    isClear,
    forecast: null,
    pace: null,
    ...more,
  }
}

const side = (index: number, stage: 'before' | 'after', toeAngle: number, toeLength: number) => ({
  visit: dates[index] ?? '',
  date: dates[index] ?? '',
  stage,
  toeAngle,
  toeLength,
  heelAngle: 38,
  heelLength: 34,
  bearingLength: 118,
  toeHairline: [
    toeLength * Math.cos((toeAngle * Math.PI) / 180),
    toeLength * Math.sin((toeAngle * Math.PI) / 180),
  ] as const,
  heelHairline: [118 + 34 * Math.cos((38 * Math.PI) / 180), 34 * Math.sin((38 * Math.PI) / 180)] as const,
  heelGround: [118, 0] as const,
  coronetAngle: 25,
  coronetMeasured: null,
  closesWithin: 4,
  closes: null,
  assumed: [],
})

export const assessment: Assessment = {
  id: 'zoe',
  name: 'Zoë',
  asOf: '2026-05-04',
  learned: untaughtPractice.learned,
  visits: dates,
  readings: dates.flatMap((date, i) =>
    (['before', 'after'] as const).flatMap((stage) => [
      {
        visit: date,
        date,
        stage,
        foot: 'LF' as const,
        measure: 'toe-length' as const,
        value: [98, 94, 92, 89][i] ?? 0,
        source: 'entered' as const,
        sd: 2,
      },
      {
        visit: date,
        date,
        stage,
        foot: 'LF' as const,
        measure: 'toe-angle' as const,
        value: [44, 46, 47, 49][i] ?? 0,
        source: 'entered' as const,
        sd: 1.4,
      },
      {
        visit: date,
        date,
        stage,
        foot: 'LF' as const,
        measure: 'heel-balance' as const,
        value: [6, 5, 3, 2][i] ?? 0,
        source: 'derived' as const,
        sd: 2.1,
      },
    ]),
  ),
  trends: [
    trend({
      more: {
        target: { low: null, high: 84 },
        targetFrom: 'practitioner',
        forecast: {
          kind: 'date',
          edge: 84,
          date: '2026-07-10',
          earliest: '2026-06-02',
          latest: '2026-09-20',
          isDue: false,
        },
      },
    }),
    trend({ measure: 'toe-angle', values: [44, 46, 47, 49], verdict: 'rising', position: 'no target' }),
    trend({
      measure: 'heel-balance',
      values: [6, 5, 3, 2],
      verdict: 'falling',
      position: 'on target',
      more: { target: { low: -2, high: 2 }, targetFrom: 'default' },
    }),
    trend({
      foot: 'RF',
      values: [90, 91, 90, 91],
      verdict: 'steady',
      position: 'no target',
      isClear: false,
    }),
    trend({
      foot: 'LH',
      values: [88, 85],
      verdict: 'too early to tell',
      position: 'no target',
      isClear: false,
    }),
    trend({
      foot: 'RH',
      values: [80, 84, 86, 90],
      verdict: 'worsening',
      more: { target: { low: null, high: 84 }, targetFrom: 'practitioner' },
    }),
  ],
  together: [],
  growth: [
    {
      foot: 'LF',
      measure: 'toe-length',
      phases: [],
      trims: dates.map((date, i) => ({ visit: date, date, step: -8 + i })),
      ratePerMonth: 7.8,
      low: 6.4,
      high: 9.2,
      days: 105,
      hidden: null,
    },
  ],
  pairs: [],
  growOut: [
    {
      foot: 'LF',
      feature: 'nail holes',
      place: 'toe',
      sightings: [],
      distance: 42,
      expectedNow: 44,
      wallLength: 89,
      ratePerMonth: 7.8,
      rateLow: 6,
      rateHigh: 9.6,
      rateFrom: 'measured',
      date: '2026-10-20',
      earliest: '2026-09-14',
      latest: '2027-01-05',
      state: 'growing down',
    },
  ],
  capsules: [],
  newGrowth: [],
  problems: [],
  plans: [
    {
      foot: 'LF',
      measure: 'heel-balance',
      side: 'medial',
      now: 6,
      limit: 2,
      excess: 4,
      perTrim: 1.5,
      perTrimFrom: 'flat sole',
      trims: 3,
      steps: [],
      readOn: '2026-05-05',
      shownOn: '2026-09-22',
      next: { grown: 8, grownFrom: 'measured', step: 1.5, total: 9.5, careFrom: null, leaves: 4.5 },
      kept: [],
      standing: 'on plan',
    },
  ],
  heldFeet: ['RH'],
  geometry: [
    {
      foot: 'LF',
      first: side(0, 'before', 44, 98),
      latest: side(3, 'after', 49, 89),
      perMillimetre: { toe: { angle: 0.4, length: -1 }, heel: { angle: -0.4, length: -1 } },
    },
  ],
  backtest: { made: 0, held: 0, open: 0, forecasts: [] },
  checks: [],
  cautions: [
    caution('thrush-severe', 'vet', 'LF', 0, { finding: 'thrush', place: 'frog', grade: 3 }, false),
    caution('drainage', 'stop', 'RH', 3, { finding: 'drainage', place: 'toe', grade: 2 }, true),
    caution('sole-flat', 'mind', 'LF', 3, { by: 'finding' }, true),
  ],
  nextVisit: { last: dates[3], due: '2026-06-01', from: 'visit', overdueDays: -28 },
}

const picture = (file: string) =>
  [
    file,
    {
      file,
      width: 1600,
      height: 1200,
      variants: [{ path: `${file}-800.jpg`, type: 'image/jpeg' as const, width: 800, height: 600 }],
    },
  ] as const

export const input: HorseInput = {
  horse: zoe,
  assessment,
  practice,
  pictures: new Map([picture('photos/IMG_4711.jpg'), picture('photos/IMG_4899.jpg')]),
  format: formatIn(practice.units),
}
