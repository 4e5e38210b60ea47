/**
 * The size of a locked page must not tell how much stands in it: the plain page is filled up before it is locked, so
 * that the file that is published is a multiple of one step.
 *
 * What age adds is known: a head of fixed length, 16 bytes before the body and 16 after each 64 KiB of it
 * (age-encryption.org/v1), and then its text form: base64 in lines of 64 signs between two lines of its own (RFC 7468).
 */
export const step = 64 * 1024

const chunk = 64 * 1024
const tag = 16
const nonce = 16

/** `age-encryption.org/v1`, the scrypt recipient with its salt and work factor, its key, and the sum over the head. */
const headBytes = (workFactor: number) =>
  'age-encryption.org/v1\n'.length +
  `-> scrypt ${' '.repeat(22)} ${workFactor}\n`.length +
  44 +
  '--- '.length +
  44

/** Length of an age file in its text form. */
export function armoredSize(plain: number, workFactor: number): number {
  const chunks = Math.max(1, Math.ceil(plain / chunk))
  const bytes = headBytes(workFactor) + nonce + plain + chunks * tag
  const signs = 4 * Math.ceil(bytes / 3)
  const lines = Math.ceil(signs / 64)
  return '-----BEGIN AGE ENCRYPTED FILE-----\n-----END AGE ENCRYPTED FILE-----\n'.length + signs + lines
}

/**
 * The plain page filled up with spaces at its end, so far that the published page comes to the next full step, or falls
 * short of it by less than the text form's own grain (`filledUp`).
 * @param outer bytes of the published page without its locked part
 */
export function padded(plain: string, outer: number, workFactor: number): string {
  const own = Buffer.byteLength(plain)
  const total = step * Math.ceil((outer + armoredSize(own, workFactor)) / step)
  let [low, high] = [own, own + step]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (outer + armoredSize(middle, workFactor) <= total) low = middle
    else high = middle - 1
  }
  return plain + ' '.repeat(low - own)
}

/** The few bytes that are still missing: line ends after the page. */
export const filledUp = (html: string): string => {
  const over = Buffer.byteLength(html) % step
  return over === 0 ? html : html + '\n'.repeat(step - over)
}
