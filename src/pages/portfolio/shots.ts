import type { Photo, Visit } from '../../casebook/model.ts'
import type { Pictures } from '../shared/pictures.ts'
import type { CaseContext } from './context.ts'
import type { CaseShot } from './view.ts'

/** Pictures of the first visit, and the latest of each foot and view. None without consent; no captions. */
export function caseShots(
  context: CaseContext,
  pictures: Pictures,
): { first: CaseShot[]; later: CaseShot[] } {
  if (!context.horse.consent.photos) return { first: [], later: [] }
  const key = ({ foot, view }: Photo) => `${foot}|${view}`
  const latest = new Map<string, { photo: Photo; visit: Visit }>()
  for (const visit of context.visits) {
    if (visit.id === context.first.id) continue
    for (const photo of visit.photos) if (pictures.has(photo.file)) latest.set(key(photo), { photo, visit })
  }
  return {
    first: context.first.photos.flatMap((photo) => shot(photo, context.first, context, pictures)),
    later: [...latest.values()].flatMap(({ photo, visit }) => shot(photo, visit, context, pictures)),
  }
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
