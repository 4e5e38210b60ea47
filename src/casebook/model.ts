/**
 * A casebook as resolved: everything validated, in engine units (millimetres, degrees, kilograms, days),
 * defaults filled in. What the files said word for word stays in the files.
 */
import type { Band } from '../hoof/bands.ts'
import type { PlainDate } from '../hoof/dates.ts'
import type { Foot, PerFoot } from '../hoof/feet.ts'
import type { Landmarks, PhotoView } from '../hoof/landmarks.ts'
import type { AnyMeasureId, MeasureId } from '../hoof/measures.ts'
import type { LengthUnit } from '../hoof/units.ts'
import type { LanguageTag } from './languages.ts'

export interface Casebook {
  readonly practice: Practice
  /** Horses whose files hold no error, by id. */
  readonly horses: readonly Horse[]
}

export interface Practice {
  readonly name: string
  readonly units: LengthUnit
  /** Of owners' pages; all others are in English. */
  readonly language: LanguageTag
  readonly trimCycleDays: number
  /** Order in which a list of four is written. */
  readonly feetOrder: readonly Foot[]
  readonly owners: readonly Owner[]
  /** Who works in the practice. Their names identify, and stand in no page for others. */
  readonly people: readonly Person[]
  readonly localRules: string | null
  /** Whom to ring. Shown to owners, never in the portfolio. */
  readonly contacts: Contacts
  readonly portfolio: PortfolioChoices
  /** Extra finding names with a one-line meaning. */
  readonly terms: Readonly<Record<string, string>>
  /** Markdown, shown on the practice's office page. */
  readonly body: string
}

/** How much the portfolio tells of when, and by whom. */
export interface PortfolioChoices {
  /** Time since the first visit: whole weeks unless days are asked for. */
  readonly time: 'weeks' | 'days'
  /** Whether the practice's name stands nowhere in it. */
  readonly hidesPractice: boolean
  /** What a visit brought is told only so many days later. */
  readonly holdBackDays: number
}

export interface Contacts {
  /** The practice's own number. */
  readonly practice: string | null
  readonly vet: Contact
}

export interface Contact {
  readonly name: string | null
  readonly phone: string | null
}

export interface Owner {
  readonly id: string
  readonly name: string
  /** Of this owner's page; null where it is the practice's. */
  readonly language: LanguageTag | null
}

/** Someone of the practice, whom a visit names by id. */
export interface Person {
  readonly id: string
  readonly name: string
}

export interface Horse {
  readonly id: string
  readonly name: string
  /** Owner id from practice.md; null when the file names none (a warning says so). */
  readonly owner: string | null
  /** Day from which the horse is this owner's; null where it always was. */
  readonly ownerSince: PlainDate | null
  readonly kind: string | null
  readonly sex: string | null
  /** As written, year or date: `2014` or `2014-05-02`. */
  readonly born: string | null
  readonly heightCm: number | null
  readonly weightKg: number | null
  readonly started: PlainDate | null
  readonly history: readonly string[]
  readonly vet: HorseVet
  /** Day of the last tetanus vaccination. */
  readonly tetanus: PlainDate | null
  readonly consent: Consent
  readonly alias: string | null
  /** Further words that must never appear in the portfolio. */
  readonly privateWords: readonly string[]
  readonly targets: Partial<Record<AnyMeasureId, PerFoot<Band>>>
  readonly trimLimits: {
    readonly sole: PerFoot<'flat' | 'cupped'>
    /** Millimetres; null leaves the default by sole. */
    readonly mostPerTrim: number | null
  }
  /** What the case is about, most important first; empty where horse.md does not say. */
  readonly problems: readonly WrittenProblem[]
  /** Oldest first. */
  readonly visits: readonly Visit[]
  /** Markdown of horse.md: private, and the sections for others. */
  readonly body: Body
  /** Path within the casebook, `juno/horse.md`. */
  readonly file: string
}

/** A line of `problems`. */
export interface WrittenProblem {
  /** All four where none is named. */
  readonly feet: readonly Foot[]
  /** As written. Free words are the practice's own, and private: no page for others may hold any of this text. */
  readonly text: string
  readonly about: ProblemSubject
}

export type ProblemSubject =
  | { readonly kind: 'measure'; readonly measure: AnyMeasureId }
  /** Names as the vocabulary has them; `place` null where the line names none. */
  | { readonly kind: 'finding'; readonly what: string; readonly place: string | null }
  /** Followed as it grows down the wall; `what` as the visits have it. */
  | { readonly kind: 'grow-out'; readonly what: string; readonly place: string | null }
  /** Free words: `text` says all that is known. */
  | { readonly kind: 'words' }

/** The horse's own vet, and what that vet has said. A name or number here wins over the practice's contact. */
export interface HorseVet extends Contact {
  readonly involved: boolean
  readonly diagnosis: string | null
  /** Day of the diagnosis. */
  readonly date: PlainDate | null
  /** Feet that the diagnosis is about; empty where it does not say. */
  readonly feet: readonly Foot[]
}

export interface Consent {
  readonly ownerSite: boolean
  readonly portfolio: boolean
  readonly photos: boolean
  readonly given: PlainDate | null
}

/** Markdown by reader. Private unless a heading says otherwise. */
export interface Body {
  readonly own: string
  readonly forOwner: string | null
  readonly forTeaching: string | null
}

export interface Visit {
  /** File name without ending: `2026-03-14` or `2026-03-14-b`; unique within the horse, sorts by time. */
  readonly id: string
  readonly date: PlainDate
  readonly file: string
  /** Not yet for others: shown to the practice alone until the line is deleted. */
  readonly draft: boolean
  /** Id of the person of the practice who took the readings; null where the visit does not say. */
  readonly by: string | null
  /** The draft of the yard page that it came from; null where it was written otherwise. */
  readonly yard: YardOrigin | null
  readonly footing: string | null
  readonly readings: readonly Reading[]
  readonly findings: readonly Finding[]
  readonly growOut: readonly FollowedFeature[]
  readonly comfort: Comfort
  readonly bodyState: BodyState
  readonly stance: PerFoot<Stance>
  /** A vet's all-clear: the day on which the vet cleared a foot, or the whole horse. */
  readonly cleared: Cleared
  readonly photos: readonly Photo[]
  /** What the owner does until the next visit. */
  readonly care: readonly string[]
  /** As resolved from `next visit`: a date, or the visit's date plus the interval; null when not said. */
  readonly nextVisit: PlainDate | null
  readonly body: Body
}

export interface YardOrigin {
  readonly draft: string
  readonly version: number
}

export type Stage = 'before' | 'after'

export interface Stance {
  /** A word of the scale. */
  readonly position: string
  readonly words: string | null
}

export interface Cleared {
  readonly feet: PerFoot<PlainDate>
  readonly all: PlainDate | null
}

/** One entered reading: millimetres or degrees. */
export interface Reading {
  readonly stage: Stage
  readonly foot: Foot
  readonly measure: MeasureId
  /** Of a foot that was read twice, the mean of both. */
  readonly value: number
  /** Both readings, as written one after the other; only where the foot was read twice. */
  readonly twice?: readonly [number, number]
}

export interface Finding {
  readonly foot: Foot
  /** Name from the vocabulary or the practice's own terms, lower case. */
  readonly what: string
  readonly place: string
  /** 0 resolved, 1 mild, 2 moderate, 3 severe. */
  readonly grade: 0 | 1 | 2 | 3
  readonly words: string | null
}

export interface FollowedFeature {
  readonly foot: Foot
  readonly what: string
  readonly place: string
  /** Millimetres from the hairline. */
  readonly distance: number
}

export interface Comfort {
  /** AAEP 0 to 5. `by` is who judged: `vet`, `practitioner`, or null when not said. */
  readonly lameness: PerFoot<number>
  readonly lamenessBy: string | null
  readonly obel: number | null
  readonly landing: PerFoot<string>
  /** 0 none, 1 faint, 2 clear, 3 bounding. */
  readonly digitalPulse: PerFoot<number>
  /** Surface name to easy, short, careful, unwilling. */
  readonly surfaces: Readonly<Record<string, string>>
  /** Where the hoof testers met a reaction, and how much: 0 none to 3. */
  readonly hoofTesters: PerFoot<{ readonly place: string; readonly grade: number }>
  /** Day of the last dose of a painkiller: a horse under one hides its lameness. */
  readonly painkillers: PlainDate | null
  /** Day on which it began. */
  readonly onset: PlainDate | null
}

export interface BodyState {
  readonly weightKg: number | null
  /** Henneke 1 to 9. */
  readonly condition: number | null
  /** Crest score 0 to 5. */
  readonly crest: number | null
}

export interface Photo {
  /** Path within the horse's folder, forward slashes: `photos/lf-side.jpg`. */
  readonly file: string
  readonly foot: Foot | null
  readonly view: PhotoView
  readonly stage: Stage | null
  readonly caption: string | null
  /** Marked points, pixels of the upright picture; null when none are marked. */
  readonly landmarks: Landmarks | null
}
