import type { FormFrame } from './frame.ts'

/** What was written on this phone and is not in the casebook yet, and what has arrived there. */
export function DraftsList(_props: FormFrame) {
  return <p />
}
