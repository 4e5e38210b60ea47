/** The page of each case, finished: how closely its patient may be told depends on all cases of the portfolio. */
import type { Builder } from '../../build/builder.ts'
import { cacheKey } from '../../build/cache-key.ts'
import type { Unit } from '../../build/unit.ts'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import type { Practice } from '../../casebook/model.ts'
import { coarsen } from '../../pages/portfolio/coarsen.ts'
import { patientPart, withPatient } from '../../pages/portfolio/pages.ts'
import type { Words } from '../../pages/words/index.ts'
import type { Renderer } from '../../render/renderer.ts'
import type { KeptCase } from './kept-case.ts'
import { aloneWarnings, sharedTimesWarnings } from './linking.ts'

interface CasePageTools {
  /** Of the portfolio below the site. */
  readonly folder: string
  /** Names the program that builds. */
  readonly program: string
  readonly builder: Pick<Builder, 'fragment'>
  /** Takes a warning to the person who builds. */
  report(diagnostic: Diagnostic): void
  open(): Promise<{ readonly renderer: Renderer; readonly words: Words }>
}

/** A unit for each case. Its key holds what is told of the patient, so that it is made again when that changes. */
export function casePages(
  practice: Practice,
  kept: readonly KeptCase[],
  { folder, program, builder, report, open }: CasePageTools,
): readonly Unit<null>[] {
  const told = coarsen(kept)
  for (const warning of aloneWarnings(kept, told)) report(warning)
  for (const warning of sharedTimesWarnings(kept, practice)) report(warning)
  return kept.flatMap(({ horse, summary, page }) => {
    const one = told.get(horse)
    if (one === undefined) return []
    return {
      name: `${folder}: page of ${horse}`,
      key: cacheKey(program, page, summary.slug, one),
      make: async ({ put }) => {
        const { renderer, words } = await open()
        const patient = await renderer.render(patientPart(one, words))
        put({
          path: `${folder}/${summary.slug}/index.html`,
          text: withPatient(builder.fragment(page), patient),
        })
        return null
      },
    }
  })
}
