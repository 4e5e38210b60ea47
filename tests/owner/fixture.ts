/** One invented horse and what the engine would say of it, by hand, for tests of the pages that go out. */
import { noBodyState, noComfort } from '../../src/casebook/comfort.ts'
import type { Finding, Horse, Practice, Reading, Visit } from '../../src/casebook/model.ts'
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

export const dates = ['2026-01-12', '2026-02-16', '2026-03-23', '2026-04-27'] as const

export const practice: Practice = {
  name: 'Sandpiper Hoof Care',
  units: 'mm',
  language: 'en',
  trimCycleDays: 35,
  feetOrder: ['LF', 'RF', 'LH', 'RH'],
  owners: [
    { id: 'kestrel', name: 'Ada Kestrel', language: null },
    { id: 'fenwick', name: "Orla O'Fenwick", language: null },
  ],
  people: [],
  localRules: 'Here a vet must be told of any lameness.',
  contacts: { practice: null, vet: { name: null, phone: null } },
  portfolio: { time: 'weeks', hidesPractice: false, holdBackDays: 0 },
  terms: { 'moon ring': 'a ring that goes all the way round' },
  body: 'Private to the practice.',
}

const finding = (
  foot: Foot,
  what: string,
  place: string,
  grade: Finding['grade'],
  words: string | null = null,
): Finding => ({
  foot,
  what,
  place,
  grade,
  words,
})

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

export function visit(index: number, more: Partial<Visit> = {}): Visit {
  const date = dates[index] ?? '2026-06-01'
  return {
    id: date,
    date,
    file: `zoe/${date}.md`,
    draft: false,
    by: null,
    footing: 'soft',
    readings: [] as Reading[],
    findings: [],
    growOut: [],
    comfort: noComfort,
    bodyState: noBodyState,
    stance: {},
    cleared: { feet: {}, all: null },
    photos: [],
    care: [],
    nextVisit: null,
    body: { own: 'PRIVATE-NOTE', forOwner: null, forTeaching: null },
    ...more,
  }
}

const photo = (file: string, stage: 'before' | 'after') => ({
  file,
  foot: 'LF' as const,
  view: 'lateral' as const,
  stage,
  caption: 'PRIVATE-CAPTION',
  landmarks: null,
})

export const zoe: Horse = {
  id: 'zoe',
  name: 'Zoë',
  owner: 'kestrel',
  ownerSince: null,
  kind: 'Connemara cross',
  sex: 'mare',
  born: '2014-05-02',
  heightCm: 147.3,
  weightKg: 455,
  started: '2026-01-12',
  history: ['PRIVATE-HISTORY'],
  tetanus: null,
  vet: { involved: true, diagnosis: 'PRIVATE-DIAGNOSIS', name: null, phone: null, date: null, feet: [] },
  consent: { ownerSite: true, portfolio: true, photos: true, given: '2026-01-12' },
  alias: 'Bramble',
  privateWords: ['Thistledown Yard'],
  targets: {},
  problems: [],
  trimLimits: { sole: {}, mostPerTrim: null },
  visits: [
    visit(0, {
      findings: [
        finding('LF', 'flare', 'medial quarter', 2, 'PRIVATE-REMARK'),
        finding('LF', 'thrush', 'central sulcus', 3),
        finding('RF', 'crack', 'toe', 1),
        finding('LH', 'moon ring', 'whole foot', 1),
      ],
      photos: [photo('photos/IMG_4711.jpg', 'before')],
      comfort: {
        lameness: { LF: 1 },
        lamenessBy: 'vet',
        obel: null,
        landing: { LF: 'toe', RF: 'flat' },
        digitalPulse: { LF: 1 },
        surfaces: { sand: 'easy' },
        hoofTesters: {},
        painkillers: null,
        onset: null,
      },
      body: {
        own: 'PRIVATE-NOTE',
        forOwner: null,
        forTeaching: 'Zoë came to Thistledown Yard on 2026-01-12. Long toes.',
      },
    }),
    visit(1, {
      findings: [finding('LF', 'thrush', 'central sulcus', 2), finding('LF', 'flare', 'medial quarter', 2)],
    }),
    visit(2, {
      findings: [finding('LF', 'thrush', 'central sulcus', 1)],
      body: { own: 'PRIVATE-NOTE', forOwner: 'The frog is **much** better.', forTeaching: null },
    }),
    visit(3, {
      findings: [
        finding('LF', 'flare', 'medial quarter', 1),
        finding('LF', 'thrush', 'central sulcus', 0),
        finding('RF', 'crack', 'toe', 2),
        finding('RH', 'chip', 'toe', 1),
      ],
      photos: [photo('photos/IMG_4899.jpg', 'after')],
      care: ['Pick out both front feet every day', 'Walk on firm ground for 20 minutes'],
      body: {
        own: 'PRIVATE-NOTE',
        forOwner: 'A good visit.',
        forTeaching:
          "J. was wrong. Zoë's flare went first; A.K. soaked the frog.\n\n### Owner's view\n\nAda Kestrel saw a willing mare by 27 April.",
      },
    }),
  ],
  body: { own: 'PRIVATE-NOTE', forOwner: 'She likes company.', forTeaching: null },
  file: 'zoe/horse.md',
}

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
