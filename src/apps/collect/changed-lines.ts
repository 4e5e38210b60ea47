/** Lines in which two texts differ. */

export interface ChangedLine {
  /** One-based, in the text that is there; where a line is new, the line that it comes before. */
  readonly line: number
  readonly kind: 'only there' | 'only new'
  readonly text: string
}

/** Longer texts are compared by their lines alone, wherever those stand. */
const mostCells = 4_000_000

/** What is not in a longest row of common lines, in the order of the texts. */
export function changedLines(there: string, next: string): readonly ChangedLine[] {
  const [a, b] = [there.trimEnd().split('\n'), next.trimEnd().split('\n')]
  if (a.length * b.length > mostCells) return apart(a, b)
  const width = b.length + 1
  const common = new Uint32Array((a.length + 1) * width)
  const at = (i: number, j: number) => common[i * width + j] ?? 0
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--) {
      common[i * width + j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1))
    }
  }
  const changed: ChangedLine[] = []
  let [i, j] = [0, 0]
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      i++
      j++
    } else if (j >= b.length || (i < a.length && at(i + 1, j) >= at(i, j + 1))) {
      changed.push({ line: i + 1, kind: 'only there', text: a[i] ?? '' })
      i++
    } else {
      changed.push({ line: i + 1, kind: 'only new', text: b[j] ?? '' })
      j++
    }
  }
  return changed
}

function apart(a: readonly string[], b: readonly string[]): readonly ChangedLine[] {
  const [inA, inB] = [new Set(a), new Set(b)]
  return [
    ...a.flatMap((text, index) =>
      inB.has(text) ? [] : [{ line: index + 1, kind: 'only there' as const, text }],
    ),
    ...b.flatMap((text) => (inA.has(text) ? [] : [{ line: a.length, kind: 'only new' as const, text }])),
  ]
}
