/** Wording of the files that `growdown add` writes. */
export const starter = {
  last: (text: string) => `last: ${text}`,
  lastOn: (grade: string, date: string, isAsked: boolean) =>
    `${isAsked ? 'say whether it is gone; ' : ''}${grade} on ${date}`,
  cleared: 'only if a vet has cleared it: the day on which',
  lastAfter: (date: string, text: string) => `${date}, after: ${text}`,
  lastBefore: (date: string, text: string) => `${date}, before: ${text}`,
  feature: (distance: string, date: string, now: string) => `${distance} on ${date}, about ${now} by now`,
  featureOut: (date: string) => `should have reached the ground about ${date}`,
  before: (order: string) => `on arrival, before any trimming: ${order}; ~ is not read`,
  after: 'when the trim is done',
  findings: 'what, where, grade: 0 gone, 1 mild, 2 moderate, 3 severe',
  growOut: 'what, place, distance from the hairline',
  care: 'what the owner does until the next visit',
  fillIn: 'Fill in each _, or delete its line. Notes for you alone go below the next line of ---.',
  comfort: 'heel, flat or toe first; pulse 0 none to 3 bounding',
  notSpokenOf: (list: string, more: number) =>
    `open still, not spoken of lately: ${list}${more > 0 ? `; and ${more} more` : ''}`,
  horseNote: 'Notes for you alone. Fill in each _ above, or delete its line.',
  owner: 'an owner id from practice.md',
  kind: 'breed or type',
  born: 'year or date',
  height: '14.2 hh, or cm',
  weight: 'kg or lb',
  started: 'first visit under this practice',
  history: 'shoeing, injuries, diet, footing, work: a line each',
  vet: 'add diagnosis, date and feet as the vet gave them, and no others',
  tetanus: 'day of the last vaccination',
  contacts: 'numbers for owners to ring; never in the portfolio',
  consent: 'yes or no; what is absent means no',
  alias: 'the name the portfolio shows instead',
  privateWords: 'further words that must never appear in the portfolio',
  targets: 'a band of wanted values per measure; ~ is an open side',
  sole: 'flat or cupped, for all feet or {LF: flat}',
  problems: 'what the case is about, most important first',
  by: (people: string) => `who took the readings: ${people}`,
  practiceName: 'the name of your practice',
  units: 'mm, cm or in: the unit of a bare length',
  trimCycle: 'usual time between visits',
  owners: 'one line an owner: id: {name: ...}',
  people: 'who works here, if more than one: [Ilse, Tom]',
  localRules: 'a sentence about the law or code where you work',
  practiceNote: 'A few words about the practice. The office page shows them.',
  guide: `How this casebook works

  practice.md             your practice and the owners
  <horse>/horse.md        one folder a horse: who it is, what was agreed
  <horse>/2026-03-14.md   one file a visit, named by its date
  <horse>/photos/         the pictures that the visits name

A first case in five steps

Type the commands in this folder, where practice.md is. Where Growdown is not installed and you have its folder
(say ../growdown) instead, write "npm --prefix ../growdown run -s growdown --" in place of "growdown".

  1. Fill in practice.md: the name, and one line for each owner.
  2. growdown add horse juno       makes juno/horse.md. Fill in each _ or delete its line.
  3. growdown add visit juno       makes today's visit. Write the readings in place of the _.
  4. growdown check                names anything that looks wrong, with file and line.
  5. growdown build                makes the pages, in a folder site beside this one, and says which file to open.

A list of four is left fore, right fore, left hind, right hind. ~ means not read.
Lengths may carry a unit: 98 mm, 9.8 cm, 3 5/8 in.
All text is for you alone, unless it is under the heading "## For the owner" or "## For teaching".

What is kept here may hurt someone if it gets out. Keep this folder private. The file passphrases.yaml,
once there is one, opens the owners' pages: never send it, never publish it.
`,
}
