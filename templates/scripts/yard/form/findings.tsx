/** What is open on a foot, to be graded now by one tap each; then what is new there. */
import { useState } from 'preact/hooks'
import type { Foot } from '../../../../src/hoof/feet.ts'
import { findingMeanings, places } from '../../../../src/hoof/findings.ts'
import { capital } from '../../../../src/pages/shared/format.ts'
import { findingName } from '../../../../src/pages/shared/findings.ts'
import type { YardDraft } from '../../../../src/yard/draft.ts'
import { Choice } from './choice.tsx'
import { Said } from './said.tsx'
import { useWriting } from './writing.ts'

type Grade = 0 | 1 | 2 | 3
type Written = YardDraft['findings'][number]
interface Matter {
  readonly foot: Foot
  readonly what: string
  readonly place: string
}

/** Asked for most; the rest is a tap away. Common practice, no source. */
const shortList = [
  'thrush',
  'wall separation',
  'white line stretched',
  'flare',
  'crack',
  'chip',
  'bruise',
  'heat',
  'tenderness',
  'drainage',
  'puncture',
]

const isOf = (one: Matter) => (other: Matter) =>
  one.foot === other.foot && one.what === other.what && one.place === other.place

/** The draft with a finding's grade; null takes it away. */
function graded(draft: YardDraft, matter: Matter, grade: Grade | null): YardDraft {
  const { foot, what, place } = matter
  const line: Written = { foot, what, place, grade: grade ?? 0, heard: null }
  const at = draft.findings.findIndex(isOf(matter))
  if (grade === null) return { ...draft, findings: draft.findings.filter((_, i) => i !== at) }
  return {
    ...draft,
    findings: at < 0 ? [...draft.findings, line] : draft.findings.map((one, i) => (i === at ? line : one)),
  }
}

export function Findings() {
  const { foot, draft, knowledge, words, format, next } = useWriting()
  const w = words.yardForm
  const open = knowledge.openFindings.filter((one) => one.foot === foot)
  const added = draft.findings.filter((one) => one.foot === foot && !open.some(isOf(one)))
  return (
    <section aria-label={w.tabs.findings}>
      {open.length === 0 ? <p class="yf-was">{w.noneOpen(format.foot(foot))}</p> : <h2>{w.open}</h2>}
      {open.map((one) => (
        <Graded
          key={one.what + one.place}
          matter={one}
          was={w.wasGrade(one.grade, format.shortDate(one.date))}
        />
      ))}
      {added.map((one) => (
        <Graded key={one.what + one.place} matter={one} was={null} />
      ))}
      <NewFinding foot={foot} />
      <Follow foot={foot} />
      <button type="button" class="yf-next yf-wide" onClick={next}>
        {w.keys.next}
      </button>
    </section>
  )
}

interface GradedProps {
  readonly matter: Matter
  readonly was: string | null
}

function Graded({ matter, was }: GradedProps) {
  const { draft, change, words } = useWriting()
  const w = words.yardForm
  const index = draft.findings.findIndex(isOf(matter))
  const written = draft.findings[index]
  const name = capital(findingName(matter))
  return (
    <div>
      <p class="yf-label">
        {name} {was !== null && <span class="yf-was">{was}</span>}
        {written?.heard != null && <span class="yf-heard"> {w.heard}</span>}
      </p>
      <Choice
        label={w.gradeOf(name)}
        isScale
        options={w.grades.map((text, grade) => ({
          value: grade,
          text: (
            <>
              <b>{grade}</b> {text}
            </>
          ),
        }))}
        chosen={written?.grade ?? null}
        choose={(grade) => change((now) => graded(now, matter, grade as Grade | null))}
      />
      <Said field={{ part: 'findings', index }} />
    </div>
  )
}

/** What, where, how bad: three taps. */
function NewFinding({ foot }: { readonly foot: Foot }) {
  const { change, words, practice } = useWriting()
  const w = words.yardForm
  const [what, setWhat] = useState<string | null>(null)
  const [place, setPlace] = useState<string | null>(null)
  const [isAll, setAll] = useState(false)
  const start = (chosen: string | null) => {
    setWhat(chosen)
    setPlace(null)
    setAll(false)
  }
  const all = [...Object.keys(findingMeanings), ...Object.keys(practice.terms)]
  return (
    <div class="yf-new">
      <h2>{w.newFinding}</h2>
      {what === null ? (
        <div class="yf-keys">
          {(isAll ? all : shortList).map((one) => (
            <button key={one} type="button" onClick={() => start(one)}>
              {one}
            </button>
          ))}
          {!isAll && (
            <button type="button" onClick={() => setAll(true)}>
              {w.allFindings}
            </button>
          )}
        </div>
      ) : (
        <>
          <p class="yf-label">
            {capital(place === null ? what : findingName({ what, place }))}{' '}
            <button type="button" class="yf-quiet" onClick={() => start(null)}>
              {w.cancel}
            </button>
          </p>
          {place === null ? (
            <Choice
              label={w.where}
              isShown
              options={places.map((one) => ({ value: one, text: one }))}
              chosen={place}
              choose={(one) => setPlace(one)}
            />
          ) : (
            <Choice
              label={w.gradeOf(what)}
              isScale
              options={([1, 2, 3] as const).map((grade) => ({
                value: grade,
                text: (
                  <>
                    <b>{grade}</b> {w.grades[grade]}
                  </>
                ),
              }))}
              chosen={null}
              choose={(grade) => {
                change((now) => graded(now, { foot, what, place }, grade))
                start(null)
              }}
            />
          )}
        </>
      )}
    </div>
  )
}

/** Places of the wall, where something grows down. */
const wallPlaces = places.filter((place) => /toe|quarter|heel$/.test(place))

/** Something new to be followed down the wall: then its distance is asked. */
function Follow({ foot }: { readonly foot: Foot }) {
  const { words, go } = useWriting()
  const w = words.yardForm
  const [what, setWhat] = useState<string | null>(null)
  return (
    <details class="yf-fold">
      <summary>{w.follow}</summary>
      <Choice
        label={w.what}
        options={w.followed.map((one) => ({ value: one, text: one }))}
        chosen={what}
        choose={(one) => setWhat(one)}
      />
      {what !== null && (
        <Choice
          label={w.where}
          isShown
          options={wallPlaces.map((one) => ({ value: one, text: one }))}
          chosen={null}
          choose={(place) => place !== null && go({ kind: 'feature', foot, what, place })}
        />
      )}
    </details>
  )
}
