/** Which way things went on each foot, in a few sentences: what got worse first. Only what clearly moved is told. */
import type { Visit } from '../../casebook/model.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import { type AnyMeasureId, derivedMeasures, isDerivedId } from '../../hoof/measures.ts'
import type { Assessment, Trend } from '../../trend/assessment.ts'
import { lineOn } from '../../trend/trends.ts'
import { findingStories } from '../shared/findings.ts'
import { capital, type OwnerFormatter } from '../shared/format.ts'
import { cameFromOutside } from '../shared/moves.ts'
import { type FindingChange, findingChange } from './findings.ts'
import { sinceText } from './since.ts'
import type { Changes, FootChanges, Mood } from './view.ts'

/** One thing that changed, in a sentence. */
export interface Matter {
  readonly foot: Foot | 'all'
  readonly mood: Mood
  readonly text: string
  readonly about: AnyMeasureId | FindingChange
}

/** Of what got better or moved without a target, so many sentences stand at a foot. What got worse is all told. */
const mostTold = 2

/** In the order of the page. */
const moods: readonly Mood[] = ['bad', 'good', 'moving']

/** What tells an owner most, first; of the others what leads toward a target or away from it is told as well. */
const plainMeasures: readonly AnyMeasureId[] = [
  'toe-length',
  'toe-angle',
  'heel-balance',
  'sulcus-depth',
  'frog-width',
  'white-line',
  'sole-depth',
  'heel-angle',
  'breakover',
  'heel-medial',
  'heel-lateral',
  'groove-apex',
  'groove-heel',
  'width',
  'bearing-length',
  'quarter-medial',
  'quarter-lateral',
  'wall-thickness',
  'new-angle',
  'frog-length',
  'coronet-angle',
  'pastern-angle',
  'coronet-girth',
]

/** Told by how far they are from none, whichever side leads. */
const isGap = (measure: AnyMeasureId): boolean =>
  ['heel-balance', 'heel-tilt', 'axis-deviation', 'pair-mismatch'].includes(measure)

/** Everything that clearly moved, at each foot and at all together, worst first within a foot. */
export function mattersOf(
  { trends, together, heldFeet, visits: known, asOf }: Assessment,
  visits: readonly Visit[],
  format: OwnerFormatter,
): readonly Matter[] {
  const lastVisit = known.at(-1)
  const moved = trends.filter(({ isClear, measure }) => isClear && measure !== 'new-length')
  const common = together.filter(
    ({ isClear, measure }) =>
      isClear && measure !== 'new-length' && !moved.some((one) => one.measure === measure),
  )
  const measured = [...moved, ...common].map((trend): Matter => {
    const isHeld = trend.foot === 'all' ? heldFeet.length > 0 : heldFeet.includes(trend.foot)
    return measuredMatter(trend, isHeld, { lastVisit, asOf }, format)
  })
  const found = findingStories(visits).flatMap((story): readonly Matter[] => {
    const change = findingChange(story, visits.length - 1, asOf, format)
    return change === null ? [] : [{ foot: story.foot, mood: change.mood, text: change.text, about: change }]
  })
  return [...found, ...measured.toSorted((a, b) => rank(a) - rank(b))]
}

const rank = ({ about }: Matter): number => {
  const place = typeof about === 'string' ? plainMeasures.indexOf(about) : 0
  return place < 0 ? plainMeasures.length : place
}

function measuredMatter(
  trend: Trend<Foot | 'all'>,
  isHeld: boolean,
  { lastVisit, asOf }: { readonly lastVisit: string | undefined; readonly asOf: string },
  format: OwnerFormatter,
): Matter {
  const { owner: words } = format.words
  const mood = isHeld && trend.verdict !== 'worsening' ? 'moving' : moodOf(trend)
  const { position, last } = trend
  const isReached = position === 'on target' || position === 'near target'
  const reached = isReached && !isHeld && mood !== 'bad' ? words.movedTo[position] : ''
  const read = last.visit === lastVisit ? '' : words.lastRead(format.date(last.date))
  const text = words.sentence(`${movedText(trend, asOf, format)}${reached}${read}`)
  return { foot: trend.foot, mood, text, about: trend.measure }
}

/** Good is toward a target, also one that it has reached; away from one is bad; all else only moves. */
function moodOf(trend: Trend<Foot | 'all'>): Mood {
  const { verdict, position } = trend
  if (verdict === 'worsening') return 'bad'
  if (verdict === 'improving') return 'good'
  const isThere = position === 'on target' || position === 'near target'
  return isThere && cameFromOutside(trend) ? 'good' : 'moving'
}

/** By the line through all readings, never by the first and the last alone. */
function movedText(
  { measure, fit, first, last }: Trend<Foot | 'all'>,
  asOf: string,
  format: OwnerFormatter,
): string {
  const { owner: words } = format.words
  const { thing, more, less } = words.measures[measure]
  const level = (date: string) => (fit === null ? 0 : lineOn(fit, date).value)
  const [from, to] = [level(first.date), level(last.date)]
  const by = isGap(measure) ? Math.abs(to) - Math.abs(from) : to - from
  const way = by > 0 ? more : less
  const amount = format.measure(measure, Math.abs(by))
  const since = sinceText(first.date, last.date, asOf, format)
  return /[1-9]/.test(amount) ? words.moved(thing, amount, way, since) : words.movedLittle(thing, way, since)
}

/** A few sentences for each foot of which something is told, and what there is besides. */
export function changesOf(matters: readonly Matter[], visits: number, format: OwnerFormatter): Changes {
  const { owner: words } = format.words
  const rows = [...feet, 'all' as const].map((foot) =>
    toldAt(
      foot,
      matters.filter((one) => one.foot === foot),
    ),
  )
  const told = rows.flatMap(({ told }) => told)
  const isMore = rows.some(({ isMore }) => isMore)
  const rest = isMore ? words.moreMoved : told.length > 0 ? words.nothingElse : words.nothing
  return {
    feet: rows.flatMap(({ foot, told }) => (told.length === 0 ? [] : [footChanges(foot, told, format)])),
    rest: visits < 2 ? words.nothingYet : rest,
  }
}

interface Told {
  readonly foot: Foot | 'all'
  readonly told: readonly Matter[]
  /** Whether more moved than is told, and more than follows from it. */
  readonly isMore: boolean
}

function toldAt(foot: Foot | 'all', matters: readonly Matter[]): Told {
  const bad = matters.filter(({ mood }) => mood === 'bad')
  const others = matters.filter(
    ({ mood, about }) => mood !== 'bad' && (mood === 'good' || !isComposed(about)),
  )
  const chosen = others
    .filter(
      ({ about, mood }) => others.find((one) => isLike(one, about) && one.mood === mood)?.about === about,
    )
    .toSorted((a, b) => weight(a) - weight(b))
    .slice(0, mostTold)
  const told = [...bad, ...chosen]
  return { foot, told, isMore: matters.some((one) => !told.includes(one) && !follows(one, told)) }
}

/** The first finding and the first measure stand for their kind. */
const isLike = ({ about }: Matter, other: Matter['about']): boolean => typeof about === typeof other

const weight = ({ mood }: Matter) => (mood === 'good' ? 0 : 1)

const isComposed = (about: Matter['about']): boolean =>
  typeof about === 'string' && isDerivedId(about) && about !== 'heel-balance'

/** A measure that is worked out from others says nothing new beside one of them. */
function follows({ about }: Matter, told: readonly Matter[]): boolean {
  if (typeof about !== 'string' || !isDerivedId(about)) return false
  const { parts } = derivedMeasures[about]
  return told.some(
    ({ about: other }) => typeof other === 'string' && partsOf(other).some((part) => parts.includes(part)),
  )
}

const partsOf = (measure: AnyMeasureId) => (isDerivedId(measure) ? derivedMeasures[measure].parts : [measure])

function footChanges(foot: Foot | 'all', told: readonly Matter[], format: OwnerFormatter): FootChanges {
  const { owner: words } = format.words
  return {
    foot: foot === 'all' ? words.allFeet : capital(format.foot(foot)),
    moods: moods.flatMap((mood) => {
      const sentences = told.filter((one) => one.mood === mood).map(({ text }) => text)
      return sentences.length === 0 ? [] : [{ mood, word: words.moods[mood], sentences }]
    }),
  }
}
