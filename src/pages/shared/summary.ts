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
  readonly ownerId: string | null
  readonly lastVisit: PlainDate | null
  readonly due: PlainDate | null
  readonly overdueDays: number | null
  /** The gravest caution in force, with its feet in a word or two; empty where it is about the whole horse. */
  readonly worst: { readonly level: CautionLevel; readonly feet: string } | null
  /** One line: how the problems are. */
  readonly problems: string
  /** Words by which the horse is found besides its names: findings open now, measures and verdicts of its problems. */
  readonly find: readonly string[]
  /** Lines of the `stop` and `vet` cautions in force, gravest first. */
  readonly cautions: readonly {
    readonly level: CautionLevel
    readonly text: string
    readonly date: PlainDate
    /** How many cautions are folded in it; 0 for a line of its own. */
    readonly folded: number
  }[]
  /** What the last visit brought. */
  readonly news: {
    /** Sentences: findings that came, went or changed. */
    readonly findings: readonly string[]
    /** Sentences: measures read at the last visit that clearly move. */
    readonly moves: readonly string[]
    /** How many such courses the sentences tell of. */
    readonly moving: number
  }
  readonly backtest: { readonly made: number; readonly held: number; readonly open: number }
}
