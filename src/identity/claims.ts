/** Places of a text that only the first to ask for them is given. */

interface Stretch {
  readonly start: number
  readonly end: number
}

/** For a text of this length: whether nothing before it touched the stretch, which from then on is taken. */
export function claims(length: number): (stretch: Stretch) => boolean {
  let taken: Uint8Array | null = null
  return ({ start, end }) => {
    // Most texts hold nothing to be claimed.
    taken ??= new Uint8Array(length)
    for (let at = start; at < end; at++) if (taken[at] === 1) return false
    taken.fill(1, start, end)
    return true
  }
}
