/**
 * Wording of the owner's page: for someone who has never seen an angle. Short sentences, everyday words,
 * and a trade word only with its meaning beside it.
 */
import type { Standing } from '../../../trend/assessment.ts'
import { lookFor, lookForLaminitis, lookForOwnTerm, ownerFindings, ownerMeasures } from './owner-feet.ts'

const cap = (text: string) => text.slice(0, 1).toUpperCase() + text.slice(1)
const range = (earliest: string | null, latest: string | null) =>
  (earliest === null ? '' : `, at the earliest in ${earliest}`) +
  (latest === null ? '' : `, at the latest in ${latest}`)

export const owner = {
  measures: ownerMeasures,
  findings: ownerFindings,
  lookFor,
  lookForOwnTerm,
  lookForLaminitis,
  title: (practice: string) => `Your horses, from ${practice}`,
  forOwner: (name: string) => `For ${name}`,
  skip: 'To the content',
  horsesHead: 'Your horses',
  seen: (visits: number, first: string, last: string) =>
    visits === 1 ? `Seen once, on ${last}.` : `Seen ${visits} times since ${first}. Last seen on ${last}.`,
  notSeen: 'Not seen yet.',

  feetHead: 'How the feet are doing',
  moods: { bad: 'Worse:', good: 'Better:', moving: 'Changed:' },
  allFeet: 'All feet together',
  moved: (thing: string, amount: string, way: string, since: string) =>
    `${cap(thing)} is about ${amount} ${way} than ${since}`,
  /** Where the unit of the page shows no amount. */
  movedLittle: (thing: string, way: string, since: string) =>
    `${cap(thing)} is a little ${way} than ${since}`,
  movedTo: { 'on target': ', and is where we want it', 'near target': ', and is close to where we want it' },
  /** Where the last reading is not of the last visit. */
  lastRead: (date: string) => `, last read on ${date}`,
  sentence: (parts: string) => `${parts}.`,
  sinceMonth: (month: string) => `in ${month}`,
  sinceDay: (date: string) => `on ${date}`,
  foundMoved: (what: string, from: string, when: string, to: string) =>
    `${cap(what)}: ${from} ${when}, ${to} now.`,
  /** Where the last visit did not speak of it. */
  foundMovedBefore: (what: string, from: string, when: string, to: string, date: string) =>
    `${cap(what)}: ${from} ${when}, ${to} on ${date}, when we last looked.`,
  foundNew: (what: string, grade: string) => `${cap(what)}: new, ${grade}.`,
  foundNewBefore: (what: string, grade: string, date: string) =>
    `${cap(what)}: new on ${date}, when we last looked, ${grade}.`,
  nothingElse: 'Nothing else has clearly moved.',
  nothing: 'Nothing has clearly moved.',
  moreMoved: 'More has moved; the numbers further down have all of it.',
  nothingYet: 'There is one visit so far. After the next ones we can tell what moves.',

  lookForHead: (name: string) => `What to look for in ${name}`,
  foundAt: (what: string, at: string, advice: string) => `${what} (${at}). ${advice}`,
  at: (foot: string, grade: string) => `${foot}, ${grade}`,
  atBefore: (foot: string, grade: string, date: string) => `${foot}, ${grade} on ${date}`,
  /** Between the feet of one finding. */
  between: '; ',
  lookForNone: 'Nothing in particular.',
  grades: ['gone', 'mild', 'medium', 'severe'],
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

  numbersHead: 'Numbers, dates and plans',
  numbersCaption: (foot: string) => `${cap(foot)}: single readings`,
  numbersHeads: ['', 'First to latest', 'Standing'],
  numbersRow: (thing: string, stage: string) => `${thing}, ${stage}`,
  numbersRead: (value: string, date: string) => `${value}, ${date}`,
  numbersFromTo: (first: string, latest: string) => `${first} to ${latest}`,
  measuring:
    'Measure the same hoof twice and you get two slightly different numbers. So we go by all readings together, and never by the first and the last alone.',
  standings: {
    'on target': 'where we want it',
    held: 'waits for your vet',
    improving: 'getting better',
    worsening: 'getting worse',
    steady: 'steady',
    rising: 'going up',
    falling: 'going down',
    'not worsening': 'not getting worse',
    'not improving': 'not better yet',
    'too early to tell': 'too early to tell',
  } satisfies Record<Standing, string>,
  recordHead: 'Still on record',
  foundHead: 'What we found, visit by visit',
  foundOver: (what: string, grades: string) => `${cap(what)}: ${grades}.`,
  foundThen: (grade: string, date: string) => `${grade} on ${date}`,
  goesHead: 'Where it is going',
  /** Ends of a range are null where they are past, or where nobody can say. */
  expected: (thing: string, foot: string, date: string, earliest: string | null, latest: string | null) =>
    `${cap(foot)}: ${thing} should be where we want it about ${date}${range(earliest, latest)}.`,
  wasExpected: (thing: string, foot: string, date: string) =>
    `${cap(foot)}: ${thing} was expected to be where we want it by ${date}; we look at the next visit.`,
  notBefore: (thing: string, foot: string, month: string) =>
    `${cap(foot)}: ${thing} will not be where we want it before ${month}.`,
  growing: (what: string, foot: string, date: string, earliest: string | null, latest: string | null) =>
    `${cap(what)}, ${foot}: at the ground about ${date}${range(earliest, latest)}.`,
  growDue: (what: string, foot: string, date: string) =>
    `${cap(what)}, ${foot}: was expected at the ground by ${date}; we look at the next visit.`,
  grownOut: (what: string, foot: string) => `${cap(what)}, ${foot}: grown out by now, as far as we can tell.`,
  growUnknown: (what: string, foot: string) =>
    `${cap(what)}, ${foot}: on the way down. We cannot give a date yet.`,

  wordsHead: 'What the words mean',
  meaning: (what: string, meaning: string) => `${cap(what)}: ${meaning}.`,

  planHeels: (foot: string, trims: string, standing: string) =>
    `We are levelling the ${foot} heels, a little at each trim: ${trims}, ${standing}.`,
  planToe: (foot: string, trims: string, standing: string) =>
    `We are bringing the ${foot} toe back, a little at each trim: ${trims}, ${standing}.`,
  planTrims: (trims: number) => (trims === 1 ? 'one more should do it' : `about ${trims} more`),
  planHeld: (feet: string) => `We wait with the ${feet} until your vet has had a look.`,
  planStanding: {
    'on plan': 'so far as planned',
    ahead: 'so far faster than planned',
    behind: 'so far slower than planned',
    'just begun': 'only just begun',
  },
  planWhy: 'We never take more at once than the sole can bear.',

  ownSince: (date: string) =>
    `This horse has been yours since ${date}. Letters and photos from before that day are not shown.`,
  lettersHead: 'From your hoof-care practitioner',
  lettersBefore: 'Earlier letters',
  letterFrom: (date: string) => `Visit of ${date}`,
  letterAbout: (name: string) => `About ${name}`,

  toRing: 'When to ring the vet, whatever the horse',
  careHead: 'What to do until the next visit',
  careNone: 'Nothing special was asked for at the last visit.',
  carePrint: 'Print this list',
  careTick: (day: string, task: string) => `${day}: ${task}`,
  careNote: 'Ticks are not kept here.',

  nextHead: 'Next visit',
  next: (date: string) => `It is planned for ${date}.`,
  nextOverdue: (date: string, ask: string) => `It was planned for ${date}. ${ask}`,
  nextAsk: 'If no new date is set, please get in touch.',
  nextNone: 'None is planned yet. Please get in touch.',
  indexNext: (date: string) => `next visit ${date}`,
  indexOverdue: (date: string) => `next visit was planned for ${date}`,
  indexNone: 'no next visit planned',

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
    'It is suddenly careful where it walked freely before.',
  ],
  ringNote: 'If you are not sure, ring. A call too many does no harm.',
  standingHead: 'Please read first',
  contactsHead: 'Whom to ring',
  vetIs: (contact: string) => `Vet: ${contact}`,
  practiceIs: (phone: string) => `Us: ${phone}`,
  levels: { stop: 'Stop.', vet: 'For your vet.', mind: 'Take care.' },
  since: (text: string, date: string) => `${text} Seen on ${date}.`,

  photosHead: 'Then and now',
  photosMore: 'More pictures',
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
  /** An owner need not know which. */
  notMeasured: 'Dotted edges were not measured.',
  firstLabel: (date: string) => `first, ${date}`,
  latestLabel: (date: string) => `latest, ${date}`,

  careful:
    'This page helps the people who care for your horse. It does not replace an examination. A trimmer does not diagnose; vets do. Local law says who may trim, shoe or treat a horse.',
  safe: 'A horse in pain can kick or strike. Have someone capable hold it, stand on firm, level ground, and stop when it cannot stand on the other feet. Follow the label of any product you use.',
  lockAgain: 'Lock again',
  madeWith: (practice: string) => `Made by ${practice}. Please do not pass this page on.`,

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
