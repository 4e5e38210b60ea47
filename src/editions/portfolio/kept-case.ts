import type { FineProfile } from '../../pages/portfolio/profile.ts'
import type { CaseSummary } from '../../pages/portfolio/view.ts'

/** What is kept of each case between builds. All of it but the summary stays with the program. */
export interface KeptCase {
  /** Id of the horse. */
  readonly horse: string
  readonly owner: string | null
  readonly summary: CaseSummary
  readonly profile: FineProfile
  readonly times: readonly number[]
  /** Name in the fragment cache of its page, with a place left for the patient. */
  readonly page: string
  /** The practice's name as the case was published. */
  readonly practice: string
}

/**
 * The practice's name for pages over all cases: a case shows one only once it is approved. Empty where no case does.
 * @param name as it is now
 */
export const approvedName = (name: string, cases: readonly KeptCase[]): string =>
  cases.some(({ practice }) => practice === name) ? name : (cases[0]?.practice ?? '')
