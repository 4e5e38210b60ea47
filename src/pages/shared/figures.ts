/**
 * What a chart or drawing shows, as plain data. Words come ready: `render` never composes a sentence,
 * `present` never makes a mark. Every figure has a title that states the finding, a description that
 * stands in its place for someone who cannot see it, and its data as a table.
 */
import type { PlainDate } from '../../hoof/dates.ts'
import type { Foot } from '../../hoof/feet.ts'

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

/** Side outline of the hoof, first against latest, to scale. Heel to the right for every foot. */
export interface SideDrawing extends Described {
  readonly kind: 'side'
  readonly foot: Foot
  readonly first: SideOutline
  /** Null when there is one visit only. */
  readonly latest: SideOutline | null
}

export interface SideOutline {
  readonly label: string
  readonly toeHairline: readonly [number, number]
  readonly heelHairline: readonly [number, number]
  readonly heelGround: readonly [number, number]
  readonly toeAngle: number
  readonly toeAngleLabel: string
  readonly toeLengthLabel: string
  /** Sides that stand in for readings that were not taken; drawn broken. */
  readonly assumed: boolean
}

/** The sole seen from below or above with findings in their zones. */
export interface SoleDrawing extends Described {
  readonly kind: 'sole'
  readonly foot: Foot
  readonly marks: readonly {
    /** A place of the vocabulary, `medial quarter`. */
    readonly place: string
    readonly grade: 0 | 1 | 2 | 3
    /** Short sign shown at the place, explained in the table: `1`, `2`, ... */
    readonly sign: string
    readonly label: string
  }[]
}

/** The wall from hairline to ground with followed features now and at the next visits. */
export interface WallDrawing extends Described {
  readonly kind: 'wall'
  readonly foot: Foot
  readonly lanes: readonly {
    readonly place: string
    /** Millimetres; null when not read: drawn open at the foot. */
    readonly wallLength: number | null
    readonly features: readonly {
      readonly label: string
      /** Millimetres from the hairline. */
      readonly at: number
      readonly ahead: readonly { readonly label: string; readonly at: number }[]
    }[]
  }[]
}

/** Heel balance as a level that tilts, seen from behind. */
export interface LevelDrawing extends Described {
  readonly kind: 'level'
  readonly foot: Foot
  /** Medial minus lateral, mm. */
  readonly balance: number
  /** Degrees; null when the width was not read. */
  readonly tilt: number | null
  readonly balanceLabel: string
  readonly withinTarget: boolean
}

/** Small drawing of how a measure is taken. */
export interface MeasureDrawing {
  readonly kind: 'measure'
  /** Id of the measure. */
  readonly measure: string
  readonly description: string
}

export type Drawing = SideDrawing | SoleDrawing | WallDrawing | LevelDrawing | MeasureDrawing
