/**
 * What an owner's page may say of a horse. Nothing else can pass: there is no place here for private notes, captions,
 * remarks on findings, problems as written, history, a vet's diagnosis or the casebook's ids and file names.
 */
import type { CautionLevel } from '../../trend/assessment.ts'
import type { SideDrawing, Table } from '../shared/figures.ts'

/** In the order of the page. */
export interface OwnerHorse {
  readonly name: string
  readonly seen: string
  /** After a hand-over: that letters and photographs of the time before are not shown. */
  readonly since: string | null
  readonly urgent: readonly UrgentLine[]
  readonly care: readonly CareTask[]
  readonly next: string
  /** Only what stands under the heading for owners: the latest, and folded those before it, newest first. */
  readonly letter: Letter | null
  readonly lettersBefore: readonly Letter[]
  readonly thenAndNow: PhotoPair | null
  /** Where there is no pair of photographs: the outline of a foot that clearly changed. */
  readonly drawing: SideDrawing | null
  readonly changes: Changes
  readonly lookFor: readonly string[]
  readonly lookForHead: string
  /** The numbers to ring, the vet's first. */
  readonly contacts: readonly ContactLine[]
  readonly numbers: Numbers
  readonly photos: readonly PhotoPair[]
  /** What the words of this part mean, each once. */
  readonly meanings: readonly string[]
  /** For the index of the owner's horses. */
  readonly brief: HorseBrief
}

/** A caution that stops the work or asks for the vet. */
export interface UrgentLine {
  readonly level: CautionLevel
  /** The level as a word, on the first line of each. */
  readonly word: string | null
  readonly text: string
}

export interface Letter {
  readonly head: string
  readonly text: string
}

export interface Changes {
  readonly feet: readonly FootChanges[]
  /** What there is besides. */
  readonly rest: string
}

/** What got worse first, all of it; then at most two sentences on what got better or changed. */
export interface FootChanges {
  readonly foot: string
  readonly moods: readonly {
    readonly mood: Mood
    readonly word: string
    readonly sentences: readonly string[]
  }[]
}

export type Mood = 'bad' | 'good' | 'moving'

export interface ContactLine {
  readonly text: string
  /** For a link that rings. */
  readonly dial: string
}

/** Folded: for whoever wants to see the readings. */
export interface Numbers {
  readonly tables: readonly Table[]
  readonly found: readonly { readonly foot: string; readonly lines: readonly string[] }[]
  readonly ahead: readonly string[]
  /** Cautions for some days after a trim that is longer ago. */
  readonly record: readonly string[]
}

export interface HorseBrief {
  readonly level: CautionLevel | null
  /** The gravest level as a word. */
  readonly word: string | null
  readonly next: string
}

export interface CareTask {
  readonly task: string
  readonly ticks: readonly { readonly day: string; readonly label: string }[]
}

export interface PhotoPair {
  readonly head: string
  readonly shots: readonly OwnerShot[]
}

export interface OwnerShot {
  /** A processed picture; the page carries its bytes, never its name. */
  readonly picture: string
  readonly width: number
  readonly height: number
  readonly alt: string
  readonly label: string
}
