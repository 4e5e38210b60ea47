/**
 * Everything by which someone could be known: the names, ids, private words, file names and dates of the whole
 * casebook. Both the rewriting of teaching text and the search of finished pages go by this list.
 */
import { withoutControls } from '../casebook/control-characters.ts'
import type { Contact, Horse, Practice } from '../casebook/model.ts'
import { type PlainDate, parseDate } from '../hoof/dates.ts'
import { commonWords, type OwnWords } from './common-words.ts'
import { foldedWords } from './words.ts'

/** What of one horse identifies. Small and plain: kept between builds. */
export interface HorseIdentity {
  readonly id: string
  readonly name: string
  readonly owner: string | null
  readonly privateWords: readonly string[]
  /** Its own vet. */
  readonly vet: Contact
  /** Names of its pictures, without folders. */
  readonly files: readonly string[]
  readonly dates: readonly PlainDate[]
}

export type IdentifierKind =
  | 'name of a horse'
  | 'name of an owner'
  | 'folder of a horse'
  | 'id of an owner'
  | 'private word'
  | 'name of a vet'
  | 'telephone number'
  | 'name of a picture'

/**
 * `any case`: a whole word in any case.
 * `capital`: also an everyday word, so only with its capital.
 * `path`: a short number or an everyday word as an id, so only as a part of a path or the whole of an attribute.
 */
export type Watch = 'any case' | 'capital' | 'path'

export interface Identifier {
  readonly kind: IdentifierKind
  /** As the casebook has it. */
  readonly text: string
  /** Whose it is: an owner's id; null for a horse without an owner, and for the practice's own contacts. */
  readonly owner: string | null
  /** The horse's id; null for what belongs to an owner or the practice. */
  readonly horse: string | null
  /** Folded words that must follow each other. */
  readonly words: readonly string[]
  readonly watch: Watch
}

/** A name that is not searched for in every form, and why: shown at each build, never silent. */
export interface Exception {
  readonly kind: IdentifierKind
  readonly text: string
  readonly reason:
    | 'everyday word, searched with its capital'
    | 'searched in paths only'
    | 'part of a longer name, not searched alone'
    | 'one letter, not searched'
}

export interface IdentifierList {
  readonly identifiers: readonly Identifier[]
  readonly exceptions: readonly Exception[]
}

const baseName = (path: string) => path.slice(path.lastIndexOf('/') + 1)

/** What of a horse identifies it, out of everything that its files said. */
export function identityOf(horse: Horse): HorseIdentity {
  const dates = [
    horse.started,
    horse.consent.given,
    horse.born === null ? null : parseDate(horse.born),
    ...horse.visits.flatMap((visit) => [visit.date, visit.nextVisit]),
  ].filter((date): date is PlainDate => date !== null)
  return {
    id: horse.id,
    name: horse.name,
    owner: horse.owner,
    privateWords: horse.privateWords,
    vet: { name: horse.vet.name, phone: horse.vet.phone },
    files: [...new Set(horse.visits.flatMap((visit) => visit.photos.map((photo) => baseName(photo.file))))],
    dates: [...new Set(dates)].sort(),
  }
}

/** Its own name identifies where the portfolio is not to show it. */
type NamedPractice = Pick<Practice, 'owners' | 'contacts'> & Partial<Pick<Practice, 'name' | 'portfolio'>>

/** The identifying strings of these horses, owners and contacts, ready to be searched for, as a page would hold them. */
export function identifiersOf(
  horses: readonly HorseIdentity[],
  practice: NamedPractice,
  own: OwnWords,
): IdentifierList {
  const { owners, contacts } = practice
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
    take('private word', practice.name, null, null)
  takeContact(contacts.vet, null, null)
  takeContact({ name: null, phone: contacts.practice }, null, null)
  for (const owner of owners) {
    take('name of an owner', owner.name, owner.id, null)
    take('id of an owner', owner.id, owner.id, null)
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

interface Forms {
  readonly forms: { words: readonly string[]; watch: Watch }[]
  readonly exceptions: Exception[]
}

function formsOf(kind: IdentifierKind, text: string, own: OwnWords): Forms {
  const words = foldedWords(text)
  const isCommon = (word: string) => commonWords.has(word) || own.single.has(word)
  if (kind === 'name of a picture') return pictureForms(text, isCommon)
  const isId = kind === 'folder of a horse' || kind === 'id of an owner'
  const [only] = words
  if (only === undefined) return { forms: [], exceptions: [] }
  if (words.length === 1) {
    if (isId && (isCommon(only) || /^\d+$/.test(only) || only.length < 3)) {
      return {
        forms: [{ words, watch: 'path' }],
        exceptions: [{ kind, text, reason: 'searched in paths only' }],
      }
    }
    if (/^\d{1,3}$/.test(only)) {
      return {
        forms: [{ words, watch: 'path' }],
        exceptions: [{ kind, text, reason: 'searched in paths only' }],
      }
    }
    if ([...only].length < 2)
      return { forms: [], exceptions: [{ kind, text, reason: 'one letter, not searched' }] }
    if (isCommon(only)) {
      return {
        forms: [{ words, watch: 'capital' }],
        exceptions: [{ kind, text, reason: 'everyday word, searched with its capital' }],
      }
    }
    return { forms: anyCase(words, isCommon), exceptions: [] }
  }
  return manyWords(kind, text, words, own, isCommon)
}

/** `Ada Kestrel`: the whole, the whole in one word, and each part that is no everyday word. */
function manyWords(
  kind: IdentifierKind,
  text: string,
  words: readonly string[],
  own: OwnWords,
  isCommon: (word: string) => boolean,
): Forms {
  const printedByUs = words.every((word, i) => i === 0 || own.pairs.has(`${words[i - 1]} ${word}`))
  const forms: Forms['forms'] = printedByUs ? [{ words, watch: 'capital' }] : anyCase(words, isCommon)
  const exceptions: Exception[] = printedByUs
    ? [{ kind, text, reason: 'everyday word, searched with its capital' }]
    : []
  const joined = words.join('')
  if (joined.length >= 6 && !isCommon(joined)) forms.push({ words: [joined], watch: 'any case' })
  if (kind !== 'name of a horse' && kind !== 'name of an owner' && kind !== 'name of a vet')
    return { forms, exceptions }
  for (const part of words) {
    if (part.length < 3 || /^\d+$/.test(part)) continue
    if (isCommon(part)) {
      exceptions.push({
        kind,
        text: `${part} (${text})`,
        reason: 'part of a longer name, not searched alone',
      })
    } else {
      forms.push(...anyCase([part], isCommon))
    }
  }
  return { forms, exceptions }
}

/** With the possessive that has lost its apostrophe: `Junos`. */
function anyCase(words: readonly string[], isCommon: (word: string) => boolean): Forms['forms'] {
  const last = words[words.length - 1] ?? ''
  const forms: Forms['forms'] = [{ words, watch: 'any case' }]
  if (/^\p{L}{4,}$/u.test(last) && !isCommon(`${last}s`)) {
    forms.push({ words: [...words.slice(0, -1), `${last}s`], watch: 'any case' })
  }
  return forms
}

/** The whole file name, and its stem where the stem says more than foot and view. */
function pictureForms(text: string, isCommon: (word: string) => boolean): Forms {
  const forms: Forms['forms'] = [{ words: foldedWords(text), watch: 'any case' }]
  const stem = foldedWords(text.replace(/\.[^.]*$/, ''))
  const says = stem.some((word) =>
    /^\d+$/.test(word) ? word.length >= 4 : word.length >= 3 && !isCommon(word),
  )
  if (says && !(stem.length === 1 && (stem[0] ?? '').length < 4))
    forms.push({ words: stem, watch: 'any case' })
  return { forms, exceptions: [] }
}
