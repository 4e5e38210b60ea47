/** Wording of a horse's own page, and of what its other pages share. */
const count = (n: number, one: string, many: string) => (n === 1 ? `1 ${one}` : `${n} ${many}`)

export const horse = {
  title: (name: string, practice: string) => `${name}, ${practice}`,
  seen: (last: string, visits: number) =>
    visits === 1 ? `Seen once, ${last}.` : `Last seen ${last}, visit ${visits}.`,
  notSeen: 'No visit is on record yet.',
  age: (years: number) => (years < 1 ? 'under a year old' : count(years, 'year old', 'years old')),
  bar: {
    name: 'Of this horse',
    fieldSheet: 'Field sheet',
    handOver: 'Hand-over',
    lastVisit: 'Last visit',
    measures: 'All measures',
    photos: 'Photos',
  },

  cautions: 'Cautions',
  calm: 'No caution is in force.',
  inFull: 'In full: what, and what not to do',
  seenAt: (date: string) => `visit of ${date}`,
  wholeHorse: 'The whole horse',
  matterOn: (matter: string, date: string) => `${matter} (${date})`,
  also: (matters: string, lower: string) => `${matters}; also ${lower}`,
  silent: (matters: string) => `not spoken of since: ${matters}`,
  ring: (contact: string) => `Ring: ${contact}`,
  gradeOn: (grade: string, date: string) => `${grade}, ${date}`,
  flagged: { stop: 'Stop: ask a vet first', vet: 'Tell the vet', mind: 'Take care' },

  today: 'Today',
  noteOf: (date: string) => `Your note of ${date}`,
  wholeNote: (date: string) => `The whole of your note of ${date}`,
  allowed: 'What may come off',
  wall: 'On the wall by now',
  charts: 'The problems’ measures',
  drawings: 'Foot by foot',
  photos: 'Then and now',
  olderVisits: (n: number) => (n === 1 ? 'One earlier visit' : `${n} earlier visits`),

  levels: 'Heels, seen from behind',
  pairs: 'Left against right',
  pair: { fore: 'Fores', hind: 'Hinds' },
  pairOn: (text: string, when: string) => `${text} (${when})`,
  pairReal: (pair: string, measure: string, left: string, right: string, gap: string, limit: string) =>
    `${pair}, ${measure}: left ${left}, right ${right}. They differ by ${gap}, more than measuring error (${limit}).`,
  pairWithin: (pair: string, figures: string) =>
    `${pair}, left and right within measuring error: ${figures}.`,
  pairBoth: (measure: string, left: string, right: string, limit: string) =>
    `${measure} ${left} and ${right} (real from ${limit})`,
  geometry: 'What lowering would do',
  geometryToe: (foot: string, angle: string, length: string) =>
    `${foot}: 1 mm off the toe changes the toe angle by ${angle} and the toe length by ${length}.`,
  geometryHeel: (angle: string, length: string) =>
    `1 mm off the heels changes the angle by ${angle} and the length by ${length}.`,
  geometryHow:
    'From the side view as measured: the ground plane turned about the other end of the foot. A guide to what a trim does, not a trim to make.',

  growth: 'What the hoof did, and what the trims did',
  growthHow:
    'A hoof grows between visits and is shortened at them. The two are kept apart; growth is what is left after wear. At a visit: what had grown since the one before, then what the trim took.',
  trimHides: (n: number) =>
    `At ${count(n, 'visit', 'visits')} there was no reading on arrival, so a trim may hide in that growth.`,
  growthRate: 'Grown a month',
  growthOver: 'Seen over',
  trims: 'Trims',
  trimmed: 'Taken off',
  grownAndTrimmed: (grown: string | null, trimmed: string | null) => `${grown ?? '–'}, ${trimmed ?? '–'}`,
  record: 'Remarks on the record',

  plans: 'Staged plans',
  plansNone: 'No foot needs a staged plan at present.',
  plansHeld: (feet: string) =>
    `${feet}: no plan and no amount while a caution waits for the vet. A visit that says it is gone, or cleared with the vet’s day, ends the wait.`,
  forecasts: 'How past forecasts held',
  forecastsNone: 'No past forecast can be judged yet.',
  pastForecasts: (held: number, made: number) =>
    `${held} of ${made} past forecasts for this horse fell within their range.`,
  pastForecastsWhy: 'The past forecasts, one by one',
  pastHead: ['Made at', 'Of', 'Edge', 'Range', 'Seen', 'Held'],
  pastRange: (earliest: string, latest: string) => `${earliest} to ${latest}`,
  pastOpen: 'no limit',
  pastSeen: (after: string, by: string) => `between ${after} and ${by}`,
  pastNotSeen: (after: string) => `not by ${after}`,
  yes: 'yes',
  no: 'no',
  growOutNone: 'No feature is followed on the wall.',
  capsules: 'A whole new capsule',
  capsulesHow:
    'When horn that leaves the hairline at the date given will have reached the ground, at the rate of this foot or, where none was seen, as published.',
  newGrowth: 'The new growth',

  findings: 'Findings over time',
  findingsNone: 'No finding is on record.',
  visits: 'Visits',
  profile: 'Profile',
  facts: {
    owner: 'Owner',
    kind: 'Kind',
    sex: 'Sex',
    born: 'Born',
    height: 'Height',
    weight: 'Weight',
    started: 'Under this practice since',
    alias: 'Name in the portfolio',
    consent: 'Consent',
    vet: 'Vet',
    limits: 'Trim limits',
    targets: 'Targets',
  },
  hands: (hands: string, cm: string) => `${hands} hh (${cm} cm)`,
  weight: (kg: string, lb: string) => `${kg} kg (${lb} lb)`,
  consentOf: { ownerSite: 'owner’s site', portfolio: 'portfolio', photos: 'photos' },
  consentGiven: (what: string, date: string) => `${what}; given ${date}`,
  consentNone: 'none given',
  vetSaid: (diagnosis: string) => `Involved. Diagnosis by the vet: ${diagnosis}.`,
  vetInvolved: 'Involved; no diagnosis on record.',
  vetNot: 'Not involved so far.',
  sole: { flat: 'sole flat', cupped: 'sole cupped' },
  mostPerTrim: (amount: string) => `at most ${amount} a trim beyond what grows`,
  targetOf: (measure: string, band: string) => `${measure}: ${band}`,
  targetAt: (foot: string, band: string) => `${foot} ${band}`,
  background: 'History',
  notes: 'Notes, for the practitioner alone',
  forOwner: 'For the owner',
  forTeaching: 'For teaching',
}
