/** One build at a time for one site. */
import { hostname } from 'node:os'
import { join } from 'node:path'
import { UserError } from './errors.ts'
import type { Files } from './files.ts'

interface Holder {
  readonly pid: number
  readonly host: string
}

function holderOf(text: string): Holder | null {
  try {
    const { pid, host } = JSON.parse(text)
    return Number.isInteger(pid) && typeof host === 'string' ? { pid, host } : null
  } catch {
    return null
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

/**
 * Takes the lock in the work folder; the lock of a build that died is taken over.
 * @returns a function that gives it back
 * @throws UserError while another build holds it
 */
export function takeLock(files: Files, workFolder: string): () => void {
  const path = join(workFolder, 'lock')
  const mine = JSON.stringify({ pid: process.pid, host: hostname() } satisfies Holder)
  if (!files.writeNew(path, mine)) {
    const held = new TextDecoder().decode(files.read(path) ?? new Uint8Array())
    const holder = holderOf(held)
    const isStale = holder === null || (holder.host === hostname() && !isAlive(holder.pid))
    if (!isStale) throw heldBy(holder, path)
    // Moved aside first: of two builds that find the same dead lock only one can move it.
    const aside = `${path}.${process.pid}`
    files.move(path, aside)
    files.remove(aside)
    if (!files.writeNew(path, mine)) throw heldBy(null, path)
  }
  return () => files.remove(path)
}

function heldBy(holder: Holder | null, path: string): UserError {
  const who = holder === null ? 'Another build' : `Another build (process ${holder.pid} on ${holder.host})`
  return new UserError(
    `${who} is writing this site. Wait until it is done; if there is none, delete ${path} and build again.`,
  )
}
