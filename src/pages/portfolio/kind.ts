/** What kind and sex a record names, as one of few classes: a breed could tell who a horse is, and never passes. */

export type Kind = 'pony' | 'cob' | 'horse' | 'draught' | 'donkey' | 'mule'
export type Sex = 'mare' | 'gelding' | 'stallion'

/** The first that a record names wins: a cob pony is told as a pony, a cart horse as a draught horse. */
const named: readonly (readonly [Kind, RegExp])[] = [
  ['mule', /\b(?:mule|hinny)s?\b/],
  ['donkey', /\b(?:donkey|ass|burro|jenny|jack)s?\b/],
  ['pony', /\b(?:pony|ponies|shetland|connemara|fell|exmoor|dartmoor|haflinger|fjord|icelandic)\b/],
  [
    'draught',
    /\b(?:draught|draft|heavy|cart|shire|clydesdale|percheron|ardennes|ardennais|belgian|suffolk)\b/,
  ],
  ['cob', /\bcobs?\b/],
  ['horse', /\bhorses?\b/],
]

/** Ponies stand no higher; the limit of competitions the world over. */
const pony = { upToCm: 148 }

/**
 * By the words of the record, else by its height; null where neither says.
 * @param recorded as the case file says it, a breed or anything else
 */
export function kindNamed(recorded: string | null, heightCm: number | null): Kind | null {
  const text = (recorded ?? '').toLowerCase()
  const byWord = named.find(([, words]) => words.test(text))?.[0]
  if (byWord !== undefined) return byWord
  if (heightCm === null) return null
  return heightCm <= pony.upToCm ? 'pony' : 'horse'
}

export function sexNamed(recorded: string | null): Sex | null {
  const text = (recorded ?? '').toLowerCase()
  if (/\b(?:gelding|gelded|castrated)\b/.test(text)) return 'gelding'
  if (/\b(?:mare|filly|female|dam|jenny)\b/.test(text)) return 'mare'
  return /\b(?:stallion|colt|entire|male|jack|sire)\b/.test(text) ? 'stallion' : null
}
