/**
 * The lock: one owner's page in the age format (age-encryption.org/v1) with a scrypt passphrase, made by the
 * maintained library. Any age program opens it; nothing here invents cryptography.
 */
import { createHmac, randomBytes } from 'node:crypto'
import { armor, Encrypter } from 'age-encryption'
import { contentHash } from '../../build/disk/content-hash.ts'
import { checksum } from './checksum.ts'

/** What a build keeps to know that a page need not be locked again. Holds no passphrase. */
export interface Locked {
  /** The age file in its text form. */
  readonly armored: string
  /** CRC-32 of the age file, for telling a damaged page. */
  readonly checksum: string
  readonly plainHash: string
  /** HMAC of the passphrase under `salt`, so that a changed passphrase is seen. */
  readonly fingerprint: string
  readonly salt: string
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

/** A mark by which a passphrase is known again, and from which it cannot be read. */
export const fingerprintOf = (passphrase: string, salt: string) =>
  createHmac('sha256', Buffer.from(salt, 'hex')).update(passphrase, 'utf8').digest('hex')

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
  passphrase: string,
  factor = workFactor,
): previous is Locked {
  return (
    previous !== null &&
    previous.workFactor === factor &&
    isWhole(previous) &&
    previous.plainHash === contentHash(plain) &&
    previous.fingerprint === fingerprintOf(passphrase, previous.salt)
  )
}

/**
 * Locks a page with a passphrase, or gives back the earlier locking where neither has changed: locking is random,
 * so doing it again would change an unchanged page.
 * @param passphrase in its normal form (`normalPassphrase`)
 * @param factor base-2 logarithm of scrypt's work; tests take less
 */
export async function lockPage(
  plain: string,
  passphrase: string,
  previous: Locked | null,
  factor = workFactor,
): Promise<Locked> {
  if (stillLocked(previous, plain, passphrase, factor)) return previous
  const encrypter = new Encrypter()
  encrypter.setPassphrase(passphrase)
  encrypter.setScryptWorkFactor(factor)
  const locked = await encrypter.encrypt(plain)
  const salt = randomBytes(16).toString('hex')
  return {
    armored: armor.encode(locked),
    checksum: checksum(locked),
    plainHash: contentHash(plain),
    fingerprint: fingerprintOf(passphrase, salt),
    salt,
    workFactor: factor,
  }
}
