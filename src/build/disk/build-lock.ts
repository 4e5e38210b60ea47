/** One build at a time for one site. */
import { hostname } from 'node:os'
import { join } from 'node:path'
import { UserError } from './errors.ts'
import type { Files, Held } from './files.ts'

interface Holder {
  readonly pid: number
  readonly host: string
}

/**
 * Takes the lock in the work folder.
 * @returns a function that gives it back
 * @throws UserError while another build holds it
 */
export function takeLock(files: Files, workFolder: string): () => void {
  const mine: Holder = { pid: process.pid, host: hostname() }
  const lock = files.lock(join(workFolder, 'lock'), JSON.stringify(mine))
  if ('by' in lock) throw heldBy(lock)
  return lock.giveBack
}

function heldBy({ by, leftOver }: Held): UserError {
  const holder = holderOf(by)
  const who = holder === null ? 'Another build' : `Another build (process ${holder.pid} on ${holder.host})`
  const orElse = leftOver === null ? '' : `; if there is none, delete ${leftOver} and build again`
  return new UserError(`${who} is writing this site. Wait until it is done${orElse}.`)
}

function holderOf(text: string): Holder | null {
  try {
    const { pid, host } = JSON.parse(text)
    return Number.isInteger(pid) && typeof host === 'string' ? { pid, host } : null
  } catch {
    return null
  }
}
