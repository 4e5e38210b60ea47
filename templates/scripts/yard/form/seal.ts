/** What is kept on the phone is locked with the key that stands in the locked page: AES-GCM, a fresh nonce each time. */

export interface Sealed {
  readonly nonce: Uint8Array<ArrayBuffer>
  readonly locked: ArrayBuffer
}

export interface Seal {
  /** @param name of the record: what is locked under one name opens under no other */
  lock(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<Sealed>
  /** Null where it was locked with another key, or was altered. */
  open(name: string, sealed: Sealed): Promise<Uint8Array<ArrayBuffer> | null>
}

const nonceBytes = 12
const utf8 = new TextEncoder()

/** @param phoneKey 32 bytes in base64 */
export async function sealOf(phoneKey: string): Promise<Seal> {
  const raw = Uint8Array.from(atob(phoneKey), (letter) => letter.charCodeAt(0))
  const key = await crypto.subtle.importKey('raw', raw, 'AES-GCM', false, ['encrypt', 'decrypt'])
  const how = (name: string, nonce: Uint8Array<ArrayBuffer>) => ({
    name: 'AES-GCM',
    iv: nonce,
    additionalData: utf8.encode(name),
  })
  return {
    lock: async (name, bytes) => {
      const nonce = crypto.getRandomValues(new Uint8Array(nonceBytes))
      return { nonce, locked: await crypto.subtle.encrypt(how(name, nonce), key, bytes) }
    },
    open: async (name, { nonce, locked }) => {
      try {
        return new Uint8Array(await crypto.subtle.decrypt(how(name, nonce), key, locked))
      } catch {
        return null
      }
    },
  }
}
