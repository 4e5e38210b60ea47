/** What was found on a foot: the words of those signs. */
import type { WordsOfCautions } from '../../caution-words.ts'
import { at, beforeWork, ringNow, tell } from './phrases.ts'

export const found = {
  abscess: {
    name: () => 'abscess',
    practice: (facts) => `An abscess${at(facts)}. Do not dig and do not trim this foot.`,
    owner: () => `There is an abscess in the foot. ${beforeWork}.`,
    question: 'Is the abscess open and draining, and when may the foot be trimmed?',
    portfolio: (facts) => `abscess${at(facts)}: a vet before any more work`,
  },
  drainage: {
    name: () => 'drainage',
    practice: (facts) => `Fluid comes from the foot${at(facts)}. Do not plug it and do not trim this foot.`,
    owner: () => `Fluid came from the foot. ${beforeWork}.`,
    question: 'Where does the fluid come from, and when may the foot be trimmed?',
    portfolio: (facts) => `fluid from the foot${at(facts)}: a vet before any more work`,
  },
  'fresh-blood-sole-toe': {
    name: () => 'fresh blood',
    practice: (facts) => `Fresh blood${at(facts)}, where the bone lies nearest. Take nothing more off.`,
    owner: () => `There was fresh blood in the foot. Keep it clean and dry. ${beforeWork}.`,
    question: 'Where does the blood come from, and how thin is the horn there?',
    portfolio: (facts) => `fresh blood${at(facts)}: a vet before any more work`,
  },
  'fresh-blood-elsewhere': {
    name: () => 'fresh blood',
    practice: (facts) => `Fresh blood${at(facts)}. Take nothing more off there, and keep it clean.`,
    owner: () => `There was fresh blood on the foot. Keep it clean and dry. ${tell}.`,
    question: 'Does the bleeding need treatment?',
    portfolio: (facts) => `fresh blood${at(facts)}: tell the vet`,
  },
  puncture: {
    name: () => 'puncture',
    practice: (facts) =>
      `A nail or puncture${at(facts)}. Leave it where it is, do not walk the horse, and ring the vet at once.`,
    owner: () => `Something has gone into the foot. Leave it in, keep your horse still. ${ringNow}.`,
    question: 'Which structures were reached?',
    portfolio: (facts) => `a nail or puncture${at(facts)}: leave it in, do not walk the horse, a vet at once`,
  },
  'puncture-elsewhere': {
    name: () => 'puncture',
    practice: (facts) => `A puncture${at(facts)}. Do not probe it, and do not close it.`,
    owner: () => `There is a puncture. Keep it clean. ${tell} today.`,
    question: 'How deep does the puncture go?',
    portfolio: (facts) => `a puncture${at(facts)}: tell the vet`,
  },
  'nail-in-white-line-tender': {
    name: () => 'tender nail',
    practice: (facts) =>
      `A nail or its hole lies in the white line${at(facts)}, and the foot is tender. Do not open it up.`,
    owner: () => `There is a sore spot at a nail hole. ${tell}.`,
    question: 'Is the sensitive tissue reached at the nail?',
    portfolio: () => 'nail in the white line with tenderness: tell the vet',
  },
  'heat-with-lameness': {
    name: () => 'heat with lameness',
    practice: (facts) =>
      `Heat${at(facts)} together with lameness ${facts.lameness} of 5. Do not trim this foot.`,
    owner: () => `The foot was hot and your horse was lame. ${beforeWork}.`,
    question: 'What causes heat and lameness in this foot?',
    portfolio: () => 'heat with lameness: a vet before any more work',
  },
  'heat-with-pulse': {
    name: () => 'heat with pulse',
    practice: (facts) =>
      `Heat${at(facts)} together with digital pulse ${facts.pulse}. Do not trim this foot.`,
    owner: () => `The foot was hot and the pulse above it strong. ${ringNow}.`,
    question: 'What causes heat and pulse in this foot?',
    portfolio: () => 'heat with a clear digital pulse: a vet before any more work',
  },
  'heat-severe': {
    name: () => 'severe heat',
    practice: (facts) => `Severe heat${at(facts)}. Do not trim this foot.`,
    owner: () => `The foot was very hot. ${beforeWork}.`,
    question: 'What causes the heat in this foot?',
    portfolio: () => 'severe heat: a vet before any more work',
  },
  heat: {
    name: () => 'heat',
    practice: (facts) => `Heat${at(facts)}. Feel the pulse and compare with the other foot.`,
    owner: () => `The foot was warmer than it should be. ${tell}, and feel it morning and evening.`,
    question: 'What causes the heat in this foot?',
    portfolio: () => 'heat: tell the vet',
  },
  'coronet-depression': {
    name: () => 'coronet depression',
    practice: () =>
      'A dip can be felt along the coronet. The bone may have moved. Do not trim, do not walk the horse.',
    owner: () => `There is a dip along the hairline of the hoof. ${ringNow} and do not walk your horse.`,
    question: 'Has the bone moved within the hoof?',
    portfolio: () => 'coronet depression: a vet before any more work',
  },
  'sole-prolapse': {
    name: () => 'sole prolapse',
    practice: () => 'The sole bulges or has broken through. Leave it alone, do not walk the horse.',
    owner: () => `The sole bulges downward. ${ringNow}, bed your horse deep and do not walk it.`,
    question: 'How far has the bone sunk, and what may carry weight now?',
    portfolio: () => 'sole prolapse: a vet before any more work',
  },
  canker: {
    name: () => 'canker',
    practice: (facts) => `What looks like canker${at(facts)}. It needs treatment, not a trim alone.`,
    owner: () => `Soft, diseased horn is growing on the foot. ${tell}.`,
    question: 'Is this canker, and who treats it how?',
    portfolio: () => 'canker: tell the vet',
  },
  keratoma: {
    name: () => 'keratoma',
    practice: (facts) => `What looks like a keratoma${at(facts)}. Do not cut it out.`,
    owner: () => `There may be a lump inside the hoof wall. ${tell}.`,
    question: 'Is this a keratoma, and does it need a radiograph?',
    portfolio: () => 'keratoma: tell the vet',
  },
  'proud-flesh': {
    name: () => 'proud tissue',
    practice: (facts) => `Proud tissue${at(facts)}. Do not cut it back.`,
    owner: () => `Raw tissue is growing out. ${tell}.`,
    question: 'What is the new tissue, and how should it be treated?',
    portfolio: () => 'proud tissue: tell the vet',
  },
  swelling: {
    name: () => 'swelling',
    practice: (facts) => `Swelling${at(facts)}. Feel for heat and pulse.`,
    owner: () => `There is swelling. ${tell}.`,
    question: 'What is the swelling?',
    portfolio: () => 'swelling: tell the vet',
  },
  growth: {
    name: () => 'growth',
    practice: (facts) => `A growth of unknown kind${at(facts)}. Do not cut it.`,
    owner: () => `Something is growing there that we cannot name. ${tell}.`,
    question: 'What is the growth?',
    portfolio: () => 'a growth of unknown kind: tell the vet',
  },
  'separation-severe': {
    name: () => 'severe separation',
    practice: (facts) =>
      `Severe wall separation${at(facts)}. Do not dig after it; what is dead shows as it grows down.`,
    owner: () => `The hoof wall has come away badly. ${tell}. Keep the foot clean and dry.`,
    question: 'Is the separation infected, and does it need opening?',
    portfolio: (facts) => `severe wall separation${at(facts)}: tell the vet`,
  },
  'white-line-severe': {
    name: () => 'stretched white line',
    practice: (facts) =>
      `Severely stretched white line${at(facts)}. Ask after feed and laminitis; do not leave the toe long.`,
    owner: () => `The seam between wall and sole is badly stretched. ${tell}.`,
    question: 'Is there a metabolic cause for the stretched white line?',
    portfolio: (facts) => `severely stretched white line${at(facts)}: tell the vet`,
  },
  'white-line-disease-severe': {
    name: () => 'white-line disease',
    practice: (facts) =>
      `Severe white-line disease${at(facts)}. How far it reaches must be known before more is opened.`,
    owner: () => `The horn crumbles deep inside the wall. ${tell}. Keep the foot clean and dry.`,
    question: 'How far up does the white-line disease reach, and who opens it?',
    portfolio: (facts) => `severe white-line disease${at(facts)}: tell the vet`,
  },
  'thrush-severe': {
    name: () => 'severe thrush',
    practice: (facts) => `Severe thrush${at(facts)}. Do not cut into live tissue.`,
    owner: () => `The thrush is bad: the frog is soft and smells. ${tell}.`,
    question: 'How should the frog be treated?',
    portfolio: (facts) => `severe thrush${at(facts)}: tell the vet`,
  },
  'sulcus-split-deep': {
    name: () => 'deep sulcus split',
    practice: (facts) => `A deep split of the central sulcus${at(facts)}. Do not pull it open.`,
    owner: () => `The groove in the frog has split deep. ${tell}.`,
    question: 'How deep does the split go, and how should it be treated?',
    portfolio: () => 'central sulcus split deep: tell the vet',
  },
  'bruise-severe': {
    name: () => 'severe bruise',
    practice: (facts) => `A severe bruise${at(facts)}. Take no sole off it.`,
    owner: () => `There is a bad bruise in the foot. ${tell}, and keep your horse on soft ground.`,
    question: 'What lies under the bruise?',
    portfolio: (facts) => `severe bruise${at(facts)}: tell the vet`,
  },
  'crack-severe': {
    name: () => 'severe crack',
    practice: (facts) =>
      `A severe crack${at(facts)}. Take the load off it, and look whether it bleeds or moves.`,
    owner: () => `There is a bad crack in the hoof. ${tell}.`,
    question: 'Does the crack need opening or bracing?',
    portfolio: (facts) => `severe crack${at(facts)}: tell the vet`,
  },
  'crack-full-thickness': {
    name: () => 'deep crack',
    practice: (facts) =>
      `A crack${at(facts)} goes through the wall, bleeds or moves. Do not open it further.`,
    owner: () => `There is a deep crack in the hoof. ${tell}.`,
    question: 'Does the crack need opening or bracing?',
    portfolio: () => 'crack through the whole wall, or one that bleeds or moves: tell the vet',
  },
  'coronet-injury-severe': {
    name: () => 'coronet injury',
    practice: (facts) =>
      `A severe injury of the coronet${at(facts)}. Horn grows from there; keep it clean and leave it.`,
    owner: () => `The hairline of the hoof is badly injured. Keep it clean. ${tell} today.`,
    question: 'How deep is the injury, and will the wall grow whole?',
    portfolio: () => 'severe coronet injury: tell the vet',
  },
  tenderness: {
    name: () => 'tenderness',
    practice: (facts) =>
      `Tenderness${at(facts)}, grade ${facts.grade} of 3${facts.with === null ? '' : facts.with === 'heat' ? ', with heat' : ', with a clear pulse'}. Do not pare to look for the cause.`,
    owner: () => `The foot was sore to the touch. ${tell}.`,
    question: 'What makes the foot tender?',
    portfolio: ({ with: other }) =>
      `tenderness${other === null ? ', severe' : ` with ${other}`}: tell the vet`,
  },
  'finding-worsening': {
    name: ({ finding }) => `${finding} worsening`,
    practice: (facts) =>
      `Worse over three visits: ${facts.finding}${at(facts)}, grade ${facts.first}, then ${facts.middle}, now ${facts.grade}.`,
    owner: ({ finding, first, middle, grade }) =>
      `Something has got worse over three visits: ${finding}, grade ${first}, then ${middle}, now ${grade} of 3. ${tell}.`,
    question: 'Why does this finding worsen?',
    portfolio: ({ finding, first, middle, grade }) =>
      `${finding} worse over three visits, grade ${first}, ${middle}, ${grade}: tell the vet`,
  },
  'tetanus-not-covered': {
    name: () => 'tetanus',
    practice: ({ finding, months }) =>
      `${finding.charAt(0).toUpperCase()}${finding.slice(1)}, and no tetanus vaccination within ${months} months is on record. Ask the owner.`,
    owner: ({ months }) =>
      `There is a wound, and we know of no tetanus vaccination in the last ${months} months. If yours is older or you are not sure, ring your vet.`,
    question: 'Is the horse covered against tetanus?',
    portfolio: ({ months }) => `a wound and no tetanus vaccination within ${months} months on record: ask`,
  },
} satisfies Partial<WordsOfCautions>
