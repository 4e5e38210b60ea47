/** What every part of the form works with: the draft, what is known of the horse, and what is said of what was written. */
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Practice, Stage } from '../../../../src/casebook/model.ts'
import type { Foot } from '../../../../src/hoof/feet.ts'
import type { AnyMeasureId } from '../../../../src/hoof/measures.ts'
import type { Formatter } from '../../../../src/pages/shared/format.ts'
import type { YardWords } from '../../../../src/pages/words/yard.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import { keyOf, type YardField } from '../../../../src/yard/field.ts'
import type { HorseKnowledge } from '../../../../src/yard/knowledge.ts'
import type { OpenHorse, YardChecked, YardMessage } from '../../../../src/yard/open-horse.ts'
import type { KeptDraft } from './drafts.ts'
import type { FormFrame } from './frame.ts'
import type { Step } from './steps.ts'

export type Tab = 'measure' | 'findings' | 'going' | 'pictures' | 'speak' | 'finish'

export interface Writing extends FormFrame {
  readonly kept: KeptDraft
  readonly draft: YardDraft
  readonly practice: Practice
  /** Null where the horse's files cannot be read: nothing is judged then. */
  readonly opened: OpenHorse | null
  readonly knowledge: HorseKnowledge
  readonly checked: YardChecked | null
  readonly format: Formatter<YardWords>
  readonly horseName: string
  readonly foot: Foot
  readonly stage: Stage
  readonly tab: Tab
  readonly step: Step | null
  /** The step before it, of which something may have been said since. */
  readonly left: Step | null
  /** Whether a value is being typed: its first digit is no reading yet. */
  readonly isTyping: boolean
  /** What points marked on this visit's pictures measure. */
  readonly pictureReadings: readonly PictureReading[]
  change(how: (draft: YardDraft) => YardDraft): void
  /** The same by the pad. */
  type(how: (draft: YardDraft) => YardDraft): void
  changeKept(how: (kept: KeptDraft) => KeptDraft): void
  show(tab: Tab): void
  /** To a step of the round. */
  go(step: Step): void
  /** To the next step of the round, and to the one before. */
  next(): void
  back(): void
  chooseFoot(foot: Foot): void
  chooseStage(stage: Stage): void
}

export interface PictureReading {
  readonly foot: Foot
  readonly stage: Stage
  readonly measure: AnyMeasureId
  readonly value: number
  /** Half of the range in which the true value lies. */
  readonly half: number
}

export const WritingContext = createContext<Writing | null>(null)

export function useWriting(): Writing {
  const writing = useContext(WritingContext)
  if (writing === null) throw new Error('no visit is being written')
  return writing
}

/** What is said of a field. */
export const messagesOf = (checked: YardChecked | null, field: YardField): readonly YardMessage[] =>
  checked?.messages.filter((message) => message.field !== null && keyOf(message.field) === keyOf(field)) ?? []

/** The draft as changed: of a later version where it was given out before. */
export const changedDraft = (draft: YardDraft): YardDraft => ({
  ...draft,
  changed: new Date().toISOString(),
  version: draft.given === draft.version ? draft.version + 1 : draft.version,
})
