/** The horse of a visit, opened once, and what is said of the visit with each change. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { memoryFolder } from '../../../../src/casebook/memory-folder.ts'
import type { Practice } from '../../../../src/casebook/model.ts'
import { readPractice } from '../../../../src/casebook/read.ts'
import { feet } from '../../../../src/hoof/feet.ts'
import { measureLandmarks, shownHalf } from '../../../../src/hoof/landmarks.ts'
import type { MeasureId } from '../../../../src/hoof/measures.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import type { HorseKnowledge } from '../../../../src/yard/knowledge.ts'
import { type OpenHorse, openHorse, type YardChecked } from '../../../../src/yard/open-horse.ts'
import type { OpenedYard } from '../opened.ts'
import type { KeptDraft } from './drafts.ts'
import type { PictureReading } from './writing.ts'

export interface HorseOfVisit {
  readonly isReady: boolean
  readonly practice: Practice
  readonly opened: OpenHorse | null
  readonly knowledge: HorseKnowledge
}

export function useHorse(yard: OpenedYard, id: string): HorseOfVisit {
  const { index, part: partOf, today } = yard
  const practice = useMemo(() => practiceOf(yard), [index])
  const [horse, setHorse] = useState<{ readonly opened: OpenHorse | null } | null>(null)
  useEffect(() => {
    let isGone = false
    const open = async () => {
      const part = await partOf(id)
      return part && openHorse(index, part, today())
    }
    // Whatever is wrong with what is known of the horse, its visit can be written.
    open()
      .catch(() => null)
      .then((opened) => {
        if (!isGone) setHorse({ opened })
      })
    return () => {
      isGone = true
    }
  }, [index, partOf, id])
  const opened = horse?.opened ?? null
  const knowledge = useMemo(() => opened?.knowledge ?? nothingKnown(practice), [opened, practice])
  return { isReady: horse !== null, practice, opened, knowledge }
}

/** The page was built from a practice.md that can be read. */
export function practiceOf({ index, today }: OpenedYard): Practice {
  const { practice } = readPractice(memoryFolder({ 'practice.md': index.practiceFile }), today())
  if (practice === null) throw new Error('practice.md cannot be read')
  return practice
}

/** What is asked of all feet where nothing is known. */
const firstAsked: readonly MeasureId[] = ['toe-length', 'toe-angle', 'heel-medial', 'heel-lateral']
const ofAll = (asked: readonly MeasureId[]) => asked.map((measure) => ({ measure, of: feet }))

/** Of a horse whose files cannot be read. */
const nothingKnown = ({ units, feetOrder, trimCycleDays }: Practice): HorseKnowledge => ({
  units,
  feetOrder: feetOrder.length === feet.length ? feetOrder : feet,
  last: [],
  asked: { before: ofAll(firstAsked), after: ofAll(['toe-length']) },
  openFindings: [],
  features: [],
  lastCare: [],
  usualDays: trimCycleDays,
  surfaces: [],
})

/** A draft is judged once it rests so long, milliseconds: a digit is on the screen before it is judged. */
const rest = 120

/** What is said of the draft; of its last state until the new one is judged. */
export function useChecked(opened: OpenHorse | null, draft: YardDraft): YardChecked | null {
  const [checked, setChecked] = useState<YardChecked | null>(null)
  const isFirst = useRef(true)
  useEffect(() => {
    if (opened === null) return
    const waited = setTimeout(() => setChecked(opened.check(draft)), isFirst.current ? 0 : rest)
    isFirst.current = false
    return () => clearTimeout(waited)
  }, [opened, draft])
  return checked
}

/** What the marked points of a visit's pictures measure. */
export const readingsOf = ({ draft, marks }: KeptDraft): readonly PictureReading[] =>
  draft.photos.flatMap(({ foot, stage, view, sha256, landmarks }) => {
    const marked = marks[sha256]
    if (foot === null || stage === null || marked === undefined || landmarks === null) return []
    return measureLandmarks(marked, view).map(({ measure, value, sd }) => ({
      foot,
      stage,
      measure,
      value,
      half: shownHalf(sd),
    }))
  })
