/** Wording of a horse's own page. */
const count = (n: number, one: string, many: string) => (n === 1 ? `1 ${one}` : `${n} ${many}`)

export const horse = {
  title: (name: string, practice: string) => `${name}, ${practice}`,
  seen: (visits: number, first: string, last: string) =>
    visits === 1 ? `Seen once, on ${last}.` : `Seen ${visits} times since ${first}, last on ${last}.`,
  notSeen: 'No visit is on record yet.',
  age: (years: number) => (years < 1 ? 'under a year old' : count(years, 'year old', 'years old')),
  handOver: 'Hand-over for vet or farrier',
  fieldSheet: 'Field sheet for the next visit',

  urgent: 'Is anything urgent?',
  calm: 'No caution is in force.',
  seenAt: (date: string) => `visit of ${date}`,

  feet: 'How each foot stands',
  feetHow:
    'As seen from above, the horse facing up the page. Latest reading, change since the first, verdict.',
  ahead: 'the horse faces this way',
  openFindings: 'Open findings',
  noFindings: 'No open finding.',
  ring: (contact: string) => `Ring: ${contact}`,
  gradeOn: (grade: string, date: string) => `${grade}, ${date}`,
  flagged: { stop: 'Stop: ask a vet first', vet: 'Tell the vet', mind: 'Take care' },
  sides: 'Seen from the side, first against latest',
  levels: 'Heels, seen from behind',
  pairs: 'Left against right',
  pair: { fore: 'Fores', hind: 'Hinds' },
  pairReal: (pair: string, measure: string, left: string, right: string, gap: string, limit: string) =>
    `${pair}, ${measure}: left ${left}, right ${right}. They differ by ${gap}, more than measuring error (${limit}).`,
  pairWithin: (pair: string, measure: string, left: string, right: string, gap: string, limit: string) =>
    `${pair}, ${measure}: left ${left}, right ${right}. The ${gap} between them lies within measuring error (${limit}).`,
  noReadings: 'Nothing was measured yet.',
  geometry: 'What lowering would do',
  geometryToe: (foot: string, angle: string, length: string) =>
    `${foot}: 1 mm off the toe changes the toe angle by ${angle} and the toe length by ${length}.`,
  geometryHeel: (angle: string, length: string) =>
    `1 mm off the heels changes the angle by ${angle} and the length by ${length}.`,
  geometryHow:
    'From the side view as measured: the ground plane turned about the other end of the foot. A guide to what a trim does, not a trim to make.',

  changed: 'What changed, and is it real?',
  changedNone: 'No measure has clearly moved.',
  changedTo: (first: string, last: string, change: string, since: string, verdict: string) =>
    `${first} to ${last} (${change}) since ${since}; ${verdict}.`,
  heelsWere: (text: string, date: string) => `was ${text} on ${date}`,
  moreChanges: (n: number) => (n === 1 ? 'One more has clearly moved' : `${n} more have clearly moved`),
  changedOf: (foot: string, measure: string) => `${foot}, ${measure}:`,
  growth: 'What the hoof did, and what the trims did',
  growthHow:
    'A hoof grows between visits and is shortened at them. The two are kept apart; growth is what is left after wear.',
  growthOf: (foot: string, measure: string, text: string) => `${foot}, ${measure}: ${text}`,
  trimHides: (n: number) =>
    `At ${count(n, 'visit', 'visits')} there was no reading on arrival, so a trim may hide in that growth.`,
  growthWhy: 'Every growth phase and every trim',
  growthSteps: (measure: string) => `${measure}, growth between visits and trims at them`,
  growthStep: 'Step',
  grownFrom: (from: string, to: string, days: number) =>
    `Grown ${from} to ${to}, ${count(days, 'day', 'days')}`,
  grown: (gain: string, pace: string) => `${gain}, ${pace}`,
  trimAt: (date: string) => `Trim of ${date}`,
  growthOthers: 'Growth of the other walls',
  others: 'Other measures',
  inShort: (foot: string, value: string, verdict: string) => `${foot} ${value}, ${verdict}`,
  record: 'Remarks on the record',
  foot: 'Foot',
  noTrends: 'There is nothing to compare yet. After two visits there will be.',

  next: 'What comes next',
  plans: 'Staged plans',
  plansNone: 'No foot needs a staged plan at present.',
  plansHeld: (feet: string) =>
    `${feet}: no plan and no amount while a caution waits for the vet. A visit that says it is gone, or cleared with the vet’s day, ends the wait.`,
  forecasts: 'When targets are reached, at this pace',
  forecastsNone: 'No measure is on its way to a target with a date.',
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
  growOut: 'Growing out',
  growOutNone: 'No feature is followed on the wall.',
  capsules: 'A whole new capsule',
  capsulesHow:
    'When horn that leaves the hairline at the date given will have reached the ground, at the rate of this foot or, where none was seen, as published.',
  newGrowth: 'The new growth',

  history: 'The history',
  findings: 'Findings over time',
  findingsNone: 'No finding is on record.',
  visits: 'Visits, newest first',
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
