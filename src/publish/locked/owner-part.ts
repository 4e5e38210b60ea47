/** One horse's part of its owner's page, with its pictures inside. Kept in the work folder until the page is locked. */
import { presentOwnerHorse } from '../../pages/owner/horse.ts'
import { type OwnerPart, ownerPart } from '../../pages/owner/pages.ts'
import type { HorseInput } from '../../pages/shared/horse-input.ts'
import type { Picture, PictureVariant } from '../../pages/shared/pictures.ts'
import type { Renderer } from '../../render/renderer.ts'

export interface MadePart {
  /** Id of the owner whose page it belongs to. */
  readonly owner: string
  readonly part: OwnerPart
}

/** The bytes of a processed picture; null when they are gone. */
export type PictureBytes = (picture: Picture, variant: PictureVariant) => Uint8Array | null

/** The part of this horse, or null where the owner's page has no consent to show it. */
export async function ownerPartOf(
  input: HorseInput,
  renderer: Renderer,
  bytesOf: PictureBytes,
): Promise<MadePart | null> {
  const view = presentOwnerHorse(input)
  const { id, owner } = input.horse
  if (view === null || owner === null) return null
  const page = ownerPart(view, id, (file) => dataUri(input.pictures.get(file), bytesOf), input.format.words)
  return { owner, part: { anchor: id, name: view.name, html: await renderer.render(page) } }
}

/** Wide enough for a phone held close, small enough for a page that carries all of them. */
const wantedWidth = 800

function dataUri(picture: Picture | undefined, bytesOf: PictureBytes): string | null {
  if (picture === undefined) return null
  const variant = suited(picture.variants)
  const bytes = variant === null ? null : bytesOf(picture, variant)
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
