/** The worker that keeps the page on the phone, and what it says of a newer build. */
import { takeNow } from './worker-messages.ts'

export interface NewerPage {
  /** Tells whenever a newer page is there, and whether this one is kept for times without a network. */
  listen(hear: (state: NewerState) => void): () => void
  /** Takes the newer page's place: the page loads again. */
  take(): void
}

export interface NewerState {
  readonly isThere: boolean
  readonly isKept: boolean
}

/** So often a page that stays open looks for a newer one, when it comes into sight. */
const betweenLooks = 10 * 60 * 1000

/** @param isUsed whether someone is at the page: where nobody is, a newer build takes its place at once */
export function newerPage(isUsed: () => boolean): NewerPage {
  let state: NewerState = { isThere: false, isKept: false }
  let registration: ServiceWorkerRegistration | null = null
  const listeners = new Set<(state: NewerState) => void>()
  const change = (next: Partial<NewerState>) => {
    state = { ...state, ...next }
    for (const hear of listeners) hear(state)
  }
  const take = () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true })
    registration?.waiting?.postMessage(takeNow)
  }
  const waits = () => {
    if (!registration?.waiting || !navigator.serviceWorker.controller) return
    if (isUsed()) change({ isThere: true })
    else take()
  }
  const follow = (worker: ServiceWorker | null) =>
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed') waits()
      if (worker.state === 'activated') change({ isKept: true })
    })
  const start = async () => {
    registration = await navigator.serviceWorker.register('worker.js')
    if (registration.active) change({ isKept: true })
    waits()
    follow(registration.installing)
    registration.addEventListener('updatefound', () => follow(registration?.installing ?? null))
    let looked = Date.now()
    document.addEventListener('visibilitychange', () => {
      if (document.hidden || Date.now() - looked < betweenLooks) return
      looked = Date.now()
      registration?.update().catch(ignore)
    })
  }
  if ('serviceWorker' in navigator && location.protocol !== 'file:') start().catch(ignore)
  return {
    listen: (hear) => {
      listeners.add(hear)
      hear(state)
      return () => listeners.delete(hear)
    },
    take,
  }
}

/** Without a network there is nothing newer; where the browser keeps no worker the page is read all the same. */
const ignore = () => {}
