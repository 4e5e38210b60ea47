/** The style sheet and scripts that an edition's pages refer to. */
import { editionFolders } from './edition-folders.ts'
import type { OwnerAssets } from './locked/owner-page.ts'
import type { Edition, MadeFile } from './made.ts'
import { browserScripts, commonStyles, styleSheets } from './package.ts'

/** Sheets in the order in which they build on one another, and scripts, by edition. */
const assets: Readonly<
  Record<Edition, { readonly styles: readonly string[]; readonly scripts: readonly string[] }>
> = {
  practice: { styles: [...commonStyles, 'photos'], scripts: ['filter', 'compare'] },
  owner: { styles: [], scripts: [] },
  portfolio: { styles: [...commonStyles, 'portfolio'], scripts: ['portfolio'] },
}

/** What an owner's page carries inside: it stands alone. */
export function ownerAssets(root: string): OwnerAssets {
  const sheets = styleSheets(root)
  return {
    style: [...commonStyles, 'owner'].map((name) => sheets.get(name) ?? '').join('\n'),
    script: browserScripts(root).get('unlock') ?? '',
  }
}

/** The sheets and scripts that stand beside published pages: the tool's own, so not searched for names. */
export const assetTexts = (root: string): readonly string[] =>
  assetFiles(root, 'portfolio').flatMap((file) => ('text' in file ? [file.text] : []))

/** One sheet and the scripts, below the edition's `assets/`. */
export function assetFiles(root: string, edition: Edition): readonly MadeFile[] {
  const folder = `${editionFolders[edition].folder}/assets`
  const sheets = styleSheets(root)
  const scripts = browserScripts(root)
  const { styles, scripts: names } = assets[edition]
  if (styles.length === 0) return []
  const text = styles.map((name) => sheets.get(name) ?? '').join('\n')
  return [
    { path: `${folder}/growdown.css`, text },
    ...names.map((name) => ({ path: `${folder}/${name}.js`, text: scripts.get(name) ?? '' })),
  ]
}
