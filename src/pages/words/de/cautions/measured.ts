/** What the readings say: the words of those signs. */
import type { OwnerWordsOfCautions } from '../../caution-words.ts'
import { tell } from './phrases.ts'

const goEasy = 'Lassen Sie es einige Tage ruhig angehen'

export const measured = {
  'sole-depth-critical': {
    name: () => 'sehr dünne Sohle',
    owner: () =>
      'Die Sohle ist sehr dünn. Sprechen Sie vor jeder weiteren Bearbeitung mit Ihrem Tierarzt, und streuen Sie tief ein.',
  },
  'sole-depth-low': {
    name: () => 'dünne Sohle',
    owner: () => `Die Sohle ist dünn. ${tell}. Halten Sie Ihr Pferd auf weichem Boden.`,
  },
  'sole-depth-falling': {
    name: () => 'Sohle wird dünner',
    owner: ({ before, depth }, f) =>
      `Die Sohle ist dünner geworden: erst ${f.length(before)}, jetzt ${f.length(depth)}. ${tell}.`,
  },
  'sole-flat': {
    name: () => 'flache Sohle',
    owner: () => 'Die Sohle ist flach. Gut ist weicher oder glatter Boden. Vorsicht auf Steinen.',
  },
  'sole-thin': {
    name: () => 'dünne Sohle',
    owner: () => 'Die Sohle ist dünn. Gut ist weicher oder glatter Boden. Meiden Sie Steine.',
  },
  'toe-shortened-much': {
    name: () => 'Zehe stark gekürzt',
    owner: ({ step }, f) =>
      `Bei der letzten Bearbeitung kam viel Zehe ab, ${f.length(-step)}. Ihr Pferd geht auf Steinen vielleicht einige Tage vorsichtig.`,
  },
  'heels-lowered-much': {
    name: () => 'Trachten stark gekürzt',
    owner: ({ step }, f) =>
      `Bei der letzten Bearbeitung wurden die Trachten viel kürzer, ${f.length(-step)}. ${goEasy}.`,
  },
  'toe-angle-changed-much': {
    name: () => 'Zehenwinkel stark verändert',
    owner: () => `Bei der letzten Bearbeitung hat sich die Stellung des Hufs stark verändert. ${goEasy}.`,
  },
  'pair-uneven-after-trim': {
    name: () => 'ungleiches Paar',
    owner: () =>
      'Die beiden Hufe eines Paares sind auch nach der Bearbeitung noch verschieden. Wir behalten das im Auge.',
  },
} satisfies Partial<OwnerWordsOfCautions>
