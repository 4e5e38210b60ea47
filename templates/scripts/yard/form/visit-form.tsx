/** A visit written at the hoof, with one hand. */
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Stage } from '../../../../src/casebook/model.ts'
import type { Foot } from '../../../../src/hoof/feet.ts'
import { formatter } from '../../../../src/pages/shared/format.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import { addressOf } from '../opened.ts'
import { Danger } from './danger.tsx'
import type { KeptDraft } from './drafts.ts'
import { FeetBar } from './feet-bar.tsx'
import { Findings } from './findings.tsx'
import { Finish } from './finish.tsx'
import type { FormFrame } from './frame.ts'
import { Going } from './going.tsx'
import { KeptLine, RoomLeft } from './kept-line.tsx'
import { Measure } from './measure.tsx'
import { Pictures } from './pictures.tsx'
import type { SaveState } from './saver.ts'
import { Speak } from './speak.tsx'
import { isDone, isSame, roundOf, type Step, stepsOf } from './steps.ts'
import { useDraft } from './use-draft.ts'
import { readingsOf, useChecked, useHorse } from './use-horse.ts'
import { changedDraft, type Tab, type Writing, WritingContext } from './writing.ts'

export function VisitForm({ draft: id, ...frame }: FormFrame & { readonly draft: string }) {
  const { yard, words, drafts } = frame
  const w = words.yardForm
  const { state, saved, change, takeOver, settled } = useDraft(drafts, id)
  const isOpen = state.is === 'open'
  // What the page hands over is new whenever it draws itself; what these do is the same.
  // biome-ignore-start lint/correctness/useExhaustiveDependencies: see above
  useEffect(() => {
    yard.busy(isOpen)
    return () => yard.busy(false)
  }, [isOpen])
  useEffect(() => yard.beforeLock(settled), [])
  // biome-ignore-end lint/correctness/useExhaustiveDependencies: see above
  if (state.is === 'open')
    return <Form {...frame} kept={state.kept} saved={saved} changeKept={change} key={id} />
  return (
    <div class="yf yf-lone">
      <p role="status">
        {state.is === 'elsewhere' ? w.elsewhere : state.is === 'missing' ? w.missing : w.opening}
      </p>
      {state.is === 'elsewhere' && (
        <button type="button" class="yf-wide yf-next" onClick={takeOver}>
          {w.takeOver}
        </button>
      )}
      {state.is !== 'opening' && (
        <p>
          <a href={addressOf.drafts}>{w.toList}</a>
        </p>
      )}
    </div>
  )
}

interface FormProps extends FormFrame {
  readonly kept: KeptDraft
  readonly saved: SaveState
  changeKept(how: (kept: KeptDraft) => KeptDraft): void
}

const parts = {
  measure: Measure,
  findings: Findings,
  going: Going,
  pictures: Pictures,
  speak: Speak,
  finish: Finish,
} satisfies Record<Tab, () => unknown>

function Form({ kept, saved, changeKept, ...frame }: FormProps) {
  const { yard, words, drafts } = frame
  const w = words.yardForm
  const { draft } = kept
  const horse = useHorse(yard, draft.horse)
  const [tab, show] = useState<Tab>('measure')
  const [step, setStep] = useState<Step | null>(null)
  const checked = useChecked(horse.opened, draft)
  const { practice, knowledge } = horse
  const round = roundOf(knowledge, draft)
  const at = step === null ? -1 : round.findIndex((one) => isSame(one, step))
  const foot = step?.foot ?? knowledge.feetOrder[0] ?? 'LF'
  const [stage, setStage] = useState<Stage>('before')
  const [left, setLeft] = useState<Step | null>(null)
  const [isTyping, setTyping] = useState(false)
  const go = (to: Step) => {
    setLeft(step)
    setTyping(false)
    setStep(to)
    if (to.kind === 'reading') setStage(to.stage)
    show(to.kind === 'findings' ? 'findings' : 'measure')
  }
  const open = (from: number) => round.slice(from).find((one) => !isDone(knowledge, draft, one))
  // The round goes on where it was left, once the horse is known.
  useEffect(() => {
    const to = open(0)
    if (horse.isReady && step === null && to) go(to)
  })
  /** To the first value of a foot that is not read yet. */
  const toFoot = (of: Foot, during: Stage) => {
    const steps = stepsOf(knowledge, draft, during, of).filter(({ kind }) => kind !== 'findings')
    const to = steps.find((one) => !isDone(knowledge, draft, one)) ?? steps[0]
    setStep(to ?? { kind: 'findings', foot: of })
    setStage(during)
  }
  const written = (how: (draft: YardDraft) => YardDraft, byPad: boolean) => {
    setTyping(byPad)
    changeKept((before) => {
      const next = how(before.draft)
      return next === before.draft ? before : { ...before, draft: changedDraft(next) }
    })
  }
  const writing: Writing = {
    yard,
    drafts,
    words,
    kept,
    draft,
    practice,
    opened: horse.opened,
    knowledge,
    checked,
    format: useMemo(() => formatter(practice.units, words), [practice, words]),
    horseName: yard.index.horses.find((one) => one.id === draft.horse)?.name ?? draft.horse,
    foot,
    stage,
    tab,
    step,
    pictureReadings: useMemo(() => readingsOf(kept), [kept]),
    left,
    isTyping,
    change: (how) => written(how, false),
    type: (how) => written(how, true),
    changeKept,
    show: (to) => {
      setTyping(false)
      show(to)
    },
    go,
    next: () => {
      const to = open(at + 1)
      if (to) go(to)
      else show('finish')
    },
    back: () => {
      const to = round[at - 1]
      if (to) go(to)
    },
    chooseFoot: (of) => toFoot(of, stage),
    chooseStage: (to) => toFoot(foot, to),
  }
  const Part = parts[tab]
  return (
    <WritingContext.Provider value={writing}>
      <div class="yf" data-hand={yard.settings.hand}>
        <header class="yf-head">
          <a class="yf-leave" href={addressOf.horse(draft.horse)} aria-label={w.leave}>
            ‹
          </a>
          <h1 class="yf-title">{w.visitOf(writing.horseName, writing.format.shortDate(draft.date))}</h1>
          <button
            type="button"
            class="yf-quiet"
            aria-pressed={tab === 'speak'}
            onClick={() => show(tab === 'speak' ? 'measure' : 'speak')}
          >
            {w.tabs.speak}
          </button>
          <KeptLine saved={saved} />
        </header>
        <div class="yf-top">
          <FeetBar />
          <Danger />
        </div>
        {horse.isReady && horse.opened === null && <p class="yf-message is-warning">{w.notJudged}</p>}
        <RoomLeft drafts={drafts} words={words} asked={draft.photos.length} />
        <div class="yf-part">
          <Part />
        </div>
        <nav class="yf-tabs" aria-label={w.parts}>
          {(['measure', 'findings', 'going', 'pictures', 'finish'] as const).map((one) => (
            <button
              key={one}
              type="button"
              aria-current={one === tab ? 'page' : undefined}
              onClick={() => {
                if (one === 'measure' && step?.kind === 'findings') toFoot(foot, stage)
                show(one)
              }}
            >
              {w.tabs[one]}
            </button>
          ))}
        </nav>
      </div>
    </WritingContext.Provider>
  )
}
