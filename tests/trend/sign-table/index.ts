/**
 * Every danger sign, as agreed: what raises it, at which level, what stops just short of it, and what ends it.
 * Shared by the tests of the engine and of the pages.
 */
import { bodyRows } from './body.ts'
import { foundRows } from './found.ts'
import { goingRows } from './going.ts'
import { measuredRows } from './measured.ts'
import type { SignRow } from './sign-row.ts'

export type { SignRow, Sketch } from './sign-row.ts'

export const signTable: readonly SignRow[] = [...foundRows, ...goingRows, ...bodyRows, ...measuredRows]
