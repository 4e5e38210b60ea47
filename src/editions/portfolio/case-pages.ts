/** The page of each case, finished: how closely its patient may be told depends on all cases of the portfolio. */
import { cacheKey } from '../../build/cache-key.ts'
import type { Unit } from '../../build/unit.ts'
import { coarsen } from '../../pages/portfolio/coarsen.ts'
import { patientPart, withPatient } from '../../pages/portfolio/pages.ts'
import type { AllHorses, TogetherTools } from '../edition.ts'
import type { KeptCase } from './kept-case.ts'
import { aloneWarnings, sharedTimesWarnings } from './linking.ts'

/** A unit for each case. Its key holds what is told of the patient, so it is made again when that changes. */
export function casePages(
  { practice, kept }: AllHorses<KeptCase>,
  { edition, program, builder, report, open }: TogetherTools,
): readonly Unit<null>[] {
  const told = coarsen(kept)
  for (const warning of aloneWarnings(kept, told)) report(warning)
  for (const warning of sharedTimesWarnings(kept, practice)) report(warning)
  return kept.flatMap(({ horse, summary, page }) => {
    const profile = told.get(horse)?.profile
    if (profile === undefined) return []
    return {
      name: `${edition.folder}: page of ${horse}`,
      key: cacheKey(program, page, summary.slug, profile),
      make: async ({ put }) => {
        const { renderer, words } = await open()
        const patient = await renderer.render(patientPart(profile, words))
        put({
          path: `${edition.folder}/${summary.slug}/index.html`,
          text: withPatient(builder.fragment(page), patient),
        })
        return null
      },
    }
  })
}
