/** The unlocked page: one screen at a time, and below it where else to go. */
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { PlainDate } from '../../../src/hoof/dates.ts'
import type { YardWords } from '../../../src/pages/words/yard.ts'
import { localFormats, weekdays } from '../../../src/pages/words/local.ts'
import { DayList } from './day-list.tsx'
import { type Drafts, DraftsList, VisitForm } from './form/index.ts'
import { HorseScreen } from './horse-screen.tsx'
import { lockWhenHidden } from './locking.ts'
import { Bar, News } from './frame.tsx'
import type { NewerPage } from './newer.ts'
import type { CannotKeep, OpenedYard, YardSettings } from './opened.ts'
import { type Route, useRoute } from './route.ts'
import type { SealedPage } from './sealed-page.ts'
import { keepSettings, showLight } from './settings.ts'
import { SettingsScreen } from './settings-screen.tsx'

export interface AppProps {
  readonly page: SealedPage
  readonly words: YardWords
  readonly settings: YardSettings
  /** Null where nothing can be written. */
  readonly drafts: Drafts | null
  readonly cannotKeep: CannotKeep | null
  readonly newer: NewerPage
}

/** What every screen writes dates with. */
export type Dates = ReturnType<typeof localFormats> & { readonly weekdays: readonly string[] }

export function App({ page, words, settings: first, drafts, cannotKeep, newer }: AppProps) {
  const [settings, setSettings] = useState(first)
  const [isWriting, setWriting] = useState(false)
  const keepers = useRef(new Set<() => Promise<boolean>>())
  const route = useRoute()
  const dates: Dates = useMemo(
    () => ({ ...localFormats(words.base), weekdays: weekdays(words.base.lang) }),
    [words],
  )
  const change = (next: YardSettings) => {
    keepSettings(next)
    showLight(next.light)
    setSettings(next)
  }
  useEffect(() => {
    document.documentElement.dataset.hand = settings.hand
  }, [settings.hand])
  useEffect(() => lockWhenHidden(() => lockOnceKept(keepers.current)), [])
  useNewScreen(route)
  const yard: OpenedYard = useMemo(
    () => ({
      index: page.index,
      part: page.part,
      today,
      settings,
      cannotKeep,
      busy: setWriting,
      beforeLock: (keep) => {
        keepers.current.add(keep)
        return () => keepers.current.delete(keep)
      },
    }),
    [page, settings, cannotKeep],
  )
  const frame = { yard, words, dates, drafts }
  if (route.screen === 'write' && drafts !== null) {
    return (
      <main id="main" tabIndex={-1}>
        <VisitForm key={route.id} yard={yard} drafts={drafts} words={words} draft={route.id} />
      </main>
    )
  }
  if (route.screen === 'horse') return <HorseScreen key={route.id} {...frame} id={route.id} />
  return (
    <>
      <main id="main" tabIndex={-1} class={route.screen === 'drafts' ? undefined : 'screen'}>
        <News newer={newer} isWriting={isWriting} words={words} />
        {route.screen === 'settings' ? (
          <SettingsScreen {...frame} change={change} newer={newer} />
        ) : route.screen === 'drafts' && drafts !== null ? (
          <DraftsList yard={yard} drafts={drafts} words={words} />
        ) : (
          <DayList {...frame} />
        )}
      </main>
      <Bar {...frame} at={route.screen} lock={() => void lockOnceKept(keepers.current)} />
    </>
  )
}

/** By the phone's own calendar. */
function today(): PlainDate {
  const now = new Date()
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** Loading again is what forgets the key. */
async function lockOnceKept(keepers: ReadonlySet<() => Promise<boolean>>): Promise<void> {
  const kept = await Promise.all([...keepers].map((keep) => keep().catch(() => false)))
  if (kept.every((one) => one)) location.reload()
}

/** A screen that is gone to begins at its top, and is what is read next; one that is gone back to is where it was. */
function useNewScreen(route: Route): void {
  const places = useRef(new Map<string, number>())
  const before = useRef(route)
  /** What is on the screen: the address is another one a moment earlier. */
  const shown = useRef(location.hash)
  useEffect(() => {
    history.scrollRestoration = 'manual'
    const note = () => places.current.set(shown.current, scrollY)
    addEventListener('scroll', note, { passive: true })
    return () => removeEventListener('scroll', note)
  }, [])
  useLayoutEffect(() => {
    const isBack = history.state === seen
    history.replaceState(seen, '')
    if (before.current === route) return
    before.current = route
    shown.current = location.hash
    scrollTo(0, isBack ? (places.current.get(location.hash) ?? 0) : 0)
    document.getElementById('main')?.focus({ preventScroll: true })
  }, [route])
}

/** Marks an entry of the phone's history that was shown before. */
const seen = 'seen'
