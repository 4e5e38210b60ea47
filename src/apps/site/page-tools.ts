import { assetTexts } from '../../build/assets.ts'
import { packageRoot, templateSources, templates as templatesOf } from '../../build/program.ts'
import { type LanguageTag, languageTags } from '../../casebook/languages.ts'
import type { PageTools } from '../../editions/edition.ts'
import type { OwnerPageTools } from '../../editions/owner/page-tools.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { ownWords } from '../../identity/own-words.ts'
import { formatters } from '../../pages/shared/format.ts'
import { ownerWordsFor, practiceLanguage, wordsFor } from '../../pages/words/index.ts'
import { platformWords } from '../../pages/words/local.ts'
import { createRenderer, type Templates } from '../../render/renderer.ts'
import { lazily } from '../../trend/lazily.ts'

/** What pages are made with: a renderer for each language, which stays warm for as long as this is kept. */
export function openPageTools(): PageTools {
  const root = packageRoot()
  const templates = templatesOf(root)
  const words = wordsFor(practiceLanguage)
  const practiceTools = { renderer: createRenderer(templates, words), words, formatIn: formatters(words) }
  const known = new Map<LanguageTag, OwnerPageTools>([[practiceLanguage, practiceTools]])
  const forOwners = (language: LanguageTag): OwnerPageTools => {
    const tools = known.get(language) ?? ownerPageTools(templates, language)
    known.set(language, tools)
    return tools
  }
  const others = languageTags.map(ownerWordsFor)
  return {
    ...practiceTools,
    forOwners,
    own: gatheredOnce(() =>
      ownWords(
        [...templateSources(root).values()],
        [words, ...others.flatMap((one) => [one, platformWords(one.base)])],
      ),
    ),
    assets: (of) => assetTexts(root, of),
  }
}

/** A practice without a portfolio asks for none of them. */
function gatheredOnce(gather: () => OwnWords): OwnWords {
  const own = lazily(gather)
  return {
    get single() {
      return own().single
    },
    get pairs() {
      return own().pairs
    },
    get written() {
      return own().written
    },
  }
}

function ownerPageTools(templates: Templates, language: LanguageTag): OwnerPageTools {
  const words = ownerWordsFor(language)
  return { renderer: createRenderer(templates, words), words, formatIn: formatters(words) }
}
