/**
 * Wording of every caution, for each of its readers. Each sentence is made from facts and a formatter and stands by
 * itself; limits come with the facts. Plain words, no diagnosis.
 */
import type { WordsOfCautions } from '../caution-words.ts'

/** ` (toe)`; nothing where the place is the whole foot or stands in the finding's own name. */
const at = ({ place, finding = '' }: { readonly place: string; readonly finding?: string }): string =>
  place === 'whole foot' || finding.includes(place) ? '' : ` (${place})`

const ringNow = 'Ring your vet now'
const beforeWork = 'Ring your vet before anyone works on it'
const tell = 'Tell your vet'

export const cautions: WordsOfCautions = {
  'lameness-severe': {
    name: () => 'severe lameness',
    practice: ({ grade }) => `Lameness ${grade} of 5. Do not trim and do not make the horse walk.`,
    owner: ({ grade }) => `Your horse was very lame, ${grade} of 5. ${ringNow} and do not walk it.`,
    question: 'What makes this foot so lame, and may it be worked on?',
    portfolio: ({ grade }) => `lameness ${grade} of 5: a vet before any more work`,
  },
  'pulse-bounding': {
    name: () => 'bounding pulse',
    practice: ({ grade }) =>
      `Digital pulse ${grade}, bounding. This can be laminitis or an abscess. Do not trim, do not walk the horse.`,
    owner: () =>
      `The pulse above the hoof was pounding. ${ringNow}: this can be a sign of laminitis. Do not walk your horse.`,
    question: 'Is this laminitis, and what may be done to the feet now?',
    portfolio: () => 'bounding digital pulse: a vet at once, laminitis is an emergency',
  },
  'pulse-pair': {
    name: () => 'pulse in both feet',
    practice: ({ left, right }) =>
      `Digital pulse ${left} left and ${right} right. Laminitis is an emergency. Do not trim, do not walk the horse.`,
    owner: () =>
      `The pulse was strong above both hooves of a pair. ${ringNow}: this can be a sign of laminitis. Do not walk your horse.`,
    question: 'Is this laminitis, and what may be done to the feet now?',
    portfolio: ({ from }) =>
      `digital pulse ${from} or more in both feet of a pair: a vet at once, laminitis is an emergency`,
  },
  'pulse-clear': {
    name: () => 'clear pulse',
    practice: ({ grade }) => `Digital pulse ${grade}, clear, in one foot. Take it again before you leave.`,
    owner: () => `The pulse above the hoof was strong. ${tell} today, and feel it morning and evening.`,
    question: 'What makes the pulse clear in this foot alone?',
    portfolio: ({ grade }) => `digital pulse ${grade} in one foot: tell the vet`,
  },
  obel: {
    name: () => 'Obel grade',
    practice: ({ grade }) =>
      `Obel grade ${['0', 'I', 'II', 'III', 'IV'][grade] ?? grade}: laminitis, as the vet graded it. Do not trim but as the vet asks.`,
    owner: () =>
      'Your vet has graded laminitis. Do what your vet has asked; nobody works on the feet without it.',
    question: 'What may be done to the feet at this stage, and when?',
    portfolio: ({ grade }) => `Obel grade ${grade} by the vet: no work but as the vet asks`,
  },
  'unwilling-to-move': {
    name: () => 'unwilling to move',
    practice: ({ surfaces }) =>
      `The horse has become unwilling to move (${surfaces}). Do not make it walk, and do not trim.`,
    owner: () => `Your horse did not want to walk. ${ringNow} and do not make it move.`,
    question: 'Why is the horse unwilling to move?',
    portfolio: () => 'newly unwilling to move: a vet before any more work',
  },
  'leaning-back-sore': {
    name: () => 'leaning back, sore',
    practice: ({ with: other }) =>
      `The horse leans back off its feet, with ${other === 'pulse' ? 'a clear digital pulse' : 'heat in a foot'}. This can be laminitis. Do not trim, do not walk the horse.`,
    owner: () =>
      `Your horse leaned back off its feet. ${ringNow}: this can be a sign of laminitis. Do not walk it.`,
    question: 'Is this laminitis, and what may be done to the feet now?',
    portfolio: ({ with: other }) => `leaning back with ${other}: a vet at once, laminitis is an emergency`,
  },
  'leaning-back': {
    name: () => 'leaning back',
    practice: () => 'The horse leans back off its feet. Look for pulse and heat before any work.',
    owner: () => `Your horse leaned back off its feet. ${tell} today.`,
    question: 'Why does the horse take weight off these feet?',
    portfolio: () => 'leaning back: tell the vet',
  },
  'lameness-marked': {
    name: () => 'lameness 3',
    practice: ({ grade }) => `Lameness ${grade} of 5. No trim is planned while it stands.`,
    owner: ({ grade }) =>
      `Your horse was clearly lame, ${grade} of 5. ${tell} today; we do not trim while it lasts.`,
    question: 'What is the cause of the lameness, and may this foot be trimmed?',
    portfolio: ({ grade }) => `lameness ${grade} of 5: tell the vet, no trim until then`,
  },
  'lameness-moderate': {
    name: () => 'lameness 2',
    practice: ({ grade }) => `Lameness ${grade} of 5. Do not trim for a cause that nobody has found.`,
    owner: ({ grade }) => `Your horse was lame, ${grade} of 5. ${tell}.`,
    question: 'What is the cause of the lameness?',
    portfolio: ({ grade }) => `lameness ${grade} of 5: tell the vet`,
  },
  'lameness-rising': {
    name: () => 'lameness rising',
    practice: ({ before, grade }) => `Lameness has risen from ${before} to ${grade} of 5.`,
    owner: ({ before, grade }) =>
      `Your horse was more lame than before: ${before} of 5 then, ${grade} now. ${tell}.`,
    question: 'Why is the lameness rising?',
    portfolio: ({ before, grade }) => `lameness up from ${before} to ${grade}: tell the vet`,
  },
  'hoof-testers': {
    name: () => 'hoof testers',
    practice: (facts) =>
      `Pulls the foot away from the hoof testers${at(facts)}. Do not pare to look for the cause.`,
    owner: () => `The foot hurt when it was pressed. ${tell}.`,
    question: 'What lies under the spot that the hoof testers found?',
    portfolio: ({ grade }) => `hoof testers ${grade} of 3: tell the vet`,
  },

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

  'vet-diagnosis': {
    name: () => 'diagnosis',
    practice: ({ named }) =>
      `The vet's diagnosis names ${named}. No trim but as the vet asks, until a visit says cleared with the vet's day.`,
    owner: () => 'Your vet has found something that comes first. We work on the feet only as your vet asks.',
    question: 'What may be done to the feet, and from when?',
    portfolio: ({ named }) => `a vet's diagnosis of ${named}: work only as the vet asks`,
  },
  'vet-diagnosis-past': {
    name: () => 'earlier diagnosis',
    practice: ({ named }) =>
      `The vet's diagnosis names ${named}, it seems as past. If the vet has cleared it, a visit can say so: cleared, with the vet's day.`,
    owner: () =>
      'Your vet once found something in the feet. Please tell us whether your vet has closed the matter.',
    question: 'Is the earlier diagnosis closed?',
    portfolio: ({ named }) => `a vet's earlier diagnosis of ${named}: ask whether it is closed`,
  },
  'condition-low': {
    name: () => 'very thin',
    practice: ({ grade }) => `Body condition ${grade} of 9: the horse is very thin.`,
    owner: ({ grade }) => `Your horse is very thin, ${grade} of 9. ${tell}.`,
    question: 'Why is the horse so thin?',
    portfolio: ({ limit }) => `body condition ${limit} or less: tell the vet`,
  },
  'condition-very-high': {
    name: () => 'far too heavy',
    practice: ({ grade }) => `Body condition ${grade} of 9: the risk of laminitis is raised.`,
    owner: ({ grade }) =>
      `Your horse is far too heavy, ${grade} of 9. Talk to your vet about feed and laminitis.`,
    question: 'Should the horse be tested for a metabolic cause?',
    portfolio: ({ limit }) => `body condition ${limit} or more: tell the vet`,
  },
  'crest-high': {
    name: () => 'high crest',
    practice: ({ grade, limit }) => `Crest ${grade} of 5: from ${limit} on the risk of laminitis is raised.`,
    owner: () =>
      'Your horse has a thick, hard neck crest. That makes laminitis more likely. Talk to your vet about feed and weight.',
    question: 'Should the horse be tested for a metabolic cause?',
    portfolio: ({ limit }) => `crest ${limit} or more: tell the vet, the risk of laminitis is raised`,
  },
  'weight-loss': {
    name: () => 'weight loss',
    practice: ({ before, now, days, percent }, f) =>
      `Weight fell from ${f.weight(before)} to ${f.weight(now)} in ${f.span(days)}, more than ${percent} % a month.`,
    owner: ({ before, now, days }, f) =>
      `Your horse has lost weight fast: ${f.weight(before)} to ${f.weight(now)} in ${f.span(days)}. ${tell}.`,
    question: 'Why does the horse lose weight?',
    portfolio: ({ percent }) => `weight loss beyond ${percent} % a month: tell the vet`,
  },
  'condition-high': {
    name: () => 'too heavy',
    practice: ({ grade }) => `Body condition ${grade} of 9: the feet carry more than they should.`,
    owner: () =>
      'Your horse carries too much weight. Its feet will thank you for less. Ask your vet how to go about it.',
    question: 'Can the horse lose weight safely, and how?',
    portfolio: ({ limit }) => `body condition ${limit} or more`,
  },
  'visit-overdue': {
    name: () => 'overdue visit',
    practice: ({ due, days }, f) => `The visit planned for ${f.date(due)} is overdue by ${f.span(days)}.`,
    owner: () => 'The next visit is overdue. Please get in touch.',
    question: 'Who has trimmed the horse since the visit that was missed?',
    portfolio: () => 'past the planned visit',
  },

  'sole-depth-critical': {
    name: () => 'very thin sole',
    practice: ({ depth, limit }, f) =>
      `Sole depth ${f.length(depth)} on the radiograph, under ${f.length(limit)}. Take nothing off this foot.`,
    owner: () => `The sole is very thin. Talk to your vet before any more trimming, and bed your horse deep.`,
    question: 'How much sole is there, and what load can it bear?',
    portfolio: ({ limit }, f) => `sole under ${f.length(limit)}: a vet before any more work`,
  },
  'sole-depth-low': {
    name: () => 'thin sole',
    practice: ({ depth, limit }, f) =>
      `Sole depth ${f.length(depth)} on the radiograph, under ${f.length(limit)}. Take no sole off.`,
    owner: () => `The sole is thin. ${tell}. Keep your horse on soft ground.`,
    question: 'How much sole is there, and what load can it bear?',
    portfolio: ({ limit }, f) => `sole under ${f.length(limit)}: tell the vet`,
  },
  'sole-depth-falling': {
    name: () => 'sole getting thinner',
    practice: ({ before, depth, limit }, f) =>
      `Sole depth fell from ${f.length(before)} to ${f.length(depth)} on the radiographs, by ${f.length(limit)} or more. Take no sole off.`,
    owner: ({ before, depth }, f) =>
      `The sole got thinner: ${f.length(before)} before, ${f.length(depth)} now. ${tell}.`,
    question: 'Why does the sole get thinner?',
    portfolio: ({ limit }, f) => `sole thinner by ${f.length(limit)} or more: tell the vet`,
  },
  'sole-flat': {
    name: () => 'sole flat',
    practice: () => 'The sole is flat. Never thin it, and lower the wall in stages.',
    owner: () => 'The sole is flat. Choose soft or smooth ground, and take care on stones.',
    question: 'Is there a radiograph that shows the sole depth?',
    portfolio: () => 'flat sole: never thin it, lower in stages',
  },
  'sole-thin': {
    name: () => 'sole thin',
    practice: ({ by, depth }, f) => {
      const why =
        by === 'sole depth' && depth !== null
          ? `The sole is ${f.length(depth)} deep on the radiograph, which is thin.`
          : by === 'groove apex'
            ? 'The groove beside the frog tip has no depth, which goes with a thin sole.'
            : 'The sole is thin.'
      return `${why} Never thin it, and lower the wall in stages.`
    },
    owner: () => 'The sole is thin. Choose soft or smooth ground, and keep off stones.',
    question: 'Is there a radiograph that shows the sole depth?',
    portfolio: () => 'thin sole: never thin it, lower in stages',
  },
  'toe-shortened-much': {
    name: () => 'toe much shortened',
    practice: ({ step, limit }, f) =>
      `The toe was shortened by ${f.length(-step)} at one trim, more than ${f.length(limit)}.`,
    owner: ({ step }, f) =>
      `A lot of toe came off at the last trim, ${f.length(-step)}. Your horse may be careful on stones for some days.`,
    question: 'Has the foot been sore since so much toe came off?',
    portfolio: ({ limit }, f) => `toe shortened by more than ${f.length(limit)} at one trim`,
  },
  'heels-lowered-much': {
    name: () => 'heels much lowered',
    practice: ({ measure, step, limit }, f) =>
      `The ${measure === 'heel-medial' ? 'inner' : 'outer'} heel was lowered by ${f.length(-step)} at one trim, more than ${f.length(limit)}.`,
    owner: ({ step }, f) =>
      `The heels came down a lot at the last trim, ${f.length(-step)}. Go easy for some days.`,
    question: 'Has the horse gone differently since the heels came down?',
    portfolio: ({ limit }, f) => `heels lowered by more than ${f.length(limit)} at one trim`,
  },
  'toe-angle-changed-much': {
    name: () => 'toe angle much changed',
    practice: ({ step, limit }, f) =>
      `The toe angle changed by ${f.change('toe-angle', step)} at one trim, more than ${f.angle(limit)}.`,
    owner: () => 'The slope of the hoof changed a lot at the last trim. Go easy for some days.',
    question: 'Has the horse gone differently since the angle changed?',
    portfolio: ({ limit }, f) => `toe angle changed by more than ${f.angle(limit)} at one trim`,
  },
  'pair-uneven-after-trim': {
    name: () => 'uneven pair',
    practice: ({ left, right, limit }, f) =>
      `After the trim the pair stands at ${f.angle(left)} left and ${f.angle(right)} right, more than ${f.angle(limit)} apart.`,
    owner: () => 'The two feet of one pair still differ after the trim. We keep an eye on it.',
    question: 'Is there a cause higher up the limb for the uneven pair?',
    portfolio: ({ limit }, f) => `more than ${f.angle(limit)} between the pair after the trim`,
  },
}
