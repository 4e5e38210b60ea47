/** `yard: 3f9ab2c4d5e6-2`: the draft of the yard page that a visit was taken over from, and which version of it. */
import { type Reader, wrongForm } from './fields.ts'
import type { YardOrigin } from './model.ts'

const written = /^([0-9a-f]{12})-([1-9]\d{0,5})$/

export const yardKey: Reader<YardOrigin> = (value, context, name) => {
  const origin = value.kind === 'text' ? originIn(value.text) : null
  return (
    origin ??
    wrongForm(value, context, name, 'the draft as the phone named it, and its version: 3f9ab2c4d5e6-1', {
      advice: 'delete the line where the visit did not come from the yard page',
    })
  )
}

/** Null for any other text. */
export function originIn(text: string): YardOrigin | null {
  const [, draft, version] = written.exec(text.trim().toLowerCase()) ?? []
  return draft === undefined ? null : { draft, version: Number(version) }
}

export const yardKeyText = ({ draft, version }: YardOrigin): string => `${draft}-${version}`
