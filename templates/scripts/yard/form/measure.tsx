/** One measure at a time: what it was, what it is, what is odd about it, and a tap to the next. */
import { useEffect, useRef } from 'preact/hooks'
import { isMeasureId, type MeasureId, measureIds, measures } from '../../../../src/hoof/measures.ts'
import { parseAngle, parseLength } from '../../../../src/hoof/units.ts'
import { capital, type Formatter } from '../../../../src/pages/shared/format.ts'
import type { YardWords } from '../../../../src/pages/words/yard.ts'
import { decimalSign } from '../../../../src/pages/words/local.ts'
import type { YardField } from '../../../../src/yard/field.ts'
import { Keypad } from './keypad.tsx'
import { Said } from './said.tsx'
import { isSame, keyOfStep, type Step, stageOf, stepsOf, textOf, writtenAt, written } from './steps.ts'
import { erased, pressed, withUnit } from './typed.ts'
import { messagesOf, useWriting, type Writing } from './writing.ts'

type ValueStep = Exclude<Step, { kind: 'findings' }>

export function Measure() {
  const writing = useWriting()
  const { step, words, format, draft, knowledge, stage, foot } = writing
  const w = words.yardForm
  // Of a foot that is asked for nothing, any measure may be chosen all the same.
  const now = step?.kind === 'findings' ? null : step
  const besides = besidesOf(writing)
  return (
    <section class="yf-measure" aria-label={w.tabs.measure}>
      <div class="yf-keys yf-stages" role="group" aria-label={w.stage}>
        {(['before', 'after'] as const).map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={one === stage}
            onClick={() => writing.chooseStage(one)}
          >
            {w.stages[one]}
          </button>
        ))}
      </div>
      {now && <Value step={now} />}
      {now && <h2>{w.allOfFoot(format.foot(foot))}</h2>}
      <ul class="yf-rows">
        {[...stepsOf(knowledge, draft, stage, foot), ...besides].map((one) => (
          <StepRow key={keyOfStep(one)} step={one} isNow={now !== null && isSame(one, now)} />
        ))}
      </ul>
      <OtherMeasures />
    </section>
  )
}

/** What was read of the foot at this stage though it is not asked for. */
function besidesOf({ draft, knowledge, stage, foot }: Writing): readonly Step[] {
  const asked = stepsOf(knowledge, draft, stage, foot).map(keyOfStep)
  return draft.readings
    .filter((one) => one.stage === stage && one.foot === foot)
    .flatMap(({ measure }): readonly Step[] =>
      isMeasureId(measure) ? [{ kind: 'reading', stage, foot, measure }] : [],
    )
    .filter((step) => !asked.includes(keyOfStep(step)))
}

function Value({ step }: { readonly step: ValueStep }) {
  const writing = useWriting()
  const { draft, words, format, knowledge, type, next } = writing
  const w = words.yardForm
  const text = textOf(draft, step)
  const isHeard = writtenAt(draft, step)?.heard != null
  const name = nameOf(step, writing)
  const unit = unitOf(step, format)
  // What stood before is replaced by the first key, and kept by a look.
  const isFresh = useRef(true)
  const last = lastOf(step, writing)
  // biome-ignore lint/correctness/useExhaustiveDependencies: fresh with every step
  useEffect(() => {
    isFresh.current = true
  }, [name, step.foot, stageOf(step)])
  const write = (to: string) => {
    isFresh.current = false
    type((now) => written(now, step, to))
  }
  const isLength = step.kind === 'feature' || measures[step.measure].kind === 'length'
  return (
    <>
      <div class="yf-value">
        <h2 aria-live="polite">
          <label for="yf-value">
            {capital(name)} <span class="yf-unit">{unit}</span>
          </label>
        </h2>
        <p class="yf-was">
          {last.text} {pictureText(step, writing)}
        </p>
        <input
          id="yf-value"
          value={text}
          inputMode="none"
          autoComplete="off"
          enterKeyHint="next"
          class={isHeard ? 'is-heard' : ''}
          size={6}
          onInput={(event) => write(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return
            event.preventDefault()
            next()
          }}
        />
        <output class="yf-difference" for="yf-value">
          {differenceText(step, text, last.value, writing)}
        </output>
      </div>
      <Keypad
        isInches={isLength && knowledge.units === 'in'}
        sign={decimalSign(words.base.formats)}
        words={w.keys}
        isEmpty={text === ''}
        press={(key) => write(pressed(isFresh.current ? '' : text, key))}
        erase={() => write(erased(text))}
        next={next}
        back={writing.back}
      />
      <Said field={fieldOf(step, writing)} fix={write} />
      <OfStepBefore />
    </>
  )
}

/** What is said of the value before, which was left before it could be said. */
function OfStepBefore() {
  const writing = useWriting()
  const { left, step, words, go, checked } = writing
  if (left === null || left.kind === 'findings' || (step !== null && isSame(left, step))) return null
  const field = fieldOf(left, writing)
  if (messagesOf(checked, field).length === 0) return null
  return (
    <>
      <Said field={field} about={`${left.foot} ${nameOf(left, writing)}.`} />
      <button type="button" class="yf-wide" onClick={() => go(left)}>
        {words.yardForm.backTo(nameOf(left, writing))}
      </button>
    </>
  )
}

/** A step of the foot, to go to and to correct. */
function StepRow({ step, isNow }: { readonly step: Step; readonly isNow: boolean }) {
  const writing = useWriting()
  const { draft, words, go, format } = writing
  if (step.kind === 'findings') return null
  const written = writtenAt(draft, step)
  const text = written?.text ?? ''
  return (
    <li>
      <button type="button" aria-current={isNow ? 'step' : undefined} onClick={() => go(step)}>
        <span>{capital(nameOf(step, writing))}</span>
        <span class="yf-row-value">
          {text === '' ? <span class="yf-was">{lastOf(step, writing).value?.shown ?? ''}</span> : withUnit(text, unitOf(step, format))}
          {written?.heard != null && <span class="yf-heard"> {words.yardForm.heard}</span>}
        </span>
      </button>
    </li>
  )
}

function OtherMeasures() {
  const { knowledge, words, format, stage, foot, go } = useWriting()
  const asked = knowledge.asked[stage].filter(({ of }) => of.includes(foot))
  const others = measureIds.filter((id) => !asked.some(({ measure }) => measure === id))
  return (
    <details class="yf-fold" open={asked.length === 0}>
      <summary>{words.yardForm.otherMeasures}</summary>
      <div class="yf-keys">
        {others.map((measure) => (
          <button key={measure} type="button" onClick={() => go({ kind: 'reading', stage, foot, measure })}>
            {format.name(measure)}
          </button>
        ))}
      </div>
    </details>
  )
}

const nameOf = (step: Step, { format, words }: Pick<Writing, 'format' | 'words'>): string =>
  step.kind === 'reading'
    ? format.name(step.measure)
    : step.kind === 'feature'
      ? words.yardForm.feature(step.what, step.place)
      : ''

const unitOf = (step: ValueStep, format: Formatter<YardWords>): string =>
  step.kind === 'reading' ? format.unit(step.measure) : format.units

interface Last {
  readonly text: string
  readonly value: { readonly amount: number; readonly shown: string } | null
}

/** The last reading at this stage, else at the other one; where a followed feature should be. */
function lastOf(step: Step, { knowledge, words, format }: Writing): Last {
  const w = words.yardForm
  if (step.kind === 'feature') {
    const known = knowledge.features.find(
      ({ foot, feature, place }) => foot === step.foot && feature === step.what && place === step.place,
    )
    const seen = known?.sightings.at(-1)
    if (known === undefined || seen === undefined) return { text: w.featureHow, value: null }
    const shown = format.length(known.expectedNow)
    return {
      text: w.expected(shown, format.length(seen.distance), format.shortDate(seen.date)),
      value: { amount: known.expectedNow, shown },
    }
  }
  if (step.kind === 'findings') return { text: '', value: null }
  const ofCell = knowledge.last.filter(({ foot, measure }) => foot === step.foot && measure === step.measure)
  const same = ofCell.find(({ stage }) => stage === step.stage)
  const last = same ?? ofCell[0]
  if (last === undefined) return { text: w.noLast, value: null }
  const shown = format.measure(step.measure, last.value)
  const date = format.shortDate(last.date)
  const text = same ? w.last(shown, date) : w.lastOther(shown, date, w.lowerStages[last.stage])
  // A difference is told within one stage alone.
  return { text, value: same ? { amount: last.value, shown } : null }
}

function differenceText(step: ValueStep, text: string, last: Last['value'], { format, knowledge, words }: Writing) {
  const measure: MeasureId = step.kind === 'reading' ? step.measure : 'toe-length'
  const now =
    measures[measure].kind === 'angle' ? parseAngle(text) : (parseLength(text, knowledge.units)?.mm ?? null)
  if (now === null || last === null) return ''
  const change = format.change(measure, now - last.amount)
  return /[1-9]/.test(change) ? change : words.yardForm.noDifference
}

function pictureText(step: ValueStep, { pictureReadings, words, format }: Writing): string {
  if (step.kind !== 'reading') return ''
  const found = pictureReadings.find(
    ({ foot, stage, measure }) => foot === step.foot && stage === step.stage && measure === step.measure,
  )
  return found === undefined
    ? ''
    : words.yardForm.ofPicture(
        format.measure(step.measure, found.value),
        format.measure(step.measure, found.half),
      )
}

function fieldOf(step: ValueStep, { draft }: Writing): YardField {
  if (step.kind === 'reading')
    return { part: 'reading', stage: step.stage, measure: step.measure, foot: step.foot }
  const line = writtenAt(draft, step)
  return { part: 'features', index: draft.features.findIndex((one) => one === line) }
}
