import type { Photo, Visit } from '../../casebook/model.ts'
import type { Pictures } from '../shared/pictures.ts'
import type { CaseContext, CaseSubject } from './context.ts'
import type { CaseShot, Shots } from './view.ts'

interface TakenPhoto {
  readonly photo: Photo
  readonly visit: Visit
}

/**
 * The photographs that the case shows: those of the first visit, and the latest of each foot and view. None without
 * consent.
 * @param has whether there is such a picture, by its path in the horse's folder
 */
export function photosShown(
  { horse, first, visits }: Pick<CaseSubject, 'horse' | 'first' | 'visits'>,
  has: (file: string) => boolean,
): { readonly first: readonly TakenPhoto[]; readonly later: readonly TakenPhoto[] } {
  if (!horse.consent.photos) return { first: [], later: [] }
  const key = ({ foot, view }: Photo) => `${foot}|${view}`
  const latest = new Map<string, TakenPhoto>()
  for (const visit of visits) {
    if (visit.id === first.id) continue
    for (const photo of visit.photos) if (has(photo.file)) latest.set(key(photo), { photo, visit })
  }
  const atFirst = first.photos.filter(({ file }) => has(file)).map((photo) => ({ photo, visit: first }))
  return { first: atFirst, later: [...latest.values()] }
}

/** So many stand open, side by side. */
const fewShots = 2

/** Pictures as the page shows them; no captions. */
export function caseShots(
  context: CaseContext,
  pictures: Pictures,
): { readonly first: Shots; readonly later: Shots } {
  const { first, later } = photosShown(context, (file) => pictures.has(file))
  const shots = (taken: readonly TakenPhoto[]): Shots => {
    const all = taken.flatMap(({ photo, visit }) => shot(photo, visit, context, pictures))
    return { few: all.slice(0, fewShots), more: all.slice(fewShots) }
  }
  return { first: shots(first), later: shots(later) }
}

function shot(
  photo: Photo,
  visit: Visit,
  { format, timeOf, time, words }: CaseContext,
  pictures: Pictures,
): CaseShot[] {
  const picture = pictures.get(photo.file)
  if (picture === undefined) return []
  const when = time.at(timeOf(visit.date))
  const parts = [
    photo.foot === null ? words.wholeHorse : format.foot(photo.foot),
    words.views[photo.view],
    ...(photo.stage === null ? [] : [words.stages[photo.stage]]),
  ]
  const what = parts.join(', ')
  return [
    {
      picture: photo.file,
      width: picture.width,
      height: picture.height,
      alt: words.photoAlt(what, when),
      label: `${what}, ${when}`,
    },
  ]
}
