/** One horse's part of the yard page, packed. It is kept in the fragment cache until the page is locked. */
import { gzipSync } from 'node:zlib'
import { daysBetween } from '../../hoof/dates.ts'
import type { HorseInput } from '../../pages/shared/horse-input.ts'
import type { Picture } from '../../pages/shared/pictures.ts'
import { latestPhotos, yardHorse, yardHorsePage } from '../../pages/yard/horse.ts'
import { bytesOf, type PictureStore } from '../../pictures/store.ts'
import type { Renderer } from '../../render/renderer.ts'
import { arrivedOf } from '../../yard/arrived.ts'
import { knowledgeOf } from '../../yard/knowledge.ts'
import type { YardHorse, YardHorsePart, YardIndex } from '../../yard/payload.ts'

/** What the build keeps of a horse for the page over all of them. */
export interface YardFragment {
  readonly row: Omit<YardHorse, 'isBroken'>
  /** Name of the part in the fragment cache: gzipped JSON in base64. */
  readonly part: string
  /** Drafts of the page that stand in its files. */
  readonly arrived: YardIndex['arrived']
}

interface FragmentTools {
  readonly renderer: Renderer
  readonly pictures: PictureStore
  /** The horse's own folder as it stands in the casebook. */
  readonly folder: {
    texts(): Readonly<Record<string, string>>
    readonly pictures: readonly string[]
  }
  keep(text: string): string
}

/** Pictures are heavy: a horse that is seen later than this has none in the pocket. */
const daysWithPhotos = 14

export async function yardFragment(
  input: HorseInput,
  { renderer, pictures, folder, keep }: FragmentTools,
): Promise<YardFragment> {
  const { horse, practice, assessment } = input
  const { due } = assessment.nextVisit
  const isSoon = due !== null && daysBetween(assessment.asOf, due) <= daysWithPhotos
  const latest = isSoon ? latestPhotos(input) : []
  const photos = await Promise.all(
    latest.map(async ({ file, caption }) => ({
      caption,
      src: await smallPicture(input.pictures.get(file), pictures),
    })),
  )
  const shown = photos.flatMap(({ src, caption }) => (src === null ? [] : [{ src, caption }]))
  const part: YardHorsePart = {
    id: horse.id,
    html: await renderer.render(yardHorsePage(input, shown)),
    files: folder.texts(),
    pictures: folder.pictures,
    knowledge: knowledgeOf(horse, practice, assessment),
  }
  return {
    row: yardHorse(input),
    arrived: arrivedOf([horse]),
    part: keep(gzipSync(JSON.stringify(part)).toString('base64')),
  }
}

/** Bytes that a picture may weigh in the page. */
const mostBytes = 30_000
const smallWidths = [360, 280, 200] as const

/** As a data URI: the smallest size where that is light enough, else made smaller. */
async function smallPicture(picture: Picture | undefined, store: PictureStore): Promise<string | null> {
  const variant = picture?.variants
    .filter(({ type }) => type === 'image/webp')
    .toSorted((a, b) => a.width - b.width)[0]
  const bytes = variant === undefined ? null : bytesOf(store, variant)
  if (bytes === null) return null
  if (bytes.length <= mostBytes) return asDataUri(bytes)
  const { default: sharp } = await import('sharp')
  for (const width of smallWidths) {
    const smaller = await sharp(bytes).resize({ width }).webp({ quality: 60, effort: 2 }).toBuffer()
    if (smaller.length <= mostBytes) return asDataUri(smaller)
  }
  return null
}

const asDataUri = (bytes: Uint8Array): string =>
  `data:image/webp;base64,${Buffer.from(bytes).toString('base64')}`
