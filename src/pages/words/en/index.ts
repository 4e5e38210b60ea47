/** All wording in English. */
import { assessment } from './assessment.ts'
import { base } from './base.ts'
import { calendar } from './calendar.ts'
import { card } from './card.ts'
import { cautions } from './cautions/index.ts'
import { figures } from './figures.ts'
import { mark } from './mark.ts'
import { owner } from './owner.ts'
import { photos } from './photos.ts'
import { portfolio } from './portfolio.ts'
import { practice } from './practice.ts'
import { reference } from './reference.ts'
import { review } from './review.ts'
import { starter } from './starter.ts'
import { yard } from './yard.ts'
import { yardForm } from './yard-form.ts'

export const en = {
  assessment,
  base,
  calendar,
  cautions,
  figures,
  card,
  mark,
  owner,
  photos,
  portfolio,
  practice,
  reference,
  review,
  starter,
  yard,
  yardForm,
}
