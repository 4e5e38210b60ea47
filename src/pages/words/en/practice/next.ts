/** Plans, followed features, new horn. */
export const next = {
  visit: (date: string) => `The next visit is planned for ${date}.`,

  offToe: (foot: string, total: string, grown: string, leaves: string) =>
    `${foot} toe: at most ${total} off (${grown} of it grown), leaves ${leaves}.`,
  offHeel: {
    medial: (foot: string, total: string, grown: string, leaves: string) =>
      `${foot} inner heel: at most ${total} off, outer ${grown} as grown; leaves ${leaves} between them.`,
    lateral: (foot: string, total: string, grown: string, leaves: string) =>
      `${foot} outer heel: at most ${total} off, inner ${grown} as grown; leaves ${leaves} between them.`,
  },
  inTwo: (from: string) => `More than ${from}: better in two trims.`,
  noPlan: 'No staged plan is running.',
  limits: (limits: string) => `Agreed limits: ${limits}.`,
  atNow: (at: string) => `about ${at} down`,
  atNowOf: (at: string, wall: string) => `about ${at} down of ${wall}`,

  planStands: (standing: string) => `How it is kept: ${standing}.`,
  planSteps: (plan: string) => `${plan}, step by step`,
  planStepsHead: ['Trim', 'Expected after it'],
  planKept: (plan: string) => `${plan}: how it was kept`,
  planKeptHead: ['Visit', 'Expected', 'Read', 'Standing'],
  planCaution: 'Never more than the sole allows. Look again at each trim: the foot decides, not the table.',

  feature: (what: string, foot: string, place: string) => `${what}, ${foot} ${place}`,
  featureRate: (rate: string, interval: string) => `${rate} (95 % interval ${interval})`,
  rateFrom: {
    practice: 'this practice’s horses and the literature; sighted once only',
    measured: 'its own sightings and this practice’s horses together',
  },
  growOutSteps: 'From the sightings to the day: (wall length − distance) / rate',
  growOutHead: ['Feature', 'Sightings', 'Rate', 'Rate from', 'Wall'],
  sighting: (distance: string, date: string) => `${distance} on ${date}`,
  wallTitle: (foot: string) => `${foot}: what is where on the wall`,
  wallAt: (what: string, place: string, at: string) => `${what}, ${place}: ${at}`,
  capsuleHead: ['Foot', 'Place', 'Wall', 'From', 'A month', 'At the ground', 'Earliest to latest'],
  places: { toe: 'toe', quarter: 'quarter', heel: 'heel' },
  noLimit: 'no limit',
  newAngle: (foot: string, angle: string, length: string) =>
    `${foot}: the new horn below the hairline stands at ${angle} over ${length}.`,
  newAgainst: (toe: string) => `The old wall stands at ${toe}.`,
  newDate: (angle: string, date: string, latest: string) =>
    `The whole wall can stand at ${angle} about ${date}, by ${latest} at the latest.`,
  newDateOpen: (angle: string, date: string) =>
    `The whole wall can stand at ${angle} about ${date}; how late cannot be said.`,
  newDue: (date: string) => `It was expected at the ground by ${date}; look at the next visit.`,
  newNoDate: 'No toe length was read, so no date can be given.',
}
