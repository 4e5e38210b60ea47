/**
 * Wording of the owner's page: as a trimmer writes to the owner of a horse. Short sentences, everyday words,
 * and a trade word only with its meaning beside it.
 */
import type { OwnerWords } from '../catalogue.ts'
import { findings } from './findings.ts'
import { lookFor, lookForLaminitis, lookForOwnTerm } from './look-for.ts'
import { measures } from './measures.ts'

const cap = (text: string) => text.slice(0, 1).toUpperCase() + text.slice(1)
const range = (earliest: string | null, latest: string | null) =>
  (earliest === null ? '' : `, frühestens im ${earliest}`) +
  (latest === null ? '' : `, spätestens im ${latest}`)

export const owner: OwnerWords['owner'] = {
  measures,
  findings,
  lookFor,
  lookForOwnTerm,
  lookForLaminitis,
  title: (practice) => `Ihre Pferde, von ${practice}`,
  forOwner: (name) => `Für ${name}`,
  skip: 'Zum Inhalt',
  horsesHead: 'Ihre Pferde',
  seen: (visits, first, last) =>
    visits === 1
      ? `Einmal gesehen, am ${last}.`
      : `Seit dem ${first} ${visits}-mal gesehen. Zuletzt am ${last}.`,
  notSeen: 'Noch nicht gesehen.',

  feetHead: 'Wie es den Hufen geht',
  moods: { bad: 'Schlechter:', good: 'Besser:', moving: 'Verändert:' },
  allFeet: 'Alle Hufe zusammen',
  moved: (thing, amount, way, since) => `${cap(thing)} ist etwa ${amount} ${way} als ${since}`,
  movedLittle: (thing, way, since) => `${cap(thing)} ist ein wenig ${way} als ${since}`,
  movedTo: {
    'on target': ' und damit so, wie wir es wollen',
    'near target': ' und damit fast so, wie wir es wollen',
  },
  lastRead: (date) => ` (zuletzt gemessen am ${date})`,
  sentence: (parts) => `${parts}.`,
  sinceMonth: (month) => `im ${month}`,
  sinceDay: (date) => `am ${date}`,
  foundMoved: (what, from, when, to) => `${cap(what)}: ${when} ${from}, jetzt ${to}.`,
  foundMovedBefore: (what, from, when, to, date) =>
    `${cap(what)}: ${when} ${from}, am ${date} ${to}; da haben wir zuletzt nachgesehen.`,
  foundNew: (what, grade) => `${cap(what)}: neu, ${grade}.`,
  foundNewBefore: (what, grade, date) =>
    `${cap(what)}: neu am ${date}, ${grade}; da haben wir zuletzt nachgesehen.`,
  nothingElse: 'Sonst hat sich nichts deutlich verändert.',
  nothing: 'Nichts hat sich deutlich verändert.',
  moreMoved: 'Es hat sich noch mehr verändert. Alles steht weiter unten bei den Zahlen.',
  nothingYet: 'Bis jetzt gibt es einen Besuch. Nach den nächsten können wir sagen, was sich verändert.',

  lookForHead: (name) => `Bei ${name} zu beachten`,
  foundAt: (what, at, advice) => `${what} (${at}). ${advice}`,
  at: (foot, grade) => `${foot}, ${grade}`,
  atBefore: (foot, grade, date) => `${foot}, am ${date} ${grade}`,
  between: '; ',
  lookForNone: 'Nichts Besonderes.',
  grades: ['weg', 'leicht', 'mittel', 'schwer'],
  places: {
    toe: 'an der Zehe',
    'medial toe': 'an der Zehe innen',
    'lateral toe': 'an der Zehe außen',
    'medial quarter': 'an der Innenseite',
    'lateral quarter': 'an der Außenseite',
    'medial heel': 'an der inneren Trachte',
    'lateral heel': 'an der äußeren Trachte',
    sole: 'in der Sohle',
    frog: 'am Strahl',
    'central sulcus': 'in der mittleren Strahlfurche',
    'medial groove': 'in der inneren Strahlfurche',
    'lateral groove': 'in der äußeren Strahlfurche',
    'medial bar': 'an der inneren Eckstrebe, der Falte neben dem Strahl',
    'lateral bar': 'an der äußeren Eckstrebe, der Falte neben dem Strahl',
    bars: 'an den Eckstreben, den Falten neben dem Strahl',
    'white line': 'in der Weißen Linie, der Naht zwischen Wand und Sohle',
    coronet: 'am Kronrand',
    'heel bulbs': 'an den weichen Ballen',
    pastern: 'an der Fessel, über dem Huf',
    'whole foot': '',
  },

  numbersHead: 'Zahlen, Daten und Pläne',
  numbersCaption: (foot) => `${cap(foot)}: einzelne Messwerte`,
  numbersHeads: ['', 'Erster bis letzter Wert', 'Stand'],
  numbersRow: (thing, stage) => `${cap(thing)}, ${stage}`,
  numbersRead: (value, date) => `${value}, ${date}`,
  numbersFromTo: (first, latest) => `${first} bis ${latest}`,
  measuring:
    'Wer denselben Huf zweimal misst, bekommt zwei etwas verschiedene Zahlen. Darum gehen wir nach allen Messungen zusammen, nie nach der ersten und der letzten allein.',
  standings: {
    'on target': 'wie gewünscht',
    held: 'wartet auf Ihren Tierarzt',
    improving: 'wird besser',
    worsening: 'wird schlechter',
    steady: 'bleibt gleich',
    rising: 'steigt',
    falling: 'sinkt',
    'not worsening': 'wird nicht schlechter',
    'not improving': 'noch nicht besser',
    'too early to tell': 'noch zu früh',
  },
  recordHead: 'Noch vermerkt',
  foundHead: 'Was wir gefunden haben, Besuch für Besuch',
  foundOver: (what, grades) => `${cap(what)}: ${grades}.`,
  foundThen: (grade, date) => `${grade} am ${date}`,
  goesHead: 'Wie es weitergeht',
  expected: (thing, foot, date, earliest, latest) =>
    `${cap(foot)}: ${cap(thing)} sollte etwa im ${date} so sein, wie wir es wollen${range(earliest, latest)}.`,
  wasExpected: (thing, foot, date) =>
    `${cap(foot)}: ${cap(thing)} sollte bis zum ${date} so sein, wie wir es wollen; beim nächsten Besuch sehen wir nach.`,
  notBefore: (thing, foot, month) =>
    `${cap(foot)}: ${cap(thing)} wird nicht vor ${month} so sein, wie wir es wollen.`,
  growing: (what, foot, date, earliest, latest) =>
    `${cap(what)}, ${foot}: etwa im ${date} unten am Boden${range(earliest, latest)}.`,
  growDue: (what, foot, date) =>
    `${cap(what)}, ${foot}: sollte bis zum ${date} unten am Boden sein; beim nächsten Besuch sehen wir nach.`,
  grownOut: (what, foot) => `${cap(what)}, ${foot}: inzwischen herausgewachsen, soweit wir sagen können.`,
  growUnknown: (what, foot) =>
    `${cap(what)}, ${foot}: wächst herunter; wann es unten ist, können wir noch nicht sagen.`,

  wordsHead: 'Was die Wörter bedeuten',
  meaning: (what, meaning) => `${cap(what)}: ${meaning}.`,

  planHeels: (foot, trims, standing) =>
    `Die Trachten ${foot} gleichen wir an, bei jeder Bearbeitung ein wenig: ${trims}, ${standing}.`,
  planToe: (foot, trims, standing) =>
    `Die Zehe ${foot} nehmen wir zurück, bei jeder Bearbeitung ein wenig: ${trims}, ${standing}.`,
  planTrims: (trims) => (trims === 1 ? 'noch eine sollte reichen' : `noch etwa ${trims}`),
  planHeld: (feet) => `${cap(feet)} warten wir, bis Ihr Tierarzt nachgesehen hat.`,
  planStanding: {
    'on plan': 'bisher wie geplant',
    ahead: 'bisher schneller als geplant',
    behind: 'bisher langsamer als geplant',
    'just begun': 'gerade erst begonnen',
  },
  planWhy: 'Wir nehmen nie mehr auf einmal weg, als die Sohle verträgt.',

  ownSince: (date) =>
    `Dieses Pferd gehört Ihnen seit dem ${date}. Briefe und Fotos aus der Zeit davor werden nicht gezeigt.`,
  lettersHead: 'Nachricht von Ihrer Hufpflege',
  lettersBefore: 'Frühere Nachrichten',
  letterFrom: (date) => `Besuch vom ${date}`,
  letterAbout: (name) => `Über ${name}`,

  toRing: 'Wann Sie sonst den Tierarzt rufen',
  careHead: 'Bis zum nächsten Besuch',
  careNone: 'Beim letzten Besuch wurde um nichts Besonderes gebeten.',
  carePrint: 'Liste drucken',
  careTick: (day, task) => `${day}: ${task}`,
  careNote: 'Häkchen bleiben hier nicht.',

  nextHead: 'Nächster Besuch',
  next: (date) => `Er ist für den ${date} geplant.`,
  nextOverdue: (date, ask) => `Er war für den ${date} geplant. ${ask}`,
  nextAsk: 'Wenn es keinen neuen Termin gibt, melden Sie sich bitte.',
  nextNone: 'Noch ist keiner geplant. Bitte melden Sie sich.',
  indexNext: (date) => `nächster Besuch am ${date}`,
  indexOverdue: (date) => `der nächste Besuch war für den ${date} geplant`,
  indexNone: 'kein Besuch geplant',

  ringHead: 'Wann Sie den Tierarzt rufen',
  ringNowHead: 'Sofort, bei Tag und Nacht',
  ringNow: [
    'Im Huf steckt ein Nagel oder anderes. Nicht herausziehen, Pferd nicht führen.',
    'Das Pferd lehnt sich zurück, liegt viel oder will nicht gehen.',
    'Es belastet einen Huf nicht, nickt oder lahmt bei jedem Schritt.',
    'Der Puls über dem Huf pocht, oder der Huf ist heiß und tut weh.',
    'Aus Huf oder Kronrand kommt Blut oder Eiter.',
  ],
  ringTodayHead: 'Am selben Tag',
  ringToday: [
    'Es lahmt, oder es lahmt mehr.',
    'Bein oder Kronrand ist geschwollen.',
    'Ein Riss blutet, öffnet sich beim Gehen oder reicht bis zum Haar.',
    'Der Strahl riecht und tut beim Drücken weh.',
    'Es geht plötzlich vorsichtig, wo es vorher frei ging.',
  ],
  ringNote: 'Im Zweifel rufen Sie an. Das schadet nie.',
  standingHead: 'Bitte zuerst lesen',
  contactsHead: 'Wen Sie anrufen',
  vetIs: (contact) => `Tierarzt: ${contact}`,
  practiceIs: (phone) => `Wir: ${phone}`,
  levels: { stop: 'Halt.', vet: 'Für den Tierarzt.', mind: 'Vorsicht.' },
  since: (text, date) => `${text} Gesehen am ${date}.`,

  photosHead: 'Damals und heute',
  photosMore: 'Mehr Bilder',
  photoAlt: (what, date) => `${cap(what)}, ${date}`,
  views: {
    lateral: 'von außen',
    medial: 'von innen',
    front: 'von vorn',
    behind: 'von hinten',
    solar: 'von unten',
    other: '',
  },
  stages: { before: 'vor der Bearbeitung', after: 'nach der Bearbeitung' },
  shotThen: 'Damals',
  shotNow: 'Heute',
  wholeHorse: 'Ihr Pferd',

  drawingTitle: (foot) => `${cap(foot)} von der Seite`,
  drawingCaption: (foot) => `${cap(foot)}, zuerst und zuletzt`,
  drawingHead: ['', 'Zuerst', 'Zuletzt'],
  drawingToeAngle: 'Schräge der Hufwand vorn',
  drawingToeLength: 'Länge der Zehe',
  drawing: (foot, first, latest) => `Der Huf ${foot} von der Seite. Zuerst: ${first}. Zuletzt: ${latest}.`,
  drawingOnce: (foot, first) => `Der Huf ${foot} von der Seite: ${first}.`,
  drawingSays: (length, angle) => `Zehe ${length} lang, vorn ${angle}`,
  notMeasured: 'Gepunktete Kanten sind nicht gemessen.',
  firstLabel: (date) => `zuerst, ${date}`,
  latestLabel: (date) => `zuletzt, ${date}`,

  careful:
    'Diese Seite hilft allen, die für Ihr Pferd sorgen. Sie ersetzt keine Untersuchung. Diagnosen stellen nur Tierärzte. Wer bearbeiten, beschlagen oder behandeln darf, regelt das örtliche Recht.',
  safe: 'Ein Pferd mit Schmerzen kann schlagen, hinten wie vorn. Jemand soll es halten, der das kann, auf festem, ebenem Boden. Hören Sie auf, wenn es auf den anderen Hufen nicht stehen kann. Beachten Sie bei Mitteln die Packung.',
  lockAgain: 'Wieder sperren',
  madeWith: (practice) => `Von ${practice}. Bitte nicht weitergeben.`,

  locked: {
    title: (practice) => `${practice}: Ihre Seite`,
    head: 'Diese Seite ist gesperrt',
    how: 'Sie öffnet sich mit den Wörtern, die Sie von Ihrer Hufpflege bekommen haben.',
    label: 'Ihr Passwort',
    hint: 'Meist sechs Wörter, klein geschrieben, mit einem Leerzeichen dazwischen.',
    show: 'Zeigen, was ich tippe',
    open: 'Öffnen',
    opening: 'Wird geöffnet. Das dauert einige Sekunden.',
    empty: 'Bitte tippen Sie zuerst Ihr Passwort ein.',
    wrong:
      'Damit ließ sich die Seite nicht öffnen. Prüfen Sie jedes Wort und die Leerzeichen dazwischen, und versuchen Sie es noch einmal. Geht es immer noch nicht, fragen Sie Ihre Hufpflege nach den Wörtern.',
    damaged:
      'Ihre Seite ist nicht vollständig angekommen. Darum öffnet sie kein Passwort. Laden Sie sie neu. Hilft das nicht, bitten Sie Ihre Hufpflege, sie noch einmal zu schicken.',
    weak: 'Diesem Gerät ging beim Öffnen der Speicher aus. Schließen Sie andere Fenster und versuchen Sie es noch einmal, oder nehmen Sie ein anderes Gerät.',
    noScript:
      'Diese Seite braucht JavaScript, um sich hier zu öffnen, und es ist ausgeschaltet. Schalten Sie es für diese Seite ein, und laden Sie sie neu. Oder öffnen Sie die gesperrte Datei unten mit einem Programm für das Format age.',
    private:
      'Nichts, was Sie tippen, verlässt dieses Gerät. Wenn Sie das Fenster schließen, ist die Seite wieder gesperrt.',
    fileHead: 'Die gesperrte Datei selbst',
    fileHow:
      'Sie können sie auch ohne diese Seite öffnen. Speichern Sie den Text unten als record.age, und öffnen Sie ihn mit einem Programm für das Format age (age-encryption.org). Sie bekommen eine Seite, die jeder Browser zeigt.',
    fileLabel: 'Die gesperrte Datei als Text',
    fileSave: 'Gesperrte Datei speichern',
  },
}
