/** Pictures for an owner: one then and now, and the others behind a fold. */
import type { Photo, Visit } from '../../casebook/model.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { OwnerFormatter } from '../shared/format.ts'
import { firstAndLatest } from '../shared/photos.ts'
import type { Pictures } from '../shared/pictures.ts'
import type { OwnerShot, PhotoPair } from './view.ts'

interface Shot {
  readonly photo: Photo
  readonly visit: Visit
}

export interface OwnerPhotos {
  readonly thenAndNow: PhotoPair | null
  readonly others: readonly PhotoPair[]
}

/** The views that show an owner most, first. */
const views: readonly Photo['view'][] = ['lateral', 'front', 'solar', 'behind', 'medial', 'other']

/**
 * First and latest picture of each foot and view; a view seen once stands alone. Nothing without consent, and no
 * caption: only foot, view, stage and date are said.
 * @param changed the feet of which most is told, first: one of them is shown then and now where there is a pair
 */
export function ownerPhotos(
  visits: readonly Visit[],
  pictures: Pictures,
  consent: boolean,
  changed: readonly Foot[],
  format: OwnerFormatter,
): OwnerPhotos {
  if (!consent) return { thenAndNow: null, others: [] }
  const groups = new Map<string, Shot[]>()
  for (const visit of visits) {
    for (const photo of visit.photos) {
      if (!pictures.has(photo.file)) continue
      const key = `${photo.foot}|${photo.view}`
      groups.set(key, [...(groups.get(key) ?? []), { photo, visit }])
    }
  }
  const series = [...groups.values()]
  const rank = ([shot]: readonly Shot[]) => {
    const foot = shot?.photo.foot ?? null
    const place = foot === null ? -1 : changed.indexOf(foot)
    return (place < 0 ? changed.length : place) * views.length + views.indexOf(shot?.photo.view ?? 'other')
  }
  const [chosen] = series
    .filter((shots) => firstAndLatest(shots) !== null)
    .toSorted((a, b) => rank(a) - rank(b))
  return {
    thenAndNow: chosen === undefined ? null : pairOf(chosen, pictures, format),
    others: series.filter((shots) => shots !== chosen).map((shots) => pairOf(shots, pictures, format)),
  }
}

function pairOf(shots: readonly Shot[], pictures: Pictures, format: OwnerFormatter): PhotoPair {
  const chosen: readonly Shot[] = firstAndLatest(shots) ?? shots.slice(0, 1)
  return {
    head: chosen[0] === undefined ? '' : subject(chosen[0].photo, format),
    shots: chosen.flatMap((shot, i) => described(shot, chosen.length === 1 ? null : i, pictures, format)),
  }
}

const subject = ({ foot, view }: Photo, format: OwnerFormatter): string =>
  [foot === null ? format.words.owner.wholeHorse : format.foot(foot), format.words.owner.views[view]]
    .filter((part) => part !== '')
    .join(', ')

function described(
  { photo, visit }: Shot,
  index: number | null,
  pictures: Pictures,
  format: OwnerFormatter,
): OwnerShot[] {
  const { owner: words } = format.words
  const picture = pictures.get(photo.file)
  if (picture === undefined) return []
  const date = format.date(visit.date)
  const what =
    photo.stage === null ? subject(photo, format) : `${subject(photo, format)}, ${words.stages[photo.stage]}`
  const when = index === null ? date : `${index === 0 ? words.shotThen : words.shotNow}: ${date}`
  return [
    {
      picture: photo.file,
      width: picture.width,
      height: picture.height,
      alt: words.photoAlt(what, date),
      label: when,
    },
  ]
}
