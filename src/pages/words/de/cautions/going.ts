/** How the horse goes and stands: the words of those signs. */
import type { OwnerWordsOfCautions } from '../../caution-words.ts'
import { maybeLaminitis, ringNow, tell, tellToday } from './phrases.ts'

export const going = {
  'lameness-severe': {
    name: () => 'starke Lahmheit',
    owner: ({ grade }) => `Ihr Pferd lahmte stark, ${grade} von 5. ${ringNow} und führen Sie es nicht.`,
  },
  'pulse-bounding': {
    name: () => 'pochender Puls',
    owner: () => `Der Puls über dem Huf pochte. ${ringNow}. ${maybeLaminitis}. Führen Sie Ihr Pferd nicht.`,
  },
  'pulse-pair': {
    name: () => 'Puls an beiden Hufen',
    owner: () =>
      `Der Puls war über beiden Hufen eines Paares stark. ${ringNow}. ${maybeLaminitis}. Führen Sie Ihr Pferd nicht.`,
  },
  'pulse-clear': {
    name: () => 'deutlicher Puls',
    owner: () => `Der Puls über dem Huf war stark. ${tellToday}, und fühlen Sie ihn morgens und abends.`,
  },
  obel: {
    name: () => 'Rehegrad nach Obel',
    owner: () =>
      'Ihr Tierarzt hat einen Grad von Hufrehe festgestellt. Tun Sie, was er gesagt hat. Ohne sein Wort arbeitet niemand an den Hufen.',
  },
  'unwilling-to-move': {
    name: () => 'will nicht gehen',
    owner: () => `Ihr Pferd wollte nicht gehen. ${ringNow} und zwingen Sie es nicht zum Gehen.`,
  },
  'leaning-back-sore': {
    name: () => 'lehnt sich zurück, mit Schmerz',
    owner: () =>
      `Ihr Pferd nahm das Gewicht nach hinten von den Hufen. ${ringNow}. ${maybeLaminitis}. Führen Sie es nicht.`,
  },
  'leaning-back': {
    name: () => 'lehnt sich zurück',
    owner: () => `Ihr Pferd nahm das Gewicht nach hinten von den Hufen. ${tellToday}.`,
  },
  'lameness-marked': {
    name: () => 'Lahmheit 3',
    owner: ({ grade }) =>
      `Ihr Pferd lahmte deutlich, ${grade} von 5. ${tellToday}. Solange es lahmt, bearbeiten wir nicht.`,
  },
  'lameness-moderate': {
    name: () => 'Lahmheit 2',
    owner: ({ grade }) => `Ihr Pferd lahmte, ${grade} von 5. ${tell}.`,
  },
  'lameness-rising': {
    name: () => 'zunehmende Lahmheit',
    owner: ({ before, grade }) => `Ihr Pferd lahmte mehr: erst ${before} von 5, jetzt ${grade}. ${tell}.`,
  },
  'hoof-testers': {
    name: () => 'Hufzange',
    owner: () => `Der Huf tat beim Drücken weh. ${tell}.`,
  },
} satisfies Partial<OwnerWordsOfCautions>
