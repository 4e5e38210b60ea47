import type { Horse, YardOrigin } from '../casebook/model.ts'

/** Drafts of the yard page that stand in the casebook, each with the latest version taken over; in a steady order. */
export function arrivedOf(horses: readonly Pick<Horse, 'visits'>[]): readonly YardOrigin[] {
  const latest = new Map<string, number>()
  for (const { yard } of horses.flatMap(({ visits }) => visits)) {
    if (yard) latest.set(yard.draft, Math.max(yard.version, latest.get(yard.draft) ?? 0))
  }
  return [...latest]
    .map(([draft, version]) => ({ draft, version }))
    .toSorted((a, b) => (a.draft < b.draft ? -1 : 1))
}
