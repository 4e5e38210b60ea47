/** What anyone who finds the yard page may see: the practice's name, how to unlock it, and what is locked. */
import type { Practice } from '../../casebook/model.ts'
import type { PageView } from '../shared/page.ts'
import type { Words } from '../words/index.ts'

export interface YardPageParts {
  readonly policy: string
  readonly style: string
  /** In their order: the one that unlocks comes first, so that nobody waits for the others. */
  readonly scripts: readonly string[]
  /** The small age file, in its text form, that the passphrase opens. */
  readonly armored: string
  readonly checksum: string
  /** Where the encrypted text is put in once it is made: too long to go through a template. */
  readonly sealed: string
}

export function yardPage({ name }: Pick<Practice, 'name'>, parts: YardPageParts, words: Words): PageView {
  const { locked } = words.yard
  const { opening, empty, wrong, damaged, weak, insecure } = locked
  return {
    path: 'index.html',
    template: 'yard/locked',
    model: {
      lang: words.base.lang,
      title: locked.title(name),
      practice: name,
      says: JSON.stringify({ opening, empty, wrong, damaged, weak, insecure }),
      ...parts,
      w: locked,
      marking: words.mark,
    },
  }
}

/** So that the page can be put among a phone's programs (W3C, Web Application Manifest). All addresses lie beside it. */
export const yardManifest = ({ name }: Pick<Practice, 'name'>, words: Words): string =>
  JSON.stringify({
    id: './',
    name: words.yard.locked.title(name),
    short_name: name,
    lang: words.base.lang,
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#fdfbf6',
    theme_color: '#fdfbf6',
    icons: yardIcons.flatMap(({ file, size, purposes }) =>
      purposes.map((purpose) => ({ src: file, sizes: `${size}x${size}`, type: 'image/png', purpose })),
    ),
  })

/** Made from the drawing `templates/icons/hoof.svg`, which leaves the margin that a phone may cut away. */
export const yardIcons = [
  { file: 'icon-192.png', size: 192, purposes: ['any', 'maskable'] },
  { file: 'icon-512.png', size: 512, purposes: ['any', 'maskable'] },
] as const
