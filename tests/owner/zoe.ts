/** One invented horse and her practice, for tests of the pages that go out. */
import { noBodyState, noComfort } from '../../src/casebook/comfort.ts'
import type { Finding, Horse, Practice, Reading, Visit } from '../../src/casebook/model.ts'
import type { Foot } from '../../src/hoof/feet.ts'

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

export function visit(index: number, more: Partial<Visit> = {}): Visit {
  const date = dates[index] ?? '2026-06-01'
  return {
    id: date,
    date,
    file: `zoe/${date}.md`,
    draft: false,
    by: null,
    yard: null,
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
