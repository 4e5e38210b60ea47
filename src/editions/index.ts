/** The editions, in the order in which they are built. */
import type { Edition } from './edition.ts'
import { owner } from './owner.ts'
import { portfolio } from './portfolio.ts'
import { practice } from './practice.ts'

export const editions: readonly Edition[] = [practice, owner, portfolio]
