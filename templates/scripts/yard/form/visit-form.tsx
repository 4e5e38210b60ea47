import type { FormFrame } from './frame.ts'

/** A visit written at the hoof. Leaves by the address alone. */
export function VisitForm(_props: FormFrame & { readonly draft: string }) {
  return <p />
}
