/** From what the visits say of a matter to when it began, when it was last spoken of, and when it ended. */
import type { Cleared, Visit } from '../../casebook/model.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { type Foot, feet, feetOf } from '../../hoof/feet.ts'
import type { Facts } from '../assessed-care.ts'
import type { Columns } from '../columns.ts'
import { gravestAt } from './record.ts'
import { every, type Look, type Moment, type Sign, type Speak, type Subject } from './sign.ts'

/** One matter from the visit that found it to the one that ended it. */
export interface Episode<Code extends string> {
  readonly sign: Sign<Code, Facts>
  readonly subject: Subject
  readonly matter: string
  readonly since: PlainDate
  /** Day up to which a vet's all-clear must reach. */
  foundOn: PlainDate
  facts: Facts
  /** Place of the visit that last spoke of it. */
  spokenAt: number
  isLower: boolean
  /** Places of the visits that found it, with what they found. */
  readonly seen: { readonly place: number; readonly facts: Facts }[]
  readonly from: number
  /** Place of the visit that ended it; null while it stands. */
  until: number | null
}

export const feetOfSubject = (subject: Subject): readonly Foot[] =>
  subject === 'horse' ? feet : subject === 'fore' || subject === 'hind' ? feetOf(subject) : [subject]

/** One rule at work over the visits. */
export interface Following<Code extends string> {
  at(moment: Moment): void
  /** A vet's all-clear, as a visit reports it. */
  clear(cleared: Cleared, place: number): void
  readonly episodes: readonly Episode<Code>[]
}

export function follow<Code extends string>(sign: Sign<Code, Facts>, look: Look<Facts>): Following<Code> {
  const episodes: Episode<Code>[] = []
  /** Few, and in most records none. */
  let open: Episode<Code>[] = []
  const end = (episode: Episode<Code>, place: number) => {
    episode.until = place
    open = open.filter((one) => one !== episode)
  }
  const speaking =
    ({ place, visit }: Moment): Speak<Facts> =>
    (subject, word, matter = '', date = visit.date) => {
      const about = open.filter(
        (one) => one.subject === subject && (one.matter === matter || matter === every),
      )
      for (const episode of about) {
        episode.spokenAt = place
        if (word === 'gone' || (word === 'lower' && sign.level !== 'stop')) end(episode, place)
        else if (word === 'lower') episode.isLower = true
        else if (word !== 'same') {
          episode.facts = word
          episode.foundOn = date
          episode.isLower = false
          episode.seen.push({ place, facts: word })
        }
      }
      if (typeof word === 'string' || about.length > 0) return
      const episode: Episode<Code> = {
        sign,
        subject,
        matter,
        since: date,
        foundOn: date,
        facts: word,
        spokenAt: place,
        isLower: false,
        seen: [{ place, facts: word }],
        from: place,
        until: null,
      }
      episodes.push(episode)
      open.push(episode)
    }
  return {
    at: (moment) => look(moment, speaking(moment)),
    clear(cleared, place) {
      for (const episode of open)
        if (sign.level !== 'mind' && isCleared(episode, cleared)) end(episode, place)
    },
    episodes,
  }
}

/** Every foot that it is about must have been cleared on or after the day on which it was last found. */
const isCleared = ({ subject, foundOn }: Episode<string>, cleared: Cleared): boolean =>
  feetOfSubject(subject).every((foot) =>
    [cleared.feet[foot], cleared.all].some((day) => day != null && day >= foundOn),
  )

export const saysCleared = ({ cleared }: Visit): boolean =>
  cleared.all !== null || Object.keys(cleared.feet).length > 0

export const momentsOf = ({ visits }: Columns): readonly Moment[] =>
  visits.map((visit, place) => ({
    place,
    visit,
    findings: gravestAt(visit),
    isLast: place === visits.length - 1,
  }))
