import { commonStyles } from '../build/program.ts'
import type { Edition } from './edition.ts'
import type { KeptCase } from './portfolio/case-files.ts'
import { searched } from './searched.ts'

/** Cases for anyone: anonymous, and searched for all that identifies anyone. */
export const portfolio: Edition<KeptCase> = {
  name: 'portfolio',
  folder: 'portfolio',
  keepsBroken: false,
  assets: { styles: [...commonStyles, 'portfolio'], scripts: ['portfolio'] },
  protection: searched,
  announcement: ({ site }) => `Portfolio, for anyone: ${site('portfolio', 'index.html')}`,
  ofHorse: async (horse, { put, renderer, own, pictures }) => {
    const { portfolioCase } = await import('./portfolio/case-files.ts')
    const made = await portfolioCase(horse, own, renderer, pictures)
    made?.files.forEach(put)
    return made?.kept ?? null
  },
  review: async (horse, own, hashOf) => {
    const { reviewOf } = await import('./portfolio/review.ts')
    return reviewOf(horse, horse.assessment.visits, own, hashOf)
  },
  pages: async (all, format) => {
    const { portfolioPages } = await import('../pages/portfolio/pages.ts')
    const { approvedName } = await import('./portfolio/case-files.ts')
    const summaries = all.kept.map(({ summary }) => summary)
    return portfolioPages(
      { ...all.practice, name: approvedName(all.practice.name, all.kept) },
      summaries,
      format,
    )
  },
}
