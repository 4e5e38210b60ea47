/**
 * Keeps the yard page on the phone, so that it opens without a network. A newer build is fetched whole beside the old one
 * and waits until the page says that it may take its place. Nothing outside the page's own folder is answered.
 */
import { cleanupOutdatedCaches, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching'
import { takeNow } from './yard/worker-messages.ts'

/** What of the worker's world the compiler does not know by itself. */
interface WorkerWorld {
  /** The page and what stands beside it; the build writes it at the head of this file. */
  readonly keptFiles: readonly PrecacheEntry[]
  addEventListener(kind: 'message', listen: (event: { readonly data: unknown }) => void): void
  skipWaiting(): Promise<void>
}

const worker = self as unknown as WorkerWorld

precacheAndRoute([...worker.keptFiles], { directoryIndex: 'index.html', cleanURLs: false })
cleanupOutdatedCaches()
worker.addEventListener('message', ({ data }) => {
  if (data === takeNow) void worker.skipWaiting()
})
