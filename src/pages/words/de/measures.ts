/** Plain words for what is measured on a foot: for someone who has never seen an angle. Each thing is singular. */
import type { AnyMeasureId } from '../../../hoof/measures.ts'
import type { OwnerMeasure } from '../keys.ts'

const measure = (thing: string, more: string, less: string, meaning: string): OwnerMeasure => ({
  thing,
  more,
  less,
  meaning,
})

const heelMeaning = 'Trachten: die beiden hinteren Ecken des Hufs. Wir wollen sie gleich hoch.'
const sideMeaning = 'Seitenwand: die Hufwand zwischen Zehe und Trachte.'
const slopeMeaning = 'Steil oder flach: wie schräg die Hufwand steht, wie ein Dach.'
const frogMeaning = 'Strahl: der weiche Keil hinten in der Sohle. Ein breiter Strahl ist ein starker.'
const soleMeaning = 'Seitliche Strahlfurche: Je tiefer sie ist, desto mehr ist die Sohle gewölbt.'
const newMeaning = 'Neues Horn: der Teil der Hufwand, der seit der Besserung heruntergewachsen ist.'
const coronetMeaning = 'Kronrand: wo das Haar aufhört und der Huf anfängt.'

export const measures: Readonly<Record<AnyMeasureId, OwnerMeasure>> = {
  'toe-length': measure('die Zehe', 'länger', 'kürzer', 'Zehe: der Huf vorn, vom Haar bis zum Boden.'),
  'toe-angle': measure('die Hufwand vorn', 'steiler', 'flacher', slopeMeaning),
  'heel-balance': measure('der Höhenunterschied der Trachten', 'größer', 'kleiner', heelMeaning),
  'heel-tilt': measure('die Schräge der Trachten', 'größer', 'kleiner', heelMeaning),
  'heel-medial': measure('die innere Trachte', 'länger', 'kürzer', heelMeaning),
  'heel-lateral': measure('die äußere Trachte', 'länger', 'kürzer', heelMeaning),
  'heel-angle': measure('die Hufwand hinten', 'steiler', 'flacher', slopeMeaning),
  'heel-gap': measure(
    'der Unterschied der Schräge von vorn und hinten',
    'größer',
    'kleiner',
    'Vorn und hinten soll die Hufwand ähnlich schräg stehen. Flache Trachten tragen weniger.',
  ),
  breakover: measure(
    'der Zehenvorsprung',
    'länger',
    'kürzer',
    'Zehenvorsprung: wie weit vor dem Strahl der Huf abrollt, wenn das Pferd abfußt.',
  ),
  'frog-width': measure('der Strahl', 'breiter', 'schmaler', frogMeaning),
  'frog-length': measure('der Strahl', 'länger', 'kürzer', frogMeaning),
  'frog-ratio': measure('der Strahl für seine Länge', 'breiter', 'schmaler', frogMeaning),
  'sulcus-depth': measure(
    'die mittlere Strahlfurche',
    'tiefer',
    'flacher',
    'Mittlere Strahlfurche: die Rinne in der Mitte des Strahls. Ist sie tief und eng, sammelt sich Schmutz darin.',
  ),
  'white-line': measure(
    'die Weiße Linie',
    'breiter',
    'schmaler',
    'Weiße Linie: die Naht zwischen Hufwand und Sohle. Eine enge Naht ist eine starke.',
  ),
  'sole-depth': measure(
    'die Sohle',
    'dicker',
    'dünner',
    'Sohle: der Boden des Hufs. Wie dick sie ist, zeigt ein Röntgenbild von Ihrem Tierarzt.',
  ),
  'groove-apex': measure('die Furche neben der Strahlspitze', 'tiefer', 'flacher', soleMeaning),
  'groove-heel': measure('die Furche hinten neben dem Strahl', 'tiefer', 'flacher', soleMeaning),
  width: measure('der Huf', 'breiter', 'schmaler', 'Breite: wie breit der Huf am Boden ist.'),
  'bearing-length': measure(
    'der Huf von der Zehe bis zur Trachte',
    'länger',
    'kürzer',
    'Von der Zehe bis zur Trachte: wie lang der Huf am Boden ist.',
  ),
  'quarter-medial': measure('die innere Seitenwand', 'länger', 'kürzer', sideMeaning),
  'quarter-lateral': measure('die äußere Seitenwand', 'länger', 'kürzer', sideMeaning),
  'wall-thickness': measure(
    'die Hufwand an der Zehe',
    'dicker',
    'dünner',
    'Hufwand: das harte Horn, das Sie von außen sehen.',
  ),
  'new-angle': measure('das neue Horn', 'steiler', 'flacher', newMeaning),
  'new-length': measure('das neue Horn', 'länger', 'kürzer', newMeaning),
  'pastern-angle': measure(
    'die Fessel',
    'steiler',
    'flacher',
    'Fessel: der Teil des Beins gleich über dem Huf.',
  ),
  'coronet-angle': measure('der Kronrand', 'steiler', 'flacher', coronetMeaning),
  'axis-deviation': measure(
    'der Knick zwischen Fessel und Huf',
    'größer',
    'kleiner',
    'Fessel und Hufwand vorn sollen eine gerade Linie bilden.',
  ),
  'toe-to-heel-ratio': measure(
    'die Zehe für die Länge der Trachten',
    'länger',
    'kürzer',
    'Eine Zehe ist etwa doppelt so lang wie die Trachten.',
  ),
  'pair-mismatch': measure(
    'der Unterschied der Schräge zum anderen Huf des Paares',
    'größer',
    'kleiner',
    'Die beiden Hufe eines Paares müssen nicht gleich sein. Wir achten darauf, wie weit sie sich unterscheiden.',
  ),
  'toe-share': measure(
    'der Teil des Hufs vor dem Strahl',
    'größer',
    'kleiner',
    'Viel Huf vor dem Strahl heißt, dass die Zehe nach vorn gelaufen ist.',
  ),
  'load-index': measure(
    'die Last auf dem Huf für seine Größe',
    'größer',
    'kleiner',
    'Last: das Gewicht des Pferdes für die Größe seiner Hufe.',
  ),
  'coronet-girth': measure('der Umfang des Kronrands', 'größer', 'kleiner', coronetMeaning),
}
