/** A box that the phone's own dictation fills; under it what was understood, foot by foot, and what is asked. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { settled } from '../../../../src/yard/dictation.ts'
import { understoodOf } from './understood.ts'
import { useWriting } from './writing.ts'

/** A dictation changes its words all the while: they are understood, and kept, so often, milliseconds. */
const beat = 200

export function Speak() {
  const writing = useWriting()
  const { draft, change, opened, words } = writing
  const w = words.yardForm
  const [text, setText] = useState(draft.dictated)
  const latest = useRef(text)
  const waited = useRef<ReturnType<typeof setTimeout> | null>(null)
  const hear = () => {
    if (waited.current !== null) clearTimeout(waited.current)
    waited.current = null
    change((now) => {
      if (latest.current === now.dictated) return now
      return opened ? opened.hear(now, latest.current) : { ...now, dictated: latest.current }
    })
  }
  const hearNow = useRef(hear)
  hearNow.current = hear
  const write = (to: string) => {
    setText(to)
    latest.current = to
    waited.current ??= setTimeout(() => hearNow.current(), beat)
  }
  // The last words are heard before this part, or the page, is left.
  useEffect(() => {
    const leave = () => hearNow.current()
    document.addEventListener('visibilitychange', leave)
    return () => {
      document.removeEventListener('visibilitychange', leave)
      leave()
    }
  }, [])
  return (
    <section aria-label={w.tabs.speak}>
      <label class="yf-field">
        {w.dictated}
        <textarea
          rows={5}
          value={text}
          aria-describedby="yf-speak-how"
          onInput={(event) => write(event.currentTarget.value)}
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
                  {ask} <span class="yf-was">{said}</span>
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
  const { words, draft } = writing
  const groups = understoodOf(draft, writing)
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
