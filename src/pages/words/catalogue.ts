/** What a language has words for: all pages, or those of owners alone. */
import type { OwnerWordsOfCautions } from './caution-words.ts'
import type { en } from './en/index.ts'

/** A catalogue: all wording of one language. Another language of every page is another object of this type. */
export type Words = typeof en

/** What an owner's page is written with: the part that every language has. */
export interface OwnerWords extends Pick<Words, 'base' | 'figures' | 'owner'> {
  readonly cautions: OwnerWordsOfCautions
}
