/** What of a draft came from dictation, and which of its words stand in no line. */
import { feet } from '../hoof/feet.ts'
import { oneLine } from '../spoken/visit-lines.ts'
import type { YardDraft } from './draft.ts'
import { keyOf } from './field.ts'

/** A field that holds something: by a key that dictation and hand have in common. */
export interface FilledField {
  readonly key: string
  readonly text: string
  /** False where the draft itself says that a hand wrote it; other fields are told apart by their text alone. */
  readonly mayBeHeard: boolean
}

const footScales = ['lameness', 'landing', 'digital pulse'] as const

/** The draft with those of its fields that are to stay. */
export function keepFields(draft: YardDraft, keep: (field: FilledField) => boolean): YardDraft {
  const stays = (key: string, text: string, heard: string | null | undefined = undefined) =>
    keep({ key, text, mayBeHeard: heard !== null })
  const { comfort, body } = draft
  const scales = footScales.map((scale) => [
    scale,
    Object.fromEntries(
      feet.flatMap((foot) => {
        const text = comfort[scale][foot] ?? ''
        return text !== '' && stays(keyOf({ part: 'comfort', scale, foot }), text) ? [[foot, text]] : []
      }),
    ),
  ])
  const { lamenessBy } = comfort
  const bodyText = (key: keyof typeof body) =>
    body[key] !== '' && stays(keyOf({ part: 'body', key }), body[key]) ? body[key] : ''
  return {
    ...draft,
    readings: draft.readings.filter((one) => stays(keyOf({ part: 'reading', ...one }), one.text, one.heard)),
    findings: draft.findings.filter((one) => stays(findingKey(one), String(one.grade), one.heard)),
    features: draft.features.filter((one) => stays(featureKey(one), one.text, one.heard)),
    comfort: {
      ...comfort,
      ...Object.fromEntries(scales),
      lamenessBy: lamenessBy !== null && stays('lamenessBy', lamenessBy) ? lamenessBy : null,
      surfaces: Object.fromEntries(
        Object.entries(comfort.surfaces).filter(([surface, level]) =>
          stays(keyOf({ part: 'surfaces', surface }), level),
        ),
      ),
    },
    body: { weight: bodyText('weight'), condition: bodyText('condition'), crest: bodyText('crest') },
    care: draft.care.filter((line) => stays(careKey(line), line)),
    nextVisit: draft.nextVisit !== '' && stays('nextVisit', draft.nextVisit) ? draft.nextVisit : '',
  }
}

interface Placed {
  readonly foot: string
  readonly what: string
  readonly place: string
}
export const findingKey = ({ foot, what, place }: Placed): string => `findings ${foot} ${what}, ${place}`
export const featureKey = ({ foot, what, place }: Placed): string => `features ${foot} ${what}, ${place}`
export const careKey = (line: string): string => `care ${line}`

/** Every field that holds something. */
export function filledFields(draft: YardDraft): readonly FilledField[] {
  const filled: FilledField[] = []
  keepFields(draft, (field) => {
    filled.push(field)
    return true
  })
  return filled
}

/** The words that a field's text came from; null where it was typed, or changed since. */
export function isHeard({ hearing }: YardDraft, key: string, text: string): string | null {
  const line = hearing.lines.find((one) => one.key === key && one.text === text)
  return line === undefined ? null : oneLine(line.words)
}

/** The fields that stand as dictation put them there. */
export function heardKeys(draft: YardDraft): ReadonlySet<string> {
  const put = new Map(draft.hearing.lines.map(({ key, text }) => [key, text]))
  return new Set(
    filledFields(draft)
      .filter(({ key, text, mayBeHeard }) => mayBeHeard && put.get(key) === text)
      .map(({ key }) => key),
  )
}

interface Sentence {
  readonly words: readonly string[]
  readonly opens: boolean
}

const wordsIn = (text: string): readonly string[] => text.split(/\s+/).filter((word) => word !== '')

/** The dictated sentences of which not every word stands beside a line of the draft; all, where none was heard yet. */
export function notesLeft(draft: YardDraft): readonly Sentence[] {
  const { hearing, dictated } = draft
  if (hearing.sentences.length === 0) {
    return dictated
      .split(/\n+/)
      .map((text) => ({ words: wordsIn(text), opens: true }))
      .filter(({ words }) => words.length > 0)
  }
  const standing = heardKeys(draft)
  return hearing.sentences
    .filter(({ isUsed, lines }) => !isUsed || !lines.every((key) => standing.has(key)))
    .map(({ text, opens }) => ({ words: wordsIn(text), opens }))
}
