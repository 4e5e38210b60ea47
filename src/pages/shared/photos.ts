/** Photographs as pages show them: each with its marked lines and values, and first against latest of a foot. */
import type { Photo, Visit } from '../../casebook/model.ts'
import { daysBetween } from '../../hoof/dates.ts'
import { type Landmarks, measureLandmarks, shownHalf } from '../../hoof/landmarks.ts'
import type { Words } from '../words/index.ts'
import type { Formatter } from './format.ts'
import { capital } from './format.ts'
import { type MarkedPicture, markedPicture } from './photo-lines.ts'
import { laidOver } from './photo-overlay.ts'
import type { Picture, Pictures, PictureVariant } from './pictures.ts'

/** A picture with its sizes; paths are relative to the horse's folder, where its pages lie. */
export interface ShownPicture {
  /** What every browser shows, for `img`. */
  readonly src: string
  /** Size of the upright original: the page keeps its place before the picture is there. */
  readonly width: number
  readonly height: number
  readonly alt: string
  /** For `source`, the lighter form first. */
  readonly sources: readonly { readonly type: string; readonly srcset: string }[]
}

/** For the partial `photos/photo`. */
export interface ShownPhoto {
  /** Unique within the page. */
  readonly id: string
  /** Path in the casebook, so that the preview can offer to mark points on it. */
  readonly source: string
  readonly picture: ShownPicture
  /** `Left fore, from the outer side, on arrival`. */
  readonly subject: string
  /** The practitioner's words: for the practice alone. */
  readonly caption: string | null
  /** Drawn over the picture and in its margin; null where no points are marked. */
  readonly marked: MarkedPicture | null
  readonly values: readonly { readonly name: string; readonly value: string; readonly error: string }[]
  readonly words: Words['photos']
}

/** For the partial `photos/then-and-now`. */
export interface ThenAndNow {
  /** Unique within the page. */
  readonly id: string
  readonly heading: string
  readonly first: ShownPhoto
  readonly latest: ShownPhoto
  /** `Then: 12 January 2026`. */
  readonly firstLabel: string
  readonly latestLabel: string
  /** How far apart in time. */
  readonly apart: string
  readonly over: Overlay
  readonly words: Words['photos']
}

/** Both pictures in the pixels of the first: what the script needs to lay one over the other. */
export interface Overlay {
  readonly viewBox: string
  readonly first: OverlaidPicture
  readonly latest: OverlaidPicture
  readonly note: string
}

export interface OverlaidPicture {
  readonly src: string
  readonly width: number
  readonly height: number
  /** An SVG transform. */
  readonly transform: string
}

/** The photographs of one visit that could be processed, in the order of the file. */
export function photosOfVisit(visit: Visit, pictures: Pictures, format: Formatter): readonly ShownPhoto[] {
  return visit.photos.flatMap((photo, i) => {
    const picture = pictures.get(photo.file)
    return picture === undefined ? [] : [shown({ photo, visit, picture }, `photo-${i + 1}`, format)]
  })
}

/** First against latest of every foot and view that was taken at two visits or more. */
export function thenAndNow(
  visits: readonly Visit[],
  pictures: Pictures,
  format: Formatter,
): readonly ThenAndNow[] {
  const series = new Map<string, Shot[]>()
  for (const visit of visits) {
    for (const photo of visit.photos) {
      const picture = pictures.get(photo.file)
      if (picture === undefined || photo.foot === null || photo.view === 'other') continue
      const key = `${photo.foot}-${photo.view}`
      series.set(key, [...(series.get(key) ?? []), { photo, visit, picture }])
    }
  }
  return [...series].flatMap(([key, shots]) => {
    const ends = firstAndLatest(shots)
    return ends === null ? [] : [pairView(key, ends, format)]
  })
}

interface Shot {
  readonly photo: Photo
  readonly visit: Visit
  readonly picture: Picture
}

/** Null where all are of one visit. Of the latest visit the picture of the first's stage where there is one. */
export function firstAndLatest<S extends Pick<Shot, 'photo' | 'visit'>>(
  shots: readonly S[],
): readonly [S, S] | null {
  const first = shots[0]
  const last = shots.at(-1)
  if (first === undefined || last === undefined || first.visit.id === last.visit.id) return null
  const likeFirst = shots.findLast(
    ({ visit, photo }) => visit.id === last.visit.id && photo.stage === first.photo.stage,
  )
  return [first, likeFirst ?? last]
}

function pairView(key: string, [first, latest]: readonly [Shot, Shot], format: Formatter): ThenAndNow {
  const { photos: words } = format.words
  const id = `compare-${key.toLowerCase()}`
  const over = laidOver(first, latest)
  const { notes } = words
  const note = first.photo.view === 'solar' ? notes.sole : notes.standing
  return {
    id,
    heading: words.thenAndNow(capital(subjectOf({ ...first.photo, stage: null }, format))),
    first: shown(first, `${id}-first`, format),
    latest: shown(latest, `${id}-latest`, format),
    firstLabel: words.thenOn(format.date(first.visit.date)),
    latestLabel: words.nowOn(format.date(latest.visit.date)),
    apart: words.apart(format.span(daysBetween(first.visit.date, latest.visit.date))),
    over: {
      ...over.placed,
      first: { ...over.placed.first, src: fallbackOf(first.picture).path },
      latest: { ...over.placed.latest, src: fallbackOf(latest.picture).path },
      note: over.isAligned ? (over.isOneScale ? note.aligned : note.notOneScale) : note.notAligned,
    },
    words,
  }
}

/** `left fore, from the outer side, on arrival`. */
export const subjectOf = (
  { foot, view, stage }: Pick<Photo, 'foot' | 'view' | 'stage'>,
  format: Formatter,
): string =>
  format.words.photos.subject([
    foot === null ? format.words.photos.wholeHorse : format.foot(foot),
    format.words.photos.views[view],
    stage === null ? '' : format.words.photos.stages[stage],
  ])

function shown({ photo, visit, picture }: Shot, id: string, format: Formatter): ShownPhoto {
  const { photos: words } = format.words
  const subject = capital(subjectOf(photo, format))
  const values = photo.landmarks === null ? [] : valuesOf(photo.landmarks, photo, format)
  const said = values.map(({ name, value }) => `${name} ${value}`).join(', ')
  const date = format.date(visit.date)
  return {
    id,
    source: `${visit.file.replace(/[^/]*$/, '')}${photo.file}`,
    picture: shownPicture(
      picture,
      said === '' ? words.alt(subject, date) : words.altMeasured(subject, date, said),
    ),
    subject,
    caption: photo.caption,
    marked: photo.landmarks === null ? null : markedPicture(photo.landmarks, photo.view, picture, format),
    values,
    words,
  }
}

const valuesOf = (landmarks: Landmarks, { view }: Photo, format: Formatter): ShownPhoto['values'] =>
  measureLandmarks(landmarks, view).map(({ measure, value, sd }) => ({
    name: format.name(measure),
    value: format.measure(measure, value),
    error: format.words.photos.plusMinus(format.fine(measure, shownHalf(sd))),
  }))

/** A picture as HTML names it: lighter forms by width, and one that every browser shows. */
export function shownPicture(picture: Picture, alt: string): ShownPicture {
  const ofType = (type: PictureVariant['type']) => picture.variants.filter((variant) => variant.type === type)
  return {
    src: fallbackOf(picture).path,
    width: picture.width,
    height: picture.height,
    alt,
    sources: (['image/avif', 'image/webp'] as const).flatMap((type) => {
      const srcset = ofType(type).map(({ path, width }) => `${path} ${width}w`)
      return srcset.length === 0 ? [] : [{ type, srcset: srcset.join(', ') }]
    }),
  }
}

/** The largest JPEG. */
function fallbackOf({ file, variants }: Picture): PictureVariant {
  const variant = variants.findLast(({ type }) => type === 'image/jpeg') ?? variants.at(-1)
  if (variant === undefined) throw new Error(`the picture ${file} has no size`)
  return variant
}
