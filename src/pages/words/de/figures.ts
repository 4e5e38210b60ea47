import type { OwnerWords } from '../catalogue.ts'

/** Words that stand inside charts and drawings. */
export const figures: OwnerWords['figures'] = {
  trend: {
    after: 'nach der Bearbeitung',
    before: 'bei der Ankunft',
    leftOut: 'weggelassen: kein Messfehler erklärt es',
  },
  target: (band) => `Ziel ${band}`,
  agreement: {
    explained: 'ein Paar von Messwerten',
    unexplained: 'weiter auseinander, als beide Fehler erklären',
  },
  grades: ['weg', 'leicht', 'mittel', 'schwer'],
  notRecorded: 'nicht notiert',
  inner: 'innen',
  outer: 'außen',
  unread: (measures) => `Nach üblichen Maßen gezeichnet, da nicht gemessen: ${measures}.`,
  narrowedFrog: 'Der Strahl ist schmaler gezeichnet als gemessen, damit er zwischen die Trachten passt.',
  ahead: (dates) => `gestrichelt: ${dates}`,
}
