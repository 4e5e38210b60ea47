import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Paper } from '../pages/mark/card-page.ts'
import { textOf } from './arguments.ts'
import { type CommandEntry, exit, WrongUse } from './command.ts'

const papers: readonly Paper[] = ['A4', 'letter']

export const card: CommandEntry = {
  usage: 'card [file]',
  does: 'Makes a page to print: a card to stand beside the foot, by which photographs measure as surely as they can.',
  options: [{ flags: '--paper <paper>', does: 'what it is printed on', choices: papers, default: 'A4' }],
  run: async ([file = 'growdown-card.html'], options, world) => {
    const { asUserError, systemCode } = await import('../build/disk/errors.ts')
    const { packageRoot, templates } = await import('../build/program.ts')
    const { cardPage } = await import('../pages/mark/card-page.ts')
    const { practiceLanguage, wordsFor } = await import('../pages/words/index.ts')
    const { createRenderer } = await import('../render/renderer.ts')
    const paper = papers.find((one) => one === textOf(options, 'paper')) ?? 'A4'
    const words = wordsFor(practiceLanguage)
    const page = await createRenderer(templates(packageRoot()), words).render(cardPage(paper, words))
    const path = resolve(world.cwd, file)
    try {
      writeFileSync(path, page, { flag: 'wx' })
    } catch (error) {
      if (systemCode(error) === 'EEXIST') throw new WrongUse(`${file} is there already and is not replaced.`)
      throw asUserError(error, path, 'written')
    }
    world.stdout.write(`${file} is made. Open it, print it at 100 %, and hold a ruler to its check line.\n`)
    return exit.clean
  },
}
