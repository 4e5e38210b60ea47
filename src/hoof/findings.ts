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
  abscess: 'pus under pressure inside the hoof, now',
  'old abscess': 'the track or mark of an abscess that has passed',
  thrush: 'foul, soft horn in the frog or its grooves',
  canker: 'soft, moist growth of diseased frog or sole that bleeds easily',
  'white-line disease': 'horn of the inner wall crumbles from the white line up, also called seedy toe',
  keratoma: 'a lump of horn that grows inside the wall and presses on what lies beneath',
  'sulcus split': 'a split in the middle groove of the frog',
  'contracted heels': 'the heels stand too close together',
  'underrun heels': 'the heels run forward under the foot',
  'sheared heels': 'one heel is pushed up higher than the other',
  'bar laid over': 'the bar has folded onto the sole',
  'flat sole': 'the sole has lost its hollow',
  'sole prolapse': 'the sole bulges or has broken through in front of the frog',
  'false sole': 'old sole that has not been shed lies over the new',
  'thin sole': 'less sole than protects the foot',
  'twisted frog': 'the frog does not lie straight',
  'overgrown frog': 'more frog than wears away',
  'ragged frog': 'loose flaps of frog',
  scar: 'old healed tissue',
  'coronet injury': 'a wound or old wound at the hairline',
  'coronet depression': 'a dip or ledge that can be felt along the hairline',
  'fresh blood': 'blood that is new, in the horn or coming from it',
  growth: 'something new grows there, and its kind is not known',
  swelling: 'a part is thicker than it should be',
  heat: 'a part is warmer than it should be',
  drainage: 'fluid comes from the foot',
  tenderness: 'the horse reacts to pressure',
  'proud tissue': 'tissue that has grown out beyond the skin or horn',
  puncture: 'something has gone into the foot',
} as const

export type FindingName = keyof typeof findingMeanings

/** Whether it is a finding that everyone knows by this name; a practice has names of its own besides. */
export const isFindingName = (what: string): what is FindingName => Object.hasOwn(findingMeanings, what)

/** Other words for the same finding, as people write them. */
export const findingAliases: Readonly<Record<string, FindingName>> = {
  separation: 'wall separation',
  'stretched white line': 'white line stretched',
  'hoof abscess': 'abscess',
  'foot abscess': 'abscess',
  'seedy toe': 'white-line disease',
  nail: 'puncture',
  'proud flesh': 'proud tissue',
  'prolapsed sole': 'sole prolapse',
  'coronary depression': 'coronet depression',
  'coronet dip': 'coronet depression',
  bleeding: 'fresh blood',
  blood: 'fresh blood',
  pus: 'drainage',
  discharge: 'drainage',
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

/** The ground side of the foot, where what goes in may reach what lies above. */
export const groundSide: ReadonlySet<string> = new Set<Place>([
  'sole',
  'frog',
  'central sulcus',
  'medial groove',
  'lateral groove',
  'medial bar',
  'lateral bar',
  'bars',
  'white line',
  'whole foot',
])

/** Findings that cannot wait for a place: written without one they concern the whole foot. */
export const placeless: ReadonlySet<string> = new Set<FindingName>([
  'abscess',
  'drainage',
  'fresh blood',
  'puncture',
  'heat',
  'coronet depression',
  'sole prolapse',
])

/** Which stretch of wall a place belongs to, for wall length and growth; null where there is no wall. */
export function wallOf(place: string): 'toe' | 'quarter' | 'heel' | null {
  if (place === 'toe' || place.endsWith(' toe')) return 'toe'
  if (place.endsWith(' quarter')) return 'quarter'
  if (place.endsWith(' heel')) return 'heel'
  return null
}

export const grades = ['resolved', 'mild', 'moderate', 'severe'] as const
