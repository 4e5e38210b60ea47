import { assetTexts } from '../../build/assets.ts'
import { packageRoot, templateSources } from '../../build/program.ts'
import type { PageTools } from '../../editions/edition.ts'
import { ownWords } from '../../identity/own-words.ts'
import { formatters } from '../../pages/shared/format.ts'
import { practiceLanguage, wordsFor } from '../../pages/words/index.ts'
import { platformWords } from '../../pages/words/local.ts'
import { createRenderer } from '../../render/renderer.ts'

/** What pages are made with: one renderer, which stays warm for as long as this is kept. */
export function openPageTools(): PageTools {
  const root = packageRoot()
  const templates = templateSources(root)
  const words = wordsFor(practiceLanguage)
  return {
    renderer: createRenderer(templates, words),
    words,
    formatIn: formatters(words),
    own: ownWords([...templates.values()], [words, platformWords(words.base)]),
    assets: (of) => assetTexts(root, of),
  }
}
