/** One owner's page: everything inside the lock, and the locked page around it. */
import type { Owner, Practice } from '../../casebook/model.ts'
import { lockedPage, type OwnerPart, ownerRecord } from '../../pages/owner/pages.ts'
import type { OwnerWords } from '../../pages/words/index.ts'
import type { Renderer } from '../../render/renderer.ts'
import { checksum } from '../lock/checksum.ts'
import { type Locked, type LockKey, lockPage, workFactor } from '../lock/lock.ts'
import { filledUp, padded } from '../lock/padding.ts'
import { policyOf } from '../lock/policy.ts'

/** Style sheet and unlocking script as they stand in the page. */
export interface Inlined {
  readonly style: string
  readonly script: string
}

interface OwnerPage {
  readonly locked: Locked
  /** The page that is published. */
  readonly html: string
  /** Where in `html` the locked part stands. */
  readonly sealed: { readonly start: number; readonly end: number }
}

/** The plain page of one owner: everything inside the lock. */
export const plainPage = (
  practice: Practice,
  owner: Owner,
  parts: readonly OwnerPart[],
  renderer: Renderer,
  { style }: Inlined,
  words: OwnerWords,
): Promise<string> =>
  renderer.render(ownerRecord(practice, owner, parts, { style, policy: policyOf(style, []) }, words))

/** As long as every other. */
const noChecksum = checksum(new Uint8Array())

/** Locks a plain page, filled up, and puts it into the page that anyone may see. */
export async function lockedOwnerPage(
  practice: Practice,
  plain: string,
  key: LockKey,
  previous: Locked | null,
  renderer: Renderer,
  { style, script }: Inlined,
  words: OwnerWords,
  factor = workFactor,
): Promise<OwnerPage> {
  const inlined = { style, script, policy: policyOf(style, [script]) }
  const render = (locked: Pick<Locked, 'armored' | 'checksum'>) =>
    renderer.render(lockedPage(practice, key.token, locked, inlined, words))
  const outer = Buffer.byteLength(await render({ armored: '', checksum: noChecksum }))
  const locked = await lockPage(padded(plain, outer, factor), key, previous, factor)
  const html = filledUp(await render(locked))
  const start = html.indexOf(locked.armored.trim())
  return {
    locked,
    html,
    sealed: { start, end: start + locked.armored.trim().length },
  }
}

/** The locked part of a page as published, so that an unchanged one need not be locked again; null when there is none. */
export function armoredIn(html: string): string | null {
  return (
    /-----BEGIN AGE ENCRYPTED FILE-----[A-Za-z0-9+/=\s]+-----END AGE ENCRYPTED FILE-----\n?/.exec(
      html,
    )?.[0] ?? null
  )
}
