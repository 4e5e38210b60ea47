import type { Founded } from './marks.ts'

export interface Scale {
  readonly name: string
  readonly founded: Founded
  readonly levels: readonly { readonly level: string; readonly meaning: string }[]
}

const levels = (pairs: readonly (readonly [string, string])[]) =>
  pairs.map(([level, meaning]) => ({ level, meaning }))

/** The scales that a visit may use. The meanings are our own words. */
export const scales = {
  lameness: {
    name: 'Lameness, 0 to 5',
    founded: { mark: 'published', source: 'aaep' },
    levels: levels([
      ['0', 'no lameness can be seen in any circumstance'],
      ['1', 'hard to see and comes and goes, whatever the horse does'],
      [
        '2',
        'hard to see at walk or straight trot, there every time in some circumstance such as a circle or hard ground',
      ],
      ['3', 'seen every time at trot'],
      ['4', 'plain at walk: a nod, a hitch or a short stride'],
      ['5', 'hardly bears weight, moving or standing, or cannot move'],
    ]),
  },
  obel: {
    name: 'Obel grade of laminitis, 0 to IV, a vet only',
    founded: { mark: 'published', source: 'obel' },
    levels: levels([
      ['0', 'none'],
      ['I', 'shifts its weight from foot to foot; short steps at trot, none seen at walk'],
      ['II', 'walks willingly but stiffly; a foot can still be lifted'],
      ['III', 'moves unwillingly and resists having a foot lifted'],
      ['IV', 'moves only when forced'],
    ]),
  },
  condition: {
    name: 'Body condition, 1 to 9',
    founded: { mark: 'published', source: 'henneke' },
    levels: levels([
      ['1', 'emaciated: no fat can be felt, bones stand out'],
      ['2', 'very thin'],
      ['3', 'thin: ribs easily seen'],
      ['4', 'moderately thin: a faint outline of ribs'],
      ['5', 'moderate: ribs felt easily, not seen'],
      ['6', 'moderately fleshy: fat over the ribs feels spongy'],
      ['7', 'fleshy: ribs felt with pressure, fat along the neck'],
      ['8', 'fat: ribs hard to feel, neck thick'],
      ['9', 'extremely fat: bulging fat, a furrow down the back'],
    ]),
  },
  crest: {
    name: 'Crest of the neck, 0 to 5',
    founded: { mark: 'published', source: 'carter', note: '3 or more raises the risk of laminitis' },
    levels: levels([
      ['0', 'no crest seen or felt'],
      ['1', 'no crest seen, slight filling felt'],
      ['2', 'crest seen, fat spread evenly, can be cupped and bent'],
      ['3', 'crest thick and stands up, fills the hand, begins to lose its bend'],
      ['4', 'crest large, cannot be cupped, may wrinkle'],
      ['5', 'crest so large that it hangs to one side'],
    ]),
  },
  'digital pulse': {
    name: 'Digital pulse, 0 to 3',
    founded: { mark: 'common practice' },
    levels: levels([
      ['0', 'none felt'],
      ['1', 'faint'],
      ['2', 'clear'],
      ['3', 'bounding'],
    ]),
  },
  landing: {
    name: 'Landing',
    founded: { mark: 'common practice' },
    levels: levels([
      ['heel', 'the heel meets the ground first'],
      ['flat', 'heel and toe meet the ground together'],
      ['toe', 'the toe meets the ground first'],
      ['medial', 'the inner side meets the ground first'],
      ['lateral', 'the outer side meets the ground first'],
    ]),
  },
  'hoof testers': {
    name: 'Hoof testers, 0 to 3',
    founded: { mark: 'common practice' },
    levels: levels([
      ['0', 'no reaction'],
      ['1', 'a slight reaction'],
      ['2', 'a clear reaction, each time'],
      ['3', 'pulls the foot away'],
    ]),
  },
  stance: {
    name: 'Stance',
    founded: { mark: 'common practice' },
    levels: levels([
      ['straight', 'the foot points forward, under the shoulder or hip'],
      ['toe-out', 'the toe points outward'],
      ['toe-in', 'the toe points inward'],
      ['base narrow', 'the feet of the pair stand closer together than the limbs begin'],
      ['base wide', 'the feet of the pair stand further apart than the limbs begin'],
      ['camped under', 'the foot stands under the body'],
      ['camped out', 'the foot stands out in front or behind'],
      ['leaning back', 'the weight is taken back off the foot, as a sore horse does'],
      ['pointing', 'the foot is set forward with little weight on it'],
      ['resting', 'the foot is rested'],
      ['other', 'none of these: say what in words'],
    ]),
  },
  surfaces: {
    name: 'Comfort on a surface',
    founded: { mark: 'common practice' },
    levels: levels([
      ['easy', 'strides out as on soft ground'],
      ['short', 'shortens its stride'],
      ['careful', 'picks its way'],
      ['unwilling', 'will not go willingly'],
    ]),
  },
  grade: {
    name: 'Grade of a finding, 0 to 3',
    founded: { mark: 'common practice' },
    levels: levels([
      ['0', 'resolved'],
      ['1', 'mild'],
      ['2', 'moderate'],
      ['3', 'severe'],
    ]),
  },
} as const satisfies Record<string, Scale>

export type ScaleName = keyof typeof scales
