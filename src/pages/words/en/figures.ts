/** Words that stand inside charts and drawings: keys to their marks, and names of sides. */
export const figures = {
  /** The key to a trend chart. */
  trend: {
    after: 'reading after the trim',
    before: 'reading on arrival',
    unused: 'reading that the line does not rest on',
    sawTooth: 'growth between visits, drop at the trim',
    line: 'fitted line',
    interval: '95 % interval of the line',
    band: 'target band',
    forecast: 'forecast, with its range',
  },
  /** The key to graded findings, grade 0 to 3. */
  grades: ['resolved', 'mild', 'moderate', 'severe'],
  notRecorded: 'not recorded',
  /** The key to a distribution. */
  distribution: {
    value: 'one case',
    median: 'median',
    interval: '95 % interval of the median',
  },
  inner: 'inner',
  outer: 'outer',
  /** Under a drawing of a foot. */
  unread: (measures: string) => `Not measured, drawn by usual proportions: ${measures}.`,
  narrowedFrog: 'The frog is drawn narrower than it was read, to fit between the heels.',
  /** After what grows down the wall, when it will have moved on. */
  ahead: (dates: string) => `broken: ${dates}`,
}
