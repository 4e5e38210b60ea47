/** "What has clearly moved": a sentence a measure, resting on the false discovery rate of the whole horse alone. */
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import { isMeasureId } from '../../../hoof/measures.ts'
import type { Trend } from '../../../trend/assessment.ts'
import { capital } from '../../shared/format.ts'
import { telling } from '../../shared/telling.ts'
import type { HorseCase, Link } from '../case/horse-case.ts'
import { bareText, type ShownReading, shownEnd, valueText } from '../case/shown-reading.ts'

export interface RealPart {
  /** Day of the first readings; the sentences name those that are of another. */
  readonly since: string | null
  readonly sentences: readonly RealSentence[]
  /** What else has moved, or that nothing has. */
  readonly rest: string
}

export interface RealSentence {
  readonly measure: Link
  /** Feet of which the same is told stand together, and it is told once. */
  readonly groups: readonly { readonly feet: readonly RealAtFoot[]; readonly told: string }[]
}

interface RealAtFoot {
  readonly foot: string
  /** Null where first and last reading do not show what all readings together do: then the pace is told. */
  readonly ends: { readonly first: ShownReading; readonly last: ShownReading } | null
  /** `since 14 Mar 26`, `on arrival`, `on target`; joined by commas. */
  readonly told: string
}

const mostSentences = 5

/** Those that are no open problem, which stand above with their values; a verdict that says less is not contradicted. */
export function realPart(of: HorseCase): RealPart {
  const { assessment, words, format } = of
  const w = words.problem.real
  const open = new Set(
    assessment.problems.flatMap(({ about, closedOn }) =>
      about.kind === 'measure' && closedOn === null ? [about.trend] : [],
    ),
  )
  const clear = assessment.trends.filter(isTold)
  const moved = clear.filter((trend) => !open.has(trend))
  const ids = [...new Set(moved.map(({ measure }) => measure))].toSorted((a, b) => rank(a) - rank(b))
  const started = assessment.visits.length < 2
  const first = of.visits[0]?.date ?? ''
  const others = ids.slice(mostSentences)
  return {
    since: ids.length === 0 ? null : w.since(format.date(first)),
    sentences: ids.slice(0, mostSentences).map((id) => ({
      measure: { text: capital(format.name(id)), href: `measures.html#${id}` },
      groups: grouped(moved.filter(({ measure }) => measure === id).map((trend) => atFoot(of, trend, first))),
    })),
    rest: started
      ? w.tooEarly
      : others.length > 0
        ? w.others(others.length, format.list(others.map(format.name)))
        : clear.length > 0
          ? w.nothingElse
          : w.nothing,
  }
}

function grouped(all: readonly RealAtFoot[]): RealSentence['groups'] {
  const told = [...new Set(all.map((one) => one.told))]
  return told.map((text) => ({ told: text, feet: all.filter((one) => one.told === text) }))
}

/**
 * Clearly moving, with no verdict beside it that says that nothing is known or nothing moves, and no first and last
 * reading that go another way than the line.
 */
export const isTold = ({ isClear, verdict, change, fit }: Trend): boolean =>
  isClear && verdict !== 'too early to tell' && verdict !== 'steady' && change * (fit?.slopePerMonth ?? 0) > 0

/** What was read before what follows from it. */
function rank(id: AnyMeasureId): number {
  const at = telling.indexOf(id)
  return at >= 0 ? at : isMeasureId(id) ? telling.length : telling.length + 1
}

function atFoot(of: HorseCase, trend: Trend, since: string): RealAtFoot {
  const { format, words } = of
  const w = words.problem
  const { fit, change, first, measure, stage } = trend
  const slope = fit?.slopePerMonth ?? 0
  const showsIt =
    Math.sign(change) === Math.sign(slope) &&
    valueText(of, measure, first.value) !== valueText(of, measure, trend.last.value)
  const way = wayOf(trend)
  const told = [
    ...(showsIt ? [] : [w.real.pace(format.rate(measure, slope))]),
    ...(showsIt && first.date !== since ? [w.since(format.shortDate(first.date))] : []),
    ...(stage === 'before' ? [w.onArrival] : []),
    ...(way === null ? [] : [w.real.way[way]]),
  ]
  return {
    foot: trend.foot,
    ends: showsIt
      ? { first: shownEnd(of, trend, 'first', bareText), last: shownEnd(of, trend, 'last') }
      : null,
    told: told.join(', '),
  }
}

type Way = keyof HorseCase['words']['problem']['real']['way']

/** Where it has come to, else which way it goes; nothing where there is no target. */
function wayOf({ position, fit, target }: Trend): Way | null {
  if (position === 'held') return 'held'
  if (position === 'on target') return 'reached'
  if (position === 'near target') return 'near'
  if (position === 'no target' || fit === null || target === null) return null
  const below = target.low !== null && fit.levelAtLast < target.low
  return fit.slopePerMonth > 0 === below ? 'toward' : 'away'
}
