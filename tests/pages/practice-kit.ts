/** A horse with numbers that can be worked out by hand, and the pages it makes. */
import type { Horse, Practice } from '../../src/casebook/model.ts'
import { presentHorse, summarise } from '../../src/pages/practice/index.ts'
import type { PageView } from '../../src/pages/shared/page.ts'
import { assess } from '../../src/trend/assess.ts'
import { formatIn } from '../english.ts'
import { buildHorse, practice as makePractice } from '../trend/build-horse.ts'

export const asOf = '2026-03-25'

export const practice: Practice = makePractice({
  name: 'Tideway Hoof Care',
  owners: [{ id: 'own', name: 'Orla Fenn', language: null }],
  localRules: 'In this county a trimmer may not nail.',
  terms: { 'chalk toe': 'crumbling horn at the toe' },
  body: 'We work slowly.',
})

/** Three visits, 35 days apart, toe angle rising by 3° each time without scatter. */
export const mallow: Horse = buildHorse({
  id: 'mallow',
  name: 'Mallow',
  kind: 'cob',
  sex: 'mare',
  born: '2014',
  heightCm: 147.3,
  weightKg: 505,
  started: '2026-01-12',
  history: ['Shod in front until autumn'],
  tetanus: null,
  vet: {
    involved: true,
    diagnosis: 'old laminitis in both fores',
    name: null,
    phone: null,
    date: null,
    feet: [],
  },
  targets: { 'toe-angle': { LF: { low: 54, high: 58 } } },
  trimLimits: { sole: { LF: 'flat' }, mostPerTrim: 1.5 },
  visits: [
    {
      date: '2026-01-12',
      before: { 'toe-length': { LF: 98 } },
      after: {
        'toe-angle': { LF: 45, RF: 46 },
        'toe-length': { LF: 90 },
        'heel-medial': { LF: 36, RF: 33 },
        'heel-lateral': { LF: 30, RF: 33 },
        width: { LF: 126 },
      },
      findings: ['LF flare, medial quarter, 2', 'LF thrush, central sulcus, 2'],
      growOut: ['LF nail holes, toe, 20'],
      nextVisit: '2026-02-16',
    },
    {
      date: '2026-02-16',
      before: { 'toe-length': { LF: 99 } },
      after: {
        'toe-angle': { LF: 48, RF: 46 },
        'toe-length': { LF: 88 },
        'heel-medial': { LF: 34.5, RF: 33 },
        'heel-lateral': { LF: 30, RF: 33 },
      },
      findings: ['LF flare, medial quarter, 2', 'LF thrush, central sulcus, 1'],
      growOut: ['LF nail holes, toe, 30'],
      nextVisit: '2026-03-23',
    },
    {
      date: '2026-03-23',
      before: { 'toe-length': { LF: 97 } },
      after: {
        'toe-angle': { LF: 51, RF: 46 },
        'toe-length': { LF: 87 },
        'heel-medial': { LF: 33, RF: 33 },
        'heel-lateral': { LF: 30, RF: 33 },
        width: { LF: 126 },
      },
      findings: ['LF flare, medial quarter, 1', 'LF thrush, central sulcus, 0'],
      growOut: ['LF nail holes, toe, 40'],
      comfort: { lameness: { RF: 4 }, lamenessBy: 'vet', digitalPulse: { RF: 3 } },
      nextVisit: '2026-04-27',
    },
  ],
})

/** Mallow with an inner heel that stands 3 mm higher at each visit, so that it asks for a plan. */
export const uneven: Horse = {
  ...mallow,
  visits: mallow.visits.map((visit) => ({
    ...visit,
    readings: visit.readings.map((one) =>
      one.measure === 'heel-medial' && one.foot === 'LF' ? { ...one, value: one.value + 3 } : one,
    ),
  })),
}

const inputOf = (horse: Horse, day: string, of: Practice) => ({
  horse,
  assessment: assess(horse, of, day),
  practice: of,
  pictures: new Map(),
  format: formatIn(of.units),
})

export const pagesOf = (horse = mallow, day = asOf, of = practice): readonly PageView[] => [
  ...presentHorse(inputOf(horse, day, of)),
]

export const summaryOf = (horse = mallow, day = asOf, of = practice) => summarise(inputOf(horse, day, of))

/** The model of one page. */
export function modelAt<T>(pages: readonly PageView[], path: string): T {
  const page = pages.find((one) => one.path === path)
  if (page === undefined) throw new Error(`no page ${path}`)
  return page.model as T
}
