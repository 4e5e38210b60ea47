/** Plain words for what is measured and found on a foot: for someone who has never seen an angle. */
import { type FindingName, findingMeanings } from '../../../hoof/findings.ts'
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import type { OwnerFinding, OwnerMeasure } from '../keys.ts'

const measure = (thing: string, more: string, less: string, meaning: string): OwnerMeasure => ({
  thing,
  more,
  less,
  meaning,
})

const heelMeaning = 'Heels: the two back corners of the hoof. We want them the same height.'
const sideMeaning = 'Sides: the wall of the hoof between toe and heel.'
const slopeMeaning = 'Steep or flat: how the wall of the hoof leans, like the slope of a roof.'
const frogMeaning = 'Frog: the soft wedge at the back of the sole. A wide frog is a strong one.'
const soleMeaning = 'Groove beside the frog: the deeper it is, the more hollow the sole.'
const newMeaning = 'New growth: the part of the wall that has grown down since the change for the better.'

export const ownerMeasures: Readonly<Record<AnyMeasureId, OwnerMeasure>> = {
  'toe-length': measure(
    'the toe',
    'longer',
    'shorter',
    'Toe: the front of the hoof, from the hair down to the ground.',
  ),
  'toe-angle': measure('the front of the hoof', 'steeper', 'flatter', slopeMeaning),
  'heel-balance': measure('the gap in height between the heels', 'bigger', 'smaller', heelMeaning),
  'heel-tilt': measure('the tilt of the heels', 'bigger', 'smaller', heelMeaning),
  'heel-medial': measure('the inner heel', 'longer', 'shorter', heelMeaning),
  'heel-lateral': measure('the outer heel', 'longer', 'shorter', heelMeaning),
  'heel-angle': measure('the back of the hoof', 'steeper', 'flatter', slopeMeaning),
  'heel-gap': measure(
    'the gap in slope between front and back',
    'bigger',
    'smaller',
    'Front and back of a hoof should lean much alike. Heels that lie flat give less support.',
  ),
  breakover: measure(
    'the reach of the toe ahead of the frog',
    'longer',
    'shorter',
    'Reach of the toe: how far ahead of the frog the hoof tips over as the horse steps off.',
  ),
  'frog-width': measure('the frog', 'wider', 'narrower', frogMeaning),
  'frog-length': measure('the frog', 'longer', 'shorter', frogMeaning),
  'frog-ratio': measure('the frog for its length', 'wider', 'narrower', frogMeaning),
  'sulcus-depth': measure(
    'the middle groove of the frog',
    'deeper',
    'shallower',
    'Middle groove: the dip down the middle of the frog. When it is deep and narrow, dirt sits in it.',
  ),
  'white-line': measure(
    'the white line',
    'wider',
    'narrower',
    'White line: the seam that joins the hoof wall to the sole. A tight seam is a strong one.',
  ),
  'sole-depth': measure(
    'the sole',
    'thicker',
    'thinner',
    'Sole: the floor of the hoof. How thick it is, an X-ray by your vet shows.',
  ),
  'groove-apex': measure('the groove beside the tip of the frog', 'deeper', 'shallower', soleMeaning),
  'groove-heel': measure('the groove beside the back of the frog', 'deeper', 'shallower', soleMeaning),
  width: measure('the hoof', 'wider', 'narrower', 'Width: how wide the hoof is where it meets the ground.'),
  'bearing-length': measure(
    'the hoof from toe to heel',
    'longer',
    'shorter',
    'From toe to heel: how long the hoof is where it meets the ground.',
  ),
  'quarter-medial': measure('the inner side of the wall', 'longer', 'shorter', sideMeaning),
  'quarter-lateral': measure('the outer side of the wall', 'longer', 'shorter', sideMeaning),
  'wall-thickness': measure(
    'the wall at the toe',
    'thicker',
    'thinner',
    'Wall: the hard horn that you see from outside.',
  ),
  'new-angle': measure('the new growth', 'steeper', 'flatter', newMeaning),
  'new-length': measure('the new growth', 'longer', 'shorter', newMeaning),
  'pastern-angle': measure(
    'the pastern',
    'steeper',
    'flatter',
    'Pastern: the part of the leg just above the hoof.',
  ),
  'coronet-angle': measure(
    'the hairline',
    'steeper',
    'flatter',
    'Hairline: where hair ends and hoof begins.',
  ),
  'axis-deviation': measure(
    'the bend between pastern and hoof',
    'bigger',
    'smaller',
    'Pastern and front of the hoof should form one straight line.',
  ),
  'toe-to-heel-ratio': measure(
    'the toe for the length of the heels',
    'longer',
    'shorter',
    'A toe is about twice as long as the heels.',
  ),
  'pair-mismatch': measure(
    'the gap in slope to the other foot of the pair',
    'bigger',
    'smaller',
    'The two feet of a pair need not be the same. We watch how far they differ.',
  ),
  'toe-share': measure(
    'the share of the hoof ahead of the frog',
    'bigger',
    'smaller',
    'Much hoof ahead of the frog means a toe that has run forward.',
  ),
  'load-index': measure(
    'the load on the foot for its size',
    'bigger',
    'smaller',
    'Load: the weight of the horse for the size of its feet.',
  ),
  'coronet-girth': measure(
    'the way round the hairline',
    'longer',
    'shorter',
    'Hairline: where hair ends and hoof begins.',
  ),
}

/** As case files name them. */
export const ownerFindings = Object.fromEntries(
  Object.entries(findingMeanings).map(([name, meaning]) => [name, { name, meaning }]),
) as Readonly<Record<FindingName, OwnerFinding>>

const sore = 'If your horse is sore on that foot, ring your vet.'
const gritty = 'Keep it clean. If it gets deeper, smells or crumbles, ring us.'

/** What to look for where one of these was found, and what to do then. */
export const lookFor: Readonly<Record<FindingName, string>> = {
  flare: 'Look whether the wall bends out more or chips. If it does, ring us.',
  'wall separation': `Pick out grit and stones each day. ${gritty}`,
  'white line stretched':
    'Pick out grit from the seam. If your horse gets sore or the feet get warm, ring your vet.',
  crack: 'Look whether it gets longer or opens as your horse walks. If it bleeds or is sore, ring your vet.',
  chip: 'Look for sharp edges and for more wall breaking away. If you see either, ring us.',
  ring: 'Look whether a new ring comes at the hairline. If one does, ring us.',
  dish: 'Nothing for you to do. We follow it as it grows down.',
  bruise: `Keep off stones. ${sore}`,
  'nail hole': gritty,
  'nail in white line': `Feel for heat there each day. ${sore}`,
  abscess: 'Feel for heat each day. If your horse is more lame, ring your vet at once.',
  'old abscess': 'Look where it opened. If your horse is lame or fluid comes, ring your vet at once.',
  thrush:
    'Smell the frog and look for black, soft horn each time you pick out the foot. If it is sore to press, ring your vet.',
  canker: 'Look whether it spreads or bleeds. If it does, ring your vet.',
  'white-line disease': `Keep it dry. ${gritty}`,
  keratoma: `Look whether the wall bulges there. ${sore}`,
  'sulcus split':
    'Look into the middle groove each day and keep it dry. If it bleeds, smells or is sore, ring your vet.',
  'contracted heels': 'Look whether your horse steps short. If it does, ring us.',
  'underrun heels': 'Look whether your horse trips or steps short. If it does, ring us.',
  'sheared heels': 'Watch from behind how the foot lands. If your horse goes lame, ring your vet.',
  'bar laid over': `Pick out stones beside the frog. ${sore}`,
  'flat sole': 'Keep off stones. If your horse steps short on hard ground, ring us.',
  'sole prolapse': 'Do not walk your horse. Ring your vet at once if you have not done so.',
  'false sole': 'Leave it alone. It comes away by itself. If your horse is sore, ring us.',
  'thin sole': 'Keep off stones. If your horse steps short or lies down a lot, ring your vet.',
  'twisted frog': 'Look whether dirt sits on one side of the frog. If it smells there, ring us.',
  'overgrown frog': 'Look for flaps with dirt beneath. Do not cut them. If it smells there, ring us.',
  'ragged frog': 'Look for dirt under loose flaps. Do not cut them. If it smells there, ring us.',
  scar: 'Look whether the skin opens. If it does, ring your vet.',
  'coronet injury': 'Look whether it is wet, swollen or bleeds. If it is, ring your vet.',
  'coronet depression': 'Do not walk your horse. Ring your vet at once if you have not done so.',
  'fresh blood': 'If it bleeds again, ring your vet at once.',
  growth: 'Look whether it gets bigger or bleeds. If it does, ring your vet.',
  swelling: 'Feel whether it gets bigger or hot. If it does, ring your vet.',
  heat: 'Feel the hoof morning and evening. If it is hot and your horse is sore, ring your vet at once.',
  drainage: 'If fluid comes again or your horse is lame, ring your vet at once.',
  tenderness: 'Watch how your horse walks. If it gets more sore or lame, ring your vet.',
  'proud tissue': 'Look whether it gets bigger or bleeds. If it does, ring your vet.',
  puncture: 'If your horse is lame or the foot gets hot, ring your vet at once.',
}

/** The same for a finding that only this practice has a name for. */
export const lookForOwnTerm = 'If it gets worse or your horse is sore there, ring us.'

/** Where laminitis was ever suspected or found. */
export const lookForLaminitis =
  'Feel the pulse above the hooves morning and evening. If it pounds, or your horse leans back or will not walk, ring your vet at once.'
