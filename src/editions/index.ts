/** The editions, in the order in which they are built. */
import type { Edition } from './edition.ts'
import { owner } from './owner.ts'
import { portfolio } from './portfolio.ts'
import { practice } from './practice.ts'
import { yard } from './yard.ts'

export const editions: readonly Edition[] = [practice, yard, owner, portfolio]
