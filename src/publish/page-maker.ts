import { ownWords } from '../identity/own-words.ts'
import { en } from '../pages/words/index.ts'
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
  const renderer = createRenderer(templates)
  const own = ownWords([...templates.values()], [en])
  const ownerStyle = ownerAssets(root)
  return {
    others: {
      renderer,
      own,
      ownerAssets: ownerStyle,
      workFactor,
      ownTexts: [ownerStyle.style, ownerStyle.script, ...assetTexts(root)],
    },
    ofHorse: (job, tools) => makeHorse(job, { ...tools, renderer, own }),
    overAll: async (name, all) => {
      const edition = editions[name]
      const files: MadeFile[] = [...(edition?.files(all) ?? [])]
      for (const view of edition?.overAll(all) ?? []) {
        files.push({ path: view.path, text: await renderer.render(view) })
      }
      return files.map((file) => ({ ...file, path: `${editionFolders[name].folder}/${file.path}` }))
    },
  }
}
