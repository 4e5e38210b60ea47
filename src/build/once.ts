/** Does at its first call what may never be needed, and hands out the same result ever after. */
export function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | null = null
  return () => {
    made ??= make()
    return made
  }
}
