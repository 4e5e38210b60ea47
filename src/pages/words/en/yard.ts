/** Wording of the yard page but for its form: short, to be read at arm's length in the rain. */
export const yard = {
  locked: {
    title: (practice: string) => `${practice}: the yard`,
    head: 'Locked',
    label: 'Passphrase of the yard page',
    hint: 'Small letters, a space between the words.',
    show: 'Show what I type',
    open: 'Open',
    opening: 'Opening. This takes a few seconds.',
    empty: 'Type the passphrase first.',
    wrong:
      'That did not open the page. Check each word and the spaces between them. It stands in passphrases.yaml of the casebook, under "yard".',
    damaged:
      'The page did not arrive whole, so no passphrase can open it. Load it again; if that does not help, upload it once more.',
    weak: 'This phone ran out of memory while opening the page. Close other tabs and try again.',
    insecure:
      'This page opens over https, or from a file. Over plain http the browser lends it no encryption.',
    noScript: 'This page needs JavaScript to open, and it is switched off.',
    private: 'Nothing you type leaves this phone.',
  },

  horse: {
    cautions: 'Cautions',
    today: 'Today',
    problems: 'Problems',
    readings: 'Last readings',
    readOn: (date: string) => `Of ${date} unless said.`,
    note: (date: string) => `Your note of ${date}`,
    photos: 'Latest photograph of each foot',
    photo: (subject: string, date: string) => `${subject}, ${date}`,
    ring: 'Ring',
    vet: 'Vet',
    vetNamed: (name: string) => `Vet: ${name}`,
  },

  page: {
    menu: 'Screens',
    day: 'Day',
    drafts: 'Written',
    settings: 'Settings',
    lock: 'Lock',
    asOf: (date: string) => `As of ${date}`,
    asOfAgo: (date: string, span: string) => `As of ${date}, ${span} ago`,
    asOfOld: 'Cautions and plans were reckoned on that day. Build and upload the page anew when you can.',
    asOfAhead: 'The clock of this phone is behind the page. Set it right: dates of visits come from it.',

    find: 'Find a horse, owner or problem',
    found: (n: number) => (n === 1 ? '1 horse' : `${n} horses`),
    foundNone: 'No horse fits.',
    none: 'No horse is on record yet.',
    brokenRow: 'Its files hold errors.',
    broken:
      'Files of this horse held errors when the page was built. What is shown here is from the last build without them.',
    brokenGone:
      'Files of this horse held errors when the page was built, so nothing of it is here. Run the check command: it names the lines.',
    unknown: 'This page knows no such horse.',
    unopened: 'The part of this horse did not arrive whole. Load the page again when there is a network.',
    opening: 'Opening',
    write: 'Write the visit',
    goOn: 'Go on writing',
    notTaken: (n: number) => (n === 1 ? '1 visit not taken over yet' : `${n} visits not taken over yet`),

    fileOnly:
      'This page was opened from a file: it can be read. To write, open it from the place on the web where you put it.',
    noStorage:
      'This browser keeps nothing for this page, perhaps since the window is private. It can be read; what is written would be lost.',

    keepsNoMore:
      'The phone keeps nothing more, so no visit was begun. Give out what is written and throw it away once it has arrived, or make room on the phone.',

    news: 'A newer page is there.',
    take: 'Take it',
    takeHow: 'It asks for the passphrase again. What you wrote stays.',
    takeLater: 'Close the visit first; what you wrote stays.',
    offlineReady: 'Kept on this phone: it opens without a network.',

    settingsHead: 'Settings',
    hand: 'The hand that holds the phone',
    hands: { left: 'Left', right: 'Right' },
    light: 'Light',
    lights: { phone: 'As the phone', light: 'Light', dark: 'Dark', sun: 'Sun: black on white' },
    by: 'Who holds this phone',
    byNone: 'Nobody is named in practice.md.',
    byUnset: 'Not said',
    textSize: 'The text is as large as your phone or browser is set to.',
    locks: (minutes: string) =>
      `The page locks itself once it has been out of sight for ${minutes}. What you wrote is kept first.`,
    careful: 'Safety, law and labels',
  },
}
