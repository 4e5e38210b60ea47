/**
 * The one server of the program. It listens on the loopback address alone and answers only who names that address, so
 * that no web page elsewhere can reach it by a name that resolves here. All that a request may take is bounded.
 */
import type { ReadStream } from 'node:fs'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo, Socket } from 'node:net'
import { pipeline } from 'node:stream'

/** Milliseconds, bytes and counts: far more than a browser with some pages open needs. */
const limits = {
  connections: 64,
  headersTimeout: 3_000,
  requestTimeout: 5_000,
  /** How often those two are looked at. */
  checkingInterval: 1_000,
  /** Without a byte in either direction. */
  idleTimeout: 60_000,
  headerBytes: 16 * 1024,
  headers: 100,
  address: 2_048,
  body: 32 * 1024,
  /** Read and thrown away of a body that is too large, so that whoever sent a bit too much hears why. */
  discardedBody: 128 * 1024,
}

/** What is asked, after all that may not be asked has been refused. */
export interface Asked {
  /** Decoded; begins with a slash. */
  readonly path: string
  readonly query: URLSearchParams
  /** Whether a page of this server asks, or a browser that does not say who asks. */
  readonly isFromHere: boolean
}

export interface Answer {
  readonly status: number
  readonly type: string
  readonly body: string | Uint8Array
  readonly headers?: Readonly<Record<string, string>>
}

/** A file, sent a bit at a time as it is taken. */
export interface FileAnswer {
  readonly type: string
  readonly stream: ReadStream
  /** Bytes. */
  readonly size: number
}

/** An answer that stays open. */
export interface OpenAnswer {
  readonly type: string
  opened(response: ServerResponse): void
}

export type AnyAnswer = Answer | FileAnswer | OpenAnswer

export interface LocalSite {
  show(asked: Asked): AnyAnswer | Promise<AnyAnswer>
  /** What takes the JSON that a page of this server sends to an address; null where nothing does. */
  taker(path: string): ((json: string) => Answer) | null
}

export interface LocalServer {
  /** `http://127.0.0.1:4174`. */
  readonly origin: string
  /** Ends every connection, then the server. */
  close(): Promise<void>
}

/** An answer in words. */
export const inWords = (status: number, text: string, headers: Answer['headers'] = {}): Answer => ({
  status,
  type: 'text/plain; charset=utf-8',
  body: `${text}\n`,
  headers,
})

export const nothingHere = inWords(404, 'There is nothing here.')

/** Nothing is kept by the browser, taken for another type, or shown within a page of another server. */
const guards = {
  'cache-control': 'no-store',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
}

/**
 * @param port 0 takes any that is free
 * @throws Error when the port is taken
 */
export async function openLocalServer(site: LocalSite, port: number): Promise<LocalServer> {
  /** Connections with a request that is not answered yet. */
  const busy = new WeakSet<Socket>()
  let hosts: readonly string[] = []

  const take = (request: IncomingMessage, response: ServerResponse, isExpecting = false): void => {
    const { socket } = request
    // No browser sends a second request before the first is answered; it could ask for any number at once.
    if (busy.has(socket)) {
      if (!socket.writableEnded) socket.destroySoon()
      return
    }
    busy.add(socket)
    response.on('finish', () => busy.delete(socket))
    const answer = isExpecting ? Promise.resolve(waitsInVain) : answerTo(request, site, hosts)
    answer
      .then((given) => send(request, response, given))
      .catch((error) => {
        if (response.headersSent) socket.destroy()
        else send(request, response, inWords(500, `This could not be answered: ${messageOf(error)}`))
      })
  }
  const server = createServer(
    {
      headersTimeout: limits.headersTimeout,
      requestTimeout: limits.requestTimeout,
      connectionsCheckingInterval: limits.checkingInterval,
      maxHeaderSize: limits.headerBytes,
      // Refused here, with the headers that every answer has.
      requireHostHeader: false,
    },
    (request, response) => take(request, response),
  )
  server.maxConnections = limits.connections
  server.maxHeadersCount = limits.headers
  server.timeout = limits.idleTimeout
  for (const event of ['checkContinue', 'checkExpectation'])
    server.on(event, (request, response) => take(request, response, true))
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Socket) => {
    if (!socket.writable || busy.has(socket)) socket.destroy()
    else socket.end(rawRefusal(error.code), () => socket.destroy())
  })
  const taken = await listen(server, port)
  // A connection that the system does not give; who asks again gets it.
  server.on('error', () => {})
  hosts = ['127.0.0.1', 'localhost'].flatMap((name) => [`${name}:${taken}`, ...(taken === 80 ? [name] : [])])
  return {
    origin: `http://127.0.0.1:${taken}`,
    close: () => {
      server.closeAllConnections()
      return new Promise((resolve) => server.close(() => resolve()))
    },
  }
}

async function listen(server: Server, port: number): Promise<number> {
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject)
      resolve()
    })
  })
  return (server.address() as AddressInfo).port
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** Ends the connection too, with whatever else is being sent on it. */
const refusal = (status: number, text: string, headers: Answer['headers'] = {}): Answer =>
  inWords(status, text, { ...headers, connection: 'close' })

const waitsInVain = refusal(417, 'Send the request at once.')

async function answerTo(
  request: IncomingMessage,
  site: LocalSite,
  hosts: readonly string[],
): Promise<AnyAnswer> {
  const refused = whyRefused(request, hosts)
  if (refused !== null) return refused
  const asked = askedBy(request)
  if (asked === null) return refusal(400, 'This address cannot be read.')
  if (request.method !== 'POST') return site.show(asked)
  const taker = site.taker(asked.path)
  if (taker === null) return refusal(405, 'Only reading is possible here.', { allow: 'GET, HEAD' })
  return whyNotTaken(request, asked) ?? taken(request, taker)
}

function whyRefused(request: IncomingMessage, hosts: readonly string[]): Answer | null {
  const { headers, rawHeaders, method = '', url = '' } = request
  if (rawHeaders.length >= 2 * limits.headers) return refusal(431, 'That is more than a browser sends.')
  const named = rawHeaders.filter((name, index) => index % 2 === 0 && name.toLowerCase() === 'host')
  if (named.length !== 1 || !hosts.includes(headers.host ?? '') || isFromElsewhere(request))
    return refusal(403, 'This page is for this machine alone.')
  if (url.length > limits.address) return refusal(414, 'This address is too long.')
  if (!['GET', 'HEAD', 'POST'].includes(method))
    return refusal(405, 'Only reading is possible here.', { allow: 'GET, HEAD' })
  const hasBody = headers['transfer-encoding'] !== undefined || (headers['content-length'] ?? '0') !== '0'
  if (method !== 'POST' && hasBody) return refusal(413, 'Nothing can be sent along with this.')
  return null
}

/** A page of another server may link to one here, and that is all. */
function isFromElsewhere({ headers }: IncomingMessage): boolean {
  const isLinkFollowed = headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document'
  return !['same-origin', 'none', undefined].includes(siteOf(headers)) && !isLinkFollowed
}

/** What the browser says of the page that asks. */
const siteOf = (headers: IncomingMessage['headers']): string | undefined => {
  const site = headers['sec-fetch-site']
  return Array.isArray(site) ? site.join() : site
}

/** Null when the address cannot be one. */
function askedBy({ url = '', headers }: IncomingMessage): Asked | null {
  const [, path = '', query = ''] = /^([^?#]*)\??([^#]*)/.exec(url) ?? []
  if (!path.startsWith('/')) return null
  try {
    return {
      path: decodeURIComponent(path),
      query: new URLSearchParams(query),
      isFromHere: ['same-origin', undefined].includes(siteOf(headers)),
    }
  } catch {
    return null
  }
}

/** Another page can neither set this type nor hide where it comes from. */
function whyNotTaken({ headers }: IncomingMessage, { isFromHere }: Asked): Answer | null {
  if (headers.origin !== `http://${headers.host}` || !isFromHere)
    return refusal(403, 'This page is for this machine alone.')
  if (!/^application\/json(;|$)/i.test(headers['content-type'] ?? ''))
    return refusal(415, 'JSON is expected here.')
  return null
}

async function taken(request: IncomingMessage, taker: (json: string) => Answer): Promise<Answer> {
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length
    if (size <= limits.body) chunks.push(chunk)
    if (size > limits.discardedBody) break
  }
  if (size > limits.body) return refusal(413, 'That is more than can be taken here.')
  return taker(Buffer.concat(chunks).toString('utf8'))
}

function send(request: IncomingMessage, response: ServerResponse, answer: AnyAnswer): void {
  const isHead = request.method === 'HEAD'
  if ('opened' in answer) {
    response.writeHead(200, { ...guards, 'content-type': answer.type })
    if (isHead) response.end()
    else answer.opened(response)
  } else if ('stream' in answer) sendFile(response, answer, isHead)
  else {
    const { status, type, body, headers } = answer
    const bytes = typeof body === 'string' ? Buffer.from(body) : body
    const length = { 'content-type': type, 'content-length': bytes.length }
    response.writeHead(status, { ...guards, ...length, ...headers })
    response.end(isHead ? undefined : bytes)
  }
}

function sendFile(response: ServerResponse, { type, stream, size }: FileAnswer, isHead: boolean): void {
  response.writeHead(200, { ...guards, 'content-type': type, 'content-length': size })
  if (isHead || size === 0) {
    stream.destroy()
    response.end()
    return
  }
  const { socket } = response
  pipeline(stream, response, (error) => {
    // The length was announced; where the file was cut meanwhile, only the end of the connection tells of it.
    if (error || stream.bytesRead < size) socket?.destroy()
  })
}

/** For what was never a whole request, so that there is nothing to answer by. */
function rawRefusal(code: string | undefined): string {
  const [status, text] =
    code === 'ERR_HTTP_REQUEST_TIMEOUT'
      ? ['408 Request Timeout', 'The request did not come to its end.\n']
      : code === 'HPE_HEADER_OVERFLOW'
        ? ['431 Request Header Fields Too Large', 'That is more than a browser sends.\n']
        : ['400 Bad Request', 'This request cannot be read.\n']
  const headers = {
    ...guards,
    connection: 'close',
    'content-type': 'text/plain; charset=utf-8',
    'content-length': Buffer.byteLength(text),
  }
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`)
  return `HTTP/1.1 ${status}\r\n${lines.join('')}\r\n${text}`
}
