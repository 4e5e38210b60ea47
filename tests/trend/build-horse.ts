/** Horses of typed data for tests of the engine: only what a test says is there. */
import { noBodyState, noComfort } from '../../src/casebook/comfort.ts'
import type {
  Finding,
  FollowedFeature,
  Horse,
  Photo,
  Practice,
  Reading,
  Stage,
  Visit,
} from '../../src/casebook/model.ts'
import { addDays } from '../../src/hoof/dates.ts'
import type { Foot, PerFoot } from '../../src/hoof/feet.ts'
import { feet } from '../../src/hoof/feet.ts'
import { type MeasureId, measureIds } from '../../src/hoof/measures.ts'

/** One value for LF alone, or one per foot. */
type Values = number | PerFoot<number>
type Sheet = Partial<Record<MeasureId, Values>>

export interface VisitSketch {
  readonly date: string
  readonly id?: string
  readonly before?: Sheet
  readonly after?: Sheet
  /** `LF flare, medial quarter, 2` and, if wanted, words. */
  readonly findings?: readonly string[]
  /** `LF nail holes, toe, 42`. */
  readonly growOut?: readonly string[]
  readonly comfort?: Partial<Visit['comfort']>
  readonly body?: Partial<Visit['bodyState']>
  readonly photos?: readonly Photo[]
  readonly nextVisit?: string
  readonly draft?: boolean
  readonly by?: string
  readonly stance?: PerFoot<string>
  readonly cleared?: Partial<Visit['cleared']>
}

export interface HorseSketch extends Partial<Omit<Horse, 'visits'>> {
  readonly visits: readonly VisitSketch[]
}

export const practice = (more: Partial<Practice> = {}): Practice => ({
  name: 'Field practice',
  units: 'mm',
  language: 'en',
  trimCycleDays: 35,
  feetOrder: feet,
  owners: [{ id: 'own', name: 'Owner', language: null }],
  people: [],
  localRules: null,
  contacts: { practice: null, vet: { name: null, phone: null } },
  portfolio: { time: 'weeks', hidesPractice: false, holdBackDays: 0 },
  terms: {},
  body: '',
  ...more,
})

const noBody = { own: '', forOwner: null, forTeaching: null }

export const buildHorse = ({ visits, ...more }: HorseSketch): Horse => ({
  id: 'horse',
  name: 'Horse',
  owner: 'own',
  ownerSince: null,
  kind: null,
  sex: null,
  born: null,
  heightCm: null,
  weightKg: null,
  started: null,
  history: [],
  tetanus: null,
  vet: { involved: false, diagnosis: null, name: null, phone: null, date: null, feet: [] },
  consent: { ownerSite: false, portfolio: false, photos: false, given: null },
  alias: null,
  privateWords: [],
  targets: {},
  trimLimits: { sole: {}, mostPerTrim: null },
  problems: [],
  body: noBody,
  file: 'horse/horse.md',
  ...more,
  visits: visits.map(buildVisit),
})

function buildVisit(of: VisitSketch): Visit {
  const id = of.id ?? of.date
  return {
    id,
    date: of.date,
    file: `horse/${id}.md`,
    draft: of.draft ?? false,
    by: of.by ?? null,
    yard: null,
    footing: null,
    readings: [...readingsOf('before', of.before ?? {}), ...readingsOf('after', of.after ?? {})],
    findings: (of.findings ?? []).map(finding),
    growOut: (of.growOut ?? []).map(feature),
    comfort: { ...noComfort, ...of.comfort },
    bodyState: { ...noBodyState, ...of.body },
    stance: Object.fromEntries(
      Object.entries(of.stance ?? {}).map(([foot, position]) => [foot, { position, words: null }]),
    ),
    cleared: { feet: {}, all: null, ...of.cleared },
    photos: of.photos ?? [],
    care: [],
    nextVisit: of.nextVisit ?? null,
    body: noBody,
  }
}

const readingsOf = (stage: Stage, sheet: Sheet): Reading[] =>
  measureIds.flatMap((measure) => {
    const values = sheet[measure]
    if (values === undefined) return []
    const byFoot: PerFoot<number> = typeof values === 'number' ? { LF: values } : values
    return feet.flatMap((foot) => {
      const value = byFoot[foot]
      return value === undefined ? [] : [{ stage, foot, measure, value }]
    })
  })

function finding(text: string): Finding {
  const [head = '', place = '', grade = '', words = null] = text.split(/, (?=[^,]*)/)
  return {
    foot: head.slice(0, 2) as Foot,
    what: head.slice(3),
    place,
    grade: Number(grade) as Finding['grade'],
    words: words === null ? null : text.split(', ').slice(3).join(', '),
  }
}

function feature(text: string): FollowedFeature {
  const [head = '', place = '', distance = ''] = text.split(', ')
  return { foot: head.slice(0, 2) as Foot, what: head.slice(3), place, distance: Number(distance) }
}

/** LF readings of one measure after the trim, a visit every `every` days from `from`. */
export const courseOf = (
  measure: MeasureId,
  values: readonly number[],
  { from = '2026-01-05', every = 35, stage = 'after' as Stage } = {},
): readonly VisitSketch[] =>
  values.map((value, i) => ({ date: addDays(from, i * every), [stage]: { [measure]: value } }))
