/** Wording of the teaching portfolio. Everything in weeks or days of the case; nothing that tells who or where. */
import type { Standing } from '../../../trend/assessment.ts'
import type { AgeBand, CaseLength, KindClass, Outcome, SexClass } from '../keys.ts'

const cap = (text: string) => text.slice(0, 1).toUpperCase() + text.slice(1)
const plural = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`

const range = (low: number | null, high: number | null, unit: string) =>
  low === null
    ? `under ${(high ?? 0) + 1} ${unit}`
    : high === null
      ? `${low} ${unit} or more`
      : `${low} to ${high} ${unit}`

const outcomes: Readonly<Record<Outcome, string>> = {
  'on target': 'on target',
  improving: 'improving',
  mixed: 'some better, some worse',
  worsening: 'worsening',
  unsettled: 'no clear trend yet',
}

const lengths: Readonly<Record<CaseLength, string>> = {
  short: 'up to 3 months',
  half: '3 to 6 months',
  year: '6 to 12 months',
  long: 'over a year',
}

const ages: Readonly<Record<AgeBand, string>> = {
  '0': 'under a year',
  '1-3': '1 to 3 years',
  '4-8': '4 to 8 years',
  '9-13': '9 to 13 years',
  '14-18': '14 to 18 years',
  '19-': '19 years or more',
  '0-3': 'under 4 years',
  '4-13': '4 to 13 years',
  '14-': '14 years or more',
  '4-': '4 years or more',
}

const kinds: Readonly<Record<KindClass, string>> = {
  pony: 'pony',
  cob: 'cob',
  horse: 'horse',
  draught: 'draught horse',
  donkey: 'donkey',
  mule: 'mule',
  'pony or cob': 'pony or cob',
  'horse or draught': 'horse or draught horse',
  'donkey or mule': 'donkey or mule',
  'horse or pony': 'horse or pony',
}

const sexes: Readonly<Record<SexClass, string>> = {
  mare: 'mare',
  gelding: 'gelding',
  stallion: 'stallion',
  male: 'gelding or stallion',
}

/** How time since the first visit is told: `n` is a number of whole weeks, or of days. */
const timeIn = (unit: 'week' | 'day') => {
  const [Unit, units] = [cap(unit), `${unit}s`]
  return {
    at: (n: number) => `${unit} ${n}`,
    stageAt: (n: number, stage: 'before' | 'after') => `${unit} ${n}, ${stage} the trim`,
    span: (n: number) => plural(n, unit),
    head: Unit,
    axis: `${units} from the first visit`,
    intro: `Cases of hoof rehabilitation for teaching, told from the readings. Names, places and dates are left out; time is counted in ${units} from the first visit.`,
    timelineCaption: `The visits, in ${units} from the first`,
    timelineHead: ['Visit', Unit, `${cap(units)} since the visit before`],
    csvNote: `${cap(units)} from the first visit; lengths in millimetres, angles in degrees.`,
    chartHead: [Unit, 'Stage'] as readonly [string, string],
    chartSays: (measure: string, feet: string) => `${cap(measure)} by ${unit} of the case. ${feet}`,
    once: 'One visit so far.',
    rhythm: (visits: number, median: number, shortest: number, longest: number) =>
      shortest === longest
        ? `${plural(visits, 'visit')}, each ${plural(shortest, unit)} after the one before.`
        : `${plural(visits, 'visit')}, as a rule ${plural(median, unit)} apart (${shortest} to ${longest}).`,
    /** Ends of the range are null where they are past, or where there is none. */
    growOutLine: (
      foot: string,
      what: string,
      place: string,
      n: number,
      earliest: number | null,
      latest: number | null,
    ) =>
      `${cap(foot)}, ${what}, ${place}: at the ground about ${unit} ${n}${
        earliest === null ? '' : `, ${unit} ${earliest} at the earliest`
      }${latest === null ? '' : `, ${unit} ${latest} at the latest`}.`,
    growOutDue: (foot: string, what: string, place: string, n: number) =>
      `${cap(foot)}, ${what}, ${place}: was expected at the ground by ${unit} ${n}; not looked at since.`,
    /** Where `on 14 March` became `on week 5`. */
    mended: (text: string) =>
      unit === 'week'
        ? text.replace(
            /\b([Oo])n(\s+[*_]*week \d)/g,
            (_, o: string, rest: string) => `${o === 'O' ? 'I' : 'i'}n${rest}`,
          )
        : text,
  }
}

export const portfolio = {
  title: 'Case portfolio',
  times: { weeks: timeIn('week'), days: timeIn('day') },
  by: (practice: string) => `From the records of ${practice}`,
  toIndex: 'All cases',
  toSummary: 'Over all cases',
  skip: 'To the content',
  none: 'No case is shown yet.',
  count: (n: number) => plural(n, 'case'),
  shownAll: (n: number) => (n === 1 ? 'One case.' : `All ${n} cases.`),
  shownSome: (of: number) => `# of ${of} cases.`,
  filters: 'Choose cases',
  filterFinding: 'Finding',
  filterFoot: 'Foot',
  filterLength: 'Time followed',
  filterOutcome: 'Outcome',
  filterAll: 'any',
  filterReset: 'Show all',
  noMatch: 'No case has all of that. Choose less.',
  cardLength: (visits: number, span: string) => `${plural(visits, 'visit')} over ${span}`,
  cardNoKinds: 'hooves over time',
  outcomeLabel: 'Outcome',
  outcomes,
  lengths,

  caseTitle: (kinds: readonly string[]) => (kinds.length === 0 ? 'Hooves over time' : cap(kinds.join(', '))),
  problemsAre: (kinds: string) => `${kinds}.`,
  decide:
    'The first visit comes first: decide what you would do, then open what was done and what came of it.',
  caseHead: (alias: string) => `${alias}, a case`,
  keyFacts: (visits: number, span: string) => `${plural(visits, 'visit')} over ${span}.`,

  patient: 'Patient',
  patientKind: 'Kind',
  patientSex: 'Sex',
  patientAge: 'Age at the first visit',
  patientHeight: 'Height',
  patientWeight: 'Weight',
  ages,
  kinds,
  sexes,
  cm: (low: number | null, high: number | null) => range(low, high, 'cm'),
  kg: (low: number | null, high: number | null) => range(low, high, 'kg'),
  notSaid: 'not recorded',
  notTold: 'Not told',
  notToldList: (names: readonly string[]) => names.join(', ').toLowerCase(),
  patientShared: (cases: number) =>
    `Told only as closely as ${cases} cases or more share it, so that no horse is known by it.`,
  patientWide: 'Told in wide bands only, so that the horse is not easily known by it.',

  findings: 'Findings at the first visit',
  findingsNone: 'No findings were recorded at the first visit.',
  findingHead: ['Finding', 'Feet', 'Grade'],
  grades: ['0, resolved', '1, mild', '2, moderate', '3, severe'],
  drawnHead: 'Drawn: outlines and soles',
  readingsFold: 'All readings',
  readingsCaption: 'Readings at the first visit, before any trimming',
  readingsHead: (feet: readonly string[]) => ['Measure', ...feet],
  lameness: (grade: number) => `lameness ${grade} of 5`,
  landing: (how: string) => `lands ${how === 'flat' ? 'flat' : `${how} first`}`,
  pulse: (grade: number) => `digital pulse ${grade} of 3`,
  solePicture: (foot: string, n: number) => `${cap(foot)}: ${plural(n, 'finding')} at the first visit`,
  soleSays: (foot: string, list: string) => `The ${foot} from below at the first visit. ${list}`,
  soleHead: ['Sign', 'Finding', 'Place', 'Grade'],
  sideTitle: (foot: string) => `${cap(foot)} from the side, as it came`,

  timeline: 'Timeline',
  timelineEach: 'Each visit',

  assessment: 'Assessment at the first visit',
  assessmentCaption: 'Readings outside their bands, the furthest first',
  assessmentHead: ['Foot, measure', 'Read', 'Wanted'],
  footMeasure: (foot: string, measure: string) => `${cap(foot)}, ${measure}`,
  readOff: (read: string, off: string) => `${read}, ${off}`,
  belowBand: (by: string) => `${by} below`,
  aboveBand: (by: string) => `${by} above`,
  band: (low: string | null, high: string | null) =>
    low === null ? `at most ${high ?? ''}` : high === null ? `at least ${low}` : `${low} to ${high}`,
  assessmentNone: 'No reading lay outside a band that it could be judged by.',
  levels: { stop: 'Stop', vet: 'Tell the vet', mind: 'Take care' },
  cautionsLast: 'Still in force at the last visit',

  plan: 'What would you plan?',
  planIntro: 'Decide before you read on. Write down:',
  planQuestions: [
    'What would you ask a vet before touching a foot?',
    'Which foot first, and what would you take, at which place, at the first trim?',
    'What would you leave alone, and why?',
    'When would you come back, and what would you measure then?',
    'How much change, by when, would tell you that you were right or wrong?',
  ],
  open: 'Show what was done and what came of it',

  done: 'What was done',
  takenCaption: 'Taken at a trim: median and range',
  takenIn: (median: string, least: string, most: string) => `${median} (${least}\u2013${most})`,
  doneEach: 'Each trim',
  doneIntro: 'A dash: not read both before and after.',
  doneCaption: (measure: string) => `${cap(measure)}: taken at each trim`,
  doneNone: 'No reading was taken both before and after a trim.',
  plannedHeels: (foot: string, from: string, limit: string, standing: string) =>
    `${cap(foot)}: heels ${from} apart, to be brought within ${limit}; ${standing}.`,
  plannedToe: (foot: string, from: string, limit: string, standing: string) =>
    `${cap(foot)}: toe ${from}, to be brought to ${limit}; ${standing}.`,
  plannedHeld: (foot: string) => `${cap(foot)}: no amounts, because a caution asked for a vet first.`,
  plannedStanding: {
    'on plan': 'it kept to the plan',
    ahead: 'it ran ahead of the plan',
    behind: 'it ran behind the plan',
    'just begun': 'just begun',
  },

  outcome: 'Follow-up and outcome',
  movedAway: (matters: string) => `Clearly away from the target: ${matters}.`,
  movedToward: (matters: string) => `Clearly toward the target: ${matters}.`,
  movedInto: (matters: string) => `Clearly moved and on target: ${matters}.`,
  movedOf: (clear: number, of: number) =>
    `Of ${plural(of, 'course')} of a measure at a foot ${clear === 0 ? 'none' : clear} clearly moved.`,
  foundWorse: (matters: string) => `Graver than at first, or new since: ${matters}.`,
  foundGone: (matters: string) => `Gone: ${matters}.`,
  foundBetter: (matters: string) => `Less grave than at first: ${matters}.`,
  atFeet: (what: string, feet: string) => `${what} (${feet})`,
  problemsCaption: 'Along the line through all readings',
  problemsHead: ['Foot, measure', 'From, to', 'What can be said'],
  alongLine: (from: string, to: string) => `${from} to ${to}`,
  said: (verdict: string, clear: string) => `${verdict}, ${clear}`,
  foundCaption: 'Findings, at first and at last',
  foundHead: ['Finding', 'First', 'Last'],
  readAt: (value: string, when: string) => `${value}, ${when}`,
  allMeasures: 'All measures, findings by visit, and growth',
  trendsCaption: 'Each measure: readings, line, and what can be said',
  trendsHead: ['Foot, measure', 'Readings', 'First', 'Last', 'A month, 95 % interval', 'Moved', 'Verdict'],
  clear: 'clearly moved',
  unclear: 'not clearly moved',
  verdicts: {
    'on target': 'on target',
    held: 'not judged, a vet first',
    improving: 'improving',
    worsening: 'worsening',
    steady: 'steady',
    rising: 'rising',
    falling: 'falling',
    'not worsening': 'not getting worse',
    'not improving': 'not getting better',
    'too early to tell': 'too early to tell',
  } satisfies Record<Standing, string>,
  noSlope: 'too few readings',
  slope: (rate: string, interval: string) => `${rate} (${interval})`,
  gridTitle: 'Findings from visit to visit',
  gridSays: (list: string) => `Grade of each finding at each visit. ${list}`,
  gridCaption: 'Grades by visit',
  growth: 'Growth',
  growthLine: (foot: string, measure: string, rate: string, interval: string, span: string) =>
    `${cap(foot)}, ${measure}: ${rate} left after wear (95 % interval ${interval}), seen over ${span}.`,
  growOut: 'Growing out',
  growOutGone: (foot: string, what: string, place: string) => `${cap(foot)}, ${what}, ${place}: grown out.`,
  growOutUnknown: (foot: string, what: string, place: string) =>
    `${cap(foot)}, ${what}, ${place}: no wall length read there, so no time can be given.`,
  photosMore: 'More pictures',
  photoAlt: (what: string, when: string) => `${cap(what)}, ${when}`,
  views: {
    lateral: 'from the outer side',
    medial: 'from the inner side',
    front: 'from the front',
    behind: 'from behind',
    solar: 'from below',
    other: 'another view',
  },
  stages: { before: 'before the trim', after: 'after the trim' },
  wholeHorse: 'the horse',

  discussion: 'Discussion',
  discussionNone: 'No discussion was written.',
  discussionGeneral: 'On the whole case',
  discussionVisits: 'From the visits',

  ownerView: "The owner's view",
  ownerViewNone: 'It was not recorded.',
  consent: 'Consent',
  consentWith: 'The owner agreed to this case and its pictures being shown for teaching, without names.',
  consentWithout:
    'The owner agreed to this case being shown for teaching, without names and without pictures.',

  csv: 'Readings as a table (CSV)',

  chartTitle: (measure: string) => `${cap(measure)}, visit by visit`,
  chartFoot: (foot: string, first: string, last: string, note: string) =>
    `${cap(foot)}: ${first} to ${last}, ${note}.`,
  chartStages: { before: 'before', after: 'after' },

  drawingTitle: (foot: string) => `${cap(foot)} from the side, first against latest`,
  drawingCaption: (foot: string) => `${cap(foot)} from the side`,
  drawingHead: ['', 'First', 'Latest'],
  drawingToeAngle: 'toe angle',
  drawingToeLength: 'toe length',
  drawing: (foot: string, first: string, latest: string) =>
    `${cap(foot)} from the side. First: ${first}. Latest: ${latest}.`,
  drawingOnce: (foot: string, first: string) => `${cap(foot)} from the side: ${first}.`,
  drawingSays: (length: string, angle: string) => `toe length ${length}, toe angle ${angle}`,

  stand: {
    owner: 'the owner',
    vet: 'the vet',
    person: 'someone of the practice',
    otherOwner: 'someone else',
    otherHorse: 'another horse',
    withheld: '(left out)',
    day: (day: number) => `day ${day}`,
    month: (month: number) => `month ${month} of the case`,
    beforeCase: 'before the case',
  },

  summaryTitle: 'Over all cases',
  summaryIntro:
    'How much each measure changed from the first visit to the last, along the line through all its readings. A circle is one case, the mean over its feet; the upright is their median, the bar its 95 % interval. Cases are not named here and not ranked; they began in different places and ran for different times.',
  summaryChart: (measures: readonly string[]) => `Change of each case: ${measures.join(', ')}`,
  summaryValues: (measures: readonly string[]) => `The changes in order of size: ${measures.join(', ')}`,
  summaryEach: 'Change of each case',
  summaryAxis: 'change, first visit to last',
  summaryRow: (measure: string, cases: number, median: string, interval: string) =>
    `${measure}, ${plural(cases, 'case')}: ${median} (${interval})`,
  summaryRange: (low: string, high: string) => `${low} to ${high}`,
  summarySays: (measure: string, n: number, median: string, interval: string) =>
    `Change in ${measure} over ${plural(n, 'case')}: median ${median}${interval}.`,
  summaryInterval: (low: string, high: string) => `, 95 % interval of the median ${low} to ${high}`,
  summaryFew: ', too few cases for an interval (fewer than six)',
  summaryHead: ['Measure', 'Up', 'Down', 'Not clearly', 'All'],
  summaryCaption: 'How many feet clearly moved',
  summaryNotes:
    'The interval comes from the order of the values and needs no shape of distribution. For heel balance the distance from level is compared, whichever heel is the higher.',
  summaryOutcomes: 'Outcomes',
  summaryOutcomeHead: ['Outcome', 'Cases'],
  summaryNone: 'There are no two readings to compare yet.',
  tooFew: 'too few for an interval',

  careful:
    'These cases teach; they replace no examination and no training. A trimmer does not diagnose: vets do. Who may trim, shoe or treat is set by local law.',
  careful2:
    'Follow product labels. Handle safely: a horse in pain can kick or strike. Work with a capable handler, on firm level ground, with protective wear, sharp tools sheathed; stop when the horse cannot stand on the other feet.',
}
