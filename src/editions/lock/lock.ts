/**
 * The lock: one owner's page in the age format (age-encryption.org/v1) with a scrypt passphrase, made by the
 * maintained library. Any age program opens it; nothing here invents cryptography.
 */
import { createHmac } from 'node:crypto'
import { armor, Encrypter } from 'age-encryption'
import { contentHash } from '../../build/disk/content-hash.ts'
import { checksum } from './checksum.ts'
import type { OwnerKey } from './passphrases.ts'

/** What a build keeps to know that a page need not be locked again. Holds no passphrase. */
export interface Locked {
  /** The age file in its text form. */
  readonly armored: string
  /** CRC-32 of the age file, for telling a damaged page. */
  readonly checksum: string
  readonly plainHash: string
  /** By which a changed passphrase is seen (`markOf`). */
  readonly mark: string
  readonly workFactor: number
}

/** What is remembered of a locking; the locked part itself stands in the published page. */
export type LockMemory = Omit<Locked, 'armored'>

/**
 * scrypt with N 2^17, r 8, p 1: 128 MiB of memory. Measured in Chromium on a page of 7 MB, from the tap on Open to the
 * opened page, median of three: 0.7 s on one core of a server, 2.3 s with the processor slowed four times as a middling
 * phone's, 3.2 s slowed six times. One step more takes 1.2, 4.8 and 5.8 s and 256 MiB.
 */
export const workFactor = 17

/** What opens a page, with the secret that stands beside it. */
export interface LockKey extends OwnerKey {
  readonly secret: string
}

/**
 * A mark by which a passphrase is known again. Without the secret, which never leaves the passphrases' own file,
 * nobody can try passphrases against it: that would be far quicker than against the page.
 */
export const markOf = ({ passphrase, token, secret }: LockKey) =>
  createHmac('sha256', secret).update(`${token} ${passphrase}`, 'utf8').digest('hex')

/** Whether the locked part, read back out of the published page, is what was put there. */
function isWhole(previous: Locked): boolean {
  try {
    return checksum(armor.decode(previous.armored)) === previous.checksum
  } catch {
    return false
  }
}

/** Whether a page locked before still stands for this text and passphrase. */
function stillLocked(
  previous: Locked | null,
  plain: string,
  key: LockKey,
  factor = workFactor,
): previous is Locked {
  return (
    previous !== null &&
    previous.workFactor === factor &&
    isWhole(previous) &&
    previous.plainHash === contentHash(plain) &&
    previous.mark === markOf(key)
  )
}

/**
 * Locks a page with a passphrase, or gives back the earlier locking where neither has changed: locking is random,
 * so doing it again would change an unchanged page.
 * @param factor base-2 logarithm of scrypt's work; tests take less
 */
export async function lockPage(
  plain: string,
  key: LockKey,
  previous: Locked | null,
  factor = workFactor,
): Promise<Locked> {
  if (stillLocked(previous, plain, key, factor)) return previous
  const encrypter = new Encrypter()
  encrypter.setPassphrase(key.passphrase)
  encrypter.setScryptWorkFactor(factor)
  const locked = await encrypter.encrypt(plain)
  return {
    armored: armor.encode(locked),
    checksum: checksum(locked),
    plainHash: contentHash(plain),
    mark: markOf(key),
    workFactor: factor,
  }
}
