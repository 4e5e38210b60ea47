/** What to look for where one of these was found, and what to do then. */
import type { FindingName } from '../../../hoof/findings.ts'

const sore = 'Tut dieser Huf weh, rufen Sie den Tierarzt.'
const gritty = 'Halten Sie es sauber. Wird es tiefer, riecht oder bröckelt es, rufen Sie uns an.'

export const lookFor: Readonly<Record<FindingName, string>> = {
  flare: 'Biegt sie sich weiter aus oder bricht sie aus, rufen Sie uns an.',
  'wall separation': `Kratzen Sie jeden Tag Sand und Steine aus. ${gritty}`,
  'white line stretched':
    'Kratzen Sie Sand aus der Naht. Wird Ihr Pferd fühlig oder werden die Hufe warm, rufen Sie den Tierarzt.',
  crack:
    'Sehen Sie nach, ob er länger wird oder sich beim Gehen öffnet. Blutet er oder tut er weh, rufen Sie den Tierarzt.',
  chip: 'Achten Sie auf scharfe Kanten. Bricht mehr aus, rufen Sie uns an.',
  ring: 'Achten Sie auf einen neuen Ring am Kronrand. Kommt einer, rufen Sie uns an.',
  dish: 'Für Sie ist nichts zu tun. Wir sehen zu, wie es herunterwächst.',
  bruise: `Meiden Sie Steine. ${sore}`,
  'nail hole': gritty,
  'nail in white line': `Fühlen Sie dort jeden Tag nach Wärme. ${sore}`,
  abscess: 'Fühlen Sie jeden Tag nach Wärme. Lahmt Ihr Pferd mehr, rufen Sie sofort den Tierarzt.',
  'old abscess':
    'Sehen Sie nach, wo es aufgegangen ist. Lahmt Ihr Pferd oder kommt Flüssigkeit, rufen Sie sofort den Tierarzt.',
  thrush:
    'Riechen Sie bei jedem Auskratzen am Strahl, und achten Sie auf schwarzes, weiches Horn. Tut Drücken weh, rufen Sie den Tierarzt.',
  canker: 'Breitet er sich aus oder blutet er, rufen Sie den Tierarzt.',
  'white-line disease': `Halten Sie es trocken. ${gritty}`,
  keratoma: `Sehen Sie nach, ob die Wand sich dort vorwölbt. ${sore}`,
  'sulcus split':
    'Sehen Sie jeden Tag in die mittlere Strahlfurche, und halten Sie sie trocken. Blutet sie, riecht sie oder tut sie weh, rufen Sie den Tierarzt.',
  'contracted heels': 'Achten Sie auf den Gang. Tritt Ihr Pferd kurz, rufen Sie uns an.',
  'underrun heels': 'Achten Sie auf den Gang. Stolpert Ihr Pferd oder tritt es kurz, rufen Sie uns an.',
  'sheared heels': 'Sehen Sie von hinten, wie der Huf auffußt. Lahmt Ihr Pferd, rufen Sie den Tierarzt.',
  'bar laid over': `Kratzen Sie Steine neben dem Strahl aus. ${sore}`,
  'flat sole': 'Meiden Sie Steine. Tritt Ihr Pferd auf hartem Boden kurz, rufen Sie uns an.',
  'sole prolapse':
    'Führen Sie Ihr Pferd nicht. Rufen Sie sofort den Tierarzt, wenn Sie es noch nicht getan haben.',
  'false sole': 'Lassen Sie sie in Ruhe. Sie löst sich von selbst. Ist Ihr Pferd fühlig, rufen Sie uns an.',
  'thin sole': 'Meiden Sie Steine. Tritt Ihr Pferd kurz oder liegt es viel, rufen Sie den Tierarzt.',
  'twisted frog':
    'Sehen Sie nach, ob auf einer Seite des Strahls Schmutz sitzt. Riecht es dort, rufen Sie uns an.',
  'overgrown frog':
    'Achten Sie auf Lappen mit Schmutz darunter. Schneiden Sie nichts ab. Riecht es dort, rufen Sie uns an.',
  'ragged frog':
    'Achten Sie auf Schmutz unter losen Lappen. Schneiden Sie nichts ab. Riecht es dort, rufen Sie uns an.',
  scar: 'Geht die Haut auf, rufen Sie den Tierarzt.',
  'coronet injury': 'Nässt sie, schwillt sie an oder blutet sie, rufen Sie den Tierarzt.',
  'coronet depression':
    'Führen Sie Ihr Pferd nicht. Rufen Sie sofort den Tierarzt, wenn Sie es noch nicht getan haben.',
  'fresh blood': 'Blutet es wieder, rufen Sie sofort den Tierarzt.',
  growth: 'Wird sie größer oder blutet sie, rufen Sie den Tierarzt.',
  swelling: 'Wird sie größer oder heiß, rufen Sie den Tierarzt.',
  heat: 'Fühlen Sie den Huf morgens und abends. Ist er heiß und tut er weh, rufen Sie sofort den Tierarzt.',
  drainage: 'Kommt wieder Flüssigkeit oder lahmt Ihr Pferd, rufen Sie sofort den Tierarzt.',
  tenderness: 'Achten Sie darauf, wie Ihr Pferd geht. Wird es fühliger oder lahm, rufen Sie den Tierarzt.',
  'proud tissue': 'Wird es größer oder blutet es, rufen Sie den Tierarzt.',
  puncture: 'Lahmt Ihr Pferd oder wird der Huf heiß, rufen Sie sofort den Tierarzt.',
}

/** The same for a finding that only this practice has a name for. */
export const lookForOwnTerm = 'Wird es schlimmer oder tut es Ihrem Pferd dort weh, rufen Sie uns an.'

/** Where laminitis was ever suspected or found. */
export const lookForLaminitis =
  'Fühlen Sie morgens und abends den Puls über den Hufen. Pocht er, lehnt Ihr Pferd sich zurück oder will es nicht gehen, rufen Sie sofort den Tierarzt.'
