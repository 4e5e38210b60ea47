/** What was found on a foot: the words of those signs. */
import type { OwnerWordsOfCautions } from '../../caution-words.ts'
import { findingNamed } from '../findings.ts'
import { beforeWork, ringNow, tell, tellToday } from './phrases.ts'

const cleanAndDry = 'Halten Sie den Huf sauber und trocken'

export const found = {
  abscess: {
    name: () => 'Hufgeschwür',
    owner: () => `Im Huf ist ein Hufgeschwür. ${beforeWork}.`,
  },
  drainage: {
    name: () => 'Flüssigkeit aus dem Huf',
    owner: () => `Aus dem Huf kam Flüssigkeit. ${beforeWork}.`,
  },
  'fresh-blood-sole-toe': {
    name: () => 'frisches Blut',
    owner: () => `Im Huf war frisches Blut. ${cleanAndDry}. ${beforeWork}.`,
  },
  'fresh-blood-elsewhere': {
    name: () => 'frisches Blut',
    owner: () => `Am Huf war frisches Blut. ${cleanAndDry}. ${tell}.`,
  },
  puncture: {
    name: () => 'Einstich',
    owner: () =>
      `Etwas ist in den Huf eingedrungen. Lassen Sie es stecken, und halten Sie Ihr Pferd ruhig. ${ringNow}.`,
  },
  'puncture-elsewhere': {
    name: () => 'Stichwunde',
    owner: () => `Es gibt eine Stichwunde. Halten Sie sie sauber. ${tellToday}.`,
  },
  'nail-in-white-line-tender': {
    name: () => 'empfindlicher Nagel',
    owner: () => `An einem Nagelloch ist eine schmerzende Stelle. ${tell}.`,
  },
  'heat-with-lameness': {
    name: () => 'Wärme mit Lahmheit',
    owner: () => `Der Huf war heiß, und Ihr Pferd lahmte. ${beforeWork}.`,
  },
  'heat-with-pulse': {
    name: () => 'Wärme mit Puls',
    owner: () => `Der Huf war heiß und der Puls darüber stark. ${ringNow}.`,
  },
  'heat-severe': {
    name: () => 'starke Wärme',
    owner: () => `Der Huf war sehr heiß. ${beforeWork}.`,
  },
  heat: {
    name: () => 'Wärme',
    owner: () => `Der Huf war wärmer, als er sein soll. ${tell}, und fühlen Sie morgens und abends nach.`,
  },
  'coronet-depression': {
    name: () => 'Delle am Kronrand',
    owner: () => `Am Kronrand ist eine Delle zu fühlen. ${ringNow} und führen Sie Ihr Pferd nicht.`,
  },
  'sole-prolapse': {
    name: () => 'vorgewölbte Sohle',
    owner: () =>
      `Die Sohle wölbt sich nach unten. ${ringNow}, streuen Sie tief ein, und führen Sie Ihr Pferd nicht.`,
  },
  canker: {
    name: () => 'Hufkrebs',
    owner: () => `Am Huf wächst weiches, krankes Horn. ${tell}.`,
  },
  keratoma: {
    name: () => 'Hornsäule',
    owner: () => `In der Hufwand ist vielleicht ein Knoten. ${tell}.`,
  },
  'proud-flesh': {
    name: () => 'wildes Fleisch',
    owner: () => `Rohes Gewebe wächst heraus. ${tell}.`,
  },
  swelling: {
    name: () => 'Schwellung',
    owner: () => `Es gibt eine Schwellung. ${tell}.`,
  },
  growth: {
    name: () => 'unbekannte Wucherung',
    owner: () => `Dort wächst etwas, das wir nicht benennen können. ${tell}.`,
  },
  'separation-severe': {
    name: () => 'starke Wandtrennung',
    owner: () => `Die Hufwand hat sich stark gelöst. ${tell}. ${cleanAndDry}.`,
  },
  'white-line-severe': {
    name: () => 'stark gedehnte Weiße Linie',
    owner: () => `Die Naht zwischen Wand und Sohle ist stark gedehnt. ${tell}.`,
  },
  'white-line-disease-severe': {
    name: () => 'hohle Wand',
    owner: () => `Tief in der Hufwand bröckelt das Horn. ${tell}. ${cleanAndDry}.`,
  },
  'thrush-severe': {
    name: () => 'schwere Strahlfäule',
    owner: () => `Die Strahlfäule ist schlimm: Der Strahl ist weich und riecht. ${tell}.`,
  },
  'sulcus-split-deep': {
    name: () => 'tiefer Spalt im Strahl',
    owner: () => `Die mittlere Strahlfurche ist tief gespalten. ${tell}.`,
  },
  'bruise-severe': {
    name: () => 'schwere Prellung',
    owner: () => `Im Huf ist eine schlimme Prellung. ${tell}, und halten Sie Ihr Pferd auf weichem Boden.`,
  },
  'crack-severe': {
    name: () => 'schwerer Riss',
    owner: () => `Im Huf ist ein schlimmer Riss. ${tell}.`,
  },
  'crack-full-thickness': {
    name: () => 'tiefer Riss',
    owner: () => `Im Huf ist ein tiefer Riss. ${tell}.`,
  },
  'coronet-injury-severe': {
    name: () => 'Verletzung am Kronrand',
    owner: () => `Der Kronrand ist schwer verletzt. Halten Sie ihn sauber. ${tellToday}.`,
  },
  tenderness: {
    name: () => 'Druckschmerz',
    owner: () => `Der Huf tat bei Berührung weh. ${tell}.`,
  },
  'finding-worsening': {
    name: ({ finding }) => `Verschlechterung: ${findingNamed(finding)}`,
    owner: ({ finding, first, middle, grade }) =>
      `Über drei Besuche schlechter: ${findingNamed(finding)}, Grad ${first}, dann ${middle}, jetzt ${grade} von 3. ${tell}.`,
  },
  'tetanus-not-covered': {
    name: () => 'Tetanus',
    owner: ({ months }) =>
      `Es gibt eine Wunde, und wir wissen von keiner Tetanusimpfung in den letzten ${months} Monaten. Ist Ihre älter, oder sind Sie nicht sicher? Dann rufen Sie den Tierarzt.`,
  },
} satisfies Partial<OwnerWordsOfCautions>
