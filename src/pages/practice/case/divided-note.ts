/** A long note in two: what is shown of it at once, and the rest. */

export interface DividedNote {
  readonly start: string
  /** Null where the whole is short enough. */
  readonly rest: string | null
}

/**
 * Divides after a paragraph, else after a sentence; where neither ends in time the note stays whole.
 * @param most so many letters are shown
 */
export function divided(note: string, most: number): DividedNote {
  const text = note.trim()
  if (text.length <= most) return { start: text, rest: null }
  const early = text.slice(0, most)
  const paragraph = early.lastIndexOf('\n\n')
  const at = paragraph > 0 ? paragraph : Math.max(...sentenceEnds(early))
  // A fence that the first part opens would swallow what follows it.
  if (at <= 0 || (text.slice(0, at).match(/^(?:```|~~~)/gm) ?? []).length % 2 === 1)
    return { start: text, rest: null }
  return { start: text.slice(0, at).trim(), rest: text.slice(at).trim() }
}

const sentenceEnds = (text: string): readonly number[] => [
  0,
  ...[...text.matchAll(/[.!?](?=\s)/g)].map(({ index }) => index + 1),
]
