/** Dictated text heard into a draft. */
import { measures } from '../hoof/measures.ts'
import { said } from '../spoken/draft.ts'
import type { Understood, WordRange } from '../spoken/understood.ts'
import type { YardDraft } from './draft.ts'
import { keyOf } from './field.ts'
import { careKey, featureKey, filledFields, findingKey, heardKeys, keepFields } from './hearing.ts'

/** A line that was understood: where it belongs, and how it is put there. */
interface HeardLine {
  readonly key: string
  readonly text: string
  readonly from: readonly WordRange[]
  readonly words: string
  put(draft: YardDraft): YardDraft
}

/** Something that was said of a place, with no more than a part of what a line needs. */
interface HalfSaid {
  readonly ask: string
  readonly from: readonly WordRange[]
}

/**
 * The draft with what was understood of the whole text so far. What an earlier hearing put there is taken back first; a
 * field that a hand has written, changed or emptied since stays the hand's, and the words for it stay in the notes.
 */
export function heardInto(draft: YardDraft, text: string, understood: Understood): YardDraft {
  const { words, sentences } = understood
  const before = new Map(draft.hearing.lines.map((line) => [line.key, line]))
  const filled = new Set(filledFields(draft).map(({ key }) => key))
  const own = heardKeys(draft)
  const { lines, half } = linesOf(understood)
  const asked = [...understood.questions, ...half].map((one) => ({ ask: one.ask, said: said(words, one) }))
  const asIs = keepFields(draft, ({ key }) => !own.has(key))
  const isHands = ({ key, words: heard }: HeardLine) =>
    (filled.has(key) && !own.has(key)) || (!filled.has(key) && before.get(key)?.words === heard)
  const put = lines.reduce((into, line) => (isHands(line) ? into : line.put(into)), asIs)
  return {
    ...put,
    dictated: text,
    questions: questionsAfter(draft, asked),
    hearing: {
      lines: lines.map((line) => ({
        key: line.key,
        text: isHands(line) ? '' : line.text,
        words: line.words,
      })),
      sentences: sentences
        .filter(({ first, last }) => last >= first)
        .map((sentence) => ({
          text: words
            .slice(sentence.first, sentence.last + 1)
            .map((word) => word.text)
            .join(' '),
          opens: words[sentence.first]?.opens === true,
          isUsed: sentence.isUsed,
          lines: [...lines, ...half]
            .filter(({ from }) => from.some((range) => isOver(range, sentence)))
            .map((one) => ('key' in one ? one.key : '')),
        })),
      asked,
    },
  }
}

const isOver = (a: WordRange, b: WordRange): boolean => a.first <= b.last && b.first <= a.last

type Question = YardDraft['questions'][number]

/** Those that a person has settled are not asked again while the same words are all that was said. */
function questionsAfter(draft: YardDraft, asked: readonly Question[]): Question[] {
  const isIn = (list: readonly Question[]) => (one: Question) =>
    list.some(({ ask, said: words }) => ask === one.ask && words === one.said)
  const settled = draft.hearing.asked.filter((one) => !isIn(draft.questions)(one))
  const others = draft.questions.filter((one) => !isIn(draft.hearing.asked)(one))
  return [...others, ...asked.filter((one) => !isIn(settled)(one))]
}

/** Every line that was understood, each place once; and what is only half of one. */
function linesOf(understood: Understood): {
  readonly lines: readonly HeardLine[]
  readonly half: readonly HalfSaid[]
} {
  const lines = new Map<string, HeardLine>()
  const half: HalfSaid[] = []
  type Said = Parameters<typeof said>[1]
  const add = (key: string, text: string, item: Said, put: HeardLine['put']) => {
    if (!lines.has(key))
      lines.set(key, { key, text, from: item.from, words: said(understood.words, item), put })
  }
  for (const one of understood.readings) {
    const { stage, foot, measure, text } = one
    if (one.value === null) {
      half.push({ ask: `Which is it: ${measures[measure].name} at ${foot}, ${stage}?`, from: one.from })
      continue
    }
    const heard = said(understood.words, one)
    add(keyOf({ part: 'reading', stage, foot, measure }), text, one, (draft) => ({
      ...draft,
      readings: [...draft.readings, { stage, foot, measure, text, heard }],
    }))
  }
  for (const one of understood.findings) {
    const { foot, what, place, grade } = one
    const heard = said(understood.words, one)
    if (place === null) half.push({ ask: `Where is ${what} at ${foot}?`, from: one.from })
    else if (grade === null)
      half.push({ ask: `Which grade has ${what} at ${foot}, ${place}?`, from: one.from })
    else
      add(findingKey({ foot, what, place }), String(grade), one, (draft) => ({
        ...draft,
        findings: [...draft.findings, { foot, what, place, grade, heard }],
      }))
  }
  for (const one of understood.features) {
    const { foot, what, place, text } = one
    const heard = said(understood.words, one)
    if (place === null) half.push({ ask: `Where on ${foot} are ${what}?`, from: one.from })
    else if (!/\d/.test(text))
      half.push({ ask: `How far down are ${what} at ${foot}, ${place}?`, from: one.from })
    else
      add(featureKey({ foot, what, place }), text, one, (draft) => ({
        ...draft,
        features: [...draft.features, { foot, what, place, text, heard }],
      }))
  }
  addComfort(understood, add)
  for (const one of understood.body) {
    add(keyOf({ part: 'body', key: one.key }), one.text, one, (draft) => ({
      ...draft,
      body: { ...draft.body, [one.key]: one.text },
    }))
  }
  for (const one of understood.care) {
    add(careKey(one.text), one.text, one, (draft) => ({ ...draft, care: [...draft.care, one.text] }))
  }
  const next = understood.nextVisit
  if (next) add('nextVisit', next.text, next, (draft) => ({ ...draft, nextVisit: next.text }))
  return { lines: [...lines.values()], half }
}

function addComfort(
  { comfort, surfaces }: Understood,
  add: (
    key: string,
    text: string,
    item: Understood['comfort'][number] | Understood['surfaces'][number],
    put: HeardLine['put'],
  ) => void,
): void {
  for (const one of comfort) {
    const { scale, foot, level, by } = one
    add(keyOf({ part: 'comfort', scale, foot }), level, one, (draft) => ({
      ...draft,
      comfort: { ...draft.comfort, [scale]: { ...draft.comfort[scale], [foot]: level } },
    }))
    if (by === null) continue
    add('lamenessBy', by, one, (draft) => ({ ...draft, comfort: { ...draft.comfort, lamenessBy: by } }))
  }
  for (const one of surfaces) {
    const { surface, level } = one
    add(keyOf({ part: 'surfaces', surface }), level, one, (draft) => ({
      ...draft,
      comfort: { ...draft.comfort, surfaces: { ...draft.comfort.surfaces, [surface]: level } },
    }))
  }
}

/** The draft without a question that the person has settled. */
export const settled = (draft: YardDraft, question: number): YardDraft => ({
  ...draft,
  questions: draft.questions.filter((_, index) => index !== question),
})
