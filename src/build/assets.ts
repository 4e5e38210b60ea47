/** The style sheet and scripts that an edition's pages refer to, or carry inside. */
import { controlsShown } from '../casebook/control-characters.ts'
import type { MadeFile } from './disk/staging.ts'
import { browserScripts, styleSheets } from './program.ts'

export interface Assets {
  /** Sheets in the order in which they build on one another. */
  readonly styles: readonly string[]
  readonly scripts: readonly string[]
  /** Whether each page carries them inside, since it stands alone; else they stand beside the pages. */
  readonly isInline?: boolean
}

export interface AssetTexts {
  /** All sheets as one. */
  readonly style: string
  readonly scripts: readonly { readonly name: string; readonly text: string }[]
}

/** Their texts, as they stand in or beside pages. */
export function assetTexts(root: string, { styles, scripts }: Assets): AssetTexts {
  const [sheets, bundled] = [styleSheets(root), browserScripts(root)]
  return {
    style: styles.map((name) => sheets.get(name) ?? '').join('\n'),
    // Pages are published without control characters: one that a library has in a string is written as its escape, else
    // the script in the page would not be the one that the page's policy allows.
    scripts: scripts.map((name) => ({ name, text: controlsShown(bundled.get(name) ?? '') })),
  }
}

/** One sheet and the scripts, below `assets/`; none where pages carry them inside. */
export function assetFiles(root: string, assets: Assets): readonly MadeFile[] {
  if (assets.isInline) return []
  const { style, scripts } = assetTexts(root, assets)
  return [
    { path: 'assets/growdown.css', text: style },
    ...scripts.map(({ name, text }) => ({ path: `assets/${name}.js`, text })),
  ]
}
