import type { PhotoView } from '../../../hoof/landmarks.ts'

const views: Readonly<Record<PhotoView, string>> = {
  lateral: 'from the outer side',
  medial: 'from the inner side',
  front: 'from the front',
  behind: 'from behind',
  solar: 'the sole',
  other: '',
}

/** Wording of pictures: captions, what is measured on them, then and now. */
export const photos = {
  views,
  stages: { before: 'on arrival', after: 'after the trim' },
  wholeHorse: 'the horse',
  /** `Left fore from the outer side, on arrival`. */
  subject: (parts: readonly string[]) => parts.filter((part) => part !== '').join(', '),
  alt: (subject: string, date: string) => `Picture: ${subject}, ${date}.`,
  altMeasured: (subject: string, date: string, values: string) =>
    `Picture: ${subject}, ${date}. Marked on it: ${values}.`,

  measured: 'Measured on the picture',
  measure: 'Measure',
  value: 'Value',
  error: 'Error',
  plusMinus: (error: string) => `± ${error}`,
  measuredNote:
    'From the marked points, angles against the ground line, lengths by the scale; the card is both. The true value lies in the range 19 times of 20: it counts how well points are set and how the camera stood, as told or as held by hand. Photo and gauge readings are never put into one trend.',
  scale: (length: string) => `scale ${length}`,
  heelHeight: (length: string) => `${length} high`,

  thenAndNow: (subject: string) => `${subject}: then and now`,
  thenOn: (date: string) => `Then: ${date}`,
  nowOn: (date: string) => `Now: ${date}`,
  apart: (span: string) => `${span} between the two.`,
  layOver: 'Lay one over the other',
  slider: 'Where then ends and now begins',
  sliderHow:
    'Move the line with a finger, the mouse or the arrow keys: left of it is then, right of it is now.',
  share: 'then {first} %, now {latest} %',
  notes: {
    standing: {
      aligned:
        'Laid over each other by ground line and scale, so both feet are shown at one size and on one ground.',
      notOneScale:
        'Laid over each other by ground line and scale, but not surely at one scale: how far the scales lay from the foot is not known, and one may look a tenth larger. Shapes and angles may be compared, sizes not.',
      notAligned:
        'Not laid over each other to scale: that needs a scale, the ground line and the toe at the ground (from behind, both heels) marked on both pictures. Compare the feet with care.',
    },
    sole: {
      aligned: 'Laid over each other by toe, heels and scale, so both feet are shown at one size.',
      notOneScale:
        'Laid over each other by toe, heels and scale, but not surely at one scale: how far the scales lay from the sole is not known, and one may look a tenth larger. Shapes may be compared, sizes not.',
      notAligned:
        'Not laid over each other to scale: that needs a scale, the toe and both heels marked on both pictures. Compare the feet with care.',
    },
  },
}
