/** When a target is reached, as it can be said today: what has come due is told as past, and no range begins before today. */
import type { PlainDate } from '../../../hoof/dates.ts'
import type { GrowOut, Trend } from '../../../trend/assessment.ts'
import type { HorseCase } from './horse-case.ts'

/** In a few words; null where there is no forecast. */
export function expectedText({ format, words }: HorseCase, { forecast, measure }: Trend): string | null {
  if (forecast === null || forecast.kind === 'moving away') return null
  const w = words.problem
  const edge = format.measure(measure, forecast.edge)
  switch (forecast.kind) {
    case 'no date yet':
      return w.noDate
    case 'not before':
      return w.notBefore(edge, format.monthOf(forecast.month))
    case 'more than 18 months':
      return w.late(edge)
    case 'date': {
      const { date, latest, isDue } = forecast
      const day = format.shortDate(date)
      if (isDue) return w.wasExpected(edge, day)
      return latest === null ? w.aboutOpen(edge, day) : w.aboutBy(edge, day, format.shortDate(latest))
    }
  }
}

/** When a followed feature is at the ground. */
export function groundText({ format, words }: HorseCase, { state, date }: GrowOut): string | null {
  const w = words.problem
  if (state === 'wall length unknown') return w.noWall
  if (date === null || state === 'grown out') return null
  return (state === 'due' ? w.atGroundBy : w.atGround)(format.shortDate(date))
}

interface Range {
  readonly earliest: PlainDate | null
  /** Null: it is open. */
  readonly latest: PlainDate | null
}

/** A range as it can be told today: its days before today are over. One that is over as a whole is told as it was. */
export const fromToday = <R extends Range>(range: R, asOf: PlainDate): R => {
  const { earliest, latest } = range
  const isOver = latest !== null && latest < asOf
  return earliest !== null && earliest < asOf && !isOver ? { ...range, earliest: asOf } : range
}
