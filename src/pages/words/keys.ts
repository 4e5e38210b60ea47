/** What the catalogues have words for, by key, where no other room of the program names it. */

/** How long a case was followed: up to 3 months, up to 6, up to a year, longer. */
export type CaseLength = 'short' | 'half' | 'year' | 'long'

/** What came of a case, from the verdicts of measures with a band. */
export type Outcome = 'on target' | 'improving' | 'mixed' | 'worsening' | 'unsettled'

/** Age in years as the portfolio tells it: from its closest bands to its widest. */
export type AgeBand = '0' | '1-3' | '4-8' | '9-13' | '14-18' | '19-' | '0-3' | '4-13' | '14-' | '4-'

/** Kinds of horse as the portfolio tells them, and several told as one. */
export type KindClass =
  | 'pony'
  | 'cob'
  | 'horse'
  | 'draught'
  | 'donkey'
  | 'mule'
  | 'pony or cob'
  | 'horse or draught'
  | 'donkey or mule'
  | 'horse or pony'

export type SexClass = 'mare' | 'gelding' | 'stallion' | 'male'

/** What a finding is called, and what it is, in one line for a lay reader. */
export interface OwnerFinding {
  readonly name: string
  readonly meaning: string
}

/** What an owner is told of one measure: the thing, what more and less of it is called, and what it is. */
export interface OwnerMeasure {
  readonly thing: string
  readonly more: string
  readonly less: string
  readonly meaning: string
}
