import { base } from './en/base.ts'

/** The English catalogue: the one place for wording. Another language is another object of this type. */
export const en = { base }

export type Words = typeof en
