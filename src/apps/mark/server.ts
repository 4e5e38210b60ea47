/**
 * Shows the marking page to this machine alone. Loopback only, under an address that holds a random token; a request
 * that names another host, comes from another page or asks for anything but the page's own five files gets nothing.
 */
import { randomBytes } from 'node:crypto'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { z } from 'zod'
import { UserError } from '../../build/disk/errors.ts'
import { type Landmarks, landmarkPoints } from '../../hoof/landmarks.ts'
import { closeServer, listenLocally } from '../local-server.ts'

export interface MarkPage {
  readonly page: string
  readonly style: string
  readonly script: string
  /** JPEG. */
  readonly picture: Uint8Array
  /** Writes the points where they belong and says where; null where nothing may be written. Throws UserError. */
  readonly write: ((landmarks: Landmarks) => string) | null
}

export interface MarkServer {
  /** With the token. */
  readonly url: string
  close(): Promise<void>
}

/** Far more than every point of a picture takes. */
const mostPosted = 32 * 1024

const policy =
  "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

/** @param port 0 takes any that is free @throws Error when the port is taken */
export async function serveMarking(served: MarkPage, port: number): Promise<MarkServer> {
  const root = `/${randomBytes(18).toString('base64url')}/`
  const html = 'text/html; charset=utf-8'
  const shown: ReadonlyMap<string, readonly [type: string, body: string | Uint8Array]> = new Map([
    ['', [html, served.page]],
    ['mark.css', ['text/css; charset=utf-8', served.style]],
    ['mark.js', ['text/javascript; charset=utf-8', served.script]],
    ['picture.jpg', ['image/jpeg', served.picture]],
  ])
  const server = createServer((request, response) => {
    if (request.headers.host !== host) return answer(response, 403, 'This page is for this machine alone.')
    const url = request.url ?? ''
    const name = url.startsWith(root) ? url.slice(root.length) : null
    if (name === 'write' && served.write !== null) return post(request, response, host, served.write)
    const file = name === null ? undefined : shown.get(name)
    if (file === undefined) return answer(response, 404, 'There is nothing here.')
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return answer(response, 405, 'Only reading is possible here.')
    send(response, 200, file[0], file[1])
  })
  const host = await listenLocally(server, port)
  return { url: `http://${host}${root}`, close: () => closeServer(server) }
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  response.writeHead(status, {
    'content-type': type,
    'content-security-policy': policy,
    'cache-control': 'no-store',
    'cross-origin-resource-policy': 'same-origin',
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
  })
  response.end(body)
}

const answer = (response: ServerResponse, status: number, text: string): void =>
  send(response, status, 'text/plain; charset=utf-8', `${text}\n`)

/** Only the page itself may ask for this: another page can neither set this type nor hide where it comes from. */
function post(
  request: IncomingMessage,
  response: ServerResponse,
  host: string,
  write: (landmarks: Landmarks) => string,
): void {
  const refused = whyRefused(request, host)
  if (refused !== null) {
    answer(response, ...refused)
    return
  }
  const chunks: Buffer[] = []
  let size = 0
  request.on('data', (chunk: Buffer) => {
    size += chunk.length
    if (size <= mostPosted) chunks.push(chunk)
  })
  request.on('end', () => {
    const text = size > mostPosted ? null : Buffer.concat(chunks).toString('utf8')
    answer(response, ...written(text, write))
  })
}

type Answer = readonly [status: number, text: string]

function whyRefused({ method, headers }: IncomingMessage, host: string): Answer | null {
  if (method !== 'POST') return [405, 'Only writing is possible here.']
  if (headers.origin !== `http://${host}`) return [403, 'This page is for this machine alone.']
  if (headers['content-type'] !== 'application/json') return [415, 'The points are expected as JSON.']
  return null
}

function written(text: string | null, write: (landmarks: Landmarks) => string): Answer {
  if (text === null) return [413, 'That is more than the points of a picture.']
  const landmarks = landmarksIn(text)
  if (landmarks === null) return [400, 'These are no points of a picture.']
  try {
    return [200, write(landmarks)]
  } catch (error) {
    return error instanceof UserError ? [409, error.message] : [500, `Nothing was written: ${String(error)}`]
  }
}

const pixel = z.number().min(0).max(1_000_000)
const point = z.tuple([pixel, pixel])
const line = z.tuple([point, point])
const points = z.strictObject({
  scale: z.strictObject({ from: point, to: point, length: z.number().positive().max(10_000) }).nullable(),
  lines: z.strictObject({ ground: line.exactOptional(), pastern: line.exactOptional() }),
  points: z.partialRecord(z.enum(landmarkPoints), point),
})

function landmarksIn(text: string): Landmarks | null {
  try {
    return points.parse(JSON.parse(text))
  } catch {
    return null
  }
}
