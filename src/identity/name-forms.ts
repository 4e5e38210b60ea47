/** The forms in which a name, an id, a private word or a number of the casebook is searched for. */
import type { OwnWords } from './common-words.ts'
import { isEnglish, isEveryday } from './everyday.ts'
import type { Exception, IdentifierKind, Watch } from './identifier.ts'
import { isMarkup } from './own-words.ts'
import { nationalDigits } from './phone-numbers.ts'
import { pluralsOf, spellingsOf } from './spellings.ts'
import { bodyWords, isAbbreviation, particles, placeWords } from './trade-words.ts'
import { isUnspaced, unspacedForms } from './unspaced.ts'
import { foldedWords, wordsOf } from './words.ts'

export interface Form {
  /** Folded words that must follow each other. */
  readonly words: readonly string[]
  readonly watch: Watch
}

export interface Forms {
  readonly forms: readonly Form[]
  readonly exceptions: readonly Exception[]
}

type Common = (word: string) => boolean
type Reason = Exception['reason']

const none: Forms = { forms: [], exceptions: [] }

/** All forms of what the casebook holds under this kind, and what of it is not searched in every form. */
export function formsOf(kind: IdentifierKind, text: string, own: OwnWords): Forms {
  const isCommon: Common = (word) =>
    isEveryday(word) || isAbbreviation(word) || (own.single.has(word) && (isEnglish(word) || isMarkup(word)))
  if (kind === 'telephone number') return phoneForms(text)
  if (kind === 'name of a picture') return pictureForms(text, isCommon)
  const inRuns = isUnspaced(text)
    ? unspacedForms(text).map((form): Form => ({ words: [form], watch: 'within' }))
    : []
  const spaced = wordsOf(text).filter(({ folded }) => folded !== '' && !isUnspaced(folded))
  const words = spaced.map(({ folded }) => folded)
  const of = (forms: Forms): Forms => ({ ...forms, forms: [...inRuns, ...forms.forms] })
  if (words.length === 0) {
    return inRuns.length > 0 || text.trim() === ''
      ? of(none)
      : excepted(kind, text, 'one letter, not searched')
  }
  if (kind === 'folder of a horse' || kind === 'id of an owner')
    return of(idForms(kind, text, words, isCommon))
  const raw = spaced.map((word) => word.raw)
  return of(
    words.length === 1 ? oneWord(kind, text, raw, isCommon) : manyWords(kind, text, raw, own, isCommon),
  )
}

const excepted = (
  kind: IdentifierKind,
  text: string,
  reason: Reason,
  forms: readonly Form[] = [],
): Forms => ({
  forms,
  exceptions: [{ kind, text, reason }],
})

function phoneForms(text: string): Forms {
  const digits = nationalDigits(text)
  return digits.length >= 6 ? { forms: [{ words: [digits], watch: 'digits' }], exceptions: [] } : none
}

/** An id that could stand in a text or in markup by chance says something as a part of a path only. */
function idForms(kind: IdentifierKind, text: string, words: readonly string[], isCommon: Common): Forms {
  const letters = words.join('').replace(/[^\p{L}]/gu, '')
  const isPlain = words.every((word) => isCommon(word) || /^\d+$/.test(word) || word.length < 3)
  if (letters.length >= 3 && !isPlain) return { forms: [{ words, watch: 'any case' }], exceptions: [] }
  return excepted(kind, text, 'searched in paths only', [{ words, watch: 'path' }])
}

function oneWord(kind: IdentifierKind, text: string, raw: readonly string[], isCommon: Common): Forms {
  const [word = ''] = raw.flatMap((one) => foldedWords(one))
  if (/^\d{1,3}$/.test(word))
    return excepted(kind, text, 'searched in paths only', [{ words: [word], watch: 'path' }])
  if ([...word].length < 2 || isTradeShort(word)) return excepted(kind, text, 'one letter, not searched')
  if (isCommon(word)) return excepted(kind, text, 'everyday word, searched with its capital', capitals(word))
  if ([...word].length === 2 && /^[a-z]+$/.test(word))
    return excepted(kind, text, 'two letters, searched with its capital', [
      { words: [word], watch: 'capital' },
    ])
  return { forms: anyCase(raw, isCommon), exceptions: [] }
}

const isTradeShort = (word: string) => word.length <= 2 && isAbbreviation(word)

/** `Ada Kestrel`: the whole, the whole in one word, and each of its parts. */
function manyWords(
  kind: IdentifierKind,
  text: string,
  raw: readonly string[],
  own: OwnWords,
  isCommon: Common,
): Forms {
  const words = raw.flatMap((one) => foldedWords(one))
  const printedByUs = words.every((word, i) => i === 0 || own.pairs.has(`${words[i - 1]} ${word}`))
  const everyday =
    printedByUs || words.every((word) => isCommon(word) || particles.has(word) || word.length < 3)
  const forms: Form[] = everyday ? [{ words, watch: 'capital' }] : anyCase(raw, isCommon)
  const exceptions: Exception[] = everyday
    ? [{ kind, text, reason: 'everyday word, searched with its capital' }]
    : []
  const joined = words.join('')
  if (joined.length >= 6 && !isCommon(joined)) forms.push({ words: [joined], watch: 'any case' })
  for (const part of raw) {
    const made = partForms(part, isCommon, kind)
    forms.push(...made.forms)
    // What is said of the whole is not said again of its parts.
    const isSaid = everyday && made.reason === 'everyday word, searched with its capital'
    if (made.reason !== null && !isSaid) {
      exceptions.push({ kind, text: `${part.toLowerCase()} (${text})`, reason: made.reason })
    }
  }
  return { forms, exceptions }
}

function partForms(
  raw: string,
  isCommon: Common,
  kind: IdentifierKind,
): { forms: readonly Form[]; reason: Reason | null } {
  const [word = ''] = foldedWords(raw)
  const isPlace = (kind === 'private word' || kind === 'name of the practice') && placeWords.has(word)
  if (/^\d+$/.test(word) || word.length < 2) return { forms: [], reason: null }
  if (isParticle(raw, word)) return { forms: [], reason: null }
  if (isPlace || isTradeShort(word)) return { forms: [], reason: 'part of a longer name, not searched alone' }
  if (bodyWords.has(word)) {
    return { forms: [{ words: [word], watch: 'title' }], reason: 'word of the trade, searched after a title' }
  }
  if (isCommon(word)) return { forms: capitals(word), reason: 'everyday word, searched with its capital' }
  if (word.length === 2 && /^[a-z]+$/.test(word))
    return { forms: [{ words: [word], watch: 'capital' }], reason: 'two letters, searched with its capital' }
  return { forms: anyCase([raw], isCommon), reason: null }
}

/** `al Khatib`, `of Clare`; `Al` with its capital is what somebody is called. */
const isParticle = (raw: string, word: string) =>
  particles.has(word) &&
  (raw === raw.toLowerCase() || isEveryday(word) || isAbbreviation(word) || word.length > 3)

const capitals = (word: string): Form[] =>
  [word, ...pluralsOf(word)].map((one) => ({ words: [one], watch: 'capital' }))

/** In every spelling, and in the plural. */
function anyCase(raw: readonly string[], isCommon: Common): Form[] {
  const spelled = raw.map(spellingsOf)
  const own = spelled.map(([first = '']) => first)
  const respelled = spelled.map((forms) => forms[1] ?? forms[0] ?? '')
  const plain = spelled.map((forms) => forms.at(-1) ?? '')
  const wholes = distinct([own, respelled, plain]).filter(
    (words) => words.length > 1 || words === own || !isCommon(words[0] ?? ''),
  )
  return wholes.flatMap((words) => {
    const last = words.at(-1) ?? ''
    const plurals = pluralsOf(last).filter((plural) => !isCommon(plural))
    return [last, ...plurals].map((end): Form => ({ words: [...words.slice(0, -1), end], watch: 'any case' }))
  })
}

const distinct = (all: readonly (readonly string[])[]) => [
  ...new Map(all.map((words) => [words.join(' '), words])).values(),
]

/** The whole file name and its stem, where they say more than foot, view and number: `hock.jpg` names nobody. */
function pictureForms(text: string, isCommon: Common): Forms {
  const stem = foldedWords(text.replace(/\.[^.]*$/, ''))
  const says = stem.some((word) =>
    /^\d+$/.test(word)
      ? word.length >= 4
      : word.length >= 3 && !isCommon(word) && !isEnglish(word) && !isAbbreviation(word),
  )
  if (!says) return none
  const forms: Form[] = [{ words: foldedWords(text), watch: 'any case' }]
  if (!(stem.length === 1 && (stem[0] ?? '').length < 4)) forms.push({ words: stem, watch: 'any case' })
  return { forms, exceptions: [] }
}
