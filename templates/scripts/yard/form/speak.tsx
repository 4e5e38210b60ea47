/** A box that the phone's own dictation fills; under it what was understood, foot by foot, and what is asked. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { isMeasureId } from '../../../../src/hoof/measures.ts'
import { findingName } from '../../../../src/pages/shared/findings.ts'
import { capital } from '../../../../src/pages/shared/format.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import { settled } from '../../../../src/yard/dictation.ts'
import { withUnit } from './typed.ts'
import { useWriting, type Writing } from './writing.ts'

/** A dictation changes its last words while it runs; what is said is understood once it rests so long, milliseconds. */
const rest = 200

export function Speak() {
  const writing = useWriting()
  const { draft, change, opened, words } = writing
  const w = words.yardForm
  const [text, setText] = useState(draft.dictated)
  const latest = useRef(text)
  latest.current = text
  const hear = () =>
    change((now) => {
      if (latest.current === now.dictated) return now
      return opened ? opened.hear(now, latest.current) : { ...now, dictated: latest.current }
    })
  const hearNow = useRef(hear)
  hearNow.current = hear
  // biome-ignore lint/correctness/useExhaustiveDependencies: each further word waits anew
  useEffect(() => {
    const waited = setTimeout(() => hearNow.current(), rest)
    return () => clearTimeout(waited)
  }, [text])
  // What was said last is heard before the part is left.
  useEffect(() => () => hearNow.current(), [])
  return (
    <section class="yf-speak" aria-label={w.tabs.speak}>
      <label class="yf-field">
        {w.dictated}
        <textarea
          rows={5}
          value={text}
          aria-describedby="yf-speak-how"
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <p id="yf-speak-how" class="yf-was">
        {w.speakHow}
      </p>
      {draft.questions.length > 0 && (
        <>
          <h2>{w.asked}</h2>
          <ul class="yf-asked">
            {draft.questions.map(({ ask, said }, i) => (
              <li key={ask + said}>
                <p>
                  {ask} <q class="yf-was">{said}</q>
                </p>
                <button type="button" onClick={() => change((now) => settled(now, i))}>
                  {w.settle}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>{w.understood}</h2>
      <Understood />
    </section>
  )
}

function Understood() {
  const writing = useWriting()
  const { draft, knowledge, words, format } = writing
  const rest = heardOfHorse(draft, writing)
  const byFoot = knowledge.feetOrder.flatMap((foot) => {
    const lines = heardOf(draft, writing).filter((one) => one.foot === foot)
    return lines.length === 0 ? [] : [{ name: capital(format.foot(foot)), lines: lines.map(({ text }) => text) }]
  })
  const groups = [...byFoot, ...(rest.length === 0 ? [] : [{ name: words.yardForm.horse, lines: rest }])]
  if (groups.length === 0) return <p class="yf-was">{words.yardForm.nothingUnderstood}</p>
  return (
    <dl class="yf-understood" aria-live="polite">
      {groups.map(({ name, lines }) => (
        <div key={name}>
          <dt>{name}</dt>
          {lines.map((line) => (
            <dd key={line}>{line}</dd>
          ))}
        </div>
      ))}
    </dl>
  )
}

function heardOf(draft: YardDraft, { format, words }: Writing) {
  const w = words.yardForm
  const unit = (measure: string) => (isMeasureId(measure) ? format.unit(measure) : '')
  const name = (measure: string) => (isMeasureId(measure) ? format.name(measure) : measure)
  return [
    ...draft.readings
      .filter(({ heard }) => heard !== null)
      .map(({ foot, stage, measure, text }) => ({
        foot,
        text: `${name(measure)} ${withUnit(text, unit(measure))}, ${w.lowerStages[stage]}`,
      })),
    ...draft.findings
      .filter(({ heard }) => heard !== null)
      .map((one) => ({ foot: one.foot, text: `${findingName(one)}: ${one.grade} ${w.grades[one.grade]}` })),
    ...draft.features
      .filter(({ heard }) => heard !== null)
      .map(({ foot, what, place, text }) => ({ foot, text: `${w.feature(what, place)}: ${text}` })),
  ]
}

/** What dictation has put into the lists that say of no line whether it was heard. */
const heardOfHorse = (draft: YardDraft, { words }: Writing): readonly string[] =>
  draft.dictated === ''
    ? []
    : [...draft.care, ...(draft.nextVisit === '' ? [] : [`${words.yardForm.nextVisit}: ${draft.nextVisit}`])]
