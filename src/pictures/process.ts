/**
 * From the pictures that a horse's visits name to safe, light ones: upright, in sRGB, in sizes for phone and desk, with
 * nothing of the source but its pixels. A picture that cannot be used says so and stops only itself.
 */
import type { Sharp } from 'sharp'
import { contentHash } from '../build/disk/content-hash.ts'
import { systemCode, UserError } from '../build/disk/errors.ts'
import { type CardSearch, findCard, searchedSide } from '../card/find-card.ts'
import { type Grey, greyOf, halved } from '../card/grey.ts'
import type { Diagnostic } from '../casebook/diagnostic.ts'
import type { CasebookFolder } from '../casebook/folder.ts'
import type { Horse, Photo } from '../casebook/model.ts'
import type { Picture, Pictures } from '../pages/shared/pictures.ts'
import { focalNoted } from './focal.ts'
import { endsAs, formOf, isOurs } from './form.ts'
import { decodedHeic } from './heic.ts'
import { mostBytes, mostPixels, type Refusal, refused } from './refusal.ts'
import { type KeptPicture, type PictureStore, pictureKey } from './store.ts'

/** Longest that one picture may take, seconds. */
const mostSeconds = 60

/** Widths in pixels: a phone, a phone held close or a column of a page, a desk. Never enlarged. */
const widths = [480, 960, 1600] as const
/** Keeps a strip of a picture from growing beyond all bounds. */
const mostHeight = 4000
/** The one size that is made as JPEG too, for what shows nothing newer. */
const plainWidth = 960
/**
 * WebP beside a JPEG. Measured on two cores with a picture of 12 megapixels (drawn noise at all scales), all three sizes:
 * WebP 0.11 s of processor time and 144 KiB; AVIF at its fastest 0.14 s and 150 KiB, closer to the original by 1.1 to
 * 1.8 dB; AVIF at its usual effort 4.3 s and 127 KiB. On a photograph of 720 pixels the fastest AVIF made 36 KiB where
 * WebP of like quality made 44, in 1.7 times its time. The gain is small, and more browsers show WebP.
 */
const webp = { quality: 78, effort: 2 } as const
const jpeg = { quality: 80, mozjpeg: true } as const
/** Changes whenever pictures would come out otherwise, so that what was kept is not mistaken for it. */
const recipe = JSON.stringify({ version: 2, widths, mostHeight, plainWidth, webp, jpeg })

export interface ProcessedPictures {
  readonly pictures: Pictures
  /** What was found where the card was looked for, by file. */
  readonly cards: ReadonlyMap<string, CardSearch>
  readonly diagnostics: readonly Diagnostic[]
}

/**
 * Every picture of a horse.
 * @param hashes hashes of files known to be unchanged, by path in the casebook: such a picture is not even read
 * @throws UserError when the store cannot be written
 */
export async function processPictures(
  horse: Horse,
  folder: CasebookFolder,
  store: PictureStore,
  hashes: ReadonlyMap<string, string> = new Map(),
): Promise<ProcessedPictures> {
  const sizes = new Map(folder.list().map(({ path, size }) => [path, size]))
  const pictures = new Map<string, Picture>()
  const cards = new Map<string, CardSearch>()
  const diagnostics: Diagnostic[] = []
  const seen = new Set<string>()
  const searched = new Set(
    horse.visits.flatMap(({ photos }) => photos.filter(wantsCard)).map(({ file }) => file),
  )
  for (const visit of horse.visits) {
    for (const { file } of visit.photos) {
      if (seen.has(file)) continue
      seen.add(file)
      const path = `${horse.id}/${file}`
      const source = {
        path,
        size: sizes.get(path) ?? 0,
        hash: hashes.get(path),
        read: () => folder.read(path),
        isSearched: searched.has(file),
      }
      const made = await pictureOf(source, store)
      if ('refusal' in made) {
        diagnostics.push(...refused(made, file, visit.file, folder))
        continue
      }
      const variants = made.variants.map(({ name, ...size }) => ({ path: `pictures/${name}`, ...size }))
      pictures.set(file, { file, width: made.width, height: made.height, variants })
      if (made.card) cards.set(file, made.card)
    }
  }
  return { pictures, cards, diagnostics }
}

/** Points are marked, and no card is written down with them. */
export const wantsCard = ({ landmarks }: Photo): boolean =>
  landmarks !== null && landmarks.card === undefined && landmarks.cardTold !== 'none'

interface Source {
  readonly path: string
  readonly size: number
  readonly hash: string | undefined
  /** Whether the card is looked for in it. */
  readonly isSearched: boolean
  read(): Uint8Array
}

async function pictureOf(source: Source, store: PictureStore): Promise<KeptPicture | Refusal> {
  const { path, size, hash, isSearched } = source
  const known = hash === undefined ? null : store.find(keyOf(path, hash, isSearched))
  if (known) return known
  if (size > mostBytes) return { refusal: 'too many bytes', size }
  let bytes: Uint8Array
  try {
    bytes = source.read()
  } catch (error) {
    if (error instanceof UserError) return { refusal: 'unreadable', reason: error.message }
    throw error
  }
  const key = keyOf(path, contentHash(bytes), isSearched)
  return store.find(key) ?? processOne(source, bytes, key, store)
}

/** The name's ending counts, for a picture under a wrong one is refused. */
const keyOf = (path: string, contentHash: string, isSearched: boolean) =>
  pictureKey(
    contentHash,
    `${recipe}${path.slice(path.lastIndexOf('.')).toLowerCase()}${isSearched ? ' card' : ''}`,
  )

/** The keys of every picture of a casebook, for `sweep`: paths and hashes of content. */
export const pictureKeys = (hashes: Iterable<readonly [path: string, hash: string]>): ReadonlySet<string> =>
  new Set([...hashes].flatMap(([path, hash]) => [keyOf(path, hash, false), keyOf(path, hash, true)]))

async function processOne(
  { path, isSearched }: Source,
  bytes: Uint8Array,
  key: string,
  store: PictureStore,
): Promise<KeptPicture | Refusal> {
  return opened(path, bytes, async (source, sharp) => {
    const made = await sizesOf(source, sharp, key, isSearched)
    store.keep(key, made.picture, made.bytes)
    return made.picture
  })
}

/** The cards beside marked points as a build finds them, without the sizes that it makes. */
export async function cardsIn(
  horse: Horse,
  folder: CasebookFolder,
): Promise<ReadonlyMap<string, CardSearch>> {
  const cards = new Map<string, CardSearch>()
  for (const { file } of horse.visits.flatMap(({ photos }) => photos.filter(wantsCard))) {
    if (cards.has(file)) continue
    const found = await opened(file, folder.read(`${horse.id}/${file}`), searchedIn)
    if ('card' in found) cards.set(file, found)
  }
  return cards
}

type MakeSharp = typeof import('sharp')['default']

/** Decodes a picture within the limits, or says why it cannot be used. */
async function opened<T>(
  path: string,
  bytes: Uint8Array,
  use: (source: Sharp, sharp: MakeSharp) => Promise<T>,
): Promise<T | Refusal> {
  if (bytes.length === 0) return { refusal: 'empty' }
  if (bytes.length > mostBytes) return { refusal: 'too many bytes', size: bytes.length }
  const form = formOf(bytes)
  if (form === null || !isOurs(form)) return { refusal: 'form', form }
  if (!endsAs(path, form)) return { refusal: 'mislabelled', form }
  const { default: sharp } = await import('sharp')
  if (form === 'heic') return openedHeic(bytes, sharp, use)
  // `error` refuses a torn picture and forgives a phone's harmless oddities.
  const open = (limitInputPixels: number | false) => sharp(bytes, { failOn: 'error', limitInputPixels })
  try {
    const { width, height } = await open(false).metadata()
    if (width * height > mostPixels) return { refusal: 'too many pixels', width, height }
    return await use(open(mostPixels).timeout({ seconds: mostSeconds }), sharp)
  } catch (error) {
    if (error instanceof UserError || systemCode(error) !== null) throw error
    return { refusal: 'broken' }
  }
}

async function openedHeic<T>(
  bytes: Uint8Array,
  sharp: MakeSharp,
  use: (source: Sharp, sharp: MakeSharp) => Promise<T>,
): Promise<T | Refusal> {
  let decoded: Awaited<ReturnType<typeof decodedHeic>>
  try {
    decoded = await decodedHeic(bytes, mostPixels)
  } catch {
    return { refusal: 'broken' }
  }
  if ('refusal' in decoded) return decoded
  const { width, height, data } = decoded
  return use(sharp(data, { raw: { width, height, channels: 4 } }), sharp)
}

/** A picture for marking: upright, bare, large enough to see the edge of the horn. */
export interface UprightPicture {
  readonly jpeg: Uint8Array
  /** Of the upright original, which the points count in. */
  readonly width: number
  readonly height: number
  /** As it would be on film of 35 mm, millimetres; null where the camera did not note it. */
  readonly focalLength: number | null
}

/** Longest side of a picture that is shown for marking, pixels. */
const markedSide = 4096

export const uprightPicture = (path: string, bytes: Uint8Array): Promise<UprightPicture | Refusal> =>
  opened(path, bytes, async (source) => {
    const { autoOrient: full, exif } = await source.metadata()
    const shown = source
      .autoOrient()
      .resize({ width: markedSide, height: markedSide, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#fff' })
      .toColourspace('srgb')
    const jpeg = await shown.jpeg({ quality: 92 }).toBuffer()
    return { jpeg, width: full.width, height: full.height, focalLength: focalNoted(exif) }
  })

/**
 * Decodes once, at the largest size wanted, then makes every size from that. Metadata is dropped because it is never
 * asked for; an embedded colour profile is applied and dropped; transparent parts become white.
 */
async function sizesOf(
  source: Sharp,
  sharp: MakeSharp,
  key: string,
  isSearched: boolean,
): Promise<{ readonly picture: KeptPicture; readonly bytes: ReadonlyMap<string, Uint8Array> }> {
  const { full, data, info } = await largest(source)
  const raw = { width: info.width, height: info.height, channels: info.channels }
  const sized = (width: number) => sharp(data, { raw }).resize({ width })
  const bytes = new Map<string, Uint8Array>()
  const variants: KeptPicture['variants'][number][] = []
  const add = async (width: number, type: 'image/webp' | 'image/jpeg') => {
    const made = type === 'image/webp' ? sized(width).webp(webp) : sized(width).jpeg(jpeg)
    const { data: encoded, info: got } = await made.toBuffer({ resolveWithObject: true })
    const name = `${key}-${width}.${type === 'image/webp' ? 'webp' : 'jpg'}`
    bytes.set(name, encoded)
    variants.push({ name, type, width: got.width, height: got.height })
  }
  for (const width of usable(info.width)) await add(width, 'image/webp')
  await add(Math.min(plainWidth, info.width), 'image/jpeg')
  const size = { width: full.width, height: full.height }
  const card = isSearched ? findCard(searchable(data, raw), full) : null
  return { picture: { ...size, variants, ...(card && { card }) }, bytes }
}

/** Upright, at the largest size that is made; `full` is the size of the original. */
async function largest(source: Sharp) {
  const { autoOrient, exif } = await source.metadata()
  const full = { width: autoOrient.width, height: autoOrient.height, focalLength: focalNoted(exif) }
  const { data, info } = await source
    .autoOrient()
    .resize({ width: widths[2], height: mostHeight, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#fff' })
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { full, data, info }
}

async function searchedIn(source: Sharp): Promise<CardSearch> {
  const { full, data, info } = await largest(source)
  return findCard(searchable(data, info), full)
}

/** In grey, and no larger than the detector needs. */
function searchable(...[data, size]: Parameters<typeof greyOf>): Grey {
  const whole = greyOf(data, size)
  return whole.height > searchedSide ? halved(whole) : whole
}

/** The wanted widths that the picture has; its own where it is smaller than the next. */
const usable = (own: number): readonly number[] => [
  ...widths.filter((width) => width < own),
  ...(widths.some((width) => width >= own) ? [own] : []),
]
