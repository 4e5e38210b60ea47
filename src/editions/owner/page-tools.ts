import type { LanguageTag } from '../../casebook/languages.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import type { OwnerFormatter } from '../../pages/shared/format.ts'
import type { OwnerWords } from '../../pages/words/index.ts'
import type { Renderer } from '../../render/renderer.ts'

/** What owners' pages in one language are made with. */
export interface OwnerPageTools {
  readonly renderer: Renderer
  readonly words: OwnerWords
  readonly formatIn: (units: LengthUnit) => OwnerFormatter
}

export type ForOwners = (language: LanguageTag) => OwnerPageTools
