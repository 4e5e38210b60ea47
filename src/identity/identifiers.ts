/**
 * Everything by which someone could be known: the names, ids, private words, file names and dates of the whole
 * casebook. Both the rewriting of teaching text and the search of finished pages go by this list.
 */
import { withoutControls } from '../casebook/control-characters.ts'
import type { Contact, Practice } from '../casebook/model.ts'
import type { OwnWords } from './common-words.ts'
import type { HorseIdentity } from './horse-identity.ts'
import type { Exception, Identifier, IdentifierKind } from './identifier.ts'
import { formsOf } from './name-forms.ts'
import { foldedWords } from './words.ts'

export { type HorseIdentity, identityOf } from './horse-identity.ts'
export type { Exception, Identifier, IdentifierKind } from './identifier.ts'

export interface IdentifierList {
  readonly identifiers: readonly Identifier[]
  readonly exceptions: readonly Exception[]
}

/** Its own name identifies where the portfolio is not to show it. */
type NamedPractice = Pick<Practice, 'owners' | 'people' | 'contacts'> &
  Partial<Pick<Practice, 'name' | 'portfolio'>>

/** The identifying strings of these horses, owners, people and contacts, ready to be searched for, as a page would hold them. */
export function identifiersOf(
  horses: readonly HorseIdentity[],
  practice: NamedPractice,
  own: OwnWords,
): IdentifierList {
  const { owners, people, contacts } = practice
  const identifiers: Identifier[] = []
  const exceptions: Exception[] = []
  const seen = new Set<string>()
  const add = (identifier: Identifier) => {
    const key = [identifier.words.join(' '), identifier.watch, identifier.owner, identifier.horse].join('|')
    if (seen.has(key)) return
    seen.add(key)
    identifiers.push(identifier)
  }
  const take = (kind: IdentifierKind, written: string, owner: string | null, horse: string | null) => {
    const text = withoutControls(written)
    const whole = formsOf(kind, text, own)
    for (const form of whole.forms) add({ kind, text, owner, horse, ...form })
    exceptions.push(...whole.exceptions)
  }
  const takeContact = ({ name, phone }: Contact, owner: string | null, horse: string | null) => {
    if (name !== null) take('name of a vet', name, owner, horse)
    if (phone !== null) take('telephone number', phone, owner, horse)
  }
  if (practice.portfolio?.hidesPractice && practice.name !== undefined)
    take('name of the practice', practice.name, null, null)
  takeContact(contacts.vet, null, null)
  takeContact({ name: null, phone: contacts.practice }, null, null)
  for (const owner of owners) {
    take('name of an owner', owner.name, owner.id, null)
    take('id of an owner', owner.id, owner.id, null)
  }
  for (const { id, name } of people) {
    take('name of a person of the practice', name, null, null)
    // A short name that is no part of the name is what someone is called.
    const words = foldedWords(name)
    if (!foldedWords(id).every((word) => words.includes(word)))
      take('name of a person of the practice', id, null, null)
  }
  for (const horse of horses) {
    take('name of a horse', horse.name, horse.owner, horse.id)
    take('folder of a horse', horse.id, horse.owner, horse.id)
    takeContact(horse.vet, horse.owner, horse.id)
    for (const word of horse.privateWords) take('private word', word, horse.owner, horse.id)
    for (const file of horse.files) take('name of a picture', file, horse.owner, horse.id)
  }
  return { identifiers, exceptions: distinct(exceptions) }
}

const distinct = (exceptions: readonly Exception[]): Exception[] => {
  const byText = new Map(exceptions.map((exception) => [`${exception.reason}|${exception.text}`, exception]))
  return [...byText.values()]
}
