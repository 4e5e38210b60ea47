/** Plans, followed features, new horn. */
export const next = {
  visit: (date: string) => `The next visit is planned for ${date}.`,

  planStands: (standing: string) => `Standing: ${standing}.`,
  planSteps: (plan: string) => `${plan}, step by step`,
  planStepsHead: ['Trim', 'Expected after it'],
  planKept: (plan: string) => `${plan}: how it was kept`,
  planKeptHead: ['Visit', 'Expected', 'Read', 'Standing'],
  planCaution: 'Never more than the sole allows. Look again at each trim: the foot decides, not the table.',

  feature: (what: string, foot: string, place: string) => `${what}, ${foot} ${place}`,
  featureNow: (now: string, date: string) =>
    `By now about ${now} below the hairline, from the sighting of ${date}.`,
  featureRate: (rate: string, interval: string) => `${rate} (95 % interval ${interval})`,
  rateFrom: {
    practice: 'as horn grows in this practice and as published, since it was sighted once only',
    measured: 'from its own sightings and how horn grows in this practice together',
  },
  rateSays: (rate: string, from: string) => `${rate}, ${from}.`,
  sightingsName: 'Sightings',
  rateName: 'Rate',
  wallName: 'Wall',
  sighting: (distance: string, date: string) => `${distance} on ${date}`,
  wall: (length: string) =>
    `The wall is ${length} long there; (wall length − distance) / rate gives the date.`,
  wallTitle: (foot: string) => `${foot}: what is where on the wall`,
  wallCaption: (foot: string) => `${foot}, followed features`,
  wallHead: ['Feature', 'Place', 'Below the hairline', 'Wall there'],
  wallSays: (foot: string, list: string) => `The wall of the ${foot} from hairline to ground. ${list}`,
  wallFeature: (what: string, place: string, at: string) =>
    `${what} at the ${place}: ${at} below the hairline.`,
  wallAt: (what: string, place: string, at: string) => `${what}, ${place}: ${at}`,
  capsuleHead: ['Foot', 'Place', 'Wall', 'From', 'A month', 'At the ground', 'Earliest to latest'],
  places: { toe: 'toe', quarter: 'quarter', heel: 'heel' },
  noLimit: 'no limit',
  newAngle: (foot: string, angle: string, length: string) =>
    `${foot}: the new horn below the hairline stands at ${angle} over ${length}.`,
  newAgainst: (toe: string) => `The old wall stands at ${toe}.`,
  newDate: (angle: string, date: string, earliest: string, latest: string) =>
    `The whole wall can stand at ${angle} about ${date}: ${earliest} at the earliest, ${latest} at the latest.`,
  newDateOpen: (angle: string, date: string, earliest: string) =>
    `The whole wall can stand at ${angle} about ${date}: ${earliest} at the earliest; how late cannot be said.`,
  newNoDate: 'No toe length was read, so no date can be given.',
}
