/** How the horse goes and stands: the words of those signs. */
import type { WordsOfCautions } from '../../caution-words.ts'
import { at, ringNow, tell } from './phrases.ts'

export const going = {
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
    practice: ({ grade }) => `Lameness ${grade} of 5. No trim is planned until it is better.`,
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
} satisfies Partial<WordsOfCautions>
