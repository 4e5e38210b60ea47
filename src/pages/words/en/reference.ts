/** Wording of the page *Measures and sources*. */
import type { Mark } from '../../../hoof/evidence.ts'
import { limits, methods } from './methods.ts'

export const reference = {
  title: (practice: string) => `Measures and sources, ${practice}`,
  heading: 'Measures and sources',
  lead: 'Texts differ on nearly all of this. Figures are guides, your own targets win, and no number is a diagnosis.',
  contents: 'On this page',

  read: 'Measures that are read',
  readHow:
    'One reading for each foot, visit and stage. The scatter is the standard deviation of one reading taken again; the smallest change that matters is a judgement of the trade.',
  facts: (likely: string, scatter: string, matters: string) =>
    `Likely: ${likely}. Scatter of one reading: ${scatter}. A change matters from ${matters} on.`,
  scatterFrom: (evidence: string) => `Scatter: ${evidence}.`,
  drawingOf: (name: string, how: string) => `How ${name} is taken: ${how}.`,

  derived: 'Measures that are worked out',
  derivedHow:
    'Made from readings of the same foot, visit and stage; stages are never mixed, nor gauge and photo.',

  marks: {
    published: 'published',
    'from memory': 'the source is named, its figure is from memory',
    'second hand': 'published, read in another work that cites it',
    'common practice': 'common practice, no source',
  } satisfies Record<Mark, string>,
  evidenceBy: (mark: string, source: string) => `${source} (${mark})`,
  noted: (text: string, note: string) => `${text}: ${note}`,

  methods: 'How the numbers are worked out',
  method: methods,
  limits: 'Known limits',
  limitsHow:
    'Where the methods are known to fall short. The figures are those of the simulations by which the methods were chosen.',
  limit: limits,

  lessons: 'What your practice has taught',
  lessonsNone:
    'Nothing yet: all is judged by the figures of the literature. Three readings of one foot begin to teach.',
  lessonsHow:
    'Learned from the readings up to the end of the last whole month, of single feet, gauge and photograph apart. In brackets: from how many readings. A foot read twice (98 and 97) teaches fastest.',
  by: { gauge: 'by gauge', photo: 'by photograph' },
  repeats: (measure: string, by: string, own: string, literature: string, readings: number) =>
    `Your readings of ${measure} ${by} repeat to ${own} (literature: ${literature}), from ${readings} readings.`,
  hand: (person: string, factor: string, readings: number) =>
    `Readings of ${person} scatter ${factor} times as much as the practice’s, from ${readings} readings; they count accordingly.`,
  lessonsTable: 'Scatter of one reading: yours, how many readings it rests on, and the literature’s',
  lessonsHead: { measure: 'Measure', gauge: 'Gauge', photo: 'Photo', literature: 'Literature' },
  lesson: (own: string, readings: number) => `${own} (${readings})`,
  noLesson: '–',
  growsHere: (mean: string, interval: string, literature: string) =>
    `Horn grows down by ${mean} here (95 % interval ${interval}; literature: ${literature}).`,
  wallsDiffer: (spread: string) => `Single walls differ from that by about ${spread} either way.`,

  planText: (flat: string, cupped: string) =>
    `The most at one trim, beyond what grows, is the horse’s own limit, else ${flat} on a flat sole and ${cupped} on a cupped one. A plan starts from two readings or more, where they put the level beyond its limit with 90 %, or with 70 % where more is over than one trim may take. What may be taken is told as the total off the wall: what has grown since the reading, and the step. A foot that waits for a vet has no plan. On a flat foot a quarter-inch heel difference takes at least about four months and several trims: common practice, no source.`,
  toeAngle: 'Toe angle: what is advised',
  toeAngleHow:
    'Advice differs so widely that there is no default target: the pastern decides, and the practitioner.',
  photos: 'Gauge and photo',
  photosHow:
    'found no two methods equivalent for any angle. So a trend never mixes gauge and photo readings, and each says which it uses.',
  photosRange:
    'The range beside a photo reading holds the true value 19 times of 20. It counts how well points are set, and how the camera stood: as told, else as held by hand, low, some ten degrees from above, with the ruler up to 7 cm out of the plane of the foot. Measured on feet of known geometry through a simulated telephone: by hand with a ruler, toe angle within 1.4° and toe length within 4.7 mm (root mean square); with the card 0.7° and 1.4 mm; on a block with the card 0.5° and 1.3 mm.',
  notStraight: 'Not in straight lines',
  notStraightHow: [
    { source: 'meier', text: 'grades after laminitis fell in a curve over 25 days, not in a line.' },
    {
      source: 'clayton',
      text: 'after a change of trim the toe angle rose within 4 months, the heel angle only from 4 to 16 months.',
    },
  ],
  trimStudy: 'A trim, measured',
  trimStudyHow:
    'before and after a trim: front wall 88.3 to 85.3 mm, length of the sole 136.9 to 130.1 mm, hoof angle 50.05 to 51.40°, sole 11.5 to 8.6 mm (means). The side view is checked against it.',
  sole: 'Grooves and sole',
  soleHow:
    'No published equation turns groove depth into sole depth, so no page computes one. Sole depth comes from a vet’s radiograph alone.',

  growth: 'Growth of horn',
  growthHow: (mean: string, sd: string) =>
    `Before a practice has shown its own rate the pages take ${mean}, with a standard deviation of ${sd}.`,
  growthFoal: (mean: string) => `Under one year of age: ${mean}.`,
  growthTable: 'Published rates of growth',
  growthHead: ['Who', 'A month', 'As published', 'Source'],
  renewal: 'Renewal of the wall',
  renewalTable: 'Published months of renewal',
  renewalHead: ['Place', 'Months', 'Source'],
  months: (low: string, high: string) => (low === high ? low : `${low} to ${high}`),

  findings: 'Findings',
  findingsHow: 'What may be noted, and what it means in a line.',
  ownTerms: 'Words of this practice',
  scales: 'Scales',
  never: 'What no page does',
  neverList: [
    'No page makes a diagnosis. What a vet has said is called a diagnosis; a number never is.',
    'No page computes sole depth.',
    'No page gives a plan or a trim amount for a foot that waits for a vet, or calls it on target. Silence ends no caution.',
    'No page mixes stages, or gauge and photo, in one trend.',
    'No page ranks horses or people.',
    'No page fills a gap with a guess: it says that it is too early to tell, or that nothing was read.',
  ],
  sources: 'Sources',
  standing: 'Cautions that always hold',
}
