/** One horse's part of its owner's page, with its pictures inside. Its markup is kept in the fragment cache until the page is locked. */
import type { LanguageTag } from '../../casebook/languages.ts'
import type { Owner, Practice } from '../../casebook/model.ts'
import { presentOwnerHorse } from '../../pages/owner/horse.ts'
import { ownerPart } from '../../pages/owner/pages.ts'
import type { HorseBrief } from '../../pages/owner/view.ts'
import type { HorseInput } from '../../pages/shared/horse-input.ts'
import type { Picture, PictureVariant } from '../../pages/shared/pictures.ts'
import { bytesOf, type PictureStore } from '../../pictures/store.ts'
import type { ForOwners } from './page-tools.ts'

/** One horse's part of its owner's page. Kept between builds, so small. */
export interface HorseFragment {
  readonly owner: string
  readonly anchor: string
  readonly name: string
  readonly brief: HorseBrief
  /** Name of its markup in the fragment cache. */
  readonly fragment: string
}

/** The part of this horse, or null where the owner's page has no consent to show it. */
export async function ownerFragment(
  input: Omit<HorseInput, 'format'>,
  forOwners: ForOwners,
  store: PictureStore,
  keep: (text: string) => string,
): Promise<HorseFragment | null> {
  const { id, owner } = input.horse
  const { practice } = input
  const { renderer, words, formatIn } = forOwners(languageOf(practice, owner))
  const view = presentOwnerHorse({ ...input, format: formatIn(practice.units) })
  if (view === null || owner === null) return null
  const page = ownerPart(view, id, (file) => dataUri(input.pictures.get(file), store), words)
  return {
    owner,
    anchor: id,
    name: view.name,
    brief: view.brief,
    fragment: keep(await renderer.render(page)),
  }
}

/** Owners who have at least one horse to be shown, in the order of practice.md. */
export const ownersShown = (practice: Practice, fragments: readonly HorseFragment[]): readonly Owner[] =>
  practice.owners.filter(({ id }) => fragments.some(({ owner }) => owner === id))

/** The language of an owner's page: the owner's own, else the practice's. */
export const languageOf = ({ owners, language }: Practice, owner: string | null): LanguageTag =>
  owners.find(({ id }) => id === owner)?.language ?? language

/** Wide enough for a phone held close, small enough for a page that carries all of them. */
const wantedWidth = 800

function dataUri(picture: Picture | undefined, store: PictureStore): string | null {
  if (picture === undefined) return null
  const variant = suited(picture.variants)
  const bytes = variant === null ? null : bytesOf(store, variant)
  return variant === null || bytes === null
    ? null
    : `data:${variant.type};base64,${Buffer.from(bytes).toString('base64')}`
}

/** The smallest that is wide enough, in a form that every browser shows. */
function suited(variants: readonly PictureVariant[]): PictureVariant | null {
  const byForm = (type: PictureVariant['type']) =>
    variants.filter((variant) => variant.type === type).toSorted((a, b) => a.width - b.width)
  const some =
    [byForm('image/webp'), byForm('image/jpeg'), byForm('image/avif')].find(({ length }) => length > 0) ?? []
  return some.find(({ width }) => width >= wantedWidth) ?? some.at(-1) ?? null
}
