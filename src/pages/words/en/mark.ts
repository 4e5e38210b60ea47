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
  board:
    'The picture. Arrow keys move the point by one pixel, with Shift by ten. Enter goes on. Plus and minus size it.',
  how: 'Tap near the place: it comes close. Tap the place itself: the point is set and the next one comes. A finger that moves only moves the picture, two fingers size it. For the last pixels, go back and use the arrows.',
  stand: 'How to stand',
  standHow: [
    'Put the telephone on a block at the height of the hoof, 50 to 70 cm away, square to the foot, the hoof in the middle. Do not zoom.',
    'Stand the printed card (growdown card) on its long edge beside the hoof, on the same ground, level with the middle of the toe. No card: a ruler in that same place.',
    'Hair wiped aside, foot clean, horse standing square on firm level ground, held by someone.',
  ],
  standAlt:
    'Seen from above: the foot with the card in one line with the middle of its toe; the telephone on a block, square to that line, 50 to 70 cm away.',
  standLabels: { card: 'card', block: 'telephone on a block', away: '50 to 70 cm' },
  back: 'Back',
  skip: 'Leave out',
  next: 'Next',
  undo: 'Undo',
  redo: 'Redo',
  larger: 'Larger',
  smaller: 'Smaller',
  whole: 'Whole picture',
  nudge: { left: 'Left', up: 'Up', down: 'Down', right: 'Right' },
  scaleLength: 'True length of the scale',
  scaleHint: '100 mm, 10 cm or 4 in',
  nearer: 'Card or scale nearer to the camera than the middle of the toe by',
  nearerHint: '30 mm, or 30 mm further',
  camera: 'The camera was',
  cameras: { yard: 'held by hand', block: 'on a block, as above', flat: 'none: a drawing or a scan' },
  cameraTold: 'where the case file says',
  usesCard: 'Use the card',
  points: 'Points',
  values: 'Measured so far',
  valuesHow:
    'With the range in which the true value lies 19 times of 20: how well points are set, and how the camera stood.',
  noValues: 'Nothing yet. Angles need the ground line, lengths need the scale; the card is both.',
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
    near: 'Now tap the very place.',
    at: '{name}: {x}, {y}',
    notSet: '{name} is not set. Tap it, or leave it out.',
    unlikely: '{name} {value} is unlikely; {from} to {to} is likely.',
    takenUp: 'Points of last time are here again. Undo brings back those of the case file.',
    cardFound: 'The card was found: scale and ground come from it.',
    refusals: {
      none: '',
      'other markers': 'There are markers in the picture, but not those of the card. Set the scale by hand.',
      'two cards': 'There are two cards in the picture. Set the scale by hand, or take it again with one.',
      'half a card': 'Only a part of the card is to be seen. Set the scale by hand, or take it again.',
      'corners disagree': 'The card is bent, or another one than is printed. Set the scale by hand.',
      screen: 'The card is on a screen or stained, so its size is not sure. Set the scale by hand.',
    },
    copied: 'Copied.',
    notCopied: 'The browser does not allow copying. The block is selected: copy it with the keyboard.',
    written: 'Written.',
    lost: 'The program that opened this page has ended. Copy the block.',
    noLength: 'Give the true length of the scale, or leave the scale out.',
    badLength: '"{text}" is no length. Write 100 mm, 10 cm or 4 in.',
  },
}
