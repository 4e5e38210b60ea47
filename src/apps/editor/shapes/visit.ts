/** The keys of a visit. */
import type { BodyKey, ComfortKey } from '../../../casebook/comfort.ts'
import type { VisitKey } from '../../../casebook/visit-file.ts'
import { type Measure, measureIds, measures } from '../../../hoof/measures.ts'
import { free, map, type Shape, words } from './shape.ts'
import {
  findingWords,
  followedWords,
  footNames,
  gradeWords,
  lengthOf,
  notRead,
  placesSeen,
  placeWords,
  quantityOf,
  scale,
  yesNo,
} from './vocabulary.ts'

const fourPlaces = '[$1, $2, $3, $4]'

const reading = ({ id, kind, how }: Measure): Shape => ({
  about: how,
  measure: id,
  snippet: fourPlaces,
  feet: {
    about: how,
    measure: id,
    words: [(_around, { typed }) => [notRead, ...quantityOf(kind, typed)]],
  },
})

const stage = (about: string): Shape => ({
  about,
  snippet: '\n  $0',
  keys: Object.fromEntries(measureIds.map((id) => [measures[id].name, reading(measures[id])])),
})

const comfort = {
  lameness: {
    ...scale('lameness', 'lameness of each foot, 0 to 5, and by whom it was judged'),
    snippet: '{$1: $2, by: $3}',
    feet: scale('lameness'),
    keys: { by: words('who judged', 'practitioner', 'vet') },
  },
  obel: scale('obel'),
  landing: { about: 'how each foot meets the ground', feet: scale('landing'), snippet: fourPlaces },
  'digital pulse': {
    about: 'the pulse at each foot, 0 to 3',
    feet: scale('digital pulse'),
    snippet: fourPlaces,
  },
  surfaces: {
    about: 'how it goes on each surface: {sand: easy}',
    each: scale('surfaces'),
    snippet: '{$1: $2}',
  },
  'hoof testers': {
    about: 'where a foot reacts to the testers, and how much: {LF: [toe, 2]}',
    snippet: '{$1: [$2, $3]}',
    feet: {
      about: 'where, and a grade from 0 to 3',
      items: scale('hoof testers'),
      words: [() => placeWords],
    },
  },
  painkillers: free('day of the last dose of a painkiller, year-month-day'),
  onset: free('day on which it began, year-month-day'),
} satisfies Record<ComfortKey, Shape>

const body = {
  weight: free('with its unit: 505 kg or 1100 lb'),
  condition: scale('condition'),
  crest: scale('crest'),
} satisfies Record<BodyKey, Shape>

const photo = {
  file: {
    about: "a picture in the horse's folder: photos/lf-side.jpg",
    words: [
      ({ files }) =>
        files
          .filter((path) => /\.(?:jpe?g|png|webp|tiff?|avif)$/i.test(path))
          .map((word) => ({ word, about: null })),
    ],
  },
  foot: { about: 'the foot it shows', words: [() => footNames] },
  view: words('from where it was taken', 'lateral', 'medial', 'front', 'behind', 'solar', 'other'),
  stage: words('before or after the trim', 'before', 'after'),
  caption: free('what it shows, for whoever sees it'),
} satisfies Record<string, Shape>

const keys = {
  date: free('the day of the visit, year-month-day; the name of the file says it too'),
  draft: yesNo('not yet for others: shown to the practice alone until the line is deleted'),
  by: {
    about: 'who of the practice took the readings',
    words: [({ practice }) => practice.people.map(({ id, name }) => ({ word: id, about: name }))],
  },
  yard: free('the draft of the yard page that it came from; the program writes it'),
  feet: {
    about: 'another order for lists of four, in this visit alone',
    items: { about: '', words: [() => footNames] },
  },
  footing: free('the ground that the horse has lived on since'),
  before: stage('readings on arrival, before any trimming'),
  after: stage('readings when the trim is done'),
  findings: {
    about: 'what, where, grade, a line each under its foot; 0 gone, 1 mild, 2 moderate, 3 severe',
    snippet: '\n  $1:\n    - $2',
    feet: {
      about: 'what, where, grade, then words if wanted',
      snippet: '\n  - $1',
      items: { about: 'what, where, grade', words: [findingWords, placesSeen, () => gradeWords] },
    },
  },
  'grow out': {
    about: 'something followed on its way down the wall: what, place, distance from the hairline',
    snippet: '\n  $1:\n    - $2',
    feet: {
      about: 'what, place, distance from the hairline',
      snippet: '\n  - $1',
      items: {
        about: 'what, place, distance',
        words: [followedWords, placesSeen, (_around, at) => lengthOf(at)],
      },
    },
  },
  comfort: map('how the horse goes and stands', comfort, '\n  $0'),
  body: map('weight, condition and crest', body, '{weight: $1, condition: $2}'),
  stance: { about: 'how each foot stands', feet: scale('stance'), snippet: fourPlaces },
  cleared: {
    about: "a vet's all-clear; the day is the vet's",
    snippet: '{$1: $2}',
    feet: free('the day on which the vet cleared the foot'),
    keys: { all: free('the day on which the vet cleared the horse') },
  },
  photos: {
    about: 'pictures of this visit',
    snippet: '\n  - {file: $1, foot: $2, view: $3, stage: $4}',
    items: { about: '', keys: photo },
  },
  care: { about: 'what the owner does until the next visit', snippet: '\n  - $1' },
  'next visit': {
    about: 'in so many weeks, or a date',
    words: [
      ({ practice }) =>
        [...new Set([Math.round(practice.trimCycleDays / 7), 4, 5, 6, 8])]
          .filter((weeks) => weeks > 0)
          .map((weeks, index) => ({ word: `in ${weeks} weeks`, about: null, isLikely: index === 0 })),
    ],
  },
} satisfies Record<VisitKey, Shape>

export const visitShape: Shape = { about: 'a visit', keys: spelled(keys, { 'grow out': 'grow-out' }) }

/** Keys as they are written where that is another way than the reader compares them. */
function spelled(
  shapes: Readonly<Record<string, Shape>>,
  spelling: Readonly<Record<string, string>>,
): Readonly<Record<string, Shape>> {
  return Object.fromEntries(Object.entries(shapes).map(([key, shape]) => [spelling[key] ?? key, shape]))
}
