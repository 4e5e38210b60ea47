import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type PreviewServer, servePreview } from '../../../src/apps/preview/server.ts'

const page =
  '<html><head><meta http-equiv="Content-Security-Policy" content="default-src \'none\'"></head><body>Juno</body></html>'

describe('the preview server', () => {
  let folder: string
  let server: PreviewServer

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'growdown-'))
    mkdirSync(join(folder, 'site/juno'), { recursive: true })
    writeFileSync(join(folder, 'secret.html'), 'secret')
    writeFileSync(join(folder, 'site/index.html'), page)
    writeFileSync(join(folder, 'site/juno/index.html'), page)
    writeFileSync(join(folder, 'site/page.css'), 'p{}')
    symlinkSync(join(folder, 'secret.html'), join(folder, 'site/link.html'))
    server = await servePreview(
      join(folder, 'site'),
      0,
      { script: 'listen()', style: 'aside{}', markText: 'Mark' },
      async (photo) => {
        if (photo !== 'juno/photos/lf.jpg') throw new Error('no such picture')
        return 'http://127.0.0.1:9/marking/'
      },
    )
  })
  afterEach(async () => {
    await server.close()
    rmSync(folder, { recursive: true })
  })

  /** Asks without tidying the path, as no browser would. */
  const ask = (path: string, options: { host?: string; method?: string; site?: string } = {}) =>
    new Promise<{ status: number; text: string }>((resolve, reject) => {
      const { port } = new URL(server.url)
      const asked = request(
        {
          port,
          host: '127.0.0.1',
          path,
          method: options.method ?? 'GET',
          headers: {
            host: options.host ?? `localhost:${port}`,
            ...(options.site && { 'sec-fetch-site': options.site }),
          },
        },
        (response) => {
          let text = ''
          response.on('data', (part) => {
            text += part
          })
          response.on('end', () => resolve({ status: response.statusCode ?? 0, text }))
        },
      )
      asked.on('error', reject).end()
    })

  it('serves pages with the script that listens, and lets only that listen', async () => {
    const { status, text } = await ask('/juno/')
    expect(status).toBe(200)
    expect(text).toContain('Juno')
    expect(text).toContain('<script src="/-/preview.js"')
    expect(text).toContain("default-src 'none'; connect-src 'self'")
    expect((await ask('/-/preview.js')).text).toBe('listen()')
    expect((await ask('/page.css')).text).toBe('p{}')
  })

  it('refuses any other host name', async () => {
    expect((await ask('/', { host: 'elsewhere.example' })).status).toBe(403)
    expect((await ask('/', { host: 'localhost.elsewhere.example' })).status).toBe(403)
    expect((await ask('/', { host: '127.0.0.1' })).status).toBe(200)
  })

  it('lets nobody out of the folder, by dots, escapes or links', async () => {
    for (const path of [
      '/../secret.html',
      '/juno/../../secret.html',
      '/%2e%2e/secret.html',
      '/..%2fsecret.html',
      '/link.html',
    ]) {
      const { status, text } = await ask(path)
      expect(status, path).toBeGreaterThanOrEqual(400)
      expect(text).not.toContain('secret')
    }
    expect((await ask('/%')).status).toBe(400)
    expect((await ask('/none.html')).status).toBe(404)
  })

  it('leads from a picture to its marking page, from a previewed page alone', async () => {
    expect((await ask('/-/mark/juno/photos/lf.jpg')).status).toBe(303)
    expect((await ask('/-/mark/juno/photos/other.jpg')).text).toContain('no such picture')
    expect((await ask('/-/mark/juno/photos/lf.jpg', { site: 'cross-site' })).status).toBe(403)
    expect((await ask('/-/mark/../../secret.html')).status).toBe(400)
  })

  it('only reads, and lists nothing', async () => {
    expect((await ask('/', { method: 'POST' })).status).toBe(405)
    mkdirSync(join(folder, 'site/empty'))
    expect((await ask('/empty/')).status).toBe(404)
    expect((await ask('/empty')).status).toBe(404)
  })

  it('tells a listening page of problems and of a reload', async () => {
    const heard: string[] = []
    const stop = new AbortController()
    const response = await fetch(`${server.url}-/news`, { signal: stop.signal })
    const reader = response.body?.pipeThrough(new TextDecoderStream()).getReader()
    server.show([{ place: 'juno/2026-03-14.md:3', text: 'is not a date' }])
    server.reload()
    while (!heard.join('').includes('reload')) heard.push((await reader?.read())?.value ?? '')
    expect(heard.join('')).toContain('event: problems\ndata: []')
    expect(heard.join('')).toContain('juno/2026-03-14.md:3')
    stop.abort()
  })
})
