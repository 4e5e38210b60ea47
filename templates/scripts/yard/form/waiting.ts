import type { YardIndex } from '../../../../src/yard/payload.ts'
import type { Kept, KeptDraft } from './drafts.ts'

/** The version of a draft that stands in the casebook; null where none does. */
export const arrivedVersion = (
  { draft }: KeptDraft,
  { arrived }: Pick<YardIndex, 'arrived'>,
): number | null => arrived.find((one) => one.draft === draft.id)?.version ?? null

/** Whether it is not in the casebook yet as it stands here. */
export const isWaiting = (one: KeptDraft, index: Pick<YardIndex, 'arrived'>): boolean =>
  one.thrownAway === null && (arrivedVersion(one, index) ?? 0) < one.draft.version

export const waitingIn = ({ drafts }: Kept, index: Pick<YardIndex, 'arrived'>): readonly KeptDraft[] =>
  drafts.filter((one) => isWaiting(one, index))
