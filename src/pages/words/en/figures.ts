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
  inner: 'inner',
  outer: 'outer',
  /** Key to a wall drawing. */
  wall: { now: 'now', ahead: 'expected at the next visits' },
}
