/** One visit that stands in two files: taken over on two machines, or written on both. */
import { measures } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import type { Reading } from '../model.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { listed } from '../words.ts'
import { inWords } from './history.ts'

/** Fewer readings of the same feet may be read twice on a day for many reasons. */
const leastShared = 4
/** Differences that are named. */
const mostNamed = 5

export function checkWrittenTwice(visits: readonly PlacedVisit[], units: LengthUnit): void {
  for (const [index, placed] of visits.entries()) {
    const other = visits.slice(0, index).find((one) => isSameVisit(one, placed))
    if (!other) continue
    const { visit, report, dateRange } = placed
    const differ = differences(other, placed, units)
    const more = differ.length > mostNamed ? ` and ${differ.length - mostNamed} more` : ''
    report.warning(
      'visit-twice',
      dateRange,
      `This visit is written in ${other.visit.id}.md as well${
        differ.length === 0 ? '.' : `. There and here differ: ${listed(differ.slice(0, mostNamed))}${more}.`
      }`,
      {
        expected: 'one file for each visit',
        advice: `put what is right into one of ${other.visit.id}.md and ${visit.id}.md, and delete the other`,
      },
    )
  }
}

/**
 * The same draft of the yard page; or one day, and most of the readings that both have are the same ones. A second visit
 * of a day reads other values, or those that the first left.
 */
function isSameVisit({ visit: a }: PlacedVisit, { visit: b }: PlacedVisit): boolean {
  if (a.yard && b.yard) return a.yard.draft === b.yard.draft
  if (a.date !== b.date) return false
  const shared = pairsOf(a.readings, b.readings)
  return (
    shared.length >= leastShared &&
    2 * shared.filter(([one, other]) => one.value === other.value).length > shared.length
  )
}

const keyOf = ({ stage, foot, measure }: Reading): string => `${stage} ${foot} ${measure}`

function pairsOf(a: readonly Reading[], b: readonly Reading[]): readonly (readonly [Reading, Reading])[] {
  const first = new Map(a.map((reading) => [keyOf(reading), reading]))
  return b.flatMap((reading) => {
    const other = first.get(keyOf(reading))
    return other ? [[other, reading] as const] : []
  })
}

function differences(
  { visit: a }: PlacedVisit,
  { visit: b }: PlacedVisit,
  units: LengthUnit,
): readonly string[] {
  const say = ({ measure, value }: Reading) => inWords(value, measures[measure].kind, units)
  const nameOf = ({ stage, foot, measure }: Reading) => `${measures[measure].name} ${foot} ${stage}`
  const inBoth = pairsOf(a.readings, b.readings)
  const shared = new Set(inBoth.map(([one]) => keyOf(one)))
  const alone = (readings: readonly Reading[], where: string) =>
    readings
      .filter((one) => !shared.has(keyOf(one)))
      .map((one) => `${nameOf(one)} (${say(one)} ${where} alone)`)
  return [
    ...inBoth
      .filter(([one, other]) => one.value !== other.value)
      .map(([one, other]) => `${nameOf(one)} (${say(one)}, ${say(other)})`),
    ...alone(a.readings, 'there'),
    ...alone(b.readings, 'here'),
  ]
}
