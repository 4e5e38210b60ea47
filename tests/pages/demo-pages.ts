/** The demo casebook's practice pages, as a build makes them but for its pictures. */
import { packageRoot, templates } from '../../src/build/program.ts'
import { presentHorse } from '../../src/pages/practice/index.ts'
import type { HorseInput } from '../../src/pages/shared/horse-input.ts'
import type { PageView } from '../../src/pages/shared/page.ts'
import { createRenderer } from '../../src/render/renderer.ts'
import { lessonsOf } from '../../src/trend/model/practice.ts'
import { allPictures, demoCasebook, inputsOf } from '../editions/demo-inputs.ts'
import { english } from '../english.ts'

export const demoDay = '2026-11-25'

const casebook = demoCasebook(demoDay)
const { learned } = lessonsOf(casebook.horses, demoDay)

export const demoPages: readonly { readonly input: HorseInput; readonly pages: readonly PageView[] }[] =
  inputsOf(casebook, demoDay, { learned, pictures: allPictures }).map((input) => ({
    input,
    pages: [...presentHorse(input)],
  }))

const renderer = createRenderer(templates(packageRoot()), english)
export const renderDemo = (page: PageView): Promise<string> => renderer.render(page)
