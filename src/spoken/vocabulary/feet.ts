/** Feet and stages as they are said. */
import { type Foot, feet } from '../../hoof/feet.ts'
import { combined, type Phrase, phrases } from './sense.ts'

const left = ['left', 'near', 'nearside', 'near side']
const right = ['right', 'off', 'offside', 'off side']
const fore = ['fore', 'front', 'fore foot', 'front foot', 'forefoot', 'front hoof', 'fore hoof']
const hind = ['hind', 'back', 'rear', 'hind foot', 'back foot', 'hind hoof', 'back hoof']

const footNames: Readonly<Record<Foot, readonly string[]>> = {
  LF: ['lf', 'l f', ...combined(left, fore), 'front left', 'fore left', 'front near'],
  RF: ['rf', 'r f', ...combined(right, fore), 'front right', 'fore right', 'front off'],
  LH: ['lh', 'l h', ...combined(left, hind), 'hind left', 'back left', 'rear left'],
  RH: ['rh', 'r h', ...combined(right, hind), 'hind right', 'back right', 'rear right'],
}

const pairNames = (names: readonly string[]): readonly string[] => [
  ...combined(['both', 'on both', 'two'], [...names, ...names.map((name) => name.replace(/s$/, ''))]),
]

const fores = ['fronts', 'fores', 'front feet', 'fore feet', 'forefeet', 'front pair', 'front hooves']
const hinds = ['hinds', 'backs', 'hind feet', 'back feet', 'hind pair', 'hind hooves', 'rears']

const group = (words: readonly string[], of: readonly Foot[], each: boolean, passing = false) =>
  phrases(words, { kind: 'feet', feet: of, each, passing })

export const footPhrases: readonly Phrase[] = [
  ...feet.flatMap((foot) => group(footNames[foot], [foot], false)),
  ...group(fores, ['LF', 'RF'], false),
  ...group(hinds, ['LH', 'RH'], false),
  ...group(pairNames(fores), ['LF', 'RF'], true),
  ...group(pairNames(hinds), ['LH', 'RH'], true),
  ...group(['in front'], ['LF', 'RF'], true, true),
  ...group(['behind'], ['LH', 'RH'], true, true),
  ...group(['all four', 'all four feet', 'all feet', 'every foot', 'each foot', 'all of them'], feet, true),
  ...group(['all round', 'all around', 'any foot', 'any of them', 'any feet', 'anywhere'], feet, true, true),
  ...phrases(['left'], { kind: 'side', side: 'left' }),
  ...phrases(['near'], { kind: 'side', side: 'left' }),
  ...phrases(['right'], { kind: 'side', side: 'right' }),
  ...phrases(['off'], { kind: 'side', side: 'right' }),
  ...phrases(['the other three', 'other three', 'the others', 'others', 'the other feet', 'the rest'], {
    kind: 'others',
  }),
  ...phrases(combined(['other', 'opposite'], [...fore, 'fore']), { kind: 'other-foot', pair: 'fore' }),
  ...phrases(combined(['other', 'opposite'], hind), { kind: 'other-foot', pair: 'hind' }),
  ...phrases(['both of them', 'the two of them', 'the pair', 'both feet'], { kind: 'pair' }),
  ...phrases(['all'], { kind: 'all' }),
  ...phrases(['except', 'except for', 'apart from', 'bar', 'but for', 'all but', 'excepting'], {
    kind: 'except',
  }),
  ...phrases(['both', 'each', 'the same both', 'both the same'], { kind: 'both' }),
]

const who = ['he', 'she', 'it', 'they', 'i', 'we']

const stage = (words: readonly string[], of: 'before' | 'after', sure: boolean, all = false) =>
  phrases(words, { kind: 'stage', stage: of, sure, all })

export const stagePhrases: readonly Phrase[] = [
  ...stage(
    [
      'on arrival',
      ...combined(['as'], who.slice(0, 4), [
        'comes',
        'came',
        'comes in',
        'came in',
        'arrived',
        'stands',
        'come',
      ]),
      ...combined(
        ['before'],
        [
          'the trim',
          'trim',
          'trimming',
          'any trimming',
          'i trimmed',
          'i began',
          'i did anything',
          'i touched anything',
          'i touched it',
          'we start',
          'we started',
          'i start',
          'i started',
          'i do anything',
          'i touch anything',
          'i touch it',
          'i trim',
          'i begin',
        ],
      ),
      'pre trim',
      'pretrim',
      'untrimmed',
      'as found',
      'not trimmed yet',
    ],
    'before',
    true,
  ),
  ...stage(
    [
      'after the trim',
      'after trim',
      'after trimming',
      'post trim',
      'posttrim',
      'when the trim was done',
      'now trimmed',
      'trimmed up',
      'trimmed now',
      'having trimmed',
      'finished trim',
      ...combined(
        ['when', 'now', 'once'],
        ["he's", "she's", "it's", "i'm", "they're", 'he is', 'she is', 'he was', 'she was', 'i was'],
        ['done', 'finished', 'trimmed'],
      ),
      ...combined(['when', 'once'], ['done', 'finished', 'trimmed']),
    ],
    'after',
    true,
  ),
  ...stage(
    [
      'all trimmed',
      'all trimmed up',
      'all four trimmed',
      'all done',
      'all four done',
      'all finished',
      ...combined(
        ["he's", "she's", 'he is', 'she is'],
        ['done', 'finished', 'trimmed', 'all done', 'all finished'],
      ),
    ],
    'after',
    false,
    true,
  ),
  ...stage(['before', 'befores'], 'before', false),
  ...stage(['after', 'afters', 'afterwards', 'finished', 'done', 'trimmed', 'finish'], 'after', false),
]
