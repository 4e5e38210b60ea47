/** What an owner's page says, in German. */
import type { OwnerWords } from '../catalogue.ts'
import { base } from './base.ts'
import { cautions } from './cautions/index.ts'
import { figures } from './figures.ts'
import { owner } from './owner.ts'

export const de: OwnerWords = { base, cautions, figures, owner }
