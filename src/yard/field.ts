/** A place of the form, by which a line of the case file and a remark on it are brought back to what was typed. */
import type { Foot } from '../hoof/feet.ts'

export type YardField =
  | {
      readonly part: 'reading'
      readonly stage: 'before' | 'after'
      readonly measure: string
      readonly foot: Foot | null
    }
  /** Place in the draft's list of that name. */
  | { readonly part: 'findings' | 'features' | 'care' | 'photos' | 'questions'; readonly index: number }
  | {
      readonly part: 'comfort'
      readonly scale: 'lameness' | 'landing' | 'digital pulse'
      /** Null where the whole row is meant. */
      readonly foot: Foot | null
    }
  | { readonly part: 'surfaces'; readonly surface: string | null }
  | { readonly part: 'body'; readonly key: 'weight' | 'condition' | 'crest' | null }
  | { readonly part: 'date' | 'by' | 'nextVisit' | 'note' | 'forOwner' | 'isUnfinished' }

/** A field as a key of maps: the same text for the same field. */
export function keyOf(field: YardField): string {
  switch (field.part) {
    case 'reading':
      return `${field.stage} ${field.measure} ${field.foot ?? ''}`.trim()
    case 'comfort':
      return `${field.scale} ${field.foot ?? ''}`.trim()
    case 'surfaces':
      return `surfaces ${field.surface ?? ''}`.trim()
    case 'body':
      return `body ${field.key ?? ''}`.trim()
    case 'findings':
    case 'features':
    case 'care':
    case 'photos':
    case 'questions':
      return `${field.part} ${field.index}`
    default:
      return field.part
  }
}
