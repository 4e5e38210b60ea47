import type { PlainDate } from '../../../../src/hoof/dates.ts'
import { emptyDraft } from '../../../../src/yard/draft.ts'
import type { Drafts, Kept } from './drafts.ts'

/** Six bytes drawn by chance, in hexadecimal digits. */
const newId = () =>
  [...crypto.getRandomValues(new Uint8Array(6))].map((n) => n.toString(16).padStart(2, '0')).join('')

/** The id of the visit of that day that was begun and not given out; null where there is none. */
export const begunDraft = ({ drafts }: Kept, horse: string, date: PlainDate): string | null =>
  drafts.find(
    ({ draft, thrownAway }) =>
      draft.horse === horse && draft.date === date && draft.given === null && thrownAway === null,
  )?.draft.id ?? null

/**
 * The id of a visit of the horse to write: the one of this day that was begun, else a new one.
 * @throws StoreFull
 */
export async function startDraft(
  drafts: Drafts,
  horse: string,
  date: PlainDate,
  by: string | null,
): Promise<string> {
  const begun = begunDraft(await drafts.all(), horse, date)
  if (begun !== null) return begun
  const draft = emptyDraft({ id: newId(), changed: new Date().toISOString(), horse, date, by })
  await drafts.write({ draft, marks: {}, givenOn: null, thrownAway: null })
  return draft.id
}
