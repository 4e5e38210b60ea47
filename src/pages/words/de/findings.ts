/** What is found on a foot: its name, and what it is for someone who has never picked one out. */
import { type FindingName, isFindingName } from '../../../hoof/findings.ts'
import type { OwnerFinding } from '../keys.ts'

const finding = (name: string, meaning: string): OwnerFinding => ({ name, meaning })

export const findings: Readonly<Record<FindingName, OwnerFinding>> = {
  flare: finding('ausgebogene Wand', 'Die Hufwand biegt sich nach außen, statt gerade zu laufen'),
  'wall separation': finding('Wandtrennung', 'Die Hufwand hat sich vom Gewebe darunter gelöst'),
  'white line stretched': finding(
    'gedehnte Weiße Linie',
    'Die Linie zwischen Hufwand und Sohle ist breiter, als sie sein soll',
  ),
  crack: finding('Riss', 'ein Spalt in der Hufwand'),
  chip: finding('Ausbruch', 'Von der Hufwand ist ein Stück abgebrochen'),
  ring: finding('Ring', 'eine Rille oder ein Wulst rund um die Hufwand, von einer Veränderung vor Monaten'),
  dish: finding('eingebogene Wand', 'Die Hufwand biegt sich vorn nach innen'),
  bruise: finding('Prellung', 'ein Fleck von einer alten Blutung im Horn'),
  'nail hole': finding('Nagelloch', 'ein Loch von einem Hufnagel'),
  'nail in white line': finding(
    'Nagel in der Weißen Linie',
    'Ein Nagel oder sein Loch liegt in der Linie zwischen Hufwand und Sohle',
  ),
  abscess: finding('Hufgeschwür', 'Eiter unter Druck im Huf, jetzt'),
  'old abscess': finding('altes Hufgeschwür', 'Gang oder Spur eines Hufgeschwürs, das vorbei ist'),
  thrush: finding('Strahlfäule', 'fauliges, weiches Horn am Strahl oder in seinen Furchen'),
  canker: finding('Hufkrebs', 'weiche, feuchte Wucherung an Strahl oder Sohle, die leicht blutet'),
  'white-line disease': finding(
    'hohle Wand',
    'Das Horn der inneren Hufwand bröckelt, von der Weißen Linie nach oben',
  ),
  keratoma: finding('Hornsäule', 'ein Hornknoten, der in der Hufwand wächst und nach innen drückt'),
  'sulcus split': finding('Strahlspalt', 'ein Spalt in der mittleren Furche des Strahls'),
  'contracted heels': finding('Zwanghuf', 'Die Trachten stehen zu eng beieinander'),
  'underrun heels': finding('untergeschobene Trachten', 'Die Trachten laufen nach vorn unter den Huf'),
  'sheared heels': finding('verschobene Trachten', 'Eine Trachte ist höher geschoben als die andere'),
  'bar laid over': finding('umgelegte Eckstrebe', 'Die Eckstrebe hat sich auf die Sohle gelegt'),
  'flat sole': finding('flache Sohle', 'Die Sohle hat ihre Wölbung verloren'),
  'sole prolapse': finding(
    'vorgewölbte Sohle',
    'Die Sohle wölbt sich vor oder ist vor dem Strahl durchbrochen',
  ),
  'false sole': finding('tote Sohle', 'Alte Sohle, die nicht abgefallen ist, liegt über der neuen'),
  'thin sole': finding('dünne Sohle', 'weniger Sohle, als den Huf schützt'),
  'twisted frog': finding('schiefer Strahl', 'Der Strahl liegt nicht gerade'),
  'overgrown frog': finding('zu großer Strahl', 'mehr Strahl, als sich abnutzt'),
  'ragged frog': finding('zerklüfteter Strahl', 'lose Lappen am Strahl'),
  scar: finding('Narbe', 'altes, verheiltes Gewebe'),
  'coronet injury': finding(
    'Verletzung am Kronrand',
    'eine frische oder alte Wunde, wo Haar und Huf sich treffen',
  ),
  'coronet depression': finding('Delle am Kronrand', 'eine Delle oder Stufe, die am Kronrand zu fühlen ist'),
  'fresh blood': finding('frisches Blut', 'neues Blut im Horn oder aus dem Horn'),
  growth: finding('Wucherung', 'Etwas Neues wächst dort, und niemand weiß noch, was es ist'),
  swelling: finding('Schwellung', 'Ein Teil ist dicker, als er sein soll'),
  heat: finding('Wärme', 'Ein Teil ist wärmer, als er sein soll'),
  drainage: finding('Flüssigkeit aus dem Huf', 'Aus dem Huf kommt Flüssigkeit'),
  tenderness: finding('Druckschmerz', 'Das Pferd reagiert auf Druck'),
  'proud tissue': finding('wildes Fleisch', 'Gewebe, das über Haut oder Horn hinausgewachsen ist'),
  puncture: finding('Einstich', 'Etwas ist in den Huf eingedrungen'),
}

/** The name of a finding; one of the practice's own stays as it was written. */
export const findingNamed = (what: string): string => (isFindingName(what) ? findings[what].name : what)
