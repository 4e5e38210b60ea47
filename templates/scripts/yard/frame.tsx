/** What stands round the screens: the bar to tap with a thumb, and that a newer page is there. */
import { useEffect, useState } from 'preact/hooks'
import { daysBetween } from '../../../src/hoof/dates.ts'
import type { YardWords } from '../../../src/pages/words/yard.ts'
import type { Dates } from './app.tsx'
import type { Drafts } from './form/index.ts'
import type { NewerPage, NewerState } from './newer.ts'
import { addressOf, type OpenedYard } from './opened.ts'

export interface FrameProps {
  readonly yard: OpenedYard
  readonly words: YardWords
  readonly dates: Dates
  readonly drafts: Drafts | null
}

export function Bar({
  words,
  drafts,
  at,
  lock,
}: FrameProps & { readonly at: string; readonly lock: () => void }) {
  const w = words.yard.page
  const tab = (screen: string, href: string, text: string) => (
    <a href={href} aria-current={at === screen ? 'page' : undefined}>
      {text}
    </a>
  )
  return (
    <nav class="bar-below" aria-label={w.menu}>
      {tab('list', addressOf.list, w.day)}
      {drafts === null ? null : tab('drafts', addressOf.drafts, w.drafts)}
      {tab('settings', addressOf.settings, w.settings)}
      <button type="button" onClick={lock}>
        {w.lock}
      </button>
    </nav>
  )
}

export function useNewer(newer: NewerPage): NewerState {
  const [state, setState] = useState<NewerState>({ isThere: false, isKept: false })
  useEffect(() => newer.listen(setState), [newer])
  return state
}

export function News({
  newer,
  isWriting,
  words,
}: {
  readonly newer: NewerPage
  readonly isWriting: boolean
  readonly words: YardWords
}) {
  const w = words.yard.page
  const { isThere } = useNewer(newer)
  return (
    <div role="status">
      {isThere ? (
        <div class="note-above">
          <p>
            <b>{w.news}</b> {isWriting ? w.takeLater : w.takeHow}
          </p>
          <button type="button" disabled={isWriting} onClick={newer.take}>
            {w.take}
          </button>
        </div>
      ) : null}
    </div>
  )
}

/** From when all of it is; a page that is old says what that means. */
export function Age({ yard, words, dates }: Pick<FrameProps, 'yard' | 'words' | 'dates'>) {
  const w = words.yard.page
  const { asOf } = yard.index
  const days = daysBetween(asOf, yard.today())
  const said = days > 0 ? w.asOfAgo(dates.date(asOf), dates.span(days)) : w.asOf(dates.date(asOf))
  return (
    <p class="soft small">
      {said}. {days > oldDays ? w.asOfOld : days < 0 ? w.asOfAhead : null}
    </p>
  )
}

/** A page older than this no longer knows the day. */
const oldDays = 7

/** Why nothing can be written, where that is so. */
export function ReadOnly({ yard, words }: Pick<FrameProps, 'yard' | 'words'>) {
  const w = words.yard.page
  if (yard.cannotKeep === null) return null
  return <p class="notice">{yard.cannotKeep === 'file' ? w.fileOnly : w.noStorage}</p>
}

/** Cautions that always hold. */
export function Careful({ yard, words }: Pick<FrameProps, 'yard' | 'words'>) {
  const { standing, localRules } = yard.index
  return (
    <footer class="careful small soft">
      <p>{standing[0]}</p>
      <details>
        <summary>{words.yard.page.careful}</summary>
        {standing.slice(1).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </details>
      {localRules === null ? null : <p>{localRules}</p>}
    </footer>
  )
}
