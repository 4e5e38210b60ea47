/** Weights that no horse has, and changes of weight that none goes through between two visits. */
import { daysBetween, type PlainDate } from '../../hoof/dates.ts'
import type { PlacedHorse } from '../horse-file.ts'
import type { Report, TextRange } from '../report.ts'
import type { PlacedVisit } from '../visit-file.ts'

/** Kilograms: from a small pony to the heaviest horses. Common practice, no source. */
const usual = { low: 60, high: 1200 }
/** From where a foal or a horse of at most this height, in centimetres, may weigh. */
const lowestSmall = 20
const smallHeight = 105
const youngDays = 400
/** Share that two weighings with a tape may differ by, and share a day that a horse may gain or lose. */
const tapeShare = 0.12
const shareADay = 0.0015
/** A young horse grows; only a loss is doubted in it. */
const growsUntilYears = 4

interface Weighing {
  readonly kg: number
  readonly date: PlainDate
}

export function checkWeights(
  visits: readonly PlacedVisit[],
  horse: PlacedHorse | null,
  asOf: PlainDate,
): void {
  const profile = horse?.horse ?? null
  if (horse && profile?.weightKg) {
    const on = profile.started ?? visits[0]?.visit.date ?? asOf
    doubtWeight(profile.weightKg, lowest(profile, on), horse.weightRange, horse.report)
  }
  let last: Weighing | null = null
  for (const { visit, report, weightRange } of visits) {
    const kg = visit.bodyState.weightKg
    if (kg === null) continue
    if (doubtWeight(kg, lowest(profile, visit.date), weightRange, report)) continue
    const now = { kg, date: visit.date }
    if (last) doubtChange(last, now, bornYear(profile), weightRange, report)
    last = now
  }
}

type Profile = PlacedHorse['horse'] | null

const bornYear = (profile: Profile): number | null =>
  profile?.born ? Number(profile.born.slice(0, 4)) : null

/** A foal, and a miniature horse by its height, may weigh less than others. */
function lowest(profile: Profile, date: PlainDate): number {
  const isSmall = profile?.heightCm != null && profile.heightCm <= smallHeight
  const born = profile?.born ?? null
  const birthday = born !== null && born.length === 4 ? `${born}-01-01` : born
  const isFoal = birthday !== null && daysBetween(birthday, date) < youngDays
  return isSmall || isFoal ? lowestSmall : usual.low
}

function doubtWeight(kg: number, low: number, range: TextRange | null, report: Report): boolean {
  if (kg >= low && kg <= usual.high) return false
  report.warning('weight-unlikely', range, `A weight of ${Math.round(kg)} kg is unlikely for a horse.`, {
    expected: `${low} to ${usual.high} kg`,
    advice: kg < low ? 'look whether a figure is missing; a small horse needs its height in horse.md' : null,
  })
  return true
}

function doubtChange(
  last: Weighing,
  now: Weighing,
  born: number | null,
  range: TextRange | null,
  report: Report,
): void {
  const days = Math.max(0, daysBetween(last.date, now.date))
  const most = last.kg * (tapeShare + shareADay * days)
  const change = now.kg - last.kg
  const isGrowing = born !== null && Number(now.date.slice(0, 4)) - born < growsUntilYears
  if (Math.abs(change) <= most || (isGrowing && change > 0)) return
  const way = change > 0 ? 'gains' : 'loses'
  report.warning(
    'weight-jump',
    range,
    `The weight is ${Math.round(now.kg)} kg; on ${last.date} it was ${Math.round(last.kg)} kg. No horse ${way} that much in ${days} days.`,
    { expected: `${Math.ceil(last.kg - most)} to ${Math.floor(last.kg + most)} kg` },
  )
}
