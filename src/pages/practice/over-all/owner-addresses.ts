import type { Practice } from '../../../casebook/model.ts'
import type { HorseSummary } from '../../shared/summary.ts'

/** Whose page is where: for the practitioner alone, on the office page. */
export interface OwnerAddress {
  readonly name: string
  readonly horses: string
  /** Within the site. Not linked: a build of the practice's pages alone may stand without it. */
  readonly path: string
}

/** Owners whose page has a token, in the order of practice.md. Holds no passphrase. */
export const ownerAddresses = (
  practice: Practice,
  summaries: readonly HorseSummary[],
  tokens: Readonly<Record<string, string>>,
): readonly OwnerAddress[] =>
  practice.owners.flatMap(({ id, name }) => {
    const token = tokens[id]
    if (token === undefined) return []
    const horses = summaries.filter(({ ownerId }) => ownerId === id).map((one) => one.name)
    const path = `owners/${token}/`
    return [{ name, horses: horses.join(', '), path }]
  })
