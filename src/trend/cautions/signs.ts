/** Every danger sign that the record knows. Its words for each reader stand beside its code in the words of a language. */
import { bodySigns } from './body.ts'
import { findingSigns } from './found.ts'
import { goingSigns } from './going.ts'
import { measuredSigns } from './measured.ts'
import { levelOrder, type Sign } from './sign.ts'

const table = [...goingSigns, ...findingSigns, ...bodySigns, ...measuredSigns] as const

type Table = (typeof table)[number]
export type CautionCode = Table['code']

/** What a caution of that code says: the facts that its words are made from, limits among them. */
export type FactsOf<Code extends CautionCode> =
  Extract<Table, { readonly code: Code }> extends Sign<string, infer F> ? F : never

// biome-ignore lint/suspicious/noExplicitAny: the table holds signs of many facts; each keeps its own by its code
export const signs: readonly Sign<CautionCode, any>[] = table

/** Gravest first, and within a level in the order of the table. */
export const cautionCodes: readonly [CautionCode, ...CautionCode[]] = signs
  .toSorted((a, b) => levelOrder[a.level] - levelOrder[b.level])
  .map(({ code }) => code) as [CautionCode, ...CautionCode[]]

export const placeOf = Object.fromEntries(cautionCodes.map((code, i) => [code, i])) as Readonly<
  Record<CautionCode, number>
>
