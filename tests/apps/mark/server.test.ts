import { request } from 'node:http'
import { afterEach, describe, expect, it } from 'vitest'
import { type MarkServer, serveMarking } from '../../../src/apps/mark/server.ts'
import { UserError } from '../../../src/build/disk/errors.ts'
import type { Landmarks } from '../../../src/hoof/landmarks.ts'

const servers: MarkServer[] = []
afterEach(async () => {
  for (const server of servers.splice(0)) await server.close()
})

async function serve(write: ((landmarks: Landmarks) => string) | null = null) {
  const picture = Buffer.from('picture')
  const server = await serveMarking({ page: '<p>page', style: 'p{}', script: 'go()', picture, write }, 0)
  servers.push(server)
  return new URL(server.url)
}

interface Asked {
  readonly path: string
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string
}

/** Asks as any program may: with whatever path and headers. */
function ask({ port }: URL, { path, method = 'GET', headers = {}, body }: Asked) {
  return new Promise<{ status: number; text: string; headers: Readonly<Record<string, unknown>> }>(
    (resolve, reject) => {
      const asked = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
        let text = ''
        response.on('data', (chunk: Buffer) => {
          text += chunk.toString()
        })
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, text, headers: response.headers }),
        )
      })
      asked.on('error', reject)
      asked.end(body)
    },
  )
}

const points: Landmarks = { scale: null, lines: {}, points: { toe: [1, 2] } }

describe('the marking page', () => {
  it('is shown under its token, with a policy that allows its own parts alone', async () => {
    const url = await serve()
    expect(url.hostname).toBe('127.0.0.1')
    expect(url.pathname).toMatch(/^\/[\w-]{24}\/$/)
    for (const [name, type, text] of [
      ['', 'text/html; charset=utf-8', '<p>page'],
      ['mark.css', 'text/css; charset=utf-8', 'p{}'],
      ['mark.js', 'text/javascript; charset=utf-8', 'go()'],
      ['picture.jpg', 'image/jpeg', 'picture'],
    ] as const) {
      const got = await ask(url, { path: url.pathname + name })
      expect(got, name).toMatchObject({ status: 200, text })
      expect(got.headers).toMatchObject({ 'content-type': type, 'cache-control': 'no-store' })
      expect(got.headers['content-security-policy']).toContain("default-src 'none'")
    }
  })

  it('has another token each time', async () => {
    const [one, two] = [await serve(), await serve()]
    expect(one.pathname).not.toBe(two.pathname)
    expect(await ask(two, { path: one.pathname })).toMatchObject({ status: 404 })
  })

  it.each(['evil.example', 'localhost', '127.0.0.1', '127.0.0.1:1'])(
    'is not shown to the host %j',
    async (host) => {
      const url = await serve()
      const got = await ask(url, { path: url.pathname, headers: { host } })
      expect(got).toMatchObject({ status: 403, text: 'This page is for this machine alone.\n' })
    },
  )

  it('shows nothing else, however it is asked', async () => {
    const url = await serve()
    for (const path of [
      '/',
      '/mark.js',
      '/picture.jpg',
      `${url.pathname}../package.json`,
      `${url.pathname}..%2f..%2fpackage.json`,
      `${url.pathname}%2e%2e/package.json`,
      `${url.pathname}/etc/passwd`,
      `${url.pathname}picture.jpg/..`,
      `${url.pathname}constructor`,
      `${url.pathname}write`,
      url.pathname.slice(0, -2),
      '//127.0.0.1/',
    ]) {
      const got = await ask(url, { path })
      expect(got, path).toMatchObject({ status: 404, text: 'There is nothing here.\n' })
    }
    expect(await ask(url, { path: '*' })).toMatchObject({ status: 400 })
    expect(await ask(url, { path: url.pathname, method: 'DELETE' })).toMatchObject({ status: 405 })
  })
})

describe('writing from the page', () => {
  const post = (url: URL, changed: Partial<Asked> = {}): Asked => ({
    path: `${url.pathname}write`,
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: url.origin },
    body: JSON.stringify(points),
    ...changed,
  })

  it('happens only when it is asked for by the page itself', async () => {
    const written: Landmarks[] = []
    const url = await serve((landmarks) => {
      written.push(landmarks)
      return 'Done.'
    })
    const json = { 'content-type': 'application/json' }
    for (const [changed, status] of [
      [{ method: 'PUT' }, 405],
      [{ headers: json }, 403],
      [{ headers: { ...json, origin: 'http://evil.example' } }, 403],
      [{ headers: { ...json, origin: 'null' } }, 403],
      [{ headers: { 'content-type': 'text/plain', origin: url.origin } }, 415],
      [{ path: '/write' }, 405],
      [{ path: `/${'x'.repeat(24)}/write` }, 404],
      [{ headers: { ...json, origin: url.origin, 'sec-fetch-site': 'none' } }, 403],
    ] as const) {
      expect(await ask(url, post(url, changed))).toMatchObject({ status })
    }
    expect(written).toEqual([])
    expect(await ask(url, post(url))).toMatchObject({ status: 200, text: 'Done.\n' })
    expect(written).toEqual([points])
  })

  it.each([
    'no JSON',
    '[]',
    '{"scale":null,"lines":{},"points":{"toe":[1]}}',
    '{"scale":null,"lines":{},"points":{"toe":[-1,2]}}',
    '{"scale":null,"lines":{},"points":{"toe at":[1,2]}}',
    '{"scale":{"from":[0,0],"to":[1,1],"length":0},"lines":{},"points":{}}',
    '{"scale":null,"lines":{},"points":{},"file":"x"}',
    '{"scale":null,"lines":{"__proto__":[[0,0],[1,1]]},"points":{}}',
  ])('refuses what is no points: %s', async (body) => {
    const url = await serve(() => 'Done.')
    expect(await ask(url, post(url, { body }))).toMatchObject({
      status: 400,
      text: 'These are no points of a picture.\n',
    })
  })

  it('refuses more than points could be', async () => {
    const url = await serve(() => 'Done.')
    expect(await ask(url, post(url, { body: ' '.repeat(40_000) }))).toMatchObject({ status: 413 })
  })

  it('says why nothing was written', async () => {
    const url = await serve(() => {
      throw new UserError('Nothing was written: the disk is full.')
    })
    expect(await ask(url, post(url))).toMatchObject({
      status: 409,
      text: 'Nothing was written: the disk is full.\n',
    })
  })
})
