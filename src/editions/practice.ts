import { commonStyles } from '../build/program.ts'
import type { HorseSummary } from '../pages/shared/summary.ts'
import type { Edition } from './edition.ts'

/** Everything, for the practitioner alone. */
export const practice: Edition<HorseSummary> = {
  name: 'practice',
  folder: 'practice',
  keepsBroken: true,
  assets: { styles: [...commonStyles, 'photos'], scripts: ['search', 'compare'] },
  protection: null,
  announcement: ({ site }) => `Open ${site('practice', 'index.html')}`,
  ofHorse: async (horse, { put, renderer, pictures }) => {
    const { presentHorse, summarise } = await import('../pages/practice/index.ts')
    const { pictureFiles } = await import('../pictures/store.ts')
    pictureFiles(horse.horse.id, horse.pictures, pictures).forEach(put)
    for (const view of presentHorse(horse)) put({ path: view.path, text: await renderer.render(view) })
    return summarise(horse)
  },
  pages: async (all, format) => {
    const { presentFront } = await import('../pages/practice/index.ts')
    const { practice, kept: summaries, broken, asOf, addresses, lessons } = all
    const tokens = addresses.owner ?? {}
    return presentFront({ practice, summaries, broken, asOf, tokens, lessons }, format)
  },
  files: async (all, format) => {
    const { visitsCalendar } = await import('./practice/visits-calendar.ts')
    return [{ path: 'visits.ics', text: visitsCalendar(all.practice, all.kept, all.asOf, format) }]
  },
}
