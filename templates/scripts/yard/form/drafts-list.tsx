/** What was written on this phone and is not in the casebook yet, and what has arrived there. */
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks'
import { formatter } from '../../../../src/pages/shared/format.ts'
import { addressOf } from '../opened.ts'
import type { Drafts, Kept, KeptDraft } from './drafts.ts'
import type { FormFrame } from './frame.ts'
import { GiveOut } from './give-out.tsx'
import { RoomLeft } from './kept-line.tsx'
import { practiceOf } from './use-horse.ts'
import { arrivedVersion, isWaiting, waitingIn } from './waiting.ts'

/** How long what was thrown away can be brought back, milliseconds. */
const aDay = 24 * 60 * 60 * 1000

/** What has been thrown away for longer goes for good. */
async function readAll(drafts: Drafts): Promise<Kept> {
  const kept = await drafts.all()
  const isOver = ({ thrownAway }: KeptDraft) =>
    thrownAway !== null && Date.now() - Date.parse(thrownAway) > aDay
  await Promise.all(kept.drafts.filter(isOver).map(({ draft }) => drafts.remove(draft.id)))
  return { ...kept, drafts: kept.drafts.filter((one) => !isOver(one)) }
}

export function DraftsList(frame: FormFrame) {
  const { yard, drafts, words } = frame
  const w = words.yardForm
  const [kept, setKept] = useState<Kept | null>(null)
  const [lastThrown, setLastThrown] = useState<KeptDraft | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the practice is of the index alone
  const practice = useMemo(() => practiceOf(yard), [yard.index])
  const format = useMemo(() => formatter(practice.units, words), [practice, words])
  const reload = useCallback(() => {
    readAll(drafts).then(setKept)
  }, [drafts])
  useEffect(reload, [reload])
  if (kept === null) return <p role="status">{w.opening}</p>
  const change = async (one: KeptDraft, to: Partial<KeptDraft>) => {
    await drafts.write({ ...one, ...to })
    reload()
  }
  const throwAway = async (one: KeptDraft) => {
    await change(one, { thrownAway: new Date().toISOString() })
    setLastThrown(one)
  }
  const bringBack = async (one: KeptDraft) => {
    await change(one, { thrownAway: null })
    setLastThrown(null)
  }
  const here = kept.drafts.filter(({ thrownAway }) => thrownAway === null)
  const waiting = waitingIn(kept, yard.index)
  const arrived = here.filter((one) => !isWaiting(one, yard.index))
  const thrown = kept.drafts.filter(({ thrownAway }) => thrownAway !== null)
  const name = ({ draft }: KeptDraft) =>
    w.visitOf(
      yard.index.horses.find(({ id }) => id === draft.horse)?.name ?? draft.horse,
      format.shortDate(draft.date),
    )
  const stateOf = ({ draft, givenOn }: KeptDraft) => {
    if (draft.given === null || givenOn === null) return w.waiting
    const on = format.shortDate(givenOn.slice(0, 10))
    return draft.given === draft.version ? w.given(on) : w.changedSince(on)
  }
  const out = async () => {
    const givenOn = new Date().toISOString()
    for (const one of waiting)
      await drafts.write({ ...one, draft: { ...one.draft, given: one.draft.version }, givenOn })
    reload()
  }
  return (
    <section class="yf yf-lone yf-list" aria-labelledby="yf-list-head" data-hand={yard.settings.hand}>
      <h1 id="yf-list-head">{w.list}</h1>
      <RoomLeft drafts={drafts} words={words} asked={kept.drafts.length} />
      {lastThrown !== null && (
        <div role="status" class="yf-message is-warning">
          <p>{w.thrownAway(name(lastThrown))}</p>
          <button type="button" onClick={() => bringBack(lastThrown)}>
            {w.undo}
          </button>
        </div>
      )}
      {waiting.length === 0 && <p>{w.noneWaiting}</p>}
      <ul class="yf-kept-drafts">
        {waiting.map((one) => (
          <li key={one.draft.id}>
            <a href={addressOf.write(one.draft.id)}>
              <b>{name(one)}</b>
              <span>{stateOf(one)}</span>
              {one.draft.photos.length > 0 && <span>{w.pictures(one.draft.photos.length)}</span>}
              {arrivedVersion(one, yard.index) !== null && <span>{w.arrivedOlder}</span>}
            </a>
            <button type="button" class="yf-quiet" onClick={() => throwAway(one)} aria-label={`${w.throwAway}: ${name(one)}`}>
              {w.throwAway}
            </button>
          </li>
        ))}
      </ul>
      {waiting.length > 0 && (
        <>
          <h2>{w.giveAll}</h2>
          <GiveOut
            {...frame}
            given={waiting.map(({ draft }) => draft)}
            practice={practice}
            title={waiting.map(name).join('; ')}
            out={out}
          />
        </>
      )}
      {arrived.length > 0 && (
        <details class="yf-fold">
          <summary>
            {w.arrived} ({arrived.length})
          </summary>
          <button
            type="button"
            class="yf-wide"
            onClick={async () => {
              for (const one of arrived) await throwAway(one)
            }}
          >
            {w.allFromPhone}
          </button>
          <Others all={arrived} name={name} does={w.fromPhone} act={throwAway} />
        </details>
      )}
      {thrown.length > 0 && (
        <details class="yf-fold">
          <summary>{w.thrown}</summary>
          <Others all={thrown} name={name} does={w.undo} act={bringBack} />
        </details>
      )}
      {kept.unreadable.length > 0 && (
        <>
          <h2>{w.unreadable}</h2>
          <ul>
            {kept.unreadable.map(({ id, why, written }) => (
              <li key={id}>
                {id}. {w.unreadableWhy[why](format.date(written.slice(0, 10)))}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

interface OthersProps {
  readonly all: readonly KeptDraft[]
  readonly does: string
  name(one: KeptDraft): string
  act(one: KeptDraft): void
}

const Others = ({ all, does, name, act }: OthersProps) => (
  <ul class="yf-kept-drafts">
    {all.map((one) => (
      <li key={one.draft.id}>
        <span>{name(one)}</span>
        <button type="button" class="yf-quiet" aria-label={`${does}: ${name(one)}`} onClick={() => act(one)}>
          {does}
        </button>
      </li>
    ))}
  </ul>
)
