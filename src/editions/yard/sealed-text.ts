/** The encrypted text of the yard page (`src/yard/sealed.ts` has its layout). */
import { createCipheriv, createHmac, randomBytes } from 'node:crypto'
import { gzipSync } from 'node:zlib'
import { withoutControls } from '../../casebook/control-characters.ts'
import type { YardIndex } from '../../yard/payload.ts'
import {
  firstName,
  firstPlace,
  indexName,
  indexPlace,
  nonceSize,
  partName,
  type SealedIndex,
  type SealedPlace,
  sealedSize,
} from '../../yard/sealed.ts'
import type { LockKey } from '../lock/lock.ts'
import { step } from '../lock/padding.ts'

/**
 * The key of the pieces: of the same passphrase the same, so that what it opens need not be locked anew with each build,
 * which takes long on purpose. Nobody has it without the secret, which never leaves the passphrases' own file.
 */
export const pageKey = ({ secret, token, passphrase }: LockKey): Buffer =>
  derived(secret, `key of the page ${token} ${passphrase}`)

/**
 * The key of what is written on a phone. It rests on the secret alone: a changed passphrase or address leaves what stands
 * on other phones readable. Someone who has a lost phone and knows its passphrase has this key too; it opens nothing but
 * what lies on that phone already, since drafts are kept nowhere else.
 */
export const phoneKey = (secret: string): Buffer => derived(secret, 'key of what is written on phones')

/** Names the casebook on a phone that holds several. */
export const phoneName = (secret: string): string =>
  derived(secret, 'name on phones').toString('hex').slice(0, 16)

const derived = (secret: string, purpose: string): Buffer =>
  createHmac('sha256', secret).update(purpose, 'utf8').digest()

function sealed(key: Buffer, name: string, plain: Uint8Array): Buffer {
  const nonce = randomBytes(nonceSize)
  const cipher = createCipheriv('aes-256-gcm', key, nonce).setAAD(Buffer.from(name, 'utf8'))
  return Buffer.concat([nonce, cipher.update(plain), cipher.final(), cipher.getAuthTag()])
}

export interface PackedPart {
  readonly horse: string
  readonly gzipped: Uint8Array
}

/**
 * Everything but the small file that the passphrase opens, in base64 without line ends.
 * @param outer bytes of the page without this text: it is filled up so that the whole is a multiple of one step, or falls
 * short of it by less than the text's grain
 */
export function sealedText(
  index: YardIndex,
  packed: readonly PackedPart[],
  key: Buffer,
  outer: number,
): string {
  // The index holds places and length, and its own length moves neither: parts are counted from its end.
  const parts: Record<string, SealedPlace> = {}
  let at = 0
  for (const { horse, gzipped } of packed) {
    parts[horse] = { at, size: sealedSize(gzipped.length) }
    at += sealedSize(gzipped.length)
  }
  const gzipped = gzipSync(
    JSON.stringify({ index: withoutSteering(index), parts, partsSize: at } satisfies SealedIndex),
  )
  const place = indexPlace(sealedSize(gzipped.length))
  const length = Buffer.alloc(4)
  length.writeUInt32LE(place.size)
  const used = firstPlace.size + place.size + at
  const page = step * Math.ceil((outer + base64Size(used)) / step)
  const total = Math.floor((page - outer) / 4) * 3
  return Buffer.concat([
    sealed(key, firstName, length),
    sealed(key, indexName, gzipped),
    ...packed.map((part) => sealed(key, partName(part.horse), part.gzipped)),
    randomBytes(Math.max(0, total - used)),
  ]).toString('base64')
}

/** Without what would steer a reader's program, as every published page; but for the file that the checks read again. */
const withoutSteering = (index: YardIndex): YardIndex => ({
  ...JSON.parse(JSON.stringify(index), (_, value) =>
    typeof value === 'string' ? withoutControls(value) : value,
  ),
  practiceFile: index.practiceFile,
})

const base64Size = (bytes: number): number => 4 * Math.ceil(bytes / 3)
