/** Findings, places, grades as they are said. */
import { type FindingName, findingAliases, findingMeanings, type Place, places } from '../../hoof/findings.ts'
import { sideWords } from './measures.ts'
import { combined, listed, type Phrase, phrases } from './sense.ts'

/** Findings that can be nowhere else, or that concern the foot as a whole. */
const natural: Partial<Record<FindingName, Place>> = {
  thrush: 'frog',
  canker: 'frog',
  'sulcus split': 'central sulcus',
  'flat sole': 'sole',
  'false sole': 'sole',
  'thin sole': 'sole',
  'sole prolapse': 'sole',
  'twisted frog': 'frog',
  'overgrown frog': 'frog',
  'ragged frog': 'frog',
  'white line stretched': 'white line',
  'nail in white line': 'white line',
  'white-line disease': 'white line',
  'bar laid over': 'bars',
  'coronet injury': 'coronet',
  'coronet depression': 'coronet',
  'contracted heels': 'whole foot',
  'underrun heels': 'whole foot',
  dish: 'toe',
  ring: 'whole foot',
  abscess: 'whole foot',
  drainage: 'whole foot',
  'fresh blood': 'whole foot',
  puncture: 'whole foot',
  heat: 'whole foot',
}

/** Where a finding is when nobody says where; null where it may be in several places. */
export const naturalPlace = (what: string): Place | null =>
  Object.hasOwn(natural, what) ? (natural[what as FindingName] ?? null) : null

/** Names and aliases that are everyday words as well, and mean a finding only in the forms of `spoken`. */
const everyday: ReadonlySet<string> = new Set(['ring', 'growth', 'nail', 'blood'])

const spoken: Partial<Record<FindingName, readonly string[]>> = {
  thrush: ['thrushy'],
  flare: ['flares', 'flared', 'flaring'],
  'wall separation': ['separation', 'separated', 'wall is separating', 'separating', 'wall separated'],
  'white line stretched': ['stretched white line', 'white line is stretched', 'stretching of the white line'],
  crack: ['cracks', 'cracked', 'toe cracks', 'sand crack'],
  chip: ['chips', 'chipped', 'chipping', 'chip out', 'chip out of'],
  ring: [
    'a ring',
    'event line',
    'event lines',
    'growth ring',
    'growth rings',
    'laminitic ring',
    'laminitic rings',
    'event ring',
  ],
  dish: ['dished', 'dishing'],
  bruise: ['bruises', 'bruising', 'bruised'],
  'nail hole': ['nail holes'],
  abscess: ['abscesses', 'an abscess', 'abcess'],
  'old abscess': [
    'old abscess track',
    'abscess track',
    'old abcess',
    'abscess hole',
    'old abscess hole',
    'abscess scar',
  ],
  'white-line disease': ['white line disease'],
  'sulcus split': [
    'split sulcus',
    'split in the sulcus',
    'split in the central sulcus',
    'sulcus is split',
    'central sulcus split',
    'split between the bulbs',
  ],
  'contracted heels': ['heels contracted', 'heels are contracted', 'contracted heel', 'contraction'],
  'underrun heels': [
    'heels underrun',
    'under run heels',
    'heels are underrun',
    'underrun heel',
    'heels run under',
    'heels under run',
    'run under heels',
    'heels are under run',
  ],
  'sheared heels': ['heels sheared', 'sheared heel', 'heels are sheared'],
  'bar laid over': [
    'bars laid over',
    'laid over bar',
    'laid over bars',
    'bars are laid over',
    'bar is laid over',
    'bars lying over',
    'bars folded over',
  ],
  'flat sole': ['flat soles', 'sole is flat', 'flat footed', 'soles are flat'],
  'thin sole': ['thin soles', 'sole is thin', 'soles are thin'],
  'false sole': ['retained sole', 'sole is false'],
  'twisted frog': ['frog is twisted'],
  'overgrown frog': ['frog is overgrown'],
  'ragged frog': ['frog is ragged', 'ragged frogs'],
  scar: ['scarring'],
  'coronet injury': [
    'injury to the coronet',
    'coronet wound',
    'coronary band injury',
    'injury at the coronet',
  ],
  'coronet depression': ['dip at the coronet', 'coronary band dip', 'ledge at the hairline'],
  'fresh blood': ['bleeding', 'fresh bleeding', 'bled'],
  growth: ['a growth', 'strange growth'],
  swelling: ['swollen', 'a swelling'],
  heat: ['hot foot', 'foot is hot', 'hoof is hot', "foot's hot", "hoof's hot", 'hot hoof'],
  drainage: ['pus coming out', 'draining'],
  tenderness: ['tender'],
  puncture: [
    'puncture wound',
    'punctured',
    'nail in the sole',
    'nail in the frog',
    'stood on a nail',
    'trod on a nail',
    'trodden on a nail',
    'standing on a nail',
  ],
}

/** Adjectives that want their noun in the same breath. */
const qualities: readonly (readonly [words: readonly string[], of: readonly string[], what: FindingName])[] =
  [
    [['ragged', 'tatty', 'shreddy'], ['frog'], 'ragged frog'],
    [['overgrown'], ['frog'], 'overgrown frog'],
    [['twisted'], ['frog'], 'twisted frog'],
    [['stretched'], ['white line'], 'white line stretched'],
    [['flat'], ['sole'], 'flat sole'],
    [['thin'], ['sole'], 'thin sole'],
    [['contracted'], ['heel'], 'contracted heels'],
    [['underrun', 'under run', 'run under'], ['heel'], 'underrun heels'],
    [['sheared'], ['heel'], 'sheared heels'],
    [['laid over', 'folded over'], ['bar'], 'bar laid over'],
    [['hot', 'warm'], ['foot', 'hoof'], 'heat'],
  ]

/** Where a finding is said to be by its own name: a toe crack. */
const placed: readonly Phrase[] = [
  ['toe crack', { kind: 'finding', what: 'crack', where: 'toe', sure: true }],
  ['toe flare', { kind: 'finding', what: 'flare', where: 'toe', sure: true }],
  ['pus coming out of the coronet', { kind: 'finding', what: 'drainage', where: 'coronet', sure: true }],
  ['nail in the sole', { kind: 'finding', what: 'puncture', where: 'sole', sure: true }],
  ['nail in the frog', { kind: 'finding', what: 'puncture', where: 'frog', sure: true }],
]

function findingNames(): readonly Phrase[] {
  const names = Object.keys(findingMeanings) as FindingName[]
  const own = names.flatMap((what) =>
    phrases([...(everyday.has(what) ? [] : [what]), ...(spoken[what] ?? [])], {
      kind: 'finding',
      what,
      where: null,
      sure: true,
    }),
  )
  const others = Object.entries(findingAliases)
    .filter(([name]) => !everyday.has(name))
    .map(([name, what]): Phrase => [name, { kind: 'finding', what, where: null, sure: true }])
  const unsure = phrases(['ring', 'rings'], { kind: 'finding', what: 'ring', where: null, sure: false })
  return [...own, ...others, ...placed, ...unsure]
}

const place = (words: readonly string[], of: Place | null, part: string) =>
  phrases(words, { kind: 'place', place: of, part })

const sidedPlaces = (['medial', 'lateral'] as const).flatMap((side) => [
  ...place(combined(sideWords[side], ['toe']), `${side} toe`, 'toe'),
  ...place(combined(sideWords[side], ['groove']), `${side} groove`, 'groove'),
  ...place(combined(sideWords[side], ['bar']), `${side} bar`, 'bar'),
])

const placePhrases: readonly Phrase[] = [
  ...places
    .filter((name) => name !== 'toe' && name !== 'white line')
    .flatMap((name) => place([name], name, name === 'bars' ? 'bar' : name)),
  ...sidedPlaces,
  ...place(
    ['sulcus', 'cleft', 'central cleft', 'middle groove', 'centre groove', 'central groove'],
    'central sulcus',
    'sulcus',
  ),
  ...place(['frogs'], 'frog', 'frog'),
  ...place(['soles'], 'sole', 'sole'),
  ...place(['bar'], 'bars', 'bar'),
  ...place(['hairline', 'coronary band', 'coronet band'], 'coronet', 'coronet'),
  ...place(
    [
      'bulbs',
      'bulb',
      'heel bulb',
      'bulbs of the heel',
      ...combined([...sideWords.medial, ...sideWords.lateral], ['heel bulb', 'heel bulbs', 'bulb', 'bulbs']),
    ],
    'heel bulbs',
    'bulbs',
  ),
  ...place(['whole hoof', 'the whole foot', 'all over the foot'], 'whole foot', 'foot'),
  ...place(['foot', 'hoof', 'feet', 'hooves'], null, 'foot'),
  ...place(['quarter'], null, 'quarter'),
]

const grade = (words: readonly string[], of: 0 | 1 | 2 | 3 | null, weak = false) =>
  phrases(words, { kind: 'grade', grade: of, weak })

const gradePhrases: readonly Phrase[] = [
  ...grade(listed('mild, mildly, slight, slightly, minor, light, very mild, very slight'), 1),
  ...grade(
    listed(`
      a bit, bit, a bit of, bit of, a little, a little bit, a little bit of, little, a touch, a touch of, touch of, a trace, trace of,
      just a bit, wee bit of, a wee bit of`),
    1,
    true,
  ),
  ...grade(
    listed(`
      nasty, nasty bit of, a nasty bit of, good bit of, a good bit of, fair bit of, a fair bit of, quite a bit of, big bit of, a fair amount of,
      a lot of, lots of`),
    null,
    true,
  ),
  ...grade(['moderate', 'moderately', 'medium', 'bad', 'quite bad', 'fairly bad', 'pretty bad'], 2),
  ...grade(
    ['severe', 'severely', 'very bad', 'really bad', 'terrible', 'awful', 'marked', 'shocking', 'horrible'],
    3,
  ),
  ...phrases(['grade', 'graded', 'a grade'], { kind: 'grade-next' }),
]

export const findingPhrases: readonly Phrase[] = [
  ...findingNames(),
  ...qualities.flatMap(([words, of, what]) => phrases(words, { kind: 'quality', of, what })),
  ...placePhrases,
  ...gradePhrases,
  ...phrases(
    [
      'gone',
      'has gone',
      'cleared up',
      'cleared',
      'healed',
      'healed up',
      'grown out',
      'resolved',
      'all gone',
      'is gone',
      'all cleared up',
      'disappeared',
      'all clear',
      'dried up completely',
    ],
    { kind: 'gone' },
  ),
  ...phrases(
    listed(`
      hock, hocks, knee, knees, face, shoulder, fetlock, fetlocks, leg, legs, eye, sheath, tendon, tendons, neck, rump, withers, ribs, belly,
      mouth, tail, ear, nose, hip, stifle, elbow, cannon, saddle, girth, hindquarters, lip, gum, gums`),
    { kind: 'body-part' },
  ),
  ...phrases(
    [
      'still there',
      'still got',
      'still has',
      'still',
      'same as last time',
      'no change',
      'no better',
      'no worse',
      'unchanged',
    ],
    { kind: 'still' },
  ),
  ...phrases(
    [
      ...combined(
        ['down', 'below', 'from', 'down from', 'under', 'below'],
        ['the hairline', 'the coronet', 'the coronary band', 'the hair', 'hairline', 'coronet'],
      ),
      'down',
      'down the wall',
      'down now',
    ],
    { kind: 'down' },
  ),
]
