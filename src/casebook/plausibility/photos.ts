/**
 * Readings of photographs, held against what is likely, against the last photograph, and against the hand. Each is said
 * once a picture: a point that has slipped or a scale that lies wrong shows in several measures.
 */
import { daysBetween } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import { type Landmarks, measureLandmarks, type PhotoReading, shownHalf } from '../../hoof/landmarks.ts'
import { isMeasureId, type Measure, type MeasureId, measures } from '../../hoof/measures.ts'
import type { LengthUnit } from '../../hoof/units.ts'
import { sentence } from '../fields.ts'
import type { Stage } from '../model.ts'
import type { PlacedPhoto } from '../photos.ts'
import type { PlacedVisit } from '../visit-file.ts'
import { listed } from '../words.ts'
import { jumpOf, whenOf } from './growth.ts'
import { inWords, type Last } from './history.ts'

interface Shown extends PhotoReading {
  readonly measure: MeasureId
}

interface Seen extends Last {
  readonly sd: number
}

/** The latest photo reading by foot and measure. */
type SeenBefore = Map<string, Seen>

export function checkPhotos(visits: readonly PlacedVisit[], units: LengthUnit): void {
  const seen: SeenBefore = new Map()
  for (const placed of visits) {
    for (const one of placed.photos) {
      const { foot, landmarks, view } = one.photo
      if (foot === null || landmarks === null) continue
      const shown = measureLandmarks(landmarks, view).filter((reading): reading is Shown =>
        isMeasureId(reading.measure),
      )
      const stage = one.photo.stage ?? 'before'
      const isDoubted =
        reportUnlikely(placed, one, shown, units) ||
        reportJump(placed, one, { foot, stage, shown }, seen, units) ||
        reportAgainstHand(placed, one, { foot, stage, shown }, units)
      if (isDoubted) continue
      for (const { measure, value, sd } of shown)
        seen.set(`${foot} ${measure}`, { value, sd, stage, date: placed.visit.date, unlessDoubted: null })
    }
  }
}

const say = (value: number, { kind }: Measure, units: LengthUnit) => inWords(value, kind, units)

/** The same ranges as for readings by hand: a likely foot must lie within the range that is shown. */
function reportUnlikely(
  { report }: PlacedVisit,
  { photo, range }: PlacedPhoto,
  shown: readonly Shown[],
  units: LengthUnit,
): boolean {
  const unlikely = shown.filter(({ measure, value }) => {
    const [low, high] = measures[measure].likely
    return value < low || value > high
  })
  const [first] = unlikely
  if (!first) return false
  const which = unlikely.map(
    ({ measure, value }) => `${measures[measure].name} ${say(value, measures[measure], units)}`,
  )
  const [low, high] = measures[first.measure].likely
  const areLengths = unlikely.every(({ measure }) => measures[measure].kind === 'length')
  report.warning(
    'photo-unlikely',
    range,
    `The points of ${photo.file} give readings that are unlikely: ${listed(which)}.`,
    {
      expected: `${measures[first.measure].name} ${say(low, measures[first.measure], units)} to ${say(high, measures[first.measure], units)}`,
      advice: `look at the points again${areLengths ? ', and at the length of the scale' : ''}: growdown mark`,
    },
  )
  return true
}

interface OfPhoto {
  readonly foot: Foot
  readonly stage: Stage
  readonly shown: readonly Shown[]
}

function reportJump(
  { visit, report }: PlacedVisit,
  { photo, range }: PlacedPhoto,
  { foot, stage, shown }: OfPhoto,
  seen: SeenBefore,
  units: LengthUnit,
): boolean {
  for (const { measure: id, value, sd } of shown) {
    const earlier = seen.get(`${foot} ${id}`)
    if (!earlier || (earlier.date === visit.date && earlier.stage === stage)) continue
    const measure = measures[id]
    const now: Last = { value, stage, date: visit.date, unlessDoubted: null }
    const jump = jumpOf(earlier, now, measure, 3 * Math.hypot(sd, earlier.sd))
    if (!jump) continue
    const days = daysBetween(earlier.date, visit.date)
    report.warning(
      'photo-jump',
      range,
      `${sentence(measure.name)} at ${foot} is ${say(value, measure, units)} on ${photo.file}; ${whenOf(earlier)} a photograph gave ${say(earlier.value, measure, units)}. ${jump.words(say(Math.abs(value - earlier.value), measure, units), days)}`,
      {
        expected: `${say(jump.low, measure, units)} to ${say(jump.high, measure, units)}`,
        advice: 'look at the points of both pictures again: growdown mark',
      },
    )
    return true
  }
  return false
}

function reportAgainstHand(
  { readings, report }: PlacedVisit,
  { photo, range }: PlacedPhoto,
  { foot, stage, shown }: OfPhoto,
  units: LengthUnit,
): boolean {
  const compared = shown.flatMap((one) => {
    const { measure, value, sd } = one
    const hand = readings.find(
      ({ reading }) => reading.measure === measure && reading.foot === foot && reading.stage === stage,
    )?.reading.value
    if (hand === undefined) return []
    const within = shownHalf(Math.hypot(sd, measures[measure].sd))
    return [{ measure: measures[measure], value, hand, within, isApart: Math.abs(value - hand) > within }]
  })
  const apart = compared.filter(({ isApart }) => isApart)
  const [first] = apart
  if (!first) return false
  const which = apart.map(
    ({ measure, value, hand }) =>
      `${measure.name} ${say(value, measure, units)} and ${say(hand, measure, units)} by hand`,
  )
  report.warning(
    'photo-against-hand',
    range,
    `${photo.file} and the hand differ at ${foot} by more than both errors explain: ${listed(which)}.`,
    {
      expected: `a difference up to ${say(first.within, first.measure, units)}`,
      advice: likeliestCause(compared, photo.landmarks),
    },
  )
  return true
}

interface Compared {
  readonly measure: Measure
  readonly value: number
  readonly hand: number
  readonly isApart: boolean
}

/** What would make the readings differ as they do. Common practice, no source. */
function likeliestCause(compared: readonly Compared[], landmarks: Landmarks | null): string {
  const lengths = compared.filter(({ measure }) => measure.kind === 'length')
  const angles = compared.filter(({ measure }) => measure.kind === 'angle')
  const ratios = lengths.map(({ value, hand }) => value / hand)
  const apartLengths = lengths.filter(({ isApart }) => isApart)
  const areAlike = ratios.length > 1 && Math.max(...ratios) / Math.min(...ratios) < 1.08
  const ratio = ratios.reduce((sum, one) => sum + one, 0) / ratios.length
  if (apartLengths.length > 0 && areAlike) {
    const where = ratio < 1 ? 'nearer to the camera' : 'further from the camera'
    const what = landmarks?.card ? 'the card' : 'the scale'
    return `most likely ${what} lay ${where} than the foot, or its length is written wrong: all lengths are ${Math.abs(Math.round(100 * (ratio - 1)))} % too ${ratio < 1 ? 'short' : 'long'}`
  }
  const apartAngles = angles.filter(({ isApart }) => isApart)
  const flatter = apartAngles.filter(({ value, hand }) => value < hand).length
  if (apartAngles.length > 1 && flatter === apartAngles.length && !landmarks?.card)
    return 'most likely the camera looked down: all angles are too flat. Put it on a block at the height of the foot'
  if (apartAngles.length > 1)
    return 'most likely the ground line is not the ground that the foot stands on, or the camera stood askew'
  return 'most likely one point has slipped, or the hand: look at the points again, and read the foot again at the next visit'
}
