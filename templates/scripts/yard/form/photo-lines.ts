/** The pictures of a draft: what each is called and shows. */
import type { Stage } from '../../../../src/casebook/model.ts'
import type { Foot } from '../../../../src/hoof/feet.ts'
import type { PhotoView } from '../../../../src/hoof/landmarks.ts'
import type { YardDraft, YardPhoto } from '../../../../src/yard/draft.ts'

/** Parts of file names: the same in every language. */
const viewNames: Readonly<Record<PhotoView, string>> = {
  lateral: 'side',
  medial: 'inside',
  front: 'front',
  behind: 'behind',
  solar: 'sole',
  other: 'other',
}

type Shown = Pick<YardPhoto, 'sha256' | 'foot' | 'view'>

export const photoName = (date: string, { sha256, foot, view }: Shown): string =>
  [date, ...(foot ? [foot.toLowerCase()] : []), viewNames[view], `${sha256.slice(0, 4)}.jpg`].join('-')

/** In the order in which a foot is photographed. */
const usualViews: readonly PhotoView[] = ['lateral', 'solar', 'front', 'behind', 'medial']

/** The view of which this foot has no picture yet at this stage. */
export const nextView = (photos: readonly YardPhoto[], foot: Foot, stage: Stage): PhotoView =>
  usualViews.find(
    (view) => !photos.some((one) => one.foot === foot && one.stage === stage && one.view === view),
  ) ?? 'other'

/** The draft with a picture told anew; a picture that is seen from elsewhere loses its points. */
export const retold = (draft: YardDraft, sha256: string, to: Partial<YardPhoto>): YardDraft => ({
  ...draft,
  photos: draft.photos.map((photo) => {
    if (photo.sha256 !== sha256) return photo
    const next = { ...photo, ...to }
    const landmarks = next.view === photo.view ? next.landmarks : null
    return { ...next, landmarks, name: photoName(draft.date, next) }
  }),
})
