/**
 * What the portfolio may say of a horse. Nothing else can pass: no name, no owner, no place, no date, no note of the
 * practitioner's own, no caption, no file name. Times are weeks or days from the first visit.
 */
import type { Foot } from '../../hoof/feet.ts'
import type { AnyMeasureId } from '../../hoof/measures.ts'
import type { FindingsGrid, SideDrawing, SoleDrawing, Table, TrendChart } from '../shared/figures.ts'
import type { CaseLength, Outcome } from '../words/keys.ts'

/** The case page, in the order of the CARE guideline for case reports. */
export interface PortfolioCase {
  /** Kinds of problem, in the words of the vocabulary. */
  readonly title: string
  readonly head: string
  readonly keyFacts: string
  /** The same with their feet; empty where nothing is known. */
  readonly problems: string
  readonly findings: {
    readonly list: Table | null
    readonly soles: readonly SoleDrawing[]
    readonly sides: readonly SideDrawing[]
    /** What was not measured in the drawings, once for all. */
    readonly drawnNotes: readonly string[]
    readonly readings: Table | null
    readonly comfort: readonly { readonly feet: string; readonly text: string }[]
    readonly shots: Shots
  }
  readonly timeline: { readonly text: string; readonly visits: Table }
  readonly assessment: {
    readonly bands: Table | null
    readonly cautions: readonly CaseCaution[]
  }
  readonly done: {
    readonly taken: Table | null
    readonly each: readonly Table[]
    readonly plans: readonly string[]
  }
  readonly outcome: {
    readonly label: string
    readonly conclusion: readonly string[]
    readonly cautions: readonly CaseCaution[]
    readonly problems: Table | null
    readonly chart: TrendChart | null
    readonly side: SideDrawing | null
    readonly shots: Shots
    /** Behind a fold. */
    readonly all: {
      readonly charts: readonly TrendChart[]
      readonly trends: Table | null
      readonly found: Table | null
      readonly grid: FindingsGrid | null
      readonly growth: readonly string[]
      readonly growOut: readonly string[]
    }
  }
  /** Only what stands under the heading for teaching, rewritten. */
  readonly discussion: readonly TeachingNote[]
  readonly discussionVisits: readonly TeachingNote[]
  readonly ownerView: string | null
  readonly consent: string
  readonly csv: string
  readonly csvNote: string
}

export interface TeachingNote {
  readonly head: string
  readonly text: string
}

/** A few pictures, and the others behind a fold. */
export interface Shots {
  readonly few: readonly CaseShot[]
  readonly more: readonly CaseShot[]
}

export interface CaseCaution {
  readonly level: 'stop' | 'vet' | 'mind'
  /** The level as a word, on the first line of each. */
  readonly word: string | null
  readonly text: string
}

export interface CaseShot {
  /** A processed picture; the page carries a name of its own for it. */
  readonly picture: string
  readonly width: number
  readonly height: number
  readonly alt: string
  readonly label: string
}

/** What pages over all cases need of one: small, plain, and as anonymous as the page. */
export interface CaseSummary {
  /** Folder of the case, from its alias. */
  readonly slug: string
  readonly alias: string
  readonly visits: number
  /** Time followed, in words. */
  readonly span: string
  readonly length: CaseLength
  readonly outcome: Outcome
  /** Kinds of problem, in the words of the vocabulary. */
  readonly kinds: readonly string[]
  readonly findings: readonly string[]
  /** Feet with a finding or a trend. */
  readonly feet: readonly Foot[]
  readonly changes: readonly CaseChange[]
}

/** Change of one measure along its line, the mean over the feet of one case, and how many of them clearly moved. */
export interface CaseChange {
  readonly measure: AnyMeasureId
  readonly mean: number
  readonly feet: number
  readonly up: number
  readonly down: number
  readonly within: number
}
