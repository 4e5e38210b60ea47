import type { OwnerWords } from '../catalogue.ts'

/** Words that stand inside charts and drawings. */
export const figures: OwnerWords['figures'] = {
  trend: {
    after: 'nach der Bearbeitung gemessen',
    before: 'bei der Ankunft gemessen',
    unused: 'Messwert, auf dem die Linie nicht beruht',
    sawTooth: 'Wachstum zwischen den Besuchen, Sprung bei der Bearbeitung',
    line: 'angepasste Linie',
    interval: '95-%-Bereich der Linie',
    band: 'Zielbereich',
    forecast: 'Vorhersage mit ihrer Spanne',
  },
  grades: ['weg', 'leicht', 'mittel', 'schwer'],
  notRecorded: 'nicht notiert',
  inner: 'innen',
  outer: 'außen',
  wall: { now: 'jetzt', ahead: 'bei den nächsten Besuchen erwartet' },
}
