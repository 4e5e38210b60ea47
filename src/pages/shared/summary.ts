/**
 * What pages about many horses need of one: small, plain data, kept between builds so that
 * one changed visit does not ask every horse to be read again.
 */
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { CautionCode, CautionLevel } from '../../trend/assessment.ts'

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
  readonly cautions: readonly {
    readonly code: CautionCode
    readonly level: CautionLevel
    readonly foot: Foot | null
    readonly date: PlainDate
    readonly message: string
  }[]
  /** Sentences: what changed at the last visit. */
  readonly changes: readonly string[]
  readonly backtest: { readonly made: number; readonly held: number }
}
