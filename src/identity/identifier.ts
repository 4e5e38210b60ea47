/** What is searched for, and what is not. */

export type IdentifierKind =
  | 'name of a horse'
  | 'name of an owner'
  | 'folder of a horse'
  | 'id of an owner'
  | 'private word'
  | 'name of a vet'
  | 'name of a person of the practice'
  | 'telephone number'
  | 'name of a picture'
  | 'name of the practice'

/**
 * `any case`: a whole word in any case.
 * `capital`: also an everyday word, so only with its capital, and where a capital says something.
 * `title`: a word of the trade, so only after a title.
 * `path`: a short number or an everyday word as an id, so only as a part of a path.
 * `within`: in a script without spaces, anywhere.
 * `digits`: a telephone number, by its digits alone.
 */
export type Watch = 'any case' | 'capital' | 'title' | 'path' | 'within' | 'digits'

export interface Identifier {
  readonly kind: IdentifierKind
  /** As the casebook has it. */
  readonly text: string
  /** Whose it is: an owner's id; null for a horse without an owner, and for the practice's own people and contacts. */
  readonly owner: string | null
  /** The horse's id; null for what belongs to an owner or the practice. */
  readonly horse: string | null
  /** Folded words that must follow each other. */
  readonly words: readonly string[]
  readonly watch: Watch
}

/** A name that is not searched for in every form, and why: shown at each build, never silent. */
export interface Exception {
  readonly kind: IdentifierKind
  readonly text: string
  readonly reason:
    | 'everyday word, searched with its capital'
    | 'searched in paths only'
    | 'part of a longer name, not searched alone'
    | 'word of the trade, searched after a title'
    | 'two letters, searched with its capital'
    | 'one letter, not searched'
}
