/**
 * Wording of the owner's page: for someone who has never seen an angle. Short sentences, everyday words,
 * and a trade word only with its meaning beside it.
 */
import type { OwnerMeasure, OwnerMeasureId } from '../keys.ts'

const cap = (text: string) => text.slice(0, 1).toUpperCase() + text.slice(1)
const numbers = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ')
const counted = (n: number) => numbers[n] ?? String(n)
const isAre = (n: number) => (n === 1 ? 'is' : 'are')

const ownerNames: Readonly<Record<string, string>> = {
  'heel balance': 'how level the heels are',
  'toe angle': 'slope of the front of the hoof',
}

const measures: Readonly<Record<OwnerMeasureId, OwnerMeasure>> = {
  'toe-length': {
    thing: (foot) => `the ${foot} toe`,
    more: 'longer',
    less: 'shorter',
    meaning: 'Toe: the front of the hoof, from the hair down to the ground.',
  },
  'toe-angle': {
    thing: (foot) => `the front of the ${foot} hoof`,
    more: 'steeper',
    less: 'flatter',
    meaning: 'Steep or flat: how the front of the hoof leans, like the slope of a roof.',
  },
  'heel-balance': {
    thing: (foot) => `the gap between the two ${foot} heels`,
    more: 'bigger',
    less: 'smaller',
    meaning: 'Heels: the two back corners of the hoof. We want them the same height.',
  },
  'heel-angle': {
    thing: (foot) => `the back of the ${foot} hoof`,
    more: 'steeper',
    less: 'flatter',
    meaning: 'Heels that lie flat run under the foot and give it less support.',
  },
  'frog-width': {
    thing: (foot) => `the ${foot} frog`,
    more: 'wider',
    less: 'narrower',
    meaning: 'Frog: the soft wedge at the back of the sole. A wide frog is a strong one.',
  },
  'sulcus-depth': {
    thing: (foot) => `the groove in the ${foot} frog`,
    more: 'deeper',
    less: 'shallower',
    meaning: 'Groove: the dip down the middle of the frog. When it is deep and narrow, dirt sits in it.',
  },
  'white-line': {
    thing: (foot) => `the white line at the ${foot} toe`,
    more: 'wider',
    less: 'narrower',
    meaning: 'White line: the seam that joins the hoof wall to the sole. A tight seam is a strong one.',
  },
}

export const owner = {
  measures,
  title: (practice: string) => `Your horses, from ${practice}`,
  forOwner: (name: string) => `For ${name}`,
  skip: 'To the content',
  wordsHead: 'What the words mean',
  horsesHead: 'Your horses',
  seen: (visits: number, first: string, last: string) =>
    visits === 1 ? `Seen once, on ${last}.` : `Seen ${visits} times since ${first}. Last seen on ${last}.`,
  notSeen: 'Not seen yet.',

  glanceHead: 'How it is going',
  glance: (name: string, count: number) =>
    `We follow ${counted(count)} ${count === 1 ? 'thing' : 'things'} on ${name}'s feet.`,
  glanceGood: (n: number) =>
    n === 1
      ? 'One is where we want it, or getting better.'
      : `${cap(counted(n))} are where we want them, or getting better.`,
  glanceSteady: (n: number) => `${cap(counted(n))} ${isAre(n)} holding steady.`,
  glanceMoving: (n: number) =>
    n === 1
      ? 'One is changing, with no target set for it.'
      : `${cap(counted(n))} are changing, with no target set for them.`,
  glanceBad: (n: number) => `${cap(counted(n))} ${isAre(n)} moving the wrong way.`,
  glanceEarly: (n: number) => `For ${counted(n)} it is too early to tell.`,
  glanceWaits: (n: number) => `${cap(counted(n))} ${n === 1 ? 'waits' : 'wait'} for your vet.`,
  glanceNone: 'There are no readings to compare yet. After the next visits there will be.',

  feetHead: 'Foot by foot',
  feetIntro:
    'The drawing shows each hoof from the side: broken where it was at first, drawn through as it is now.',
  feetAssumed: 'Dotted edges were not measured; they only round off the picture.',
  measuring:
    'Measuring error: measure the same hoof twice and you get two slightly different numbers. A change counts only when it is bigger than that.',
  same: (thing: string, since: string) => `${cap(thing)} reads the same as ${since}.`,
  changed: (thing: string, amount: string, way: string, since: string) =>
    `${cap(thing)} is ${amount} ${way} than ${since}.`,
  reads: (thing: string, amount: string, way: string, since: string) =>
    `${cap(thing)} reads ${amount} ${way} than ${since}.`,
  one: (thing: string, value: string) => `${cap(thing)}: one reading so far, ${value}.`,
  heels: (foot: string, first: string, since: string, last: string) =>
    `The two ${foot} heels were ${first} apart in height ${since}. Now they are ${last} apart.`,
  heelsOne: (foot: string, last: string) =>
    `The two ${foot} heels are ${last} apart in height. That is one reading so far.`,
  heelsSwapped: 'The other heel is the higher one now.',
  sinceMonth: (month: string) => `in ${month}`,
  sinceDay: (date: string) => `on ${date}`,
  verdicts: {
    'on target': 'It is where we want it.',
    held: 'We say more when your vet has had a look.',
    improving: 'It is moving the right way.',
    worsening: 'It is moving the wrong way. We are keeping a close eye on it.',
    steady: 'It is holding steady.',
    rising: 'We follow it, with no target set.',
    falling: 'We follow it, with no target set.',
    'not worsening': 'It is not getting worse.',
    'not improving': 'It is not getting better yet.',
    'too early to tell': 'It is too early to tell where it is going.',
  },
  wasExpected: (date: string) => `It was expected there by ${date}; we look at the next visit.`,
  notBefore: (month: string) => `It will not get there before ${month}.`,
  badges: {
    'on target': 'on target',
    held: 'waits for your vet',
    improving: 'getting better',
    worsening: 'watch',
    steady: 'steady',
    rising: 'changing',
    falling: 'changing',
    'not worsening': 'not getting worse',
    'not improving': 'not better yet',
    'too early to tell': 'too early to tell',
  },
  expected: (date: string, earliest: string, latest: string) =>
    `If it goes on like this it gets there about ${date}. It could be as early as ${earliest} or as late as ${latest}.`,
  expectedOpen: (date: string, earliest: string) =>
    `If it goes on like this it gets there about ${date}. It could be as early as ${earliest}; how late, nobody can say yet.`,
  nothingRead: 'Nothing was measured on this foot yet.',

  findingsHead: 'What we found, and where it stands',
  findingsIntro: 'Each thing we saw on a foot, from the first time to the last.',
  findingGone: (what: string) => `${cap(what)}: gone.`,
  findingBetter: (what: string, from: string, to: string) =>
    `${cap(what)}: better. It was ${from} and is now ${to}.`,
  findingSame: (what: string, grade: string) => `${cap(what)}: as before, ${grade}.`,
  findingStill: (what: string, grade: string, was: string, date: string) =>
    `${cap(what)}: as at the last visit, ${grade}; it was ${was} on ${date}.`,
  findingWorse: (what: string, from: string, to: string) =>
    `${cap(what)}: worse. It was ${from} and is now ${to}.`,
  findingNew: (what: string, grade: string) => `${cap(what)}: new at the last visit, ${grade}.`,
  findingSeen: (what: string, grade: string, date: string) =>
    `${cap(what)}: ${grade} when we last looked, on ${date}.`,
  grades: ['gone', 'mild', 'medium', 'severe'],
  meaning: (meaning: string) => `That means: ${meaning}.`,
  places: {
    toe: 'at the toe',
    'medial toe': 'at the inside of the toe',
    'lateral toe': 'at the outside of the toe',
    'medial quarter': 'on the inner side',
    'lateral quarter': 'on the outer side',
    'medial heel': 'at the inner heel',
    'lateral heel': 'at the outer heel',
    sole: 'in the sole',
    frog: 'in the frog',
    'central sulcus': 'in the middle groove of the frog',
    'medial groove': 'in the groove on the inner side of the frog',
    'lateral groove': 'in the groove on the outer side of the frog',
    'medial bar': 'at the inner bar, the fold beside the frog',
    'lateral bar': 'at the outer bar, the fold beside the frog',
    bars: 'at the bars, the folds beside the frog',
    'white line': 'in the white line, the seam between wall and sole',
    coronet: 'at the hairline',
    'heel bulbs': 'at the soft bulbs of the heel',
    pastern: 'above the hoof',
    'whole foot': '',
  } as Readonly<Record<string, string>>,

  growHead: 'Growing out',
  growIntro:
    'Horn grows down from the hair like a nail. Old damage grows down with it and is trimmed off at the ground.',
  growing: (what: string, foot: string, date: string, earliest: string, latest: string) =>
    `${cap(what)}, ${foot}: at the ground about ${date}. It could be as early as ${earliest} or as late as ${latest}.`,
  growingOpen: (what: string, foot: string, date: string, earliest: string) =>
    `${cap(what)}, ${foot}: at the ground about ${date}. It could be as early as ${earliest}; how late, nobody can say yet.`,
  grownOut: (what: string, foot: string) => `${cap(what)}, ${foot}: grown out by now, as far as we can tell.`,
  growUnknown: (what: string, foot: string) =>
    `${cap(what)}, ${foot}: on the way down. We cannot give a date yet.`,

  plansHead: 'What we plan',
  planHeels: (foot: string, trims: number) =>
    trims === 1
      ? `We are levelling the ${foot} heels, a little at each trim. One more trim should do it.`
      : `We are levelling the ${foot} heels, a little at each trim. That should take about ${trims} more trims.`,
  planToe: (foot: string, trims: number) =>
    trims === 1
      ? `We are bringing the ${foot} toe back, a little at each trim. One more trim should do it.`
      : `We are bringing the ${foot} toe back, a little at each trim. That should take about ${trims} more trims.`,
  planHeld: (feet: string) => `We wait with the ${feet} until your vet has had a look.`,
  planStanding: {
    'on plan': 'So far it goes as planned.',
    ahead: 'So far it goes faster than planned.',
    behind: 'So far it goes slower than planned.',
    'just begun': 'It has only just begun.',
  },
  planWhy: 'We never take more at once than the sole can bear.',

  ownSince: (date: string) =>
    `This horse has been yours since ${date}. Letters and photos from before that day are not shown.`,
  lettersHead: 'From your hoof-care practitioner',
  letterFrom: (date: string) => `Visit of ${date}`,
  letterAbout: (name: string) => `About ${name}`,

  toCare: 'What to do',
  toRing: 'When to ring the vet',
  careHead: 'What to do until the next visit',
  careNone: 'Nothing special was asked for at the last visit.',
  carePrint: 'Print this list',
  careDone: 'Done',
  careTask: 'What to do',
  careTick: (day: string, task: string) => `${day}: ${task}`,
  careNote: 'Ticks are not kept when you close the page. Print the list to keep it.',

  nextHead: 'Next visit',
  next: (date: string) => `The next visit is planned for ${date}.`,
  nextOverdue: (date: string) =>
    `The next visit was planned for ${date}. If no new date is set, please get in touch.`,
  nextNone: 'No next visit is planned yet. Please get in touch.',

  ringHead: 'When to ring the vet',
  ringNowHead: 'Ring at once, day or night',
  ringNow: [
    'A nail or anything else has gone into the sole or frog. Leave it in. Do not walk the horse.',
    'The horse leans back on its heels, lies down a lot, or will not walk.',
    'It puts no weight on a foot, or nods or limps at every step.',
    'The pulse above the hoof is pounding, or the hoof is hot and the horse is sore.',
    'Blood or pus comes from the foot or the hairline.',
  ],
  ringTodayHead: 'Ring the same day',
  ringToday: [
    'It is lame, or more lame than before.',
    'The leg or the hairline is swollen.',
    'A crack bleeds, opens as it walks, or runs up to the hair.',
    'The frog smells bad and is sore when you press it.',
    'It is suddenly careful on ground where it used to walk freely.',
  ],
  ringNote: 'If you are not sure, ring. A call too many does no harm.',
  standingHead: 'Please read first',
  contactsHead: 'Whom to ring',
  vetIs: (contact: string) => `Vet: ${contact}`,
  practiceIs: (phone: string) => `Us: ${phone}`,
  levels: { stop: 'Stop.', vet: 'For your vet.', mind: 'Take care.' },
  since: (text: string, date: string) => `${text} Seen on ${date}.`,

  photosHead: 'Then and now',
  photoOne: 'Pictures',
  photoAlt: (what: string, date: string) => `${cap(what)}, ${date}`,
  views: {
    lateral: 'from the outer side',
    medial: 'from the inner side',
    front: 'from the front',
    behind: 'from behind',
    solar: 'from below',
    other: '',
  },
  stages: { before: 'before the trim', after: 'after the trim' },
  shotThen: 'Then',
  shotNow: 'Now',
  wholeHorse: 'your horse',

  drawingTitle: (foot: string) => `${cap(foot)} from the side`,
  drawingCaption: (foot: string) => `${cap(foot)}, first and latest`,
  drawingHead: ['', 'First', 'Latest'],
  drawingToeAngle: 'slope of the front',
  drawingToeLength: 'length of the toe',
  drawing: (foot: string, first: string, latest: string) =>
    `The ${foot} hoof from the side. At first: ${first}. Latest: ${latest}.`,
  drawingOnce: (foot: string, first: string) => `The ${foot} hoof from the side: ${first}.`,
  drawingSays: (length: string, angle: string) => `toe ${length} long, front at ${angle}`,
  firstLabel: (date: string) => `first, ${date}`,
  latestLabel: (date: string) => `latest, ${date}`,

  wayHead: 'The whole way so far',
  wayHow: 'Each dot is one reading. The line shows where they go; the shaded part shows how sure we are.',
  wayLevel: 'Zero means level. Above it the inner heel is the higher one, below it the outer one.',
  chartApart: (foot: string, first: string, last: string, note: string) =>
    `${cap(foot)}: ${first} apart at first, ${last} apart now. ${note}`,
  chartTime: 'date',
  chartTitle: (measure: string) => `${cap(ownerNames[measure] ?? measure)}, visit by visit`,
  chartSays: (measure: string, feet: string) =>
    `${cap(ownerNames[measure] ?? measure)}, foot by foot. ${feet}`,
  chartFoot: (foot: string, first: string, last: string, note: string) =>
    `${cap(foot)}: ${first} at first, ${last} now. ${note}`,
  chartHead: ['Date', 'When'] as readonly [string, string],
  chartStages: { before: 'before the trim', after: 'after the trim' },

  careful:
    'This page helps the people who care for your horse. It does not replace an examination. A trimmer does not diagnose; vets do. Local law says who may trim, shoe or treat a horse.',
  safe: 'A horse in pain can kick or strike. Have someone capable hold it, stand on firm, level ground, and stop when it cannot stand on the other feet. Follow the label of any product you use.',
  lockAgain: 'Lock this page again',
  lockNote: 'Closing the tab locks it too.',
  madeWith: (practice: string) => `Made by ${practice}. Please do not pass this page on.`,

  addresses: {
    head: "Owners' pages",
    how: 'Which address is whose. Each page is locked; what opens it stands in passphrases.yaml of your casebook. Send address and passphrase by two different ways.',
  },

  locked: {
    title: (practice: string) => `${practice}: your page`,
    head: 'This page is locked',
    how: 'It opens with the words that your hoof-care practitioner gave you.',
    label: 'Your passphrase',
    hint: 'Usually six words, in small letters, with a space between them.',
    show: 'Show what I type',
    open: 'Open',
    opening: 'Opening. This takes a few seconds.',
    empty: 'Please type your passphrase first.',
    wrong:
      'That did not open the page. Check each word and the spaces between them, then try again. If it still will not open, ask your hoof-care practitioner for the words.',
    damaged:
      'Your page did not arrive whole, so no passphrase can open it. Load it again. If that does not help, ask your hoof-care practitioner to send it once more.',
    weak: 'This device ran out of memory while opening the page. Close other tabs and try again, or use another device.',
    noScript:
      'This page needs JavaScript to open here, and it is switched off. Switch it on for this page and load it again. Or open the locked file below with any program for the age format.',
    private: 'Nothing you type leaves this device. Closing the tab locks the page again.',
    fileHead: 'The locked file itself',
    fileHow:
      'You can also open it without this page. Save the text below as record.age and open it with any program for the age format (age-encryption.org). You get a page that any browser shows.',
    fileLabel: 'The locked file as text',
    fileSave: 'Save the locked file',
  },
}
