/** Wording of the practice's office page, and of the news on it. */
const lines = (n: number) => (n === 1 ? '1 movement' : `${n} movements`)

export const office = {
  owners: {
    head: "Owners' pages",
    how: 'Which address is whose. Each page is locked; what opens it stands in passphrases.yaml of your casebook. Send address and passphrase by two different ways.',
  },
  link: 'Office',
  title: (practice: string) => `Office, ${practice}`,
  heading: 'Office',

  news: 'News of the last visits',
  newsHow:
    'Findings that came, went or changed at the last visit. Measures read at it that clearly move, over all visits together.',
  newsNone: 'No finding changed at the last visits, and no measure clearly moves.',
  byChance: (moving: number, chance: number) =>
    chance < 1
      ? `Of the ${lines(moving)} in this list, at most one is expected to be chance.`
      : `Of the ${lines(moving)} in this list, about ${chance} ${chance === 1 ? 'is' : 'are'} expected to be chance.`,
  visitOf: (date: string) => `visit of ${date}`,
  older: (n: number) => (n === 1 ? 'One horse more, seen earlier' : `${n} horses more, seen earlier`),
  moves: (measure: string, feet: string) => `${measure} (${feet})`,
  moving: (way: string, measures: string) => `${way}: ${measures}.`,
  findingMoved: (foot: string, what: string, from: string, to: string) =>
    `${foot} ${what}: ${from} to ${to}.`,
  findingNew: (foot: string, what: string, grade: string) => `${foot} ${what}: new, ${grade}.`,
  findingGone: (foot: string, what: string) => `${foot} ${what}: gone.`,

  record: 'How past forecasts held',
  recordNone: 'No forecast with a closed range has come due yet.',
  recordHeld: (held: number, made: number) =>
    made === 1
      ? `The one forecast with a closed range that has come due ${held === 1 ? 'held' : 'did not hold'}.`
      : `${held} of ${made} forecasts with a closed range held.`,
  recordOpen: (open: number) =>
    open === 1
      ? 'One more had no last day. It is not counted, since it could hardly fail.'
      : `${open} more had no last day. They are not counted, since they could hardly fail.`,
  recordHow:
    'Each forecast that could have been made at an earlier visit is made again from the readings up to that visit, and compared with what was read afterwards. It goes by what the practice has taught up to today.',

  about: 'About the practice',
}
