import { assessment } from './en/assessment.ts'
import { base } from './en/base.ts'
import { calendar } from './en/calendar.ts'
import { cautions } from './en/cautions.ts'
import { figures } from './en/figures.ts'
import { mark } from './en/mark.ts'
import { owner } from './en/owner.ts'
import { photos } from './en/photos.ts'
import { portfolio } from './en/portfolio.ts'
import { practice } from './en/practice.ts'
import { reference } from './en/reference.ts'
import { starter } from './en/starter.ts'

/** The English catalogue: the one place for wording. Another language is another object of this type. */
export const en = {
  assessment,
  base,
  calendar,
  cautions,
  figures,
  mark,
  owner,
  photos,
  portfolio,
  practice,
  reference,
  starter,
}

export type Words = typeof en
