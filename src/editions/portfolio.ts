import { commonStyles } from '../build/program.ts'
import type { CaseSummary } from '../pages/portfolio/view.ts'
import type { Edition } from './edition.ts'
import { searched } from './searched.ts'

/** Cases for anyone: anonymous, and searched for all that identifies anyone. */
export const portfolio: Edition<CaseSummary> = {
  name: 'portfolio',
  folder: 'portfolio',
  keepsBroken: false,
  assets: { styles: [...commonStyles, 'portfolio'], scripts: ['portfolio'] },
  protection: searched,
  shownIn: { consent: 'portfolio', of: ({ slug }) => slug },
  announcement: ({ site }) => `Portfolio, for anyone: ${site('portfolio', 'index.html')}`,
  ofHorse: async (horse, { put, renderer, own, pictures }) => {
    const { portfolioCase } = await import('./portfolio/case-files.ts')
    const made = await portfolioCase(horse, own, renderer, pictures)
    made?.files.forEach(put)
    return made?.summary ?? null
  },
  pages: async (all, format) => {
    const { portfolioPages } = await import('../pages/portfolio/pages.ts')
    return portfolioPages(all.practice, all.kept, format)
  },
}
