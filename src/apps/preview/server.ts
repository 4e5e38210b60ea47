/**
 * Serves one built edition to this machine alone, and tells open pages when to load again.
 * Loopback only; a request that names another host is refused, so that no web page elsewhere can reach it by a
 * name that resolves here. No listing, and nothing outside the folder.
 */
import { readFileSync, realpathSync } from 'node:fs'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { join, sep } from 'node:path'
import sirv from 'sirv'
import { closeServer, listenLocally } from '../local-server.ts'

export interface PreviewAssets {
  /** Script that listens for news and shows problems. */
  readonly script: string
  readonly style: string
  /** Text of the link from a picture to its marking page. */
  readonly markText: string
}

/**
 * Opens the marking page of a picture, a path within the casebook, as the visit of that name has it, and gives its
 * address. Rejects saying why not.
 */
export type OpenMarking = (photo: string, visit: string | null) => Promise<string>

/** A problem as the page shows it. */
export interface ShownProblem {
  readonly place: string
  readonly text: string
}

export interface PreviewServer {
  readonly url: string
  /** Open pages load again, at the same place. */
  reload(): void
  /** Shown over the page until told otherwise; an empty list takes them away. */
  show(problems: readonly ShownProblem[]): void
  close(): Promise<void>
}

/** @throws Error when the port is taken. */
export async function servePreview(
  root: string,
  port: number,
  assets: PreviewAssets,
  openMarking: OpenMarking,
): Promise<PreviewServer> {
  const listeners = new Set<ServerResponse>()
  let problems: readonly ShownProblem[] = []
  const files = sirv(root, { dev: true, dotfiles: false, etag: true })
  const send = (to: Iterable<ServerResponse>, event: string, data: unknown) => {
    for (const response of to) response.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`)
  }

  const own: Readonly<Record<string, (response: ServerResponse) => void>> = {
    '/-/preview.js': (response) => answer(response, 200, 'text/javascript; charset=utf-8', assets.script),
    '/-/preview.css': (response) => answer(response, 200, 'text/css; charset=utf-8', assets.style),
    '/-/news': (response) => {
      response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' })
      listeners.add(response)
      response.on('close', () => listeners.delete(response))
      send([response], 'problems', problems)
    },
  }

  const server = createServer((request, response) => {
    if (!isForThisMachine(request))
      return answer(response, 403, 'text/plain', 'This page is for this machine alone.\n')
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return answer(response, 405, 'text/plain', 'Only reading is possible here.\n')
    }
    const path = pathOf(request)
    if (path === null) return answer(response, 400, 'text/plain', 'This address cannot be read.\n')
    const ownAnswer = own[path]
    if (ownAnswer) return ownAnswer(response)
    if (path.startsWith(markRoute))
      return answerMarking(path.slice(markRoute.length), request, response, openMarking)
    const page = path.endsWith('/') ? `${path}index.html` : path
    if (page.endsWith('.html')) return answerPage(root, page, assets.markText, response)
    files(request, response, () => answer(response, 404, 'text/plain', 'There is nothing here.\n'))
  })
  const host = await listenLocally(server, port)

  return {
    url: `http://${host}/`,
    reload: () => send(listeners, 'reload', null),
    show: (now) => {
      problems = now
      send(listeners, 'problems', problems)
    },
    close: () => {
      for (const response of listeners) response.end()
      return closeServer(server)
    },
  }
}

/** Only a link on a previewed page starts the marking of a picture. */
const markRoute = '/-/mark/'

function answerMarking(
  photo: string,
  request: IncomingMessage,
  response: ServerResponse,
  open: OpenMarking,
): void {
  const from = request.headers['sec-fetch-site'] ?? 'same-origin'
  if (from !== 'same-origin') {
    answer(response, 403, 'text/plain', 'Follow the link on the previewed page.\n')
    return
  }
  const visit = new URL(request.url ?? '/', 'http://localhost').searchParams.get('visit')
  open(photo, visit).then(
    (address) => response.writeHead(303, { location: address, 'cache-control': 'no-store' }).end(),
    (problem: Error) => answer(response, 409, 'text/plain; charset=utf-8', `${problem.message}\n`),
  )
}

function isForThisMachine(request: IncomingMessage): boolean {
  const host = (request.headers.host ?? '').replace(/:\d+$/, '')
  return host === '127.0.0.1' || host === 'localhost' || host === '[::1]'
}

/** The path asked for, decoded; null when it cannot be one. */
function pathOf(request: IncomingMessage): string | null {
  try {
    const path = decodeURIComponent((request.url ?? '/').replace(/[?#].*$/, ''))
    return path.startsWith('/') && !path.includes('\0') && !path.split(/[\\/]/).includes('..') ? path : null
  } catch {
    return null
  }
}

function answer(response: ServerResponse, status: number, type: string, text: string): void {
  response.writeHead(status, {
    'content-type': type,
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
  })
  response.end(text)
}

const listening = (markText: string) =>
  `<link rel="stylesheet" href="/-/preview.css"><script src="/-/preview.js" data-mark="${markText}" defer></script>`
const missing = (script: string) =>
  `<!doctype html><title>Preview</title>${script}<p>There is no such page yet.`

/** A page with the preview's script added and allowed to listen for news; the file on disk stays as it is. */
function answerPage(root: string, path: string, markText: string, response: ServerResponse): void {
  const script = listening(markText)
  const html = readInside(root, path)
  const text = html
    ?.replace(/(http-equiv="Content-Security-Policy" content="[^"]*)"/i, `$1; connect-src 'self'"`)
    .replace('</head>', `${script}</head>`)
  answer(response, html === null ? 404 : 200, 'text/html; charset=utf-8', text ?? missing(script))
}

/** Text of a file that truly lies inside the folder, links resolved; else null. */
function readInside(root: string, path: string): string | null {
  try {
    const file = realpathSync(join(root, path))
    return file.startsWith(realpathSync(root) + sep) ? readFileSync(file, 'utf8') : null
  } catch {
    return null
  }
}
