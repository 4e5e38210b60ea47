import { execFileSync } from 'node:child_process'
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as rest } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { inWords } from '../../../src/apps/local-server.ts'
import type { ShownProblem } from '../../../src/apps/preview/news.ts'
import { type PreviewServer, servePreview } from '../../../src/apps/preview/server.ts'

const page =
  '<html><head><meta http-equiv="Content-Security-Policy" content="default-src \'none\'"></head><body>Juno</body></html>'
const problem: ShownProblem = {
  level: 'error',
  place: 'juno/2026-03-14.md:3:7',
  message: 'is not a date',
  expected: 'a date',
  fix: '2026-03-14',
  advice: null,
}

describe('the preview server', () => {
  let folder: string
  let site: string
  let server: PreviewServer
  let served: Set<string>
  let building: Promise<void> | null
  let opened: number

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
    site = join(folder, 'site')
    mkdirSync(join(site, 'juno'), { recursive: true })
    writeFileSync(join(folder, 'secret.html'), 'secret')
    writeFileSync(join(site, 'index.html'), page)
    writeFileSync(join(site, 'juno/index.html'), page)
    writeFileSync(join(site, 'page.css'), 'p{}')
    served = new Set(['index.html', 'juno/index.html', 'page.css'])
    building = null
    opened = 0
    server = await servePreview(
      {
        folder: site,
        served: () => served,
        settled: () => building,
        assets: { script: 'listen()', style: 'aside{}', markText: 'Mark "it"' },
        review: { show: () => inWords(200, 'Review'), taker: () => null },
        openMarking: async (photo, visit) => {
          if (photo !== 'juno/photos/lf.jpg') throw new Error('no such picture')
          opened += 1
          const text = `<p>marking ${opened}, ${visit}`
          return { page: text, style: '', script: '', picture: Buffer.from('picture'), write: () => 'Done.' }
        },
      },
      0,
    )
  })
  afterEach(async () => {
    await server.close()
    rmSync(folder, { recursive: true })
  })

  interface Asking {
    readonly host?: string
    readonly method?: string
    readonly headers?: Readonly<Record<string, string>>
    readonly body?: string
  }

  /** Asks without tidying the path, as no browser would. */
  const ask = (path: string, { host, method = 'GET', headers = {}, body }: Asking = {}) =>
    new Promise<{ status: number; text: string; headers: Readonly<Record<string, unknown>> }>(
      (resolve, reject) => {
        const { port } = new URL(server.url)
        const asked = request(
          {
            port,
            host: '127.0.0.1',
            path,
            method,
            headers: { host: host ?? `localhost:${port}`, ...headers },
          },
          (response) => {
            let text = ''
            response.on('data', (part) => {
              text += part
            })
            response.on('end', () =>
              resolve({ status: response.statusCode ?? 0, text, headers: response.headers }),
            )
          },
        )
        asked.on('error', reject).end(body)
      },
    )
  /** A later build than the one that the server knows of. */
  const rebuild = (...paths: readonly string[]) => {
    served = new Set([...served, ...paths])
    server.rebuilt([], true)
  }
  const keyIn = (html: string) => /data-key="([\w-]{24})"/.exec(html)?.[1] ?? ''
  const buildIn = (html: string) => /data-build="([\w-]+)"/.exec(html)?.[1] ?? ''

  it('serves pages with the script that listens, and lets only that listen', async () => {
    const { status, text, headers } = await ask('/juno/')
    expect(status).toBe(200)
    expect(text).toContain('Juno')
    expect(text).toContain('<script src="/-/preview.js" data-mark="Mark &quot;it&quot;"')
    expect(text).toContain("default-src 'none'; connect-src 'self'")
    expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'cache-control': 'no-store' })
    expect((await ask('/-/preview.js')).text).toBe('listen()')
    expect(await ask('/page.css')).toMatchObject({
      status: 200,
      text: 'p{}',
      headers: { 'content-type': 'text/css; charset=utf-8' },
    })
    expect(await ask('/juno')).toMatchObject({ status: 302, headers: { location: '/juno/' } })
  })

  it('refuses any other host name, and what a page of another server asks for itself', async () => {
    const { port } = new URL(server.url)
    for (const host of [
      'elsewhere.example',
      `localhost.elsewhere.example:${port}`,
      '127.0.0.1',
      '127.0.0.1:1',
    ])
      expect((await ask('/', { host })).status, host).toBe(403)
    expect((await ask('/', { host: `127.0.0.1:${port}` })).status).toBe(200)
    for (const site of ['cross-site', 'same-site'])
      expect((await ask('/page.css', { headers: { 'sec-fetch-site': site } })).status, site).toBe(403)
    const link = {
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
      'sec-fetch-dest': 'document',
    }
    expect((await ask('/', { headers: link })).status).toBe(200)
    expect((await ask('/', { headers: { ...link, 'sec-fetch-dest': 'iframe' } })).status).toBe(403)
  })

  it('lets nobody out of the folder, by dots, escapes or links', async () => {
    served.add('../secret.html')
    symlinkSync(join(folder, 'secret.html'), join(site, 'link.html'))
    mkdirSync(join(folder, 'others'))
    writeFileSync(join(folder, 'others/page.html'), 'secret')
    symlinkSync(join(folder, 'others'), join(site, 'others'))
    rebuild('link.html', 'others/page.html')
    for (const path of [
      '/../secret.html',
      '/juno/../../secret.html',
      '/%2e%2e/secret.html',
      '/..%2fsecret.html',
      '/link.html',
      '/others/page.html',
    ]) {
      const { status, text } = await ask(path)
      expect(status, path).toBe(404)
      expect(text).not.toContain('secret')
    }
    expect((await ask('/%')).status).toBe(400)
    expect((await ask('/none.html')).status).toBe(404)
  })

  it('serves an edition whose own folder is a link, also to another one after a build', async () => {
    renameSync(site, join(folder, 'first'))
    mkdirSync(join(folder, 'second'))
    writeFileSync(join(folder, 'second/index.html'), 'second')
    symlinkSync('first', site)
    expect((await ask('/')).text).toContain('Juno')
    rmSync(site)
    symlinkSync('second', site)
    expect((await ask('/')).text).toBe('second')
  })

  it('shows nothing that lies in the folder and was not built', async () => {
    writeFileSync(join(site, 'foreign.css'), 'secret')
    writeFileSync(join(site, 'juno/foreign.html'), 'secret')
    for (const path of ['/foreign.css', '/juno/foreign.html']) {
      const { status, text } = await ask(path)
      expect([status, text.includes('secret')], path).toEqual([404, false])
    }
    expect((await ask('/none.css')).status).toBe(404)
    writeFileSync(join(site, 'none.css'), 'now{}')
    rebuild('none.css')
    expect(await ask('/none.css')).toMatchObject({ status: 200, text: 'now{}' })
  })

  it('goes on after a pipe, a folder, or a file that it may not read', async () => {
    execFileSync('mkfifo', [join(site, 'pipe.css'), join(site, 'pipe.html')])
    mkdirSync(join(site, 'folder.css'))
    writeFileSync(join(site, 'large.html'), '')
    truncateSync(join(site, 'large.html'), 20 * 1024 ** 2)
    writeFileSync(join(site, 'closed.css'), 'x')
    chmodSync(join(site, 'closed.css'), 0)
    rebuild('pipe.css', 'pipe.html', 'folder.css', 'large.html', 'closed.css')
    for (const path of ['/pipe.css', '/pipe.html', '/folder.css'])
      expect((await ask(path)).status, path).toBe(404)
    expect(await ask('/large.html')).toMatchObject({
      status: 500,
      text: 'This could not be answered: large.html is too large for a page\n',
    })
    // Who may read everything may read this too.
    const mayReadAll = process.getuid?.() === 0
    expect((await ask('/closed.css')).text).toBe(
      mayReadAll
        ? 'x'
        : 'This could not be answered: closed.css could not be read: this account has no right to it\n',
    )
    expect((await ask('/')).status).toBe(200)
  })

  it.each(['bytes=5-2', 'bytes=0-1', 'bytes=-1', 'bytes=9-', 'bytes=0-1,1-2', 'lines=1', 'bytes=a-b'])(
    'answers the range %s with the whole file',
    async (range) => {
      expect(await ask('/page.css', { headers: { range } })).toMatchObject({ status: 200, text: 'p{}' })
    },
  )

  it('only reads, takes no body, and lists nothing', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])
      expect(await ask('/', { method }), method).toMatchObject({
        status: 405,
        headers: { allow: 'GET, HEAD' },
      })
    expect((await ask('/', { method: 'GET', body: 'x', headers: { 'content-length': '1' } })).status).toBe(
      413,
    )
    expect(await ask('/page.css', { method: 'HEAD' })).toMatchObject({
      status: 200,
      text: '',
      headers: { 'content-length': '3' },
    })
    mkdirSync(join(site, 'empty'))
    expect((await ask('/empty/')).status).toBe(404)
    expect((await ask('/empty')).status).toBe(404)
  })

  describe('marking', () => {
    const link = (key: string, photo = 'juno/photos/lf.jpg') =>
      `/-/mark?photo=${photo}&visit=2026-01-12&key=${key}`

    it('is opened from a previewed page alone', async () => {
      const key = keyIn((await ask('/')).text)
      const { status, headers } = await ask(link(key))
      expect(status).toBe(303)
      expect(headers.location).toMatch(/^\/-\/marking\/[\w-]{24}\/$/)
      expect((await ask(String(headers.location))).text).toBe('<p>marking 1, 2026-01-12')
      expect(await ask(link(key, 'juno/photos/other.jpg'))).toMatchObject({
        status: 409,
        text: 'no such picture\n',
      })
      expect((await ask(link(''))).status).toBe(403)
      const elsewhere = {
        'sec-fetch-site': 'cross-site',
        'sec-fetch-mode': 'navigate',
        'sec-fetch-dest': 'document',
      }
      expect((await ask(link(key), { headers: elsewhere })).status).toBe(403)
      expect(opened).toBe(1)
    })

    it('keeps the newest few pages', async () => {
      const key = keyIn((await ask('/')).text)
      const places: string[] = []
      for (let nth = 0; nth < 30; nth += 1) places.push(String((await ask(link(key))).headers.location))
      expect(new Set(places).size).toBe(30)
      const statuses = await Promise.all(places.map(async (place) => (await ask(place)).status))
      expect(statuses).toEqual([...Array(26).fill(404), ...Array(4).fill(200)])
    })

    it('writes for its own page, and says so to one that is gone', async () => {
      const key = keyIn((await ask('/')).text)
      const place = String((await ask(link(key))).headers.location)
      const { port } = new URL(server.url)
      const write = (headers: Readonly<Record<string, string>>, at = place) =>
        ask(`${at}write`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', ...headers },
          body: JSON.stringify({ scale: null, lines: {}, points: {} }),
        })
      const origin = `http://localhost:${port}`
      expect(await write({ origin })).toMatchObject({ status: 200, text: 'Done.\n' })
      expect((await write({})).status).toBe(403)
      expect((await write({ origin: `http://127.0.0.1:${port}` })).status).toBe(403)
      expect((await write({ origin, 'sec-fetch-site': 'same-site' })).status).toBe(403)
      expect((await write({ origin }, '/-/marking/')).status).toBe(405)
      const gone = await write({ origin }, `/-/marking/${'x'.repeat(24)}/`)
      expect(gone).toMatchObject({ status: 404 })
      expect(gone.text).toContain('Copy the block')
    })
  })

  describe('news', () => {
    const stop = new AbortController()
    const listen = async (query = '') => {
      const response = await fetch(`${server.url}-/news${query}`, { signal: stop.signal })
      const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader()
      let heard = ''
      return async (wanted: string) => {
        while (!heard.includes(wanted)) heard += (await reader?.read())?.value ?? ''
        return heard
      }
    }
    afterEach(async () => server.close())

    it('are problems, errors first, and a reload', async () => {
      const heard = await listen()
      const warning = {
        ...problem,
        level: 'warning',
        place: 'practice.md',
        fix: null,
        advice: 'Look.',
      } as const
      server.rebuilt([warning, problem], true, 7)
      expect(await heard('reload')).toBe(
        [
          'event: problems\ndata: {"errors":0,"warnings":0,"waiting":0,"first":[]}\n\n',
          `event: problems\ndata: ${JSON.stringify({ errors: 1, warnings: 1, waiting: 7, first: [problem, warning] })}\n\n`,
          'event: reload\ndata: null\n\n',
        ].join(''),
      )
    })

    it('are a reload at once for a page of another build, and for no other', async () => {
      const old = buildIn((await ask('/')).text)
      server.rebuilt([], true)
      await (await listen(`?build=${old}`))('event: reload')
      const heard = await listen(`?build=${buildIn((await ask('/')).text)}`)
      server.rebuilt([problem], false)
      expect(await heard('is not a date')).not.toContain('reload')
      server.rebuilt([], true)
      await heard('event: reload')
    })

    it('of very many problems are the first ones, and how many there are', async () => {
      const long = { ...problem, message: 'x'.repeat(10_000) }
      server.rebuilt([...Array(500).fill({ ...problem, level: 'gap' }), ...Array(20).fill(long)], false)
      const heard = await (await listen())('\n\n')
      expect(heard.length).toBeLessThan(60_000)
      const shown = JSON.parse(heard.slice(heard.indexOf('{'), heard.lastIndexOf('}') + 1))
      expect(shown).toMatchObject({ errors: 20, warnings: 500 })
      expect(shown.first).toHaveLength(100)
      expect(shown.first[0].level).toBe('error')
    })

    it('reach a few listeners; the oldest makes room', async () => {
      const first = await fetch(`${server.url}-/news`)
      for (let nth = 0; nth < 30; nth += 1) await listen()
      expect(await first.text()).toContain('problems')
      expect((await ask('/')).status).toBe(200)
    })
  })

  it('has a page wait for the build under way, but not for ever', async () => {
    let finish = () => {}
    building = new Promise((resolve) => {
      finish = resolve
    })
    const waiting = ask('/')
    await rest(100)
    writeFileSync(join(site, 'index.html'), page.replace('Juno', 'Damson'))
    building = null
    server.rebuilt([], true)
    finish()
    const { text } = await waiting
    expect(text).toContain('Damson')
    building = new Promise(() => {})
    const [again, style] = await Promise.all([ask('/'), ask('/page.css')])
    expect(again.text).toContain('Damson')
    expect(style.text).toBe('p{}')
    expect(buildIn(text)).toBe(buildIn(again.text))
  }, 20_000)
})
