/**
 * What pages about many horses need of one: small, plain data, kept between builds so that
 * one changed visit does not ask every horse to be read again.
 */
import type { PlainDate } from '../../hoof/dates.ts'
import type { CautionLevel } from '../../trend/assessment.ts'

export interface HorseSummary {
  readonly id: string
  readonly name: string
  readonly owner: string | null
  readonly visits: number
  readonly lastVisit: PlainDate | null
  readonly due: PlainDate | null
  readonly overdueDays: number | null
  /** One line: how the horse stands. */
  readonly state: string
  /** Words by which the list is filtered: findings open now, feet, verdicts. */
  readonly tags: readonly string[]
  /** Lines of the cautions in force, gravest first. */
  readonly cautions: readonly {
    readonly level: CautionLevel
    readonly text: string
    readonly date: PlainDate
    /** How many cautions are folded in it; 0 for a line of its own. */
    readonly folded: number
  }[]
  /** Sentences: what changed at the last visit. */
  readonly changes: readonly string[]
  readonly backtest: { readonly made: number; readonly held: number }
}
