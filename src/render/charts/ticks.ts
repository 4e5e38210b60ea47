/** Domains and ticks, chosen here so that panels share them and no time zone has a say; the page's language is handed in. */
import { dateOfDay, dayOf } from '../../hoof/dates.ts'
import type { ChartTime } from '../../pages/shared/figures.ts'

export interface Axis {
  readonly low: number
  readonly high: number
  readonly ticks: readonly Tick[]
}

interface Tick {
  readonly at: number
  /** One line, or two. */
  readonly label: string | readonly string[]
}

/** A time as a number of days: since 1970 for a date, since the first visit for a day or a week. */
export function dayNumber(time: ChartTime): number {
  if ('date' in time) return dayOf(time.date)
  return 'day' in time ? time.day : time.week * 7
}

/** The round step, 1, 2 or 5 times a power of ten, that cuts a span into about `count` parts. */
function roundStep(span: number, count: number): number {
  const rough = span / count
  const power = 10 ** Math.floor(Math.log10(rough))
  const part = rough / power
  return (part < 1.5 ? 1 : part < 3.5 ? 2 : part < 7.5 ? 5 : 10) * power
}

/** An axis of values from round tick to round tick that holds both ends. `decimalSign` parts the tenths in its labels. */
export function valueAxis(low: number, high: number, count: number, decimalSign: string): Axis {
  const step = roundStep(high - low || Math.abs(low) || 1, count)
  const first = Math.floor(low / step + 1e-9)
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9))
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => {
    const at = Number(((first + i) * step).toFixed(digits))
    return { at, label: at.toFixed(digits).replace('-', '\u2212').replace('.', decimalSign) }
  })
  return { low: first * step, high: last * step, ticks }
}

/** An axis of day numbers since the first visit. */
export function dayAxis(low: number, high: number, count: number, decimalSign: string): Axis {
  const { ticks } = valueAxis(low, high, count, decimalSign)
  return { low, high, ticks: ticks.filter(({ at }) => at >= low && at <= high) }
}

/** An axis of day numbers since the first visit, told in weeks. */
export function weekAxis(low: number, high: number, count: number, decimalSign: string): Axis {
  const { ticks } = dayAxis(low / 7, high / 7, count, decimalSign)
  const whole = ticks.filter(({ at }) => Number.isInteger(at))
  return {
    low,
    high,
    ticks: whole.map(({ at }) => ({ at: at * 7, label: String(at).replace('-', '\u2212') })),
  }
}

/** Steps of a calendar axis, in months. */
const monthSteps = [1, 2, 3, 6, 12, 24, 60, 120]

/**
 * A calendar axis: ticks on the first of months, or on single days where the span is short.
 * The year stands under the first tick and wherever it changes.
 */
export function dateAxis(low: number, high: number, count: number, months: readonly string[]): Axis {
  const days = monthStarts(low, high, count)
  const chosen = days.length >= 2 ? days : daysBetween(low, high, count)
  const withDay = days.length < 2
  let year = ''
  const ticks = chosen.map((at) => {
    const date = dateOfDay(at)
    const month = months[Number(date.slice(5, 7)) - 1] ?? ''
    const name = withDay ? `${Number(date.slice(8, 10))} ${month}` : month
    const isNewYear = date.slice(0, 4) !== year
    year = date.slice(0, 4)
    return { at, label: isNewYear ? [name, year] : [name] }
  })
  return { low, high, ticks }
}

function monthStarts(low: number, high: number, count: number): readonly number[] {
  const span = (high - low) / 30.4375
  const step = monthSteps.find((months) => span / months <= count) ?? 120
  const start = dateOfDay(low)
  const startMonth = Number(start.slice(0, 4)) * 12 + Number(start.slice(5, 7)) - 1
  const starts: number[] = []
  for (let month = Math.ceil(startMonth / step) * step; ; month += step) {
    const at = dayOf(`${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}-01`)
    if (at > high) return starts
    if (at >= low) starts.push(at)
  }
}

/** Share of the width at its end in which a day would be written beyond the edge of a small chart. */
const edge = 0.08

function daysBetween(low: number, high: number, count: number): readonly number[] {
  const step = Math.max(1, Math.ceil((high - low) / count))
  const days: number[] = []
  for (let at = Math.ceil(low); at <= high - edge * (high - low); at += step) days.push(at)
  return days
}
