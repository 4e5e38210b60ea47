/** Every caution that a horse's record gives, which of them stand, and which feet they hold. */

import type { Horse } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet } from '../../hoof/feet.ts'
import type { NextVisit } from '../assessed-care.ts'
import type { Columns } from '../columns.ts'
import { type Caution, withoutCovered } from './caution.ts'
import { type Episode, feetOfSubject, follow, momentsOf, saysCleared } from './episodes.ts'
import { careRecord, lastWords } from './record.ts'
import { type CautionLevel, levelOrder } from './sign.ts'
import { type CautionCode, placeOf, signs } from './signs.ts'

export interface Cautions {
  /** Stop first, then vet, then mind; within a level the latest first, then in order of the codes. */
  readonly all: readonly Caution[]
  /** Feet that have no plan while what was found at them stands. */
  readonly heldFeet: readonly Foot[]
  /** Whether the foot was held once the visit at that place had been written up. */
  wasHeld(foot: Foot, place: number): boolean
  /** Whether a matter of that code stands at the foot, said more gravely elsewhere or not. */
  stands(code: CautionCode, foot: Foot): boolean
}

export function cautionsOf(horse: Horse, columns: Columns, next: NextVisit, asOf: PlainDate): Cautions {
  const episodes = episodesOf(horse, columns)
  const holding = episodes.filter(({ sign }) => holdsPlan(sign))
  const standing = episodes.filter(({ until }) => until === null)
  const wasHeld = (foot: Foot, place: number) =>
    holding.some(
      ({ subject, from, until }) =>
        feetOfSubject(subject).includes(foot) && from <= place && (until === null || until > place),
    )
  const today = onDay(horse, columns, next, asOf)
  const found = episodes.map((one) => cautionOf(one, columns))
  const shown = new Set(withoutCovered(found.filter(({ standing }) => standing)))
  const cautions = found.map((one): Caution => (shown.has(one) ? one : { ...one, standing: false }))
  return {
    all: [...cautions, ...today].toSorted(
      (a, b) =>
        levelOrder[a.level] - levelOrder[b.level] ||
        (a.date < b.date ? 1 : a.date > b.date ? -1 : 0) ||
        placeOf[a.code] - placeOf[b.code],
    ),
    heldFeet: feet.filter(
      (foot) =>
        wasHeld(foot, columns.visits.length - 1) ||
        today.some((one) => one.holdsPlan && one.feet.includes(foot)),
    ),
    wasHeld,
    stands: (code, foot) =>
      standing.some(({ sign, subject }) => sign.code === code && feetOfSubject(subject).includes(foot)),
  }
}

const holdsPlan = (sign: { readonly level: CautionLevel; readonly holdsPlan?: true }): boolean =>
  sign.level === 'stop' || sign.holdsPlan === true

function episodesOf(horse: Horse, columns: Columns): readonly Episode<CautionCode>[] {
  const known = lastWords(columns.visits.flatMap(({ comfort }) => comfort.painkillers ?? []))
  const record = careRecord(horse, columns, known)
  const followed = signs.flatMap((sign) => {
    const look = sign.over(record)
    return look === null ? [] : [follow<CautionCode>(sign, look)]
  })
  for (const moment of momentsOf(columns)) {
    known.hear(moment.visit, moment.findings)
    for (const one of followed) one.at(moment)
    if (saysCleared(moment.visit)) for (const one of followed) one.clear(moment.visit.cleared, moment.place)
  }
  return followed.flatMap((one) => one.episodes)
}

function cautionOf(episode: Episode<CautionCode>, { visits }: Columns): Caution {
  const { sign, subject, since, facts, spokenAt, until, isLower, seen } = episode
  const about = feetOfSubject(subject)
  const last = visits[spokenAt]
  return {
    code: sign.code,
    level: sign.level,
    family: sign.family ?? null,
    foot: about.length === 1 ? (about[0] ?? null) : null,
    feet: about,
    since,
    date: last === undefined || since > last.date ? since : last.date,
    visit: last?.id ?? '',
    facts,
    standing: until === null,
    isLower,
    silentVisits: until === null ? visits.length - 1 - spokenAt : 0,
    holdsPlan: holdsPlan(sign),
    seen: seen.map(({ place, facts: found }) => ({
      visit: visits[place]?.id ?? '',
      date: visits[place]?.date ?? since,
      facts: found,
    })),
  } as unknown as Caution
}

function onDay(horse: Horse, { visits }: Columns, next: NextVisit, asOf: PlainDate): readonly Caution[] {
  return signs.flatMap((sign) => {
    const found = sign.onDay?.(next, horse, asOf) ?? null
    if (found === null) return []
    const { date, facts, feet: about } = found
    const caution = {
      code: sign.code,
      level: sign.level,
      family: sign.family ?? null,
      foot: about.length === 1 ? (about[0] ?? null) : null,
      feet: about,
      since: date,
      date,
      visit: visits.at(-1)?.id ?? null,
      facts,
      standing: true,
      isLower: false,
      silentVisits: 0,
      holdsPlan: holdsPlan(sign),
      seen: [],
    }
    return [caution as unknown as Caution]
  })
}
