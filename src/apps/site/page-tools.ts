import { assetTexts } from '../../build/assets.ts'
import { packageRoot, templateSources } from '../../build/program.ts'
import type { PageTools } from '../../editions/edition.ts'
import { ownWords } from '../../identity/own-words.ts'
import { en } from '../../pages/words/index.ts'
import { createRenderer } from '../../render/renderer.ts'

/** What pages are made with: one renderer, which stays warm for as long as this is kept. */
export function openPageTools(): PageTools {
  const root = packageRoot()
  const templates = templateSources(root)
  return {
    renderer: createRenderer(templates),
    own: ownWords([...templates.values()], [en]),
    assets: (of) => assetTexts(root, of),
  }
}
