/** What the script of a marking board works through: points to set, and what is known of the picture. */
import type { PlacedCard } from '../../hoof/card.ts'
import { type Foot, sideOf } from '../../hoof/feet.ts'
import { type Landmarks, type PhotoView, marksOf as pointsOf } from '../../hoof/marks.ts'
import type { Point } from '../../hoof/plane.ts'
import type { Camera } from '../../hoof/stance.ts'
import type { Words } from '../words/index.ts'
import { millimetres } from './landmark-block.ts'

export type MarkedView = 'lateral' | 'medial' | 'solar' | 'behind'
export const markedViews: readonly MarkedView[] = ['lateral', 'medial', 'solar', 'behind']
export const isMarkedView = (view: PhotoView): view is MarkedView =>
  (markedViews as readonly string[]).includes(view)

/** Plain data for the script. */
export interface MarkTask {
  readonly view: MarkedView
  readonly width: number
  readonly height: number
  readonly focalLength: number | null
  readonly steps: readonly MarkStep[]
  /** Points that are marked already, by the step's id. */
  readonly marks: Readonly<Record<string, Point>>
  readonly foot: Foot | null
  readonly scaleLength: string
  /** How much nearer to the camera than the foot the scale or the card lies, as the case file has it. */
  readonly nearer: string
  /** The card as the case file has it; null where it is still to be looked for. */
  readonly card: PlacedCard | null
  readonly isCardRefused: boolean
  readonly camera: Camera | null
  /** Under which the points are kept in the browser until they are written; null where they are kept elsewhere. */
  readonly storageKey: string | null
  readonly says: Words['mark']['script']
}

export interface MarkStep {
  /** A point's name, or `ground from`. */
  readonly id: string
  /** Whether the card takes its place. */
  readonly isInCard: boolean
  readonly name: string
  readonly how: string
}

const ends = (line: string): readonly string[] => [`${line} from`, `${line} to`]
const side = [
  ...ends('scale'),
  ...ends('ground'),
  'toe-at-ground',
  'toe-at-hairline',
  'new-growth-ends',
  'heel-at-ground',
  'heel-at-hairline',
  ...ends('pastern'),
]
const order: Readonly<Record<MarkedView, readonly string[]>> = {
  lateral: side,
  medial: side,
  solar: [
    ...ends('scale'),
    'toe',
    'breakover',
    'frog-tip',
    'frog-base',
    'widest-medial',
    'widest-lateral',
    'heel-medial',
    'heel-lateral',
  ],
  behind: [...ends('scale'), ...ends('ground'), 'heel-medial', 'heel-lateral'],
}

/** What is known of the picture before it is marked. */
export interface MarkPicture {
  readonly view: MarkedView
  readonly foot: Foot | null
  readonly landmarks: Landmarks | null
  /** Of the upright picture. */
  readonly width: number
  readonly height: number
  /** As it would be on film of 35 mm, millimetres; null where the camera did not note it. */
  readonly focalLength: number | null
}

/** @param storageKey see there */
export function markTask(picture: MarkPicture, storageKey: string | null, words: Words['mark']): MarkTask {
  const { view, foot, landmarks, width, height, focalLength } = picture
  const says = (id: string) => {
    const found = Object.entries(view === 'behind' ? { ...words.steps, ...words.stepsBehind } : words.steps)
    return found.find(([name]) => name === id)?.[1] ?? { name: id, how: '' }
  }
  const length = landmarks?.scale?.length ?? null
  const told = landmarks?.cardTold
  const nearer =
    landmarks?.scale?.nearer ?? landmarks?.card?.nearer ?? (told && told !== 'none' ? told.nearer : null)
  return {
    view,
    width,
    height,
    focalLength,
    foot,
    steps: order[view].map((id) => ({ id, isInCard: /^(?:scale|ground) /.test(id), ...says(id) })),
    marks: landmarks === null ? {} : marksOf(landmarks),
    scaleLength: length === null ? '' : millimetres(length),
    nearer: nearer === null ? '' : `${millimetres(Math.abs(nearer))}${nearer < 0 ? ' further' : ''}`,
    card: landmarks?.card ?? null,
    isCardRefused: told === 'none',
    camera: landmarks?.camera ?? null,
    storageKey,
    says: words.script,
  }
}

/** The small drawings show a left foot: from outside the toe to the left, on the sole the inner side to the left. */
export const isMirrored = (view: MarkedView, foot: Foot): boolean =>
  (sideOf(foot) === 'right') !== (view === 'medial')

/** Every marked point by its step's id; the card's corners are no steps. */
export const marksOf = ({ card: _, ...marked }: Landmarks): Readonly<Record<string, Point>> =>
  Object.fromEntries(pointsOf(marked))
