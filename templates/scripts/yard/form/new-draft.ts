import type { PlainDate } from '../../../../src/hoof/dates.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import type { Drafts, KeptDraft } from './drafts.ts'

/** An empty visit. */
export const emptyDraft = (horse: string, date: PlainDate, by: string | null): YardDraft => ({
  id: [...crypto.getRandomValues(new Uint8Array(6))].map((n) => n.toString(16).padStart(2, '0')).join(''),
  version: 1,
  changed: new Date().toISOString(),
  given: null,
  horse,
  date,
  by,
  readings: [],
  findings: [],
  features: [],
  comfort: { lameness: {}, lamenessBy: null, landing: {}, 'digital pulse': {}, surfaces: {} },
  body: { weight: '', condition: '', crest: '' },
  care: [],
  nextVisit: '',
  note: '',
  forOwner: '',
  dictated: '',
  photos: [],
  questions: [],
  isUnfinished: false,
})

/**
 * The id of a visit of the horse to write: the one of this day that was begun and not given out, else a new one.
 * @throws StoreFull
 */
export async function startDraft(
  drafts: Drafts,
  horse: string,
  date: PlainDate,
  by: string | null,
): Promise<string> {
  const { drafts: kept } = await drafts.all()
  const begun = kept.find(
    ({ draft, thrownAway }) =>
      draft.horse === horse && draft.date === date && draft.given === null && thrownAway === null,
  )
  if (begun) return begun.draft.id
  const draft = emptyDraft(horse, date, by)
  await drafts.write({ draft, marks: {}, givenOn: null, thrownAway: null } satisfies KeptDraft)
  return draft.id
}
