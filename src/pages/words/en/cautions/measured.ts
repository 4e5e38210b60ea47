/** What the readings say: the words of those signs. */
import type { WordsOfCautions } from '../../caution-words.ts'
import { tell } from './phrases.ts'

export const measured = {
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
      `After the trim the toe angles of the pair were ${f.angle(left)} left and ${f.angle(right)} right, more than ${f.angle(limit)} apart.`,
    owner: () => 'The two feet of one pair still differ after the trim. We keep an eye on it.',
    question: 'Is there a cause higher up the limb for the uneven pair?',
    portfolio: ({ limit }, f) => `more than ${f.angle(limit)} between the pair after the trim`,
  },
} satisfies Partial<WordsOfCautions>
