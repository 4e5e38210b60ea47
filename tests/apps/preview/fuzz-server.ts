/** The preview's server in a process of its own, over a folder with traps in it, so that it can end, grow or leak. */
import { type ChildProcess, execFileSync, fork } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from 'esbuild'

/** In every file that nobody may be shown. */
export const secret = 'NOT-FOR-ANYBODY'

/** In every file that was built. */
export const built = 'BUILT'

/** Bytes of the largest file that was built, and of a picture that is marked. */
export const largest = 4 * 1024 * 1024

/** Paths that are no way to a secret. */
export const plainPaths = [
  'index.html',
  'juno/index.html',
  'juno/2026-01-12.html',
  'assets/page.css',
  'large.webp',
]

/** Paths of which the build has a memory, and where something else stands now. */
export const trapPaths = [
  'link.html',
  'link.css',
  'linked/index.html',
  'pipe.html',
  'pipe.css',
  'folder.html',
  'folder.css',
  'gone.html',
  '../secret.html',
]

/** What is not built: in the folder, beside it, and behind a link. */
export const secretPaths = [
  'foreign.html',
  'juno/foreign.css',
  '.made.json',
  '../secret.html',
  'linked/other.html',
]

const entry = `
  import { servePreview } from './src/apps/preview/server.ts'
  const { folder, served, largest } = JSON.parse(process.argv[2])
  const shown = { script: 'BUILT', style: 'BUILT', markText: 'Mark' }
  const openMarking = async () => ({
    page: 'BUILT', style: 'BUILT', script: 'BUILT', picture: Buffer.alloc(largest, 'BUILT'), write: () => 'BUILT',
  })
  const review = { show: () => ({ status: 200, type: 'text/plain', body: 'BUILT' }), taker: () => null }
  const previewed = { folder, served: () => new Set(served), settled: () => null, assets: shown, openMarking, review }
  const server = await servePreview(previewed, 0)
  const problem = { level: 'error', place: 'x', message: 'x'.repeat(600), expected: null, fix: null, advice: null }
  process.on('message', (wanted) => {
    if (wanted === 'rebuilt') server.rebuilt(Array(200).fill(problem), true)
    process.send(process.memoryUsage().rss)
  })
  process.send(server.url)
`

export interface FuzzedServer {
  readonly port: number
  /** Bytes that the process takes. */
  memory(): Promise<number>
  /** Has every page that listens told of a build; then the memory. */
  rebuilt(): Promise<number>
  /** How it ended, null while it lives. */
  ending(): string | null
  stop(): Promise<void>
}

export async function startFuzzedServer(): Promise<FuzzedServer> {
  const home = mkdtempSync(join(tmpdir(), 'growdown-'))
  const folder = join(home, 'site')
  plant(home, folder)
  const program = join(home, 'server.mjs')
  await build({
    stdin: { contents: entry, resolveDir: process.cwd(), loader: 'ts' },
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  })
  const served = [...plainPaths, ...trapPaths, 'closed.css']
  const child = fork(program, [JSON.stringify({ folder, served, largest })], {
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  })
  let said = ''
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (part) => {
      said += part
    })
  const [url] = await once(child, 'message')
  return {
    port: Number(new URL(url).port),
    memory: () => asked(child, 'memory'),
    rebuilt: () => asked(child, 'rebuilt'),
    ending: () =>
      child.exitCode === null && child.signalCode === null && said === ''
        ? null
        : `${child.exitCode ?? child.signalCode ?? 'it said'} ${said}`,
    stop: async () => {
      const ended = once(child, 'exit')
      if (child.kill()) await ended
      rmSync(home, { recursive: true })
    },
  }
}

async function asked(child: ChildProcess, wanted: string): Promise<number> {
  const answer = once(child, 'message')
  child.send(wanted)
  return (await answer)[0]
}

function plant(home: string, folder: string): void {
  const put = (path: string, text: string | Buffer) => {
    mkdirSync(join(path, '..'), { recursive: true })
    writeFileSync(path, text)
  }
  for (const path of plainPaths)
    put(join(folder, path), path === 'large.webp' ? Buffer.alloc(largest, built) : `<head></head>${built}`)
  for (const path of secretPaths.slice(0, 4)) put(join(folder, path), secret)
  for (const name of ['index.html', 'other.html']) put(join(home, 'elsewhere', name), secret)
  symlinkSync(join(home, 'elsewhere'), join(folder, 'linked'))
  for (const name of ['link.html', 'link.css']) symlinkSync(join(home, 'secret.html'), join(folder, name))
  execFileSync('mkfifo', [join(folder, 'pipe.html'), join(folder, 'pipe.css')])
  for (const name of ['folder.html', 'folder.css']) put(join(folder, name, 'index.html'), secret)
  put(join(folder, 'closed.css'), built)
  chmodSync(join(folder, 'closed.css'), 0)
}
