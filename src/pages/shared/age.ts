import type { PlainDate } from '../../hoof/dates.ts'

/** Whole years on a day; a year alone counts as its first of January. */
export function ageOn(born: string, day: PlainDate): number {
  const birthday = born.length === 4 ? '-01-01' : born.slice(4)
  const years = Number(day.slice(0, 4)) - Number(born.slice(0, 4)) - (day.slice(4) < birthday ? 1 : 0)
  return Math.max(0, years)
}
