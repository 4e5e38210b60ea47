/** How the horse goes and stands, as far as a new visit asks: what the last visits judged, and what a caution stands on. */
import type { Comfort, Visit } from '../../casebook/model.ts'
import { type Foot, feet, type PerFoot } from '../../hoof/feet.ts'
import type { Assessment } from '../../trend/assessment.ts'
import { habitFeet, isHabit, lastSaying } from '../../trend/habit.ts'
import type { Words } from '../words/index.ts'
import { blank, blanks, remarked, scalar } from './lines.ts'

type StarterWords = Words['starter']

/** A key of the block, its blanks, and what was said last. */
export interface AskedScale {
  readonly key: string
  /** The feet that it is asked of; none where it is asked of the horse. */
  readonly of: readonly Foot[]
  readonly blanks: string
  readonly last: string | null
}

/** Longest line on which all of them stand together. */
const lineLength = 78

/** On one line where that is short enough. */
export function comfortLines(
  past: readonly Visit[],
  assessment: Assessment,
  order: readonly Foot[],
  w: StarterWords,
): readonly string[] {
  const asked = askedScales(past, assessment, order)
  if (asked.length === 0) return []
  const together = `comfort: {${asked.map(({ key, blanks: of }) => `${key}: ${of}`).join(', ')}}`
  if (together.length <= lineLength) {
    const said = asked.flatMap(({ key, last }) => (last === null ? [] : [`${key} ${last}`]))
    return [remarked(together, said.length === 0 ? w.comfort : w.last(said.join('; ')))]
  }
  return [
    'comfort:',
    ...asked.map(({ key, blanks: of, last }) =>
      remarked(`  ${key}: ${of}`, last === null ? null : w.last(last)),
    ),
  ]
}

/** What is asked of how the horse goes. */
export const askedScales = (
  past: readonly Visit[],
  assessment: Assessment,
  order: readonly Foot[],
): readonly AskedScale[] => (past.length === 0 ? firstAsked(order) : askedAgain(past, assessment, order))

const firstAsked = (order: readonly Foot[]): readonly AskedScale[] =>
  ['landing', 'digital pulse'].map((key) => ({ key, of: feet, blanks: blanks(feet, order), last: null }))

function askedAgain(
  past: readonly Visit[],
  { cautions }: Assessment,
  order: readonly Foot[],
): readonly AskedScale[] {
  const isStanding = (codes: RegExp) => cautions.some(({ standing, code }) => standing && codes.test(code))
  const last = <K extends keyof Comfort>(key: K) =>
    lastSaying(
      past,
      ({ comfort }) => comfort[key],
      (value) => value !== null && Object.keys(Object(value)).length > 0,
    )
  /** Feet of which it was judged as a rule; all that were judged last where a caution stands on it. */
  const feetFor = (
    valuesOf: (comfort: Comfort) => PerFoot<unknown>,
    said: PerFoot<unknown>,
    codes: RegExp,
  ) =>
    isStanding(codes)
      ? feet.filter((foot) => said[foot] !== undefined)
      : habitFeet(past, ({ comfort }) => valuesOf(comfort))
  const asked: AskedScale[] = []

  const lameness = last('lameness') ?? {}
  const lame = feetFor((one) => one.lameness, lameness, /^lameness|^heat-with-lameness/)
  if (lame.length > 0) {
    const map = order.filter((foot) => lame.includes(foot)).map((foot) => `${foot}: ${blank}`)
    const by = last('lamenessBy') === null ? [] : [`by: ${blank}`]
    asked.push({
      key: 'lameness',
      of: lame,
      blanks: `{${[...map, ...by].join(', ')}}`,
      last: footText(lameness),
    })
  }
  const byFoot = [
    ['landing', (one: Comfort) => one.landing, /^$/],
    ['digital pulse', (one: Comfort) => one.digitalPulse, /pulse|^leaning|^tenderness/],
    [
      'hoof testers',
      (one: Comfort) => mapped(one.hoofTesters, ({ place, grade }) => `${place} ${grade}`),
      /^hoof-testers/,
    ],
  ] as const
  for (const [key, valuesOf, codes] of byFoot) {
    const said = lastSaying(
      past,
      ({ comfort }) => valuesOf(comfort) as PerFoot<string | number>,
      (values) => Object.keys(values).length > 0,
    )
    const of = said === null ? [] : feetFor(valuesOf, said, codes)
    if (said !== null && of.length > 0)
      asked.push({ key, of, blanks: blanks(of, order), last: footText(said) })
  }
  const obel = lastSaying(
    past,
    ({ comfort }) => comfort.obel,
    (value) => value !== null,
  )
  if (obel !== null && (isStanding(/^obel/) || isHabit(past, ({ comfort }) => comfort.obel !== null)))
    asked.push({ key: 'obel', of: [], blanks: blank, last: String(obel) })
  const surfaces = Object.entries(last('surfaces') ?? {}).filter(
    ([name]) =>
      isStanding(/^unwilling/) || isHabit(past, ({ comfort }) => Object.hasOwn(comfort.surfaces, name)),
  )
  if (surfaces.length > 0) {
    asked.push({
      key: 'surfaces',
      of: [],
      blanks: `{${surfaces.map(([name]) => `${scalar(name)}: ${blank}`).join(', ')}}`,
      last: surfaces.map(([name, level]) => `${name} ${level}`).join(', '),
    })
  }
  return asked
}

export function footingLines(past: readonly Visit[], w: StarterWords): readonly string[] {
  const last = lastSaying(
    past,
    ({ footing }) => footing,
    (footing) => footing !== null,
  )
  if (last === null || !isHabit(past, ({ footing }) => footing !== null)) return []
  return [remarked(`footing: ${blank}`, w.last(last))]
}

export function bodyLines(past: readonly Visit[], w: StarterWords): readonly string[] {
  const used = (['weightKg', 'condition', 'crest'] as const).flatMap((key) => {
    const last = lastSaying(
      past,
      ({ bodyState }) => bodyState[key],
      (value) => value !== null,
    )
    if (last === null || !isHabit(past, ({ bodyState }) => bodyState[key] !== null)) return []
    return [
      key === 'weightKg' ? (['weight', `${Math.round(last)} kg`] as const) : ([key, String(last)] as const),
    ]
  })
  if (used.length === 0) return []
  const map = used.map(([key]) => `${key}: ${blank}`).join(', ')
  return [remarked(`body: {${map}}`, w.last(used.map(([key, value]) => `${key} ${value}`).join(', ')))]
}

export function stanceLines(
  past: readonly Visit[],
  order: readonly Foot[],
  w: StarterWords,
): readonly string[] {
  const of = habitFeet(past, ({ stance }) => stance)
  const last = lastSaying(
    past,
    ({ stance }) => stance,
    (stance) => Object.keys(stance).length > 0,
  )
  if (of.length === 0 || last === null) return []
  return [
    remarked(`stance: ${blanks(of, order)}`, w.last(footText(mapped(last, ({ position }) => position)))),
  ]
}

/** A vet's all-clear for the feet that wait for it. */
export function clearedLines(
  { heldFeet }: Assessment,
  order: readonly Foot[],
  w: StarterWords,
): readonly string[] {
  if (heldFeet.length === 0) return []
  const map = order.filter((foot) => heldFeet.includes(foot)).map((foot) => `${foot}: ${blank}`)
  return [remarked(`cleared: {${map.join(', ')}}`, w.cleared)]
}

const footText = (values: PerFoot<string | number>): string =>
  feet.flatMap((foot) => (values[foot] === undefined ? [] : [`${foot} ${values[foot]}`])).join(', ')

const mapped = <T>(values: PerFoot<T>, text: (value: T) => string): PerFoot<string> =>
  Object.fromEntries(
    feet.flatMap((foot) => {
      const value = values[foot]
      return value === undefined ? [] : [[foot, text(value)]]
    }),
  )
