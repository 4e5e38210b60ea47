import type { LandmarkLine, LandmarkPoint } from '../../../hoof/landmarks.ts'

/** What is to be touched, and where exactly it lies. */
export interface StepWords {
  readonly name: string
  readonly how: string
}

type StepId = LandmarkPoint | `${LandmarkLine | 'scale'} from` | `${LandmarkLine | 'scale'} to`

const steps: Readonly<Record<StepId, StepWords>> = {
  'scale from': {
    name: 'Scale, first end',
    how: 'Something of known length, as far from the camera as the foot: the zero of a ruler.',
  },
  'scale to': { name: 'Scale, other end', how: 'The other end. Write its true length below.' },
  'ground from': {
    name: 'Ground, in front',
    how: 'The edge of the board or floor, well in front of the toe.',
  },
  'ground to': { name: 'Ground, behind', how: 'The same edge, well behind the heel.' },
  'toe-at-ground': { name: 'Toe at the ground', how: 'Where the front wall meets the ground.' },
  'toe-at-hairline': {
    name: 'Toe at the hairline',
    how: 'Where the front wall begins, below the last hair.',
  },
  'new-growth-ends': {
    name: 'New growth ends',
    how: 'Where the steeper strip from the hairline bends into the old wall. Skip it if the wall runs straight.',
  },
  'heel-at-ground': { name: 'Heel at the ground', how: 'The hindmost horn that bears on the ground.' },
  'heel-at-hairline': {
    name: 'Heel at the hairline',
    how: 'Where the heel wall begins, below the last hair.',
  },
  'pastern from': { name: 'Pastern, low', how: 'Front of the pastern, just above the hairline.' },
  'pastern to': { name: 'Pastern, high', how: 'Front of the pastern, just below the fetlock.' },
  toe: { name: 'Toe', how: 'Foremost point of the ground edge, on the line of the frog.' },
  breakover: { name: 'Breakover', how: 'Where the hoof rolls over at the toe, on the line of the frog.' },
  'frog-tip': { name: 'Frog tip', how: 'The true tip of the frog, where it rises from the sole.' },
  'frog-base': { name: 'Frog base', how: 'Back end of the frog, in the middle.' },
  'widest-medial': { name: 'Widest, inner side', how: 'Where the ground edge reaches furthest inward.' },
  'widest-lateral': { name: 'Widest, outer side', how: 'Where the ground edge reaches furthest outward.' },
  'heel-medial': { name: 'Inner heel', how: 'The inner heel at the buttress.' },
  'heel-lateral': { name: 'Outer heel', how: 'The outer heel at the buttress.' },
}

/** From behind, a heel is marked where its wall begins. */
const stepsBehind: Readonly<Partial<Record<StepId, StepWords>>> = {
  'ground from': { name: 'Ground, left', how: 'The edge of the board or floor, left of the foot.' },
  'ground to': { name: 'Ground, right', how: 'The same edge, right of the foot.' },
  'heel-medial': { name: 'Inner heel', how: 'The inner heel at the hairline.' },
  'heel-lateral': { name: 'Outer heel', how: 'The outer heel at the hairline.' },
}

/** Wording of the page on which points are marked. */
export const mark = {
  fromPreview: 'Mark its points',
  title: (file: string) => `Marking ${file}`,
  steps,
  stepsBehind,
  noVisit: 'No visit names this picture yet.',
  inVisit: (subject: string, date: string) => `${subject}, ${date}.`,
  sample: 'What to touch',
  loupe: 'Magnifier. Drag in it to move the point finely.',
  board: 'The picture. Arrow keys move the point by one pixel, with Shift by ten. Enter sets it and goes on.',
  how: 'Touch the picture, or drag. For the last pixels drag in the magnifier or use the arrow keys: one pixel, with Shift ten. Enter sets the point and goes on.',
  back: 'Back',
  skip: 'Leave out',
  next: 'Set, next',
  nudge: { left: 'Left', up: 'Up', down: 'Down', right: 'Right' },
  scaleLength: 'True length of the scale',
  scaleHint: '100 mm, 10 cm or 4 in',
  points: 'Points',
  values: 'Measured so far',
  noValues: 'Nothing yet. Angles need the ground line, lengths need the scale.',
  block: 'Block for the case file',
  blockHow: 'Put it in the place of this picture under photos: in the visit.',
  copy: 'Copy the block',
  write: (file: string) => `Write it into ${file}`,
  writeHow: (file: string) =>
    `Replaces only the points of this picture; the file as it was is kept beside it as ${file}.before-mark, with a number where that is taken.`,
  cannotWrite: 'It cannot be written for you: no visit names this picture.',
  noScript: 'Marking needs JavaScript, which is switched off in this browser.',
  /** Read by the script; `{...}` is filled in there. */
  script: {
    step: 'Point {step} of {steps}',
    done: 'All points are through. Look at the values, then take the block.',
    at: '{name}: {x}, {y}',
    leftOut: 'left out',
    copied: 'Copied.',
    notCopied: 'The browser does not allow copying. The block is selected: copy it with the keyboard.',
    written: 'Written.',
    lost: 'The program that opened this page has ended. Copy the block.',
    noLength: 'Give the true length of the scale, or leave the scale out.',
    badLength: '"{text}" is no length. Write 100 mm, 10 cm or 4 in.',
  },
}
