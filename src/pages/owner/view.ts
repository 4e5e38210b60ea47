/**
 * What an owner's page may say of a horse. Nothing else can pass: there is no place here for private notes, captions,
 * remarks on findings, history, a vet's diagnosis or the casebook's ids and file names.
 */
import type { SideDrawing, TrendChart } from '../shared/figures.ts'

export interface OwnerHorse {
  readonly name: string
  readonly seen: string
  /** After a hand-over: that letters and photographs of the time before are not shown. */
  readonly since: string | null
  readonly urgent: readonly {
    readonly level: 'stop' | 'vet' | 'mind'
    /** The level as a word, on the first line of each. */
    readonly word: string | null
    readonly text: string
  }[]
  /** The numbers to ring. */
  readonly contacts: readonly string[]
  readonly glance: readonly string[]
  readonly photos: readonly PhotoPair[]
  readonly feet: readonly OwnerFoot[]
  /** Whether a drawing has edges that were not measured. */
  readonly assumed: boolean
  /** What the words in `feet` mean, each once. */
  readonly meanings: readonly string[]
  readonly findings: readonly { readonly foot: string; readonly lines: readonly OwnerFinding[] }[]
  readonly growOut: readonly string[]
  readonly plans: readonly string[]
  /** Only what stands under the heading for owners; newest first. */
  readonly letters: readonly { readonly head: string; readonly text: string }[]
  readonly care: readonly CareTask[]
  readonly next: string
  readonly chart: TrendChart | null
}

export interface OwnerFoot {
  readonly foot: string
  readonly side: SideDrawing | null
  readonly statements: readonly Statement[]
}

/** `good`: on target or improving. `waits`: for the vet. `moving`: rising or falling with no target. */
export type Mood = 'good' | 'steady' | 'moving' | 'bad' | 'early' | 'waits'

export interface Statement {
  readonly mood: Mood
  /** The mood in words, so that it never rests on colour. */
  readonly badge: string
  /** What changed, how sure that is, and where it goes: a sentence each. */
  readonly sentences: readonly string[]
}

export interface OwnerFinding {
  readonly mood: 'good' | 'steady' | 'bad'
  readonly text: string
  readonly meaning: string | null
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
