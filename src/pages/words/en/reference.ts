/** Wording of the reference page. */
import type { Mark } from '../../../hoof/evidence.ts'

export const reference = {
  title: (practice: string) => `Measures and sources, ${practice}`,
  heading: 'Measures and sources',
  lead: 'Every measure, formula, scale and published figure that these pages use, with where it comes from. Texts differ on nearly all of it: figures are guides, your own targets win, and no page calls a number a diagnosis.',
  contents: 'On this page',

  read: 'Measures that are read',
  readHow:
    'One reading for each foot, visit and stage. The scatter is the standard deviation of one reading taken again; the smallest change that matters is a judgement of the trade.',
  how: 'How it is taken',
  likely: 'Likely range',
  scatter: 'Scatter of one reading',
  matters: 'Smallest change that matters',
  evidence: 'Where the scatter comes from',
  drawingOf: (name: string, how: string) => `How ${name} is taken: ${how}.`,

  derived: 'Measures that are worked out',
  derivedHow:
    'Made from readings of the same foot, visit and stage; stages are never mixed, nor gauge and photo.',
  formula: 'Formula',
  reading: 'How to read it',
  source: 'Source',

  marks: {
    published: 'published',
    'from memory': 'the source is named, its figure is from memory',
    'second hand': 'published, read in another work that cites it',
    'common practice': 'common practice, no source',
  } satisfies Record<Mark, string>,
  evidenceBy: (mark: string, source: string) => `${source} (${mark})`,
  noted: (text: string, note: string) => `${text}: ${note}`,

  methods: 'How the numbers are worked out',
  method: [
    {
      id: 'smallest-real-change',
      name: 'Smallest real change',
      formula: 'limit = t × √2 × s',
      text: 'Two readings of the same thing differ by chance. A difference below this limit is within measuring error; t is Student’s t for 95 %.',
    },
    {
      id: 'trend',
      name: 'Trend',
      formula: 'y = a + b t; b ± t s / √Sxx; s² = (10 s₀² + RSS) / (10 + n − 2)',
      text: 'Least squares through the readings of one stage, one foot, one measure. The known scatter s₀ of one reading counts as 10 readings, so that two or three visits do not claim more than they can. The median of the slopes between every two readings (Theil-Sen) is the second opinion.',
    },
    {
      id: 'verdict',
      name: 'Verdict',
      formula: 'improving, worsening: 0 outside the slope’s 95 % interval',
      text: 'On target: the last point of the line lies in the target. Improving or worsening: the line surely moves, toward the target or away. Steady: it may stand still, and every change that matters is ruled out. All else is too early to tell. Without a target a moving measure is called rising or falling.',
    },
    {
      id: 'pace',
      name: 'Changed pace',
      formula: 'from 6 readings on: the last four against all',
      text: 'Feet do not always move in straight lines. Where the slope of the last four readings and that of all do not overlap, the page says so and goes by the last four.',
    },
    {
      id: 'forecast',
      name: 'Forecast',
      formula: '(a + b t − T)² = t² Var(a + b t)',
      text: 'When the line enters the target at its nearest edge T, with Fieller’s 95 % interval. No date is given where the slope’s interval holds 0, and none more than 18 months ahead. Each forecast that could have been made earlier is made again and scored.',
    },
    {
      id: 'growth-and-trim',
      name: 'Growth and trim',
      formula: 'growth = (next arrival − last after trim) / days; trim = after − before',
      text: 'A hoof grows between visits and is shortened at them. The two are kept apart. Growth is what is left after wear.',
    },
    {
      id: 'grow-out',
      name: 'Growing out',
      formula: 'date = (wall length − distance) / rate',
      text: 'Rate of growth as published, sharpened by the foot’s own sightings: precision 1/τ² + Sxx/1.5². The range comes from the rate’s 95 % interval.',
    },
    {
      id: 'plan',
      name: 'Staged plan',
      formula: 'trims = excess over the limit / most at one trim',
      // With its limits: `planText`.
      text: '',
    },
    {
      id: 'side-view',
      name: 'Side view',
      formula: 'toe hairline = (Lt cos A, Lt sin A); heel hairline = (B + Lh cos H, Lh sin H)',
      text: 'From toe angle A, toe length Lt, heel angle H, mean heel length Lh and bearing length B. Where the coronet angle was read too, the two are compared; lowering one end by p turns the ground plane by atan(p / B).',
    },
  ],

  planText: (flat: string, cupped: string) =>
    `The most at one trim, beyond what grows, is the horse’s own limit, else ${flat} on a flat sole and ${cupped} on a cupped one. A plan starts from two readings or more, where they put the level beyond its limit with 90 %, or with 70 % where more is over than one trim may take. A foot that waits for a vet has none. On a flat foot a quarter-inch heel difference takes at least about four months and several trims: common practice, no source.`,
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
    `Before a foot has shown its own rate the pages take ${mean}, with a standard deviation of ${sd}.`,
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
  standing: 'Cautions that always stand',
}
