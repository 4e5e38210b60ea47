/** How the horse goes and what shape it is in. */
import { useState } from 'preact/hooks'
import { type Foot, feet } from '../../../../src/hoof/feet.ts'
import { scales } from '../../../../src/hoof/scales.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import { Choice } from './choice.tsx'
import { Said } from './said.tsx'
import { useWriting } from './writing.ts'

type FootScale = 'lameness' | 'landing' | 'digital pulse'
const footScales: readonly FootScale[] = ['digital pulse', 'landing', 'lameness']

const levelsOf = (scale: keyof typeof scales) =>
  scales[scale].levels.map(({ level, meaning }) => ({ value: level, text: level, name: `${level}: ${meaning}` }))

/** The draft with a level of a foot; null takes it away. */
function judged(draft: YardDraft, scale: FootScale, foot: Foot, level: string | null): YardDraft {
  const { [foot]: _, ...others } = draft.comfort[scale]
  const of = level === null ? others : { ...others, [foot]: level }
  const lamenessBy = draft.comfort.lamenessBy ?? (scale === 'lameness' ? 'practitioner' : null)
  return { ...draft, comfort: { ...draft.comfort, lamenessBy, [scale]: of } }
}

export function Going() {
  const { foot, draft, change, words, format } = useWriting()
  const w = words.yardForm
  const names = { lameness: w.lameness, landing: w.landing, 'digital pulse': w.pulse }
  const { comfort } = draft
  const isSaid = footScales.some((scale) => comfort[scale][foot] !== undefined)
  return (
    <section aria-label={w.tabs.going}>
      {footScales.map((scale) => (
        <div key={scale}>
          <Choice
            label={w.onFoot(names[scale], format.foot(foot))}
            isShown
            isScale
            options={levelsOf(scale)}
            chosen={comfort[scale][foot] ?? null}
            choose={(level) => change((now) => judged(now, scale, foot, level))}
          />
          <Said field={{ part: 'comfort', scale, foot }} />
        </div>
      ))}
      {Object.keys(comfort.lameness).length > 0 && (
        <Choice
          label={w.lamenessBy}
          isShown
          options={(['practitioner', 'vet'] as const).map((value) => ({ value, text: w.judges[value] }))}
          chosen={comfort.lamenessBy}
          choose={(lamenessBy) => change((now) => ({ ...now, comfort: { ...now.comfort, lamenessBy } }))}
        />
      )}
      <button
        type="button"
        class="yf-wide"
        disabled={!isSaid}
        onClick={() => change((now) => sameOnAll(now, foot))}
      >
        {w.sameOnAll}
      </button>
      <Surfaces />
      <Body />
    </section>
  )
}

/** What is said of this foot said of the others as well. */
const sameOnAll = (draft: YardDraft, foot: Foot): YardDraft =>
  footScales.reduce((all, scale) => {
    const level = draft.comfort[scale][foot]
    return level === undefined ? all : feet.reduce((now, one) => judged(now, scale, one, level), all)
  }, draft)

function Surfaces() {
  const { draft, change, knowledge, words } = useWriting()
  const w = words.yardForm
  const [other, setOther] = useState('')
  const { surfaces } = draft.comfort
  const names = [...new Set([...knowledge.surfaces, ...Object.keys(surfaces)])]
  const say = (name: string, level: string | null) =>
    change((now) => {
      const { [name]: _, ...others } = now.comfort.surfaces
      return {
        ...now,
        comfort: { ...now.comfort, surfaces: level === null ? others : { ...others, [name]: level } },
      }
    })
  const [added, setAdded] = useState<readonly string[]>([])
  const add = () => {
    const name = other.trim()
    if (name !== '') setAdded([...added.filter((one) => one !== name), name])
    setOther('')
  }
  return (
    <div>
      <h2>{w.surfaces}</h2>
      {[...new Set([...names, ...added])].map((name) => (
        <div key={name}>
          <Choice
            label={name}
            isShown
            isScale
            options={levelsOf('surfaces')}
            chosen={surfaces[name] ?? null}
            choose={(level) => say(name, level)}
          />
          <Said field={{ part: 'surfaces', surface: name }} />
        </div>
      ))}
      <div class="yf-add">
        <label>
          {w.otherSurface}
          <input value={other} onInput={(event) => setOther(event.currentTarget.value)} />
        </label>
        <button type="button" onClick={add} disabled={other.trim() === ''}>
          {w.add}
        </button>
      </div>
    </div>
  )
}

function Body() {
  const { draft, change, words, knowledge } = useWriting()
  const w = words.yardForm
  const unit = knowledge.units === 'in' ? 'lb' : 'kg'
  const set = (key: 'weight' | 'condition' | 'crest', text: string) =>
    change((now) => ({ ...now, body: { ...now.body, [key]: text } }))
  return (
    <details class="yf-fold" open={Object.values(draft.body).some((text) => text !== '')}>
      <summary>{w.body}</summary>
      <label class="yf-field">
        {w.weight} <span class="yf-was">{w.weightHint(unit)}</span>
        <input
          inputMode="decimal"
          autoComplete="off"
          value={draft.body.weight.replace(/ (?:kg|lb)$/, '')}
          onInput={({ currentTarget: { value } }) =>
            set('weight', /^[\d.,]+$/.test(value.trim()) ? `${value.trim()} ${unit}` : value.trim())
          }
        />
      </label>
      <Said field={{ part: 'body', key: 'weight' }} />
      {(['condition', 'crest'] as const).map((key) => (
        <div key={key}>
          <Choice
            label={w[key]}
            isShown
            isScale
            options={levelsOf(key)}
            chosen={draft.body[key] === '' ? null : draft.body[key]}
            choose={(level) => set(key, level ?? '')}
          />
          <Said field={{ part: 'body', key }} />
        </div>
      ))}
    </details>
  )
}
