/** What ends a visit: care, the next one, notes, who wrote; what is to be looked at again; and giving it out. */
import { useState } from 'preact/hooks'
import { capital } from '../../../../src/pages/shared/format.ts'
import { findingName } from '../../../../src/pages/shared/findings.ts'
import { isMeasureId } from '../../../../src/hoof/measures.ts'
import type { YardField } from '../../../../src/yard/field.ts'
import type { YardMessage } from '../../../../src/yard/open-horse.ts'
import { Choice } from './choice.tsx'
import { GiveOut } from './give-out.tsx'
import { retold } from './photo-lines.ts'
import { Said } from './said.tsx'
import { useWriting, type Writing } from './writing.ts'

export function Finish() {
  const { draft, change, words, yard } = useWriting()
  const w = words.yardForm
  const { people } = yard.index
  return (
    <section aria-label={w.tabs.finish}>
      <Care />
      <NextVisit />
      <label class="yf-field">
        {w.note}
        <textarea
          rows={3}
          value={draft.note}
          onInput={({ currentTarget: { value } }) => change((now) => ({ ...now, note: value }))}
        />
      </label>
      <Said field={{ part: 'note' }} />
      <label class="yf-field">
        {w.forOwner}
        <textarea
          rows={3}
          value={draft.forOwner}
          onInput={({ currentTarget: { value } }) => change((now) => ({ ...now, forOwner: value }))}
        />
      </label>
      <Said field={{ part: 'forOwner' }} />
      {people.length > 1 && (
        <Choice
          label={w.by}
          isShown
          options={people.map(({ id, name }) => ({ value: id, text: name }))}
          chosen={draft.by}
          choose={(by) => change((now) => ({ ...now, by }))}
        />
      )}
      <Said field={{ part: 'by' }} />
      <label class="yf-field">
        {w.date}
        <input
          type="date"
          value={draft.date}
          max={yard.today()}
          onChange={({ currentTarget: { value } }) => {
            if (value !== '')
              change((now) =>
                now.photos.reduce((all, { sha256 }) => retold(all, sha256, {}), { ...now, date: value }),
              )
          }}
        />
      </label>
      <Said field={{ part: 'date' }} />
      <label class="yf-tick">
        <input
          type="checkbox"
          checked={draft.isUnfinished}
          onChange={({ currentTarget: { checked } }) => change((now) => ({ ...now, isUnfinished: checked }))}
        />
        {w.unfinished}
      </label>
      <ToSettle />
      <Out />
    </section>
  )
}

/** The lines of last time, to be ticked again, and new ones. */
function Care() {
  const { draft, change, words, knowledge } = useWriting()
  const w = words.yardForm
  /** The line that is being written stands in the draft from its first letter on. */
  const [line, setLine] = useState('')
  const lines = [...new Set([...knowledge.lastCare, ...draft.care])].filter((text) => text !== line)
  const set = (text: string, isOn: boolean) =>
    change((now) => ({
      ...now,
      care: isOn ? [...now.care, text] : now.care.filter((one) => one !== text),
    }))
  const writeLine = (to: string) => {
    change((now) => {
      const others = now.care.filter((one) => one !== line && one !== to)
      return { ...now, care: to.trim() === '' ? others : [...others, to] }
    })
    setLine(to)
  }
  const add = () => {
    const text = line.trim()
    if (text !== line) writeLine(text)
    setLine('')
  }
  return (
    <fieldset class="yf-care">
      <legend>{w.care}</legend>
      {lines.map((text) => (
        <div key={text}>
          <label class="yf-tick">
            <input
              type="checkbox"
              checked={draft.care.includes(text)}
              onChange={({ currentTarget: { checked } }) => set(text, checked)}
            />
            {text}
          </label>
          <Said field={{ part: 'care', index: draft.care.indexOf(text) }} />
        </div>
      ))}
      <div class="yf-add">
        <label>
          {w.careNew}
          <input
            value={line}
            onInput={({ currentTarget: { value } }) => writeLine(value)}
            onKeyDown={(event) => event.key === 'Enter' && add()}
            onBlur={add}
          />
        </label>
        <button type="button" onClick={add} disabled={line.trim() === ''}>
          {w.add}
        </button>
      </div>
    </fieldset>
  )
}

function NextVisit() {
  const { draft, change, words, knowledge } = useWriting()
  const w = words.yardForm
  const usual = Math.max(1, Math.round(knowledge.usualDays / 7))
  const weeks = [...new Set([usual - 2, usual - 1, usual, usual + 1, usual + 2])].filter((n) => n > 0)
  const set = (nextVisit: string) => change((now) => ({ ...now, nextVisit }))
  const options = weeks.map((n) => ({ value: w.nextVisitText(n), text: String(n), name: w.weeks(n) }))
  return (
    <>
      <Choice
        label={w.nextVisitWeeks}
        isShown
        isScale
        options={options}
        chosen={draft.nextVisit === '' ? null : draft.nextVisit}
        choose={(text) => set(text ?? '')}
      />
      <label class="yf-field">
        {w.nextVisitOther}
        <input
          value={options.some(({ value }) => value === draft.nextVisit) ? '' : draft.nextVisit}
          autoComplete="off"
          onInput={({ currentTarget: { value } }) => set(value)}
        />
      </label>
      <Said field={{ part: 'nextVisit' }} />
    </>
  )
}

/** All that is said of the visit, each with the way back to where it was written. */
function ToSettle() {
  const writing = useWriting()
  const { checked, words, draft, show } = writing
  const w = words.yardForm
  const messages = checked?.messages ?? []
  return (
    <>
      <h2>{w.toSettle}</h2>
      {messages.length + draft.questions.length === 0 && <p class="yf-was">{checked === null ? w.notJudged : w.nothingToSettle}</p>}
      <ul class="yf-rows">
        {draft.questions.map(({ ask, said }) => (
          <li key={ask + said}>
            <button type="button" onClick={() => show('speak')}>
              <span>
                {ask} <span class="yf-was">{said}</span>
              </span>
            </button>
          </li>
        ))}
        {messages.map((one, i) => (
          <li key={`${i} ${one.message}`}>
            <button type="button" class={`is-${one.level}`} onClick={() => goTo(one, writing)}>
              <span>
                <b>{w.level[one.level]}</b> {one.field && `${fieldName(one.field, writing)}: `}
                {one.message}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}

function fieldName(field: YardField, { words, format, draft }: Writing): string {
  const w = words.yardForm
  switch (field.part) {
    case 'reading': {
      const name = isMeasureId(field.measure) ? format.name(field.measure) : field.measure
      return [field.foot ?? '', name].join(' ').trim()
    }
    case 'findings': {
      const finding = draft.findings[field.index]
      return finding ? `${finding.foot} ${findingName(finding)}` : w.tabs.findings
    }
    case 'comfort':
      return [field.foot ?? '', field.scale].join(' ').trim()
    case 'nextVisit':
      return w.nextVisit
    default:
      return ''
  }
}

function goTo({ field }: YardMessage, { show, go, chooseFoot, draft }: Writing): void {
  switch (field?.part) {
    case 'reading':
      if (field.foot && isMeasureId(field.measure))
        go({ kind: 'reading', stage: field.stage, foot: field.foot, measure: field.measure })
      return
    case 'findings':
    case 'features': {
      const line = draft[field.part][field.index]
      if (line) chooseFoot(line.foot)
      show('findings')
      return
    }
    case 'comfort':
      if (field.foot) chooseFoot(field.foot)
      show('going')
      return
    case 'surfaces':
    case 'body':
      show('going')
      return
    case 'photos':
      show('pictures')
      return
    case 'questions':
      show('speak')
  }
}

function Out() {
  const { draft, kept, practice, words, format, horseName, changeKept, ...frame } = useWriting()
  const w = words.yardForm
  const title = w.visitOf(capital(horseName), format.date(draft.date))
  const on = kept.givenOn === null ? '' : format.shortDate(kept.givenOn.slice(0, 10))
  return (
    <>
      <h2>{w.give}</h2>
      {draft.given !== null && (
        <p>
          <b>{draft.given === draft.version ? w.given(on) : w.changedSince(on)}</b>
        </p>
      )}
      <GiveOut
        yard={frame.yard}
        drafts={frame.drafts}
        words={words}
        given={[draft]}
        practice={practice}
        title={title}
        out={() =>
          changeKept((now) => ({
            ...now,
            draft: { ...now.draft, given: now.draft.version },
            givenOn: new Date().toISOString(),
          }))
        }
      />
    </>
  )
}
