/** Shows one built edition, as far as the build made it, tells open pages when to load again, and opens marking pages. */
import { randomBytes } from 'node:crypto'
import { setTimeout as rest } from 'node:timers/promises'
import { UserError } from '../../build/disk/errors.ts'
import { escapeHtml } from '../../render/html.ts'
import {
  type Answer,
  type AnyAnswer,
  type Asked,
  inWords,
  type LocalSite,
  nothingHere,
  openLocalServer,
} from '../local-server.ts'
import { type MarkPage, markingPages } from '../mark/server.ts'
import { readPlainFile, streamPlainFile } from '../plain-file.ts'
import { openNews, type ShownProblem } from './news.ts'

export interface PreviewAssets {
  /** Script that listens for news and shows problems. */
  readonly script: string
  readonly style: string
  /** Text of the link from a picture to its marking page. */
  readonly markText: string
}

export interface Previewed {
  /** The edition's own folder. */
  readonly folder: string
  /** Paths in it of all that the last build made. Throws UserError when that cannot be known. */
  served(): Pick<ReadonlySet<string>, 'has'>
  /** Resolves when no build is under way any more; null when none is. */
  settled(): Promise<void> | null
  readonly assets: PreviewAssets
  /** The marking page of a picture, a path within the casebook, as the visit of that name has it. Rejects saying why not. */
  openMarking(photo: string, visit: string | null): Promise<MarkPage>
  /** The page on which what leaves for the portfolio is approved. */
  readonly review: LocalSite
}

export interface PreviewServer {
  readonly url: string
  /** After each build: open pages show its problems and how much waits for approval, and load again at the same place where anything changed. */
  rebuilt(problems: readonly ShownProblem[], changed: boolean, waiting?: number): void
  close(): Promise<void>
}

/** Milliseconds that a page waits for the build under way. One that is served before it ends is told to load again. */
const longestWait = 3_000

/** Of all that a build makes. */
const types: ReadonlyMap<string, string> = new Map([
  ['html', 'text/html; charset=utf-8'],
  ['css', 'text/css; charset=utf-8'],
  ['js', 'text/javascript; charset=utf-8'],
  ['ics', 'text/calendar; charset=utf-8'],
  ['jpg', 'image/jpeg'],
  ['webp', 'image/webp'],
])

/** @throws Error when the port is taken. */
export async function servePreview(previewed: Previewed, port: number): Promise<PreviewServer> {
  const { folder, assets } = previewed
  const news = openNews()
  const marking = markingPages('/-/marking/')
  const key = randomBytes(18).toString('base64url')
  const openMarking = markingOpener(previewed, key, marking.open)
  let served = servedBy(previewed)

  const shown = async (path: string): Promise<AnyAnswer> => {
    if (!path.endsWith('.html')) return served.has(path) ? fileAnswer(folder, path) : nothingHere
    await waitFor(previewed.settled())
    // Named before the page is read: one that is newer than its name is loads once more, one that is older is not left.
    const script = listening(assets.markText, news.build(), key)
    return pageAnswer(served.has(path) ? readPlainFile(folder, path) : null, script)
  }
  const show = (asked: Asked): AnyAnswer | Promise<AnyAnswer> => {
    const { path, query } = asked
    if (path === '/-/preview.js') return text('text/javascript; charset=utf-8', assets.script)
    if (path === '/-/preview.css') return text('text/css; charset=utf-8', assets.style)
    if (path === '/-/mark') return openMarking(asked)
    if (path === '/-/news')
      return { type: 'text/event-stream', opened: (page) => news.listen(page, query.get('build')) }
    if (path.startsWith('/-/review')) return previewed.review.show(asked)
    if (path.startsWith('/-/')) return marking.show(asked)
    if (served.has(`${path.slice(1)}/index.html`))
      return inWords(302, 'See there.', { location: `${encodeURI(path)}/` })
    return shown(path.endsWith('/') ? `${path.slice(1)}index.html` : path.slice(1))
  }
  const taker = (path: string) => previewed.review.taker(path) ?? marking.taker(path)
  const { origin, close } = await openLocalServer({ show, taker }, port)

  return {
    url: `${origin}/`,
    rebuilt: (problems, changed, waiting = 0) => {
      served = servedBy(previewed)
      news.rebuilt(problems, changed, waiting)
    },
    close: () => {
      news.close()
      return close()
    },
  }
}

/** Nothing, where it cannot be known; the build then ends with the same reason, and that is shown. */
function servedBy({ served }: Previewed): ReturnType<Previewed['served']> {
  try {
    return served()
  } catch (error) {
    if (error instanceof UserError) return new Set()
    throw error
  }
}

async function waitFor(building: Promise<void> | null): Promise<void> {
  if (building === null) return
  const enough = new AbortController()
  await Promise.race([
    building.finally(() => enough.abort()),
    rest(longestWait, undefined, { signal: enough.signal }).catch(() => {}),
  ])
}

const text = (type: string, body: string): Answer => ({ status: 200, type, body })

function fileAnswer(folder: string, path: string): AnyAnswer {
  const file = streamPlainFile(folder, path)
  const type = types.get(path.slice(path.lastIndexOf('.') + 1)) ?? 'application/octet-stream'
  return file === null ? nothingHere : { type, ...file }
}

const listening = (markText: string, build: string, key: string) =>
  `<link rel="stylesheet" href="/-/preview.css"><script src="/-/preview.js" data-mark="${escapeHtml(markText)}" data-build="${build}" data-key="${key}" defer></script>`

/** A page with the preview's script added and allowed to listen for news; the file on disk stays as it is. */
function pageAnswer(page: Uint8Array | null, script: string): Answer {
  const type = 'text/html; charset=utf-8'
  if (page === null) {
    const body = `<!doctype html><title>Preview</title>${script}<p>There is no such page yet.`
    return { status: 404, type, body }
  }
  const body = new TextDecoder()
    .decode(page)
    .replace(/(http-equiv="Content-Security-Policy" content="[^"]*)"/i, `$1; connect-src 'self'"`)
    .replace('</head>', `${script}</head>`)
  return { status: 200, type, body }
}

/** Pictures that wait to be opened; each is decoded whole, so that they take turns. */
const mostWaiting = 16

/** Only a link on a previewed page, which has the key, has a marking page opened. */
function markingOpener(
  { openMarking }: Previewed,
  key: string,
  open: (page: MarkPage) => string,
): (asked: Asked) => Answer | Promise<Answer> {
  let waiting = 0
  let last: Promise<unknown> = Promise.resolve()
  const opened = async (photo: string, visit: string | null): Promise<Answer> => {
    try {
      const location = open(await openMarking(photo, visit))
      return inWords(303, 'See there.', { location })
    } catch (error) {
      return inWords(409, error instanceof Error ? error.message : String(error))
    } finally {
      waiting -= 1
    }
  }
  return ({ query, isFromHere }) => {
    if (!isFromHere || query.get('key') !== key) return inWords(403, 'Follow the link on the previewed page.')
    if (waiting >= mostWaiting) return inWords(503, 'Too many pictures are being opened. Try again.')
    waiting += 1
    const answer = last.then(() => opened(query.get('photo') ?? '', query.get('visit')))
    last = answer
    return answer
  }
}
