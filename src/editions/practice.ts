import { commonStyles } from '../build/program.ts'
import type { HorseSummary } from '../pages/shared/summary.ts'
import type { Edition } from './edition.ts'

/** Everything, for the practitioner alone. */
export const practice: Edition<HorseSummary> = {
  name: 'practice',
  folder: 'practice',
  keepsBroken: true,
  assets: { styles: [...commonStyles, 'photos'], scripts: ['filter', 'compare'] },
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
    return presentFront(all.practice, all.kept, all.broken, all.asOf, all.addresses.owner ?? {}, format)
  },
  files: async (all, format) => {
    const { visitsCalendar } = await import('./practice/visits-calendar.ts')
    return [{ path: 'visits.ics', text: visitsCalendar(all.practice, all.kept, all.asOf, format) }]
  },
}
