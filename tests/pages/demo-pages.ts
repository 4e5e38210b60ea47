/** The demo casebook's practice pages, as a build makes them but for its pictures. */
import { packageRoot, templateSources } from '../../src/build/program.ts'
import { readCasebook } from '../../src/casebook/read.ts'
import { presentHorse } from '../../src/pages/practice/index.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import type { PageView } from '../../src/pages/shared/page.ts'
import { createRenderer } from '../../src/render/renderer.ts'
import { assess } from '../../src/trend/assess.ts'
import { lessonsOf } from '../../src/trend/model/practice.ts'
import { diskFolder } from '../casebook/disk-folder.ts'
import { english, formatIn } from '../english.ts'

export const demoDay = '2026-11-25'

const { casebook } = readCasebook(diskFolder('cases'), demoDay)
if (casebook === null) throw new Error('the demo casebook cannot be read')
const { practice, horses } = casebook
const { learned } = lessonsOf(horses, demoDay)
const format = formatIn(practice.units)

export const demoInputs: readonly HorseInput[] = horses.map((horse) => ({
  horse,
  assessment: assess(horse, practice, demoDay, learned),
  practice,
  format,
  pictures: new Map(
    horse.visits
      .flatMap(({ photos }) => photos)
      .map(({ file }) => [
        file,
        {
          file,
          width: 1600,
          height: 1200,
          variants: [{ path: `${file}.jpg`, type: 'image/jpeg', width: 800, height: 600 } as const],
        },
      ]),
  ),
}))

export const demoPages: readonly { readonly input: HorseInput; readonly pages: readonly PageView[] }[] =
  demoInputs.map((input) => ({ input, pages: [...presentHorse(input)] }))

const renderer = createRenderer(templateSources(packageRoot()), english)
export const renderDemo = (page: PageView): Promise<string> => renderer.render(page)
