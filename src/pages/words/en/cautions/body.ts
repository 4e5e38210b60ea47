/** The vet's word, the body and the calendar: the words of those signs. */
import type { WordsOfCautions } from '../../caution-words.ts'
import { tell } from './phrases.ts'

export const body = {
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
    owner: ({ grade }, f) => `Your horse is very thin, ${f.grade(grade)} of 9. ${tell}.`,
    question: 'Why is the horse so thin?',
    portfolio: ({ limit }) => `body condition ${limit} or less: tell the vet`,
  },
  'condition-very-high': {
    name: () => 'far too heavy',
    practice: ({ grade }) => `Body condition ${grade} of 9: the risk of laminitis is raised.`,
    owner: ({ grade }, f) =>
      `Your horse is far too heavy, ${f.grade(grade)} of 9. Talk to your vet about feed and laminitis.`,
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
} satisfies Partial<WordsOfCautions>
