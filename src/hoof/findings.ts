/** Words for `what` in a finding and what each means, in one line for a lay reader. */
export const findingMeanings = {
  flare: 'the wall bends outward instead of running straight',
  'wall separation': 'the wall has come away from the tissue beneath',
  'white line stretched': 'the line between wall and sole is wider than it should be',
  crack: 'a split in the wall',
  chip: 'a piece of wall has broken away',
  ring: 'a ridge round the wall, left by a change months ago',
  dish: 'the front of the wall curves inward',
  bruise: 'a stain of old bleeding in the horn',
  'nail hole': 'a hole left by a shoe nail',
  'nail in white line': 'a nail or its hole lies in the line between wall and sole',
  'old abscess': 'the track or mark of an abscess that has passed',
  thrush: 'foul, soft horn in the frog or its grooves',
  'sulcus split': 'a split in the middle groove of the frog',
  'contracted heels': 'the heels stand too close together',
  'underrun heels': 'the heels run forward under the foot',
  'sheared heels': 'one heel is pushed up higher than the other',
  'bar laid over': 'the bar has folded onto the sole',
  'flat sole': 'the sole has lost its hollow',
  'false sole': 'old sole that has not been shed lies over the new',
  'thin sole': 'less sole than protects the foot',
  'twisted frog': 'the frog does not lie straight',
  'overgrown frog': 'more frog than wears away',
  'ragged frog': 'loose flaps of frog',
  scar: 'old healed tissue',
  'coronet injury': 'a wound or old wound at the hairline',
  swelling: 'a part is thicker than it should be',
  heat: 'a part is warmer than it should be',
  drainage: 'fluid comes from the foot',
  tenderness: 'the horse reacts to pressure',
  'proud tissue': 'tissue that has grown out beyond the skin or horn',
  puncture: 'something has gone into the foot',
} as const

export type FindingName = keyof typeof findingMeanings

/** Other words for the same finding, as people write them. */
export const findingAliases: Readonly<Record<string, FindingName>> = {
  separation: 'wall separation',
  'stretched white line': 'white line stretched',
  abscess: 'old abscess',
  nail: 'puncture',
  'proud flesh': 'proud tissue',
}

export const places = [
  'toe',
  'medial toe',
  'lateral toe',
  'medial quarter',
  'lateral quarter',
  'medial heel',
  'lateral heel',
  'sole',
  'frog',
  'central sulcus',
  'medial groove',
  'lateral groove',
  'medial bar',
  'lateral bar',
  'bars',
  'white line',
  'coronet',
  'heel bulbs',
  'pastern',
  'whole foot',
] as const
export type Place = (typeof places)[number]

/** Which stretch of wall a place belongs to, for wall length and growth; null where there is no wall. */
export function wallOf(place: string): 'toe' | 'quarter' | 'heel' | null {
  if (place === 'toe' || place.endsWith(' toe')) return 'toe'
  if (place.endsWith(' quarter')) return 'quarter'
  if (place.endsWith(' heel')) return 'heel'
  return null
}

export const grades = ['resolved', 'mild', 'moderate', 'severe'] as const
