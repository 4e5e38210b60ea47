/** What a case is about, a line or two each. */

export const problem = {
  heading: 'Problems',
  chosen: 'Chosen from the record, as none are written in the horse’s file.',
  firstOf: (date: string) => `First value, of ${date} unless said, and now.`,
  none: 'Nothing stands out in the record, and no problems are written in the horse’s file.',
  noneOpen: 'None is open.',
  /** `54 mm → 41 mm`. */
  fromTo: (first: string, last: string) => `${first} → ${last}`,
  since: (date: string) => `since ${date}`,
  readOn: (date: string) => `(${date})`,
  onArrival: 'on arrival',
  nothingRead: 'nothing read yet',
  freeWords: 'in your own words',
  grade: ['gone', 'mild', 'moderate', 'severe'] as readonly string[],
  inner: (amount: string) => `inner +${amount}`,
  outer: (amount: string) => `outer +${amount}`,
  level: 'level',
  near: 'near target',

  finding: { better: 'getting better', worse: 'got worse', same: 'no change', one: 'seen once' },
  growOut: {
    'growing down': 'growing down',
    due: 'due at the ground',
    'grown out': 'grown out',
    'wall length unknown': 'growing down',
  },
  closed: (foot: string, name: string, date: string) => `${foot} ${name}: closed ${date}.`,
  reached: (foot: string, name: string, date: string) => `${foot} ${name}: on target since ${date}.`,

  about: (edge: string, date: string) => `${edge} about ${date}`,
  aboutBy: (edge: string, date: string, latest: string) => `${edge} about ${date}, latest ${latest}`,
  aboutOpen: (edge: string, date: string) => `${edge} about ${date}, or much later`,
  wasExpected: (edge: string, date: string) => `${edge} was expected by ${date}`,
  notBefore: (edge: string, month: string) => `${edge} not before ${month}`,
  late: (edge: string) => `${edge} in over 18 months`,
  noDate: 'no date yet',
  atGround: (date: string) => `at the ground about ${date}`,
  atGroundBy: (date: string) => `was expected at the ground by ${date}`,
  noWall: 'no date: the wall there was not measured',

  next: {
    held: 'no work before the vet',
    plan: 'as planned',
    read: 'read it at the next visit',
    look: 'look at the next visit',
    silent: (date: string) => `not spoken of since ${date}: look`,
    unread: (date: string) => `not read since ${date}: read it`,
    measureWall: 'measure the wall there',
    keepOn: 'keep on',
    cause: 'look for the cause',
    other: 'no gain so far: try another way',
    hold: 'hold it there',
    care: 'keep up the care',
  },
  /** What the sparkline shows, in words. */
  more: (n: number) => (n === 1 ? 'One more problem' : `${n} more problems`),
  /** Of many values the ends. */
  sparkEnds: (first: string, last: string, n: number) => `${first} to ${last} over ${n} readings`,
  spark: (name: string, values: string) => `${name}: ${values}`,
  sparkBand: (name: string, values: string, band: string) => `${name}: ${values}; target ${band}`,

  real: {
    heading: 'What has clearly moved',
    moved: (first: string, last: string) => `${first} to ${last}`,
    pace: (rate: string) => `${rate}, over all readings`,
    way: {
      reached: 'on target',
      near: 'near its target',
      toward: 'toward its target',
      away: 'away from its target',
      held: 'not judged while the vet is waited for',
    },
    since: (date: string) => `Since ${date}, unless another day is said.`,
    allFeet: 'all feet together',
    others: (n: number, names: string) =>
      n === 1 ? `One more has clearly moved: ${names}.` : `${n} more have clearly moved: ${names}.`,
    nothingElse: 'Nothing else has clearly moved.',
    nothing: 'Nothing has clearly moved yet.',
    tooEarly: 'There is nothing to compare yet. After two visits there will be.',
  },
}
