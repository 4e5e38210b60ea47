/** The writing side of the yard page. */

export type { Drafts } from './drafts.ts'
export { DraftsList } from './drafts-list.tsx'
export { openDrafts } from './drafts-store.ts'
export { begunDraft, startDraft } from './new-draft.ts'
export { VisitForm } from './visit-form.tsx'
export { waitingIn } from './waiting.ts'
