/**
 * Whatever is sent to the preview's server, it lives, keeps within its bounds, and shows what was built and nothing
 * else. The short run sends 60 times twelve requests.
 */
import { connect, type Socket } from 'node:net'
import { setTimeout as rest } from 'node:timers/promises'
import fc from 'fast-check'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { runs } from '../../runs.ts'
import {
  built,
  type FuzzedServer,
  plainPaths,
  secret,
  secretPaths,
  startFuzzedServer,
  trapPaths,
} from './fuzz-server.ts'

let server: FuzzedServer
let before: number
beforeAll(async () => {
  server = await startFuzzedServer()
  await ordinary()
  before = await server.memory()
})
afterAll(() => server.stop())
afterEach(async () => {
  expect(server.ending()).toBeNull()
  await ordinary()
})

/** Bytes that the process may take beyond what it began with, whatever is asked. */
const mostMore = 160 * 1024 * 1024
const grown = async () => (await server.memory()) - before

interface Exchange {
  readonly text: string
  /** Whether the server ended the connection. */
  readonly isClosed: boolean
}

/** A connection that never breaks the test, whatever becomes of it. */
function opened(): Socket {
  const socket = connect(server.port, '127.0.0.1')
  socket.on('error', () => {})
  return socket
}

/** Milliseconds without a byte after which nothing more is expected. */
const quiet = 80

/** Sends these pieces one after the other and takes what comes back. */
async function exchange(pieces: readonly Buffer[], patience = quiet): Promise<Exchange> {
  const socket = opened()
  const chunks: Buffer[] = []
  let isClosed = false
  let heardAt = performance.now()
  socket.on('data', (chunk) => {
    chunks.push(chunk)
    heardAt = performance.now()
  })
  socket.on('close', () => {
    isClosed = true
  })
  for (const [nth, piece] of pieces.entries()) {
    if (nth > 0) await rest(2)
    socket.write(piece)
    heardAt = performance.now()
  }
  while (!isClosed && performance.now() - heardAt < patience) await rest(5)
  socket.destroy()
  return { text: Buffer.concat(chunks).toString('latin1'), isClosed }
}

const host = () => `127.0.0.1:${server.port}`
const get = (path: string, headers = '') =>
  Buffer.from(`GET ${path} HTTP/1.1\r\nHost: ${host()}\r\n${headers}\r\n`, 'latin1')

/** What a browser would ask, answered as it should be; waits while the server has no connection to spare. */
async function ordinary(patience = 0): Promise<void> {
  const began = performance.now()
  for (;;) {
    const { text } = await exchange([get('/juno/', 'Connection: close\r\n')], 2_000)
    if (text.startsWith('HTTP/1.1 200 OK') && text.includes(built)) return
    expect(performance.now() - began, `an ordinary request was answered by: ${text}`).toBeLessThan(patience)
    await rest(100)
  }
}

/** Heads of the answers in what came back. */
const headsIn = (text: string): readonly string[] =>
  [...text.matchAll(/HTTP\/1\.\d (\d{3}) [^\r]*\r\n(?:[^\r]+\r\n)*\r\n/g)].map(([head]) => head)

function judge({ text }: Exchange, sent: string): void {
  expect(text.includes(secret), `a secret was shown to ${sent}`).toBe(false)
  const heads = headsIn(text)
  expect(heads.length, `${sent} was answered by ${text.slice(0, 200)}`).toBe(
    text.match(/HTTP\/1\.\d \d{3}/g)?.length ?? 0,
  )
  for (const head of heads) {
    expect(head, sent).toMatch(/\r\nx-content-type-options: nosniff\r\n/i)
    expect(head, sent).toMatch(/\r\ncache-control: no-store\r\n/i)
  }
}

const oneOf = <T>(...all: readonly T[]) => fc.constantFrom(...all)

/** Other ways to write a path, most of them wrong. */
const disguises: readonly ((path: string) => string)[] = [
  (path) => path,
  (path) => `./${path}`,
  (path) => `juno/../${path}`,
  (path) => `juno/%2e%2e/${path}`,
  (path) => path.replaceAll('.', '%2e'),
  (path) => path.replaceAll('/', '%2f'),
  (path) => path.replaceAll('/', '%5c'),
  (path) => path.replaceAll('/', '\\'),
  (path) => path.replaceAll('/', '//'),
  (path) => path.replaceAll('.', '%252e'),
  (path) => path.replaceAll('..', '%c0%ae%c0%ae'),
  (path) => path.replaceAll('..', '..;'),
  (path) => path.replaceAll('..', '．．'),
  (path) => path.replaceAll('e', '%'),
  (path) => path.replaceAll('e', '%zz'),
  (path) => path.replaceAll('e', '\u0000'),
  (path) => path.replaceAll('e', '%00'),
  (path) => path.toUpperCase(),
  (path) => `${path}/`,
  (path) => `${path}%20`,
  (path) => `${path}?${path}`,
  (path) => `${path}#${path}`,
  (path) => `-/${path}`,
  (path) => `-/mark?photo=${path}&key=`,
  (path) => `-/marking/${'A'.repeat(24)}/${path}`,
  (path) => `-/news?build=${path}`,
  (path) => path.repeat(400),
]
const paths = [
  ...plainPaths,
  ...trapPaths,
  ...secretPaths,
  'closed.css',
  'constructor',
  '__proto__',
  '',
  '-/preview.js',
]
const disguise = fc.oneof(
  { weight: 1, arbitrary: fc.constant((path: string) => path) },
  { weight: 1, arbitrary: oneOf(...disguises) },
)
const path = fc.tuple(oneOf(...paths), disguise, disguise).map(([of, one, other]) => other(one(of)))

const target = fc.oneof(
  { weight: 8, arbitrary: path.map((of) => `/${of}`) },
  { weight: 1, arbitrary: path },
  { weight: 1, arbitrary: path.map((of) => `http://127.0.0.1/${of}`) },
  { weight: 1, arbitrary: path.map((of) => `http://elsewhere.example/${of}`) },
  {
    weight: 1,
    arbitrary: oneOf('*', '', '//', '/%', '127.0.0.1:80', 'file:///etc/passwd', `/${'a'.repeat(20_000)}`),
  },
)
const method = fc.oneof(
  { weight: 6, arbitrary: oneOf('GET', 'HEAD', 'POST') },
  {
    weight: 2,
    arbitrary: oneOf(
      'PUT',
      'DELETE',
      'OPTIONS',
      'TRACE',
      'CONNECT',
      'PATCH',
      'PROPFIND',
      'get',
      'GRAB',
      '',
      'G\u0000T',
    ),
  },
)
const version = fc.oneof(
  { weight: 8, arbitrary: fc.constant('HTTP/1.1') },
  { weight: 2, arbitrary: oneOf('HTTP/1.0', 'HTTP/2.0', 'HTTP/9.9', 'HTTP/0.9', 'http/1.1', 'ICY', '') },
)
const header = fc.oneof(
  fc
    .tuple(
      oneOf('bytes', 'lines', 'bytes ', ''),
      oneOf('5-2', '0-', '-1', '-', '0-1,2-3', '99999999999999999999-', '0-0,'.repeat(900), 'a-b', '1e3-2e3'),
    )
    .map(([unit, range]) => `Range: ${unit}=${range}`),
  oneOf(
    'Expect: 100-continue',
    'Expect: something',
    'Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\nSec-WebSocket-Version: 13',
    'Upgrade: h2c\r\nConnection: Upgrade, HTTP2-Settings',
    'Connection: close',
    'Connection: keep-alive',
    'Host: elsewhere.example',
    'Host:',
    'Content-Length: 5',
    'Content-Length: 0',
    'Content-Length: -1',
    'Content-Length: 99999999999999999999999',
    'Content-Length: 5\r\nContent-Length: 6',
    'Transfer-Encoding: chunked',
    'Transfer-Encoding: chunked\r\nContent-Length: 3',
    'Transfer-Encoding: gzip',
    'Content-Type: application/json',
    'Origin: null',
    'Origin: http://elsewhere.example',
    'Sec-Fetch-Site: cross-site',
    'Sec-Fetch-Site: same-origin',
    'Sec-Fetch-Site: same-origin\r\nSec-Fetch-Site: cross-site',
    'If-Modified-Since: yesterday',
    'If-None-Match: *',
    'Accept-Encoding: gzip, br',
    ' folded: onto the line before',
    'no colon at all',
    ': no name',
    'Name\u0000: x',
    'Name: \u0007\u001b',
    `Cookie: ${'c'.repeat(7_000)}`,
    `Cookie: ${'c'.repeat(40_000)}`,
    Array.from({ length: 150 }, (_, nth) => `X-${nth}: ${nth}`).join('\r\n'),
  ),
)
const body = fc.oneof(
  { weight: 5, arbitrary: fc.constant('') },
  {
    weight: 3,
    arbitrary: oneOf(
      'hello',
      '5\r\nhello\r\n0\r\n\r\n',
      'ffffffffffffffff\r\n',
      '-1\r\n',
      '{"points":{}}',
      '0\r\n\r\n',
    ),
  },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 300_000 }).map((size) => 'x'.repeat(size)) },
)

/** A request, mostly whole, in as many pieces as it comes. */
const request = fc
  .record({
    method,
    target,
    version,
    named: fc.oneof(
      { weight: 9, arbitrary: fc.constant(true) },
      { weight: 1, arbitrary: fc.constant(false) },
    ),
    headers: fc.array(header, { maxLength: 4 }),
    body,
    end: fc.oneof(
      { weight: 9, arbitrary: fc.constant('\r\n') },
      { weight: 1, arbitrary: oneOf('\n', '\r', '') },
    ),
    times: fc.oneof(
      { weight: 9, arbitrary: fc.constant(1) },
      { weight: 1, arbitrary: fc.integer({ min: 2, max: 60 }) },
    ),
    cut: fc.oneof(
      { weight: 9, arbitrary: fc.constant(1) },
      { weight: 1, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
    ),
    pieces: fc.oneof(
      { weight: 4, arbitrary: fc.constant(1) },
      { weight: 1, arbitrary: fc.integer({ min: 2, max: 5 }) },
    ),
  })
  .map(({ method, target, version, named, headers, body, end, times, cut, pieces }) => {
    const lines = [
      `${method} ${target} ${version}`,
      ...(named ? [`Host: ${host()}`] : []),
      ...headers,
      '',
      body,
    ]
    const whole = Buffer.from(lines.join(end).repeat(times))
    const sent = whole.subarray(0, Math.ceil(whole.length * cut))
    const size = Math.ceil(sent.length / pieces) || 1
    return Array.from({ length: pieces }, (_, nth) => sent.subarray(nth * size, (nth + 1) * size))
  })

const noise = fc.uint8Array({ maxLength: 2_000 }).map((bytes) => [Buffer.from(bytes)])

describe('the server of the preview, whatever is sent to it,', () => {
  it('shows no secret by any way to write its path', async () => {
    const asked = paths.flatMap((of) => disguises.map((other) => `/${other(of)}`))
    const shown: string[] = []
    for (let from = 0; from < asked.length; from += 20) {
      await Promise.all(
        asked.slice(from, from + 20).map(async (each) => {
          // News stay open.
          const got = await exchange(
            [get(each, 'Connection: close\r\n')],
            each.includes('news') ? quiet : 2_000,
          )
          judge(got, each)
          if (got.text.startsWith('HTTP/1.1 200')) shown.push(each)
        }),
      )
    }
    expect(shown).toEqual(expect.arrayContaining(plainPaths.map((of) => `/${of}`)))
    expect(shown.filter((each) => trapPaths.includes(each.slice(1)))).toEqual([])
  }, 60_000)

  it('answers within its bounds and shows what was built alone', async () => {
    const statuses = new Map<string, number>()
    const several = fc.array(fc.oneof({ weight: 12, arbitrary: request }, { weight: 1, arbitrary: noise }), {
      minLength: 12,
      maxLength: 12,
    })
    await fc.assert(
      fc.asyncProperty(several, async (all) => {
        await Promise.all(
          all.map(async (pieces) => {
            const got = await exchange(pieces)
            judge(got, JSON.stringify(Buffer.concat(pieces).toString('latin1').slice(0, 500)))
            for (const head of headsIn(got.text)) {
              const status = head.slice(9, 12)
              statuses.set(status, (statuses.get(status) ?? 0) + 1)
            }
          }),
        )
        await ordinary()
        expect(server.ending()).toBeNull()
        expect(await grown()).toBeLessThan(mostMore)
      }),
      { numRuns: runs(60, 3_000), seed: 14, endOnFailure: true },
    )
    // The requests were not all refused alike.
    for (const status of ['200', '400', '403', '404', '405', '413', '414', '417', '431'])
      expect([status, statuses.get(status) ?? 0]).toEqual([
        status,
        expect.toSatisfy((count: number) => count > 0),
      ])
  }, 3_000_000)

  it.each([
    ['GET', 'Transfer-Encoding: chunked', true],
    ['GET', 'Content-Length: 99999999999', false],
    ['POST', 'Transfer-Encoding: chunked', true],
    ['POST', 'Content-Length: 99999999999', false],
  ] as const)('ends an endless body: %s, %s', async (method, length, isChunked) => {
    const address = `/-/marking/${'A'.repeat(24)}/write`
    const head = [`${method} ${address} HTTP/1.1`, `Host: ${host()}`, `Origin: http://${host()}`, length]
    const socket = opened()
    let isClosed = false
    let heard = ''
    socket.on('data', (chunk) => {
      heard += chunk
    })
    socket.on('close', () => {
      isClosed = true
    })
    socket.write(`${head.join('\r\n')}\r\nContent-Type: application/json\r\n\r\n`)
    const piece = 'x'.repeat(16_384)
    const began = performance.now()
    while (!isClosed && performance.now() - began < 15_000) {
      const goesOn = socket.write(isChunked ? `4000\r\n${piece}\r\n` : piece)
      await (goesOn ? rest(0) : Promise.race([new Promise((done) => socket.once('drain', done)), rest(200)]))
    }
    expect(isClosed).toBe(true)
    judge({ text: heard, isClosed }, `${method} ${length}`)
    expect(await grown()).toBeLessThan(mostMore)
  })

  it('ends a request that does not come to its end', async () => {
    const slow = async (text: string) => {
      const got = await exchange([Buffer.from(text)], 15_000)
      judge(got, text)
      expect([got.isClosed, text]).toEqual([true, text])
    }
    await Promise.all([
      slow(''),
      slow('GET'),
      slow(`GET / HTTP/1.1\r\nHost: ${host()}\r\n`),
      slow(
        `POST /-/marking/${'A'.repeat(24)}/write HTTP/1.1\r\nHost: ${host()}\r\nOrigin: http://${host()}\r\nContent-Type: application/json\r\nContent-Length: 9\r\n\r\n{`,
      ),
    ])
  }, 30_000)

  it('lets go of connections that ask for nothing', async () => {
    const idle = Array.from({ length: 300 }, opened)
    await rest(200)
    await ordinary(20_000)
    for (const socket of idle) socket.destroy()
  }, 30_000)

  it('keeps within its bounds while nobody takes what it sends', async () => {
    const stuck = Array.from({ length: 50 }, () => {
      const socket = opened()
      socket.pause()
      socket.write(get('/large.webp'))
      return socket
    })
    await rest(500)
    expect(await grown()).toBeLessThan(mostMore)
    for (const socket of stuck) socket.destroy()
  })

  it('does not work ahead for one that asks for everything at once', async () => {
    const ahead = opened()
    ahead.pause()
    const twoThousand = Buffer.concat(Array(2_000).fill(get('/large.webp')))
    for (let nth = 0; nth < 5; nth += 1) ahead.write(twoThousand)
    await rest(500)
    expect(await grown()).toBeLessThan(mostMore)
    ahead.destroy()
  })

  it('keeps a few marking pages, however many are opened', async () => {
    const { text } = await exchange([get('/', 'Connection: close\r\n')], 2_000)
    const key = /data-key="([\w-]+)"/.exec(text)?.[1]
    const places = new Set<string>()
    for (let nth = 0; nth < 100; nth += 1) {
      const got = await exchange([get(`/-/mark?photo=x&key=${key}`, 'Connection: close\r\n')], 2_000)
      judge(got, 'a marking page')
      places.add(/\r\nlocation: (\S+)/i.exec(got.text)?.[1] ?? '')
    }
    expect(places.size).toBe(100)
    expect(await grown()).toBeLessThan(mostMore)
  }, 60_000)

  it('keeps within its bounds while pages listen and take nothing', async () => {
    const listening = Array.from({ length: 40 }, () => {
      const socket = opened()
      socket.pause()
      socket.write(get('/-/news'))
      return socket
    })
    for (let nth = 0; nth < 200; nth += 1) await server.rebuilt()
    expect(await grown()).toBeLessThan(mostMore)
    for (const socket of listening) socket.destroy()
    await rest(200)
  }, 60_000)
})
