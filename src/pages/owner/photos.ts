import type { Photo, Visit } from '../../casebook/model.ts'
import type { Formatter } from '../shared/format.ts'
import type { Pictures } from '../shared/pictures.ts'
import type { OwnerShot, PhotoPair } from './view.ts'

interface Shot {
  readonly photo: Photo
  readonly visit: Visit
}

/**
 * First and latest picture of each foot and view; a view seen once stands alone. Nothing without consent, and no
 * caption: only foot, view, stage and date are said.
 */
export function photoPairs(
  visits: readonly Visit[],
  pictures: Pictures,
  consent: boolean,
  format: Formatter,
): readonly PhotoPair[] {
  if (!consent) return []
  const groups = new Map<string, Shot[]>()
  for (const visit of visits) {
    for (const photo of visit.photos) {
      if (!pictures.has(photo.file)) continue
      const key = `${photo.foot}|${photo.view}`
      groups.set(key, [...(groups.get(key) ?? []), { photo, visit }])
    }
  }
  return [...groups.values()].flatMap((shots) => {
    const first = shots[0]
    const last = shots[shots.length - 1]
    if (first === undefined || last === undefined) return []
    const chosen = first === last ? [first] : [first, last]
    return [
      {
        head: subject(first.photo, format),
        shots: chosen.flatMap((shot, i) => described(shot, chosen.length === 1 ? null : i, pictures, format)),
      },
    ]
  })
}

const subject = ({ foot, view }: Photo, format: Formatter): string =>
  [foot === null ? format.words.owner.wholeHorse : format.foot(foot), format.words.owner.views[view]]
    .filter((part) => part !== '')
    .join(', ')

function described(
  { photo, visit }: Shot,
  index: number | null,
  pictures: Pictures,
  format: Formatter,
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
