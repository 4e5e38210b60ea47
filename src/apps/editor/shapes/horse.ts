/** The keys of horse.md. */
import type { ConsentKey, HorseKey, VetKey } from '../../../casebook/horse-file.ts'
import type { LimitKey } from '../../../casebook/targets.ts'
import { derivedIds, derivedMeasures, measureIds, measures } from '../../../hoof/measures.ts'
import { free, map, type Shape, words } from './shape.ts'
import { footNames, problemWords, yesNo } from './vocabulary.ts'

const vet = {
  involved: yesNo('whether a vet has a hand in this'),
  diagnosis: free('in the words of the vet: only what a vet has said is called a diagnosis'),
  name: free('of the vet'),
  phone: free('of the vet'),
  date: free('day of the diagnosis, year-month-day'),
  feet: {
    about: 'feet that it is about',
    items: { about: '', words: [() => footNames] },
    words: [() => footNames],
  },
} satisfies Record<VetKey, Shape>

const consent = {
  'owner site': yesNo("whether the owner's page may show the horse"),
  portfolio: yesNo('whether the portfolio may show it, under its alias'),
  photos: yesNo('whether photographs may be shown'),
  given: free('the day on which it was given, year-month-day'),
} satisfies Record<ConsentKey, Shape>

const band = '[$1, $2]'
const targets: Readonly<Record<string, Shape>> = Object.fromEntries([
  ...measureIds.map(
    (id) => [measures[id].name, { about: measures[id].how, measure: id, snippet: band }] as const,
  ),
  ...derivedIds.map(
    (id) =>
      [derivedMeasures[id].name, { about: derivedMeasures[id].formula, measure: id, snippet: band }] as const,
  ),
])

const sole = words('', 'flat', 'cupped')
const limits = {
  sole: { ...sole, about: 'flat or cupped, for all feet or each: {LF: flat}', feet: sole },
  'most per trim': free('the most to take at one trim, beyond what grows: 1.5 mm'),
} satisfies Record<LimitKey, Shape>

const keys = {
  name: free('as the practice calls it'),
  owner: {
    about: 'an id from practice.md',
    words: [({ practice }) => practice.owners.map(({ id, name }) => ({ word: id, about: name }))],
  },
  'owner since': free("after a sale, the day from which the horse is this owner's"),
  kind: free('breed or type'),
  sex: words('', 'mare', 'gelding', 'stallion'),
  born: free('year or date'),
  height: free('14.2 hh (14 hands 2 inches), cm or in'),
  weight: free('with its unit: 505 kg or 1100 lb'),
  started: free('first visit under this practice, year-month-day'),
  history: { about: 'shoeing, injuries, diet, footing, work: a line each', snippet: '\n  - $1' },
  vet: map('what a vet has to do with it', vet, '{involved: $1}'),
  tetanus: free('day of the last vaccination, year-month-day'),
  consent: map(
    'what the owner has agreed to; what is absent means no',
    consent,
    '{owner site: $1, portfolio: $2, photos: $3, given: $4}',
  ),
  alias: free('the name that the portfolio shows instead'),
  'private words': { about: 'further words that must never appear in the portfolio', snippet: '[$1]' },
  targets: map('a band of wanted values for a measure; ~ is an open side', targets, '{$1}'),
  'trim limits': map('how much a trim may take', limits, '{sole: $1}'),
  problems: {
    about: 'what this case is about, the most important first: RH heel balance, fores toe angle, LF thrush',
    snippet: '\n  - $1',
    items: { about: 'feet, then a measure, a finding or something followed', words: [problemWords] },
  },
} satisfies Record<HorseKey, Shape>

export const horseShape: Shape = { about: 'a horse', keys }
