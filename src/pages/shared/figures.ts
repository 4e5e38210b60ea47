/**
 * What a chart or drawing shows, as plain data. Words come ready: `render` never composes a sentence,
 * `present` never makes a mark. Every figure has a title that states the finding, a description that
 * stands in its place for someone who cannot see it, and its data as a table.
 */
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'
import type { FootMeasures } from '../../hoof/stand-ins.ts'

export interface Table {
  readonly caption: string
  readonly head: readonly string[]
  /** Cells as text; the first of a row is its heading. */
  readonly rows: readonly (readonly string[])[]
}

interface Described {
  /** Unique within a page, usable as an HTML id. */
  readonly id: string
  readonly title: string
  /** Empty where the page says the same beside it. */
  readonly description: string
  /** Null where its data stands beside it on the page. */
  readonly table: Table | null
}

/** Time on a chart: a calendar date, or the day or week since the first visit where dates must not show. */
export type ChartTime = { readonly date: PlainDate } | { readonly day: number } | { readonly week: number }

/** One measure at up to four feet, panels on one scale: readings, fitted line with ribbon, band, forecast. */
export interface TrendChart extends Described {
  readonly kind: 'trend'
  /** `small`: one of several side by side, two abreast on a telephone. */
  readonly size: 'full' | 'small'
  /** `zero` draws a rule at 0 and keeps it in sight: heel balance. */
  readonly baseline: 'none' | 'zero'
  readonly unit: string
  readonly valueTitle: string
  readonly timeTitle: string
  readonly panels: readonly TrendPanel[]
}

export interface TrendPanel {
  readonly foot: Foot
  readonly label: string
  /** One line under the label: the verdict in words. */
  readonly note: string
  readonly points: readonly {
    readonly at: ChartTime
    readonly value: number
    readonly stage: 'before' | 'after'
    /** No error explains it: the line does not rest on it. */
    readonly isLeftOut: boolean
  }[]
  /** Join all points in order of time (before, after, before, ...): the saw-tooth. */
  readonly sawTooth: boolean
  readonly line: readonly {
    readonly at: ChartTime
    readonly value: number
    readonly low: number
    readonly high: number
  }[]
  /** `label`: the band in words. */
  readonly band: { readonly low: number | null; readonly high: number | null; readonly label: string } | null
  readonly forecast: {
    readonly at: ChartTime
    readonly value: number
    readonly earliest: ChartTime
    /** Null: open to the right. */
    readonly latest: ChartTime | null
    /** The time in words. */
    readonly label: string
  } | null
}

/** A trend of the size of a word: values in order of time, in the band where they are wanted. */
export interface Sparkline {
  /** `at` in days from any day. */
  readonly points: readonly { readonly at: number; readonly value: number }[]
  readonly band: { readonly low: number | null; readonly high: number | null } | null
  /** Values that are to lie within the picture besides. */
  readonly within: readonly number[]
  /** The same in words. */
  readonly description: string
}

/** Two ways of reading one thing: the difference of each pair against its mean, with the limits within which 95 % lie. */
export interface AgreementChart extends Described {
  readonly kind: 'agreement'
  readonly valueTitle: string
  readonly differenceTitle: string
  readonly pairs: readonly {
    readonly mean: number
    readonly difference: number
    readonly isExplained: boolean
  }[]
  readonly bias: { readonly at: number; readonly label: string }
  readonly limits: readonly { readonly at: number; readonly label: string }[]
}

/** Foot and finding down, visits across, grade as tone, pattern and figure. */
export interface FindingsGrid extends Described {
  readonly kind: 'findings'
  readonly visits: readonly string[]
  readonly rows: readonly {
    readonly foot: Foot
    readonly label: string
    /** Null: not recorded at that visit. */
    readonly grades: readonly (0 | 1 | 2 | 3 | null)[]
  }[]
}

/** Distribution of changes over cases: dots, median and interval, never a ranking. */
export interface DistributionChart extends Described {
  readonly kind: 'distribution'
  readonly unit: string
  readonly valueTitle: string
  readonly rows: readonly {
    readonly label: string
    readonly values: readonly number[]
    readonly median: number
    /** 95 % interval of the median; null with fewer than six values. */
    readonly low: number | null
    readonly high: number | null
  }[]
}

export type Chart = TrendChart | FindingsGrid | DistributionChart | AgreementChart

/** A drawing of a foot as it was read. */
interface DrawnFoot extends Described {
  readonly foot: Foot
  /** What was drawn by stand-ins, in a sentence to be shown; null where all was read, or where the page says it. */
  readonly unread: string | null
}

/** A foot from its outer side, the first outline over the latest where they differ, to scale. */
export interface SideDrawing extends DrawnFoot {
  readonly kind: 'side'
  readonly first: SideOutline
  /** Null when there is one visit only. */
  readonly latest: SideOutline | null
  /** Millimetres that a trim would take along the wall at toe and heel, hatched, and what that is called. */
  readonly trim?: { readonly toe: number; readonly heel: number; readonly label: string } | undefined
}

export interface SideOutline {
  readonly label: string
  /** What was read; all else is drawn by stand-ins, broken. */
  readonly measures: FootMeasures
  readonly toeAngleLabel: string
  readonly toeLengthLabel: string
}

/** The sole seen from below with findings in their places. */
export interface SoleDrawing extends DrawnFoot {
  readonly kind: 'sole'
  readonly measures: FootMeasures
  /** What it was, broken over what it is where the two differ. */
  readonly first?: { readonly label: string; readonly measures: FootMeasures } | undefined
  readonly marks: readonly {
    /** A finding of the vocabulary, `thrush`, by which it is drawn; any other text is hatched. */
    readonly what: string
    /** A place of the vocabulary, `medial quarter`. */
    readonly place: string
    readonly grade: 0 | 1 | 2 | 3
    /** Short sign shown in the margin, explained in the table: `1`, `2`, ... */
    readonly sign: string
  }[]
}

/** The wall from hairline to ground with followed features now and at the next visits. */
export interface WallDrawing extends DrawnFoot {
  readonly kind: 'wall'
  readonly measures: FootMeasures
  readonly features: readonly {
    /** By which it is drawn: `crack`, `nail holes`; any other text is a line across the wall. */
    readonly what: string
    readonly place: string
    /** What and where it is, with its distance. */
    readonly label: string
    /** Millimetres from the hairline. */
    readonly at: number
    /** Of the wall there, millimetres; null when not read. */
    readonly wallLength: number | null
    readonly ahead: readonly { readonly label: string; readonly at: number }[]
  }[]
}

/** The heels from behind, and how level they stand. */
export interface LevelDrawing extends DrawnFoot {
  readonly kind: 'level'
  readonly measures: FootMeasures
  /** Medial minus lateral, mm. */
  readonly balance: number
  readonly balanceLabel: string
}

/** Small drawing of how a measure is taken. */
export interface MeasureDrawing {
  readonly kind: 'measure'
  /** Id of the measure. */
  readonly measure: string
  readonly description: string
}

export type Drawing = SideDrawing | SoleDrawing | WallDrawing | LevelDrawing | MeasureDrawing
