/** Words that stand inside charts and drawings: keys to their marks, and names of sides. */
export const figures = {
  /** The key to a trend chart, and what stands beside its band. */
  trend: {
    after: 'after the trim',
    before: 'on arrival',
    leftOut: 'left out: no error explains it',
  },
  target: (band: string) => `target ${band}`,
  /** The key to a plot of differences. */
  agreement: {
    explained: 'a pair of readings',
    unexplained: 'further apart than both errors explain',
  },
  /** The key to graded findings, grade 0 to 3. */
  grades: ['resolved', 'mild', 'moderate', 'severe'],
  notRecorded: 'not recorded',
  inner: 'inner',
  outer: 'outer',
  /** Under a drawing of a foot. */
  unread: (measures: string) => `Drawn by usual proportions, as not read at that stage: ${measures}.`,
  narrowedFrog: 'The frog is drawn narrower than it was read, to fit between the heels.',
  /** After what grows down the wall, when it will have moved on. */
  ahead: (dates: string) => `broken: ${dates}`,
}
