/** An editor as far as the protocol goes: starts the program and speaks JSON-RPC with it over its standard streams. */
import { type ChildProcess, spawn } from 'node:child_process'
import { join, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

export interface Problem {
  readonly range: Range
  readonly severity: number
  readonly code: string
  readonly message: string
}
interface Position {
  readonly line: number
  readonly character: number
}
export interface Range {
  readonly start: Position
  readonly end: Position
}

export interface Editor {
  request<T>(method: string, params: unknown): Promise<T>
  notify(method: string, params: unknown): void
  /** Opens a file of the casebook with this text, saved or not. */
  open(path: string, text: string): void
  /** Replaces a stretch, or the whole text. */
  change(path: string, text: string, range?: Range): void
  /** What was told of a file last, once it meets the test. */
  told(path: string, isIt?: (problems: readonly Problem[]) => boolean): Promise<readonly Problem[]>
  uri(path: string): string
  /** Of the program. */
  readonly pid: number | undefined
  close(): Promise<number | null>
}

/** The day that counts as today for it. */
const asOf = '2026-06-01'

/** @param root folder of the casebook */
export async function openEditor(root: string, capabilities: object = usual): Promise<Editor> {
  const child = spawn(process.execPath, [resolve('dist/cli.js'), 'lsp', '--stdio', '--as-of', asOf], {
    cwd: root,
    stdio: ['pipe', 'pipe', 'pipe'],
  })
  const { request, notify, listen } = rpc(child)
  const told = new Map<string, readonly Problem[]>()
  const versions = new Map<string, number>()
  let heard: (() => void)[] = []
  listen('textDocument/publishDiagnostics', (params) => {
    const { uri, diagnostics } = params as { uri: string; diagnostics: readonly Problem[] }
    told.set(uri, diagnostics)
    for (const wake of heard.splice(0)) wake()
  })
  const uri = (path: string) => pathToFileURL(join(root, path)).href
  await request('initialize', { processId: process.pid, rootUri: pathToFileURL(root).href, capabilities })
  notify('initialized', {})
  return {
    request,
    notify,
    uri,
    pid: child.pid,
    open: (path, text) => {
      versions.set(path, 1)
      notify('textDocument/didOpen', {
        textDocument: { uri: uri(path), languageId: 'markdown', version: 1, text },
      })
    },
    change: (path, text, range) => {
      const version = (versions.get(path) ?? 0) + 1
      versions.set(path, version)
      notify('textDocument/didChange', {
        textDocument: { uri: uri(path), version },
        contentChanges: [{ text, ...(range && { range }) }],
      })
    },
    told: async (path, isIt = () => true) => {
      for (;;) {
        const now = told.get(uri(path))
        if (now && isIt(now)) return now
        await new Promise<void>((resolve, reject) => {
          const timer = setTimeout(() => reject(new Error(`${path}: ${JSON.stringify(now)}`)), 25_000)
          heard.push(() => {
            clearTimeout(timer)
            resolve()
          })
        })
      }
    },
    close: async () => {
      const ended = new Promise<number | null>((resolve) => child.once('exit', resolve))
      await request('shutdown', null)
      notify('exit', null)
      heard = []
      return ended
    },
  }
}

/** What most editors say of themselves. */
export const usual = {
  textDocument: { completion: { completionItem: { snippetSupport: true } } },
  workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['rename'] } },
}

/** JSON-RPC 2.0 with the headers of the base protocol. */
function rpc(child: ChildProcess) {
  const answers = new Map<number, { resolve(value: unknown): void; reject(error: Error): void }>()
  const listeners = new Map<string, (params: unknown) => void>()
  let last = 0
  let buffer = Buffer.alloc(0)
  const send = (message: object) => {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }))
    child.stdin?.write(`Content-Length: ${body.length}\r\n\r\n`)
    child.stdin?.write(body)
  }
  const take = (message: {
    id?: number
    method?: string
    params?: unknown
    result?: unknown
    error?: { message: string }
  }) => {
    if (message.method !== undefined) {
      if (message.id !== undefined) send({ id: message.id, result: null })
      listeners.get(message.method)?.(message.params)
      return
    }
    const waiting = answers.get(message.id ?? -1)
    if (message.error) waiting?.reject(new Error(message.error.message))
    else waiting?.resolve(message.result)
  }
  child.stdout?.on('data', (chunk: Buffer) => {
    buffer = Buffer.concat([buffer, chunk])
    for (;;) {
      const head = buffer.indexOf('\r\n\r\n')
      const length = Number(
        /Content-Length: (\d+)/.exec(buffer.subarray(0, Math.max(0, head)).toString())?.[1],
      )
      if (head === -1 || buffer.length < head + 4 + length) return
      const body = buffer.subarray(head + 4, head + 4 + length).toString()
      buffer = buffer.subarray(head + 4 + length)
      take(JSON.parse(body))
    }
  })
  return {
    request: <T>(method: string, params: unknown): Promise<T> => {
      const id = ++last
      send({ id, method, params })
      return new Promise<T>((resolve, reject) => {
        answers.set(id, { resolve: resolve as (value: unknown) => void, reject })
      })
    },
    notify: (method: string, params: unknown) => send({ method, params }),
    listen: (method: string, listener: (params: unknown) => void) => void listeners.set(method, listener),
  }
}
