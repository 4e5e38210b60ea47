import { ownWords } from '../identity/own-words.ts'
import { formatters } from '../pages/shared/format.ts'
import { practiceLanguage, wordsFor } from '../pages/words/index.ts'
import { platformWords } from '../pages/words/local.ts'
import { createRenderer } from '../render/renderer.ts'
import { assetTexts, ownerAssets } from './assets.ts'
import { editionFolders } from './edition-folders.ts'
import { type AllHorses, editions } from './editions.ts'
import { makeHorse } from './horse.ts'
import { workFactor } from './locked/lock.ts'
import type { Edition, MadeFile } from './made.ts'
import type { OthersMaker } from './others.ts'
import { packageRoot, templateSources } from './package.ts'
import type { MakeHorse } from './staged-horse.ts'

export interface PageMaker {
  readonly ofHorse: MakeHorse
  readonly others: OthersMaker
  overAll(edition: Edition, all: AllHorses): Promise<readonly MadeFile[]>
}

/** Makes pages with one renderer, which stays warm for as long as this is kept. */
export function openPageMaker(): PageMaker {
  const root = packageRoot()
  const templates = templateSources(root)
  const words = wordsFor(practiceLanguage)
  const formatIn = formatters(words)
  const renderer = createRenderer(templates, words)
  const own = ownWords([...templates.values()], [words, platformWords(words.base)])
  const ownerStyle = ownerAssets(root)
  return {
    others: {
      renderer,
      words,
      own,
      ownerAssets: ownerStyle,
      workFactor,
      ownTexts: [ownerStyle.style, ownerStyle.script, ...assetTexts(root)],
    },
    ofHorse: (job, tools) => makeHorse(job, { ...tools, renderer, formatIn, own }),
    overAll: async (name, all) => {
      const edition = editions[name]
      const format = formatIn(all.practice.units)
      const files: MadeFile[] = [...(edition?.files(all, format) ?? [])]
      for (const view of edition?.overAll(all, format) ?? []) {
        files.push({ path: view.path, text: await renderer.render(view) })
      }
      return files.map((file) => ({ ...file, path: `${editionFolders[name].folder}/${file.path}` }))
    },
  }
}
