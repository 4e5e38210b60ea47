/** practice.md: the practice, its units, its owners, its own terms. */
import { type Foot, feet } from '../hoof/feet.ts'
import { findingAliases, findingMeanings } from '../hoof/findings.ts'
import type { LengthUnit } from '../hoof/units.ts'
import { isBodyWithinLimits } from './body-limits.ts'
import { feetOrder } from './by-foot.ts'
import {
  field,
  gapIn,
  keyTwice,
  type ParseContext,
  type Reader,
  readFields,
  required,
  wrongForm,
} from './fields.ts'
import type { CaseFile } from './front-matter.ts'
import { knownLanguages, type LanguageTag, languageTags } from './languages.ts'
import type { Contact, Contacts, Owner, Person, PortfolioChoices, Practice } from './model.ts'
import { people } from './people.ts'
import { interval, isTooLong, name as nameRead, oneOf, text } from './readers.ts'
import { either, nearest, normal, quote } from './words.ts'
import { readYamlTree, type YamlNode } from './yaml-tree.ts'

const defaultTrimCycleDays = 35
const usualLanguage: LanguageTag = 'en'

const noContact: Contact = { name: null, phone: null }
const noContacts: Contacts = { practice: null, vet: noContact }

const usualPortfolio: PortfolioChoices = { time: 'weeks', hidesPractice: false, holdBackDays: 0 }
/** What holds while a wish about the portfolio cannot be read: it may have asked for any of this. A century tells nothing. */
const mostPrivate: PortfolioChoices = { time: 'weeks', hidesPractice: true, holdBackDays: 36_525 }

/** What holds while practice.md cannot be used, so that the horses' files can still be checked. */
export const standInPractice: Practice = {
  name: '',
  units: 'mm',
  language: usualLanguage,
  trimCycleDays: defaultTrimCycleDays,
  feetOrder: feet,
  owners: [],
  people: [],
  localRules: null,
  contacts: noContacts,
  portfolio: usualPortfolio,
  terms: {},
  body: '',
}

const units: Reader<LengthUnit> = (value, context, name) => {
  const word = value.kind === 'text' ? normal(value.text) : ''
  const known: Readonly<Record<string, LengthUnit>> = {
    millimetres: 'mm',
    millimeters: 'mm',
    centimetres: 'cm',
    centimeters: 'cm',
    inch: 'in',
    inches: 'in',
  }
  return Object.hasOwn(known, word) ? known[word] : oneOf(['mm', 'cm', 'in'] as const)(value, context, name)
}

const language: Reader<LanguageTag> = (value, context, name) => {
  const written = value.kind === 'text' ? value.text : ''
  const word = normal(written)
  if (Object.hasOwn(knownLanguages, word)) return knownLanguages[word]
  const fix = nearest(written, Object.keys(knownLanguages)) ?? undefined
  return wrongForm(value, context, name, either(languageTags), fix)
}

const ownerFields = {
  name: required<string | null>(nameRead, null, "the owner's name"),
  language: field<LanguageTag | null>(language, null),
}

const owners: Reader<readonly Owner[]> = (value, context, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, context, name, 'an id and a name for each: {abel: {name: Abel Moor}}')
  return value.entries.flatMap((entry): Owner[] => {
    const id = entry.key.text
    if (isTooLong(id, entry.key, context, "An owner's id")) return []
    if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id)) {
      context.report.error('owner-id', entry.key, `${quote(id)} cannot be an owner's id.`, {
        expected: 'lower-case letters, digits and hyphens',
        fix: /[{:]/.test(id) ? null : idLike(id),
        advice: /[{:]/.test(id)
          ? 'write the id, a colon, a space, then the rest: abel: {name: Abel Moor}'
          : null,
      })
      return []
    }
    const { name, language } = ownerOf(entry.value, context, id)
    return [{ id, name: name ?? id, language }]
  })
}

const unnamed = { name: null, language: null }

/** `{name: Abel Moor, language: de}`, or the name alone. */
function ownerOf(
  value: YamlNode,
  context: ParseContext,
  id: string,
): { readonly name: string | null; readonly language: LanguageTag | null } {
  const what = `The name of owner ${id}`
  if (value.kind === 'nothing' || gapIn(value, what, context)) return unnamed
  if (value.kind === 'text')
    return isTooLong(value.text, value, context, what) ? unnamed : { ...unnamed, name: value.text }
  if (value.kind === 'map') return readFields(value, ownerFields, context, 'of an owner')
  wrongForm(value, context, `owner ${id}`, '{name: Abel Moor}')
  return unnamed
}

const contactFields = {
  name: field<string | null>(nameRead, null),
  phone: field<string | null>(nameRead, null),
}

/** `{name: ..., phone: ...}`, or the number alone. */
const contact: Reader<Contact> = (value, context, name) => {
  if (value.kind === 'map') return readFields(value, contactFields, context, 'of a contact')
  const phone = nameRead(value, context, name)
  return phone === undefined ? undefined : { name: null, phone }
}

const contactsFields = {
  practice: field<string | null>(nameRead, null),
  vet: field<Contact>(contact, noContact),
}

const contacts: Reader<Contacts> = (value, context, name) =>
  value.kind === 'map'
    ? readFields(value, contactsFields, context, 'of contacts')
    : wrongForm(value, context, name, '{practice: a number, vet: {name: ..., phone: ...}}')

const portfolioFields = {
  days: field<'weeks' | 'days'>(oneOf(['weeks', 'days'] as const), usualPortfolio.time),
  'practice name': field<'shown' | 'hidden'>(oneOf(['shown', 'hidden'] as const), 'shown'),
  'hold back': field<number>(interval, usualPortfolio.holdBackDays),
}

const portfolio: Reader<PortfolioChoices> = (value, context, name) => {
  if (value.kind !== 'map') {
    wrongForm(value, context, name, '{days: weeks, practice name: hidden, hold back: 6 weeks}')
    return mostPrivate
  }
  const errors = () => context.report.diagnostics.filter(({ level }) => level === 'error').length
  const before = errors()
  const read = readFields(value, portfolioFields, context, 'of portfolio')
  if (errors() > before) return mostPrivate
  return {
    time: read.days,
    hidesPractice: read['practice name'] === 'hidden',
    holdBackDays: read['hold back'],
  }
}

/** The nearest text that can be an id. */
export const idLike = (words: string): string =>
  words
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'horse-1'

const terms: Reader<Readonly<Record<string, string>>> = (value, context, name) => {
  if (value.kind !== 'map')
    return wrongForm(value, context, name, 'a word and its meaning: {chalk toe: powdery horn at the toe}')
  const read = new Map<string, string>()
  for (const entry of value.entries) {
    const term = normal(entry.key.text)
    if (isTooLong(term, entry.key, context, 'A term')) continue
    if (Object.hasOwn(findingMeanings, term) || Object.hasOwn(findingAliases, term)) {
      context.report.warning(
        'term-known',
        entry.key,
        `${quote(term)} is a known finding already; its own meaning stays.`,
        {
          advice: 'remove the line',
        },
      )
      continue
    }
    if (read.has(term)) keyTwice(entry, context)
    if (entry.value.kind === 'nothing' || gapIn(entry.value, term, context)) continue
    const meaning = text(entry.value, context, term)
    if (meaning) read.set(term, meaning)
  }
  return Object.fromEntries(read)
}

/** A reader whose failure stays visible: without units and order every reading would be misread. */
const orNull =
  <T>(read: Reader<T>): Reader<T | null> =>
  (value, context, name) =>
    read(value, context, name) ?? null

const practiceFields = {
  practice: required<string | null>(nameRead, null, "the practice's name"),
  units: field<LengthUnit | null>(orNull(units), 'mm'),
  language: field<LanguageTag>(language, usualLanguage),
  'trim cycle': field<number>(interval, defaultTrimCycleDays),
  feet: field<readonly Foot[] | null>(orNull(feetOrder), feet),
  owners: field<readonly Owner[]>(owners, []),
  people: field<readonly Person[]>(people, []),
  'local rules': field<string | null>(text, null),
  contacts: field<Contacts>(contacts, noContacts),
  portfolio: field<PortfolioChoices>(portfolio, usualPortfolio),
  terms: field<Readonly<Record<string, string>>>(terms, {}),
}

export type PracticeKey = keyof typeof practiceFields
export type ContactsKey = keyof typeof contactsFields
export type ContactKey = keyof typeof contactFields
export type PortfolioKey = keyof typeof portfolioFields
export type OwnerKey = keyof typeof ownerFields

/** Reads an opened practice.md; `usable` is false when units or the order of feet are unknown. Null when its block is broken. */
export function readPracticeFile(
  file: CaseFile,
): { readonly practice: Practice; readonly usable: boolean } | null {
  const { report, text: whole } = file
  const map = readYamlTree(whole, file.blockStart, file.blockEnd, report)
  if (!map) return null
  const context: ParseContext = { report, units: 'mm', feetOrder: feet, terms: {}, people: [] }
  const read = readFields(map, practiceFields, context, 'of practice.md', null)
  const practice: Practice = {
    name: read.practice ?? 'Practice',
    units: read.units ?? 'mm',
    language: read.language,
    trimCycleDays: read['trim cycle'],
    feetOrder: read.feet ?? feet,
    owners: read.owners,
    people: read.people,
    localRules: read['local rules'],
    contacts: read.contacts,
    portfolio: read.portfolio,
    terms: read.terms,
    body: isBodyWithinLimits(whole, file.bodyStart, report) ? whole.slice(file.bodyStart).trim() : '',
  }
  return { practice, usable: read.units !== null && read.feet !== null }
}
