/**
 * The lock: one owner's page in the age format (age-encryption.org/v1) with a scrypt passphrase, made by the
 * maintained library. Any age program opens it; nothing here invents cryptography.
 */
import { createHash, createHmac, randomBytes } from 'node:crypto'
import { armor, Encrypter } from 'age-encryption'
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
 * scrypt at 2^17, r 8: 128 MiB of memory. DEVICEFIGURES
 */
export const workFactor = 17

const plainHashOf = (plain: string) => createHash('sha256').update(plain, 'utf8').digest('hex')
/** A mark by which a passphrase is known again, and from which it cannot be read. */
export const fingerprintOf = (passphrase: string, salt: string) =>
  createHmac('sha256', Buffer.from(salt, 'hex')).update(passphrase, 'utf8').digest('hex')

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
    checksum(armor.decode(previous.armored)) === previous.checksum &&
    previous.plainHash === plainHashOf(plain) &&
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
    plainHash: plainHashOf(plain),
    fingerprint: fingerprintOf(passphrase, salt),
    salt,
    workFactor: factor,
  }
}
