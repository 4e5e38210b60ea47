/** A plain static host for a folder that tests can take off the network, and ask what it was asked for. */
import { existsSync, readFileSync, statSync } from 'node:fs'
import { createServer } from 'node:http'
import { extname, join, sep } from 'node:path'

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
}

export interface StaticHost {
  readonly origin: string
  /** Paths that were asked for. */
  readonly asked: readonly string[]
  /** No more answers: open connections are cut. */
  stop(): Promise<void>
}

export async function staticHost(folder: string): Promise<StaticHost> {
  const asked: string[] = []
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://here')
    asked.push(pathname)
    const path = join(folder, pathname.endsWith('/') ? `${pathname}index.html` : pathname)
    if (!path.startsWith(folder + sep) || !existsSync(path) || !statSync(path).isFile()) {
      response.statusCode = 404
      response.end()
      return
    }
    response.setHeader('content-type', types[extname(path)] ?? 'application/octet-stream')
    response.end(readFileSync(path))
  })
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready))
  const address = server.address()
  const port = typeof address === 'object' && address !== null ? address.port : 0
  return {
    origin: `http://127.0.0.1:${port}`,
    asked,
    stop: async () => {
      const closed = new Promise<void>((done) => server.close(() => done()))
      server.closeAllConnections()
      await closed
    },
  }
}
