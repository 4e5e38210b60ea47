import { commonStyles } from '../build/program.ts'
import type { Edition } from './edition.ts'
import type { KeptCase } from './portfolio/kept-case.ts'
import { searched } from './searched.ts'

/** Cases for anyone: anonymous, and searched for all that identifies anyone. */
export const portfolio: Edition<KeptCase> = {
  name: 'portfolio',
  folder: 'portfolio',
  keepsBroken: false,
  assets: { styles: [...commonStyles, 'portfolio'], scripts: ['portfolio'] },
  protection: searched,
  shownIn: { consent: 'portfolio', of: ({ summary }) => summary.slug },
  announcement: ({ site }) => `Portfolio, for anyone: ${site('portfolio', 'index.html')}`,
  ofHorse: async (input, { put, keep, renderer, own, pictures }) => {
    const { portfolioCase } = await import('./portfolio/case-files.ts')
    const found = await portfolioCase(input, own, renderer, pictures)
    if (found === null) return null
    found.files.forEach(put)
    const { summary, profile, times } = found.made
    const { id, owner } = input.horse
    const page = keep(found.page)
    return { horse: id, owner, summary, profile, times, page, practice: input.practice.name }
  },
  review: async (horse, own, hashOf) => {
    // What tells names apart brings word lists along, which a build without a case does without.
    if (!horse.horse.consent.portfolio) return null
    const { reviewOf } = await import('./portfolio/review.ts')
    return reviewOf(horse, horse.assessment.asOf, own, hashOf)
  },
  together: async ({ practice, kept }, tools) => {
    const { casePages } = await import('./portfolio/case-pages.ts')
    return casePages(practice, kept, { ...tools, ...tools.edition })
  },
  pages: async (all, format) => {
    const { portfolioPages } = await import('../pages/portfolio/pages.ts')
    const { approvedName } = await import('./portfolio/kept-case.ts')
    return portfolioPages(
      { ...all.practice, name: approvedName(all.practice.name, all.kept) },
      all.kept.map(({ summary }) => summary),
      format,
    )
  },
}
