/** The vet's word, the body and the calendar: the words of those signs. */
import type { OwnerWordsOfCautions } from '../../caution-words.ts'
import { tell } from './phrases.ts'

export const body = {
  'vet-diagnosis': {
    name: () => 'Diagnose',
    owner: () =>
      'Ihr Tierarzt hat etwas gefunden, das vorgeht. Wir arbeiten an den Hufen nur so, wie Ihr Tierarzt es will.',
  },
  'vet-diagnosis-past': {
    name: () => 'frühere Diagnose',
    owner: () =>
      'Ihr Tierarzt hat früher etwas an den Hufen gefunden. Bitte sagen Sie uns, ob er die Sache abgeschlossen hat.',
  },
  'condition-low': {
    name: () => 'sehr mager',
    owner: ({ grade }, f) => `Ihr Pferd ist sehr mager, ${f.grade(grade)} von 9. ${tell}.`,
  },
  'condition-very-high': {
    name: () => 'viel zu dick',
    owner: ({ grade }, f) =>
      `Ihr Pferd ist viel zu dick, ${f.grade(grade)} von 9. Sprechen Sie mit Ihrem Tierarzt über Futter und Hufrehe.`,
  },
  'crest-high': {
    name: () => 'dicker Mähnenkamm',
    owner: () =>
      'Ihr Pferd hat einen dicken, harten Mähnenkamm. Damit wird Hufrehe wahrscheinlicher. Sprechen Sie mit Ihrem Tierarzt über Futter und Gewicht.',
  },
  'weight-loss': {
    name: () => 'Gewichtsverlust',
    owner: ({ before, now, days }, f) =>
      `Ihr Pferd hat schnell abgenommen: erst ${f.weight(before)}, jetzt ${f.weight(now)}. Dazwischen liegen nur ${f.span(days)}. ${tell}.`,
  },
  'condition-high': {
    name: () => 'zu dick',
    owner: () =>
      'Ihr Pferd trägt zu viel Gewicht. Weniger tut seinen Hufen gut. Fragen Sie Ihren Tierarzt, wie es abnehmen kann.',
  },
  'visit-overdue': {
    name: () => 'überfälliger Besuch',
    owner: () => 'Er ist überfällig. Bitte melden Sie sich.',
  },
} satisfies Partial<OwnerWordsOfCautions>
