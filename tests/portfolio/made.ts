/** Cases made of the fixture of the pages that go out. */
import type { Horse, Practice } from '../../src/casebook/model.ts'
import { ownWords } from '../../src/identity/own-words.ts'
import { type MadeCase, presentPortfolioCase } from '../../src/pages/portfolio/case.ts'
import { english } from '../english.ts'
import { practice, zoe } from '../owner/zoe.ts'
import { input } from '../owner/zoe-assessed.ts'

export const own = ownWords([], [english.portfolio])

export const inDays: Practice = { ...practice, portfolio: { ...practice.portfolio, time: 'days' } }

export function made(horse: Horse = zoe, of: Practice = practice): MadeCase {
  const found = presentPortfolioCase({ ...input, horse, practice: of }, own)
  if (found === null) throw new Error('the fixture has consent')
  return found
}
