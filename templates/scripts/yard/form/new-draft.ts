import type { PlainDate } from '../../../../src/hoof/dates.ts'
import { emptyDraft } from '../../../../src/yard/draft.ts'
import type { Drafts } from './drafts.ts'

/** Six bytes drawn by chance, in hexadecimal digits. */
const newId = () =>
  [...crypto.getRandomValues(new Uint8Array(6))].map((n) => n.toString(16).padStart(2, '0')).join('')

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
  const draft = emptyDraft({ id: newId(), changed: new Date().toISOString(), horse, date, by })
  await drafts.write({ draft, marks: {}, givenOn: null, thrownAway: null })
  return draft.id
}
