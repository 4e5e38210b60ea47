/** The keys of practice.md. */
import { languageTags } from '../../../casebook/languages.ts'
import type {
  ContactKey,
  ContactsKey,
  OwnerKey,
  PortfolioKey,
  PracticeKey,
} from '../../../casebook/practice-file.ts'
import { free, map, type Shape, words } from './shape.ts'
import { footNames } from './vocabulary.ts'

const contact = { name: free('of the vet'), phone: free('the number to ring') } satisfies Record<
  ContactKey,
  Shape
>

const contacts = {
  practice: free("the practice's own number"),
  vet: map("the practice's vet", contact, '{name: $1, phone: $2}'),
} satisfies Record<ContactsKey, Shape>

const portfolio = {
  days: words('whether time is told in weeks or in days since the first visit', 'weeks', 'days'),
  'practice name': words('whether the name of the practice stands in it', 'shown', 'hidden'),
  'hold back': free('how much later it tells what a visit brought: 6 weeks'),
} satisfies Record<PortfolioKey, Shape>

const owner = {
  name: free("the owner's name"),
  language: words("of this owner's page, where it is not the practice's", ...languageTags),
} satisfies Record<OwnerKey, Shape>

const keys = {
  practice: free("the practice's name"),
  units: words('unit of a length that carries none, and the unit of the pages', 'mm', 'cm', 'in'),
  language: words("of owners' pages; all others are in English", ...languageTags),
  'trim cycle': free('usual time between visits: 5 weeks'),
  feet: {
    about: 'another order for lists of four',
    items: { about: '', words: [() => footNames] },
    snippet: '[$1]',
  },
  owners: {
    about: 'an id for each owner, and the name',
    each: map('', owner, '{name: $1}'),
    snippet: '\n  $1: {name: $2}',
  },
  people: { about: 'who works here; never in the portfolio', snippet: '[$1]' },
  'local rules': free('a sentence about the law or code where you work'),
  contacts: map('numbers to ring; shown to owners, never in the portfolio', contacts),
  portfolio: map('how much the portfolio tells of when, and by whom', portfolio),
  terms: {
    about: 'finding names of your own, each with a line on what it means',
    each: free('what it means'),
  },
} satisfies Record<PracticeKey, Shape>

export const practiceShape: Shape = { about: 'the practice', keys }
