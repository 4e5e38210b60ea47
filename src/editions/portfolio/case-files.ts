/** One case of the portfolio: its page, its table of readings, its pictures under names that tell nothing. */
import type { MadeFile } from '../../build/disk/staging.ts'
import type { OwnWords } from '../../identity/common-words.ts'
import { presentPortfolioCase } from '../../pages/portfolio/case.ts'
import { casePage, type ShownPicture } from '../../pages/portfolio/pages.ts'
import type { CaseSummary } from '../../pages/portfolio/view.ts'
import type { HorseInput } from '../../pages/shared/horse-input.ts'
import type { Picture, PictureVariant } from '../../pages/shared/pictures.ts'
import { type PictureStore, placeOf } from '../../pictures/store.ts'
import type { Renderer } from '../../render/renderer.ts'

/** What is kept of a case for the pages over all of them. */
export interface KeptCase {
  readonly summary: CaseSummary
  /** The practice's name as the case was published. */
  readonly practice: string
}

interface MadeCaseFiles {
  readonly kept: KeptCase
  /** Paths within the portfolio. */
  readonly files: readonly MadeFile[]
}

/** The case of a horse, or null where it may not be shown. */
export async function portfolioCase(
  input: HorseInput,
  own: OwnWords,
  renderer: Renderer,
  store: PictureStore,
): Promise<MadeCaseFiles | null> {
  const made = presentPortfolioCase(input, own)
  if (made === null) return null
  const { slug } = made.summary
  const pictures: MadeFile[] = []
  const names = new Map<string, ShownPicture>()
  const shown = (file: string): ShownPicture | null => {
    const picture = input.pictures.get(file)
    if (picture === undefined) return null
    const known = names.get(file)
    if (known) return known
    const { files, view } = named(picture, names.size + 1, store)
    pictures.push(...files.map((one) => ({ ...one, path: `${slug}/${one.path}` })))
    names.set(file, view)
    return view
  }
  const view = casePage(made.page, slug, input.practice, shown, input.format.words)
  const page = { path: view.path, text: await renderer.render(view) }
  const csv = { path: `${slug}/${made.page.csv}`, text: made.csv }
  return { kept: { summary: made.summary, practice: input.practice.name }, files: [page, csv, ...pictures] }
}

const endings = { 'image/avif': 'avif', 'image/webp': 'webp', 'image/jpeg': 'jpg' } as const

/** `picture-3-800.jpg`: the third picture of the page, 800 pixels wide. */
function named(picture: Picture, number: number, store: PictureStore) {
  const files = picture.variants.map((variant) => ({
    variant,
    path: `picture-${number}-${variant.width}.${endings[variant.type]}`,
    copyFrom: placeOf(store, variant),
  }))
  const ofType = (type: PictureVariant['type']) => files.filter(({ variant }) => variant.type === type)
  const sources = (['image/avif', 'image/webp'] as const).flatMap((type) => {
    const some = ofType(type)
    return some.length === 0
      ? []
      : [{ type, srcset: some.map(({ path, variant }) => `${path} ${variant.width}w`).join(', ') }]
  })
  const plain = ofType('image/jpeg').at(-1) ?? files.at(-1)
  return {
    files: files.map(({ path, copyFrom }) => ({ path, copyFrom })),
    view: { src: plain?.path ?? '', sources },
  }
}

/**
 * The practice's name for pages over all cases: a case shows one only once it is approved. Empty where no case does.
 * @param name as it is now
 */
export const approvedName = (name: string, cases: readonly KeptCase[]): string =>
  cases.some(({ practice }) => practice === name) ? name : (cases[0]?.practice ?? '')
